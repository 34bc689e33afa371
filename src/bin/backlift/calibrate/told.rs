//! What was found, in words and tables.

use backlift::calibration::posterior::Spread;
use backlift::innings::score::runs_words;
use backlift::measurement::nets::Read;
use backlift::questions::calibrated::Found;
use backlift::units::{Quantity, Units, spoken};

use crate::figure::{number, percent};
use crate::paragraph::{each_set_in, paragraph, set_in};
use crate::table::table;

/// What the figures do not hold.
pub const LIMITS: [&str; 4] = [
    "how fast this player swings is read, not why: timing and strength are not told apart",
    "a player asked for the fastest holds back 5 %, give or take 3 % (assumption): no number of readings wears that off",
    "each stroke may be 4 % quicker or slower than the stored one for reasons of its own (assumption)",
    "tired readings are worth their number only if they are of the same day, bat and stroke as the fresh ones, and asked for alike",
];

/// Where these chances come from.
const AS_FIT: &str = "the same chances as `fit` says: they rest on how often the player is in time with the bat now used, which was seen or assumed, and on what another bat and tiredness do to the stroke time";

/// Everything, the sentence first.
pub fn told(found: &Found, units: Units) -> String {
    let it = &found.calibrated;
    let mut out = paragraph(&sentence(found, units)) + "\n\nStrength over what the tables say:\n";
    let band = |it: &Spread| {
        let [low, high] = [it.low, it.high].map(libm::exp);
        format!("{} to {}", number(low, 2), number(high, 2))
    };
    let strength = it.parts.iter().map(|part| {
        let factor = number(libm::exp(part.after.mean), 2);
        [part.part.words().to_owned(), band(&part.before), factor, band(&part.after)]
    });
    out += &table(&["", "tables, nine in ten", "readings", "nine in ten"], strength);
    out += &format!("\nHow much surer, with {}:\n", found.labels[found.bat]);
    out += &table(&["", "by the tables", "with the readings"], surer(found, units));
    let runs = runs_words(found.runs);
    out += &format!("\nHow likely a short ball at {runs} is met in time:\n");
    let chance =
        |it: Option<f64>| it.map_or_else(|| "beyond control".to_owned(), |it| percent(it, 0));
    let in_time = found.labels.iter().zip(&found.in_time).map(|(label, chances)| {
        let [before, after] = chances.map(chance);
        [label.clone(), before, after]
    });
    out += &table(&["bat", "by the tables", "with the readings"], in_time);
    out += &(set_in(AS_FIT) + "\n");
    out += &doubted(found, units);
    out + "\nWhat this cannot know:\n" + &each_set_in(LIMITS)
}

/// What a coach could say aloud.
fn sentence(found: &Found, units: Units) -> String {
    let it = &found.calibrated;
    let [before, after] = found.pull_m_s.map(|it| it[0]);
    let moved = after / before - 1.0;
    let [was, is] = it.surer.fresh_pull_m_s.map(|it| it.sd);
    let direction = match () {
        () if moved.abs() < 0.005 => "as fast as".to_owned(),
        () if moved > 0.0 => format!("{} faster than", percent(moved, 0)),
        () => format!("{} slower than", percent(-moved, 0)),
    };
    let speed = |it: f64| spoken(Quantity::Speed, it, 0.3, units);
    let share = |sd: f64, value: f64| percent(sd / value, 0);
    let tired = match it.counts[1] {
        0 => "No tired readings: lasting fatigue stays as unknown as it was".to_owned(),
        _ => {
            let [low, high] = [it.surer.lost[1].low, it.surer.lost[1].high];
            format!(
                "By {} it loses {} to {}",
                runs_words(found.runs),
                percent(low.max(0.0), 1),
                percent(high, 1)
            )
        }
    };
    format!(
        "This player's fastest controlled pull with {} is {direction} the tables say: {}, and the doubt fell from {} to {}. {tired}",
        found.labels[found.bat],
        speed(after),
        share(was, before),
        share(is, after),
    )
}

fn surer(found: &Found, units: Units) -> [[String; 3]; 3] {
    let it = &found.calibrated.surer;
    let speed = |value: f64, it: &Spread| {
        let of = |it: f64| spoken(Quantity::Speed, it, 0.3, units);
        let low = of(it.low);
        let low = low.split(|c: char| c.is_whitespace()).next().unwrap_or_default();
        format!("{} ({low} to {})", of(value), of(it.high))
    };
    let lost = |value: f64, it: &Spread| {
        format!("{} ({} to {})", percent(value, 1), number(100.0 * it.low, 1), percent(it.high, 1))
    };
    let [before, after] = found.pull_m_s;
    let drop = |[fresh, late]: [f64; 2]| 1.0 - late / fresh;
    let [fresh, late, less] = [&it.fresh_pull_m_s, &it.late_pull_m_s, &it.lost];
    [
        ["fastest pull, fresh".to_owned(), speed(before[0], &fresh[0]), speed(after[0], &fresh[1])],
        [
            format!("fastest pull at {}", runs_words(found.runs)),
            speed(before[1], &late[0]),
            speed(after[1], &late[1]),
        ],
        ["lost by then".to_owned(), lost(drop(before), &less[0]), lost(drop(after), &less[1])],
    ]
}

/// The readings that are not like the others, one by one.
fn doubted(found: &Found, units: Units) -> String {
    let it = &found.calibrated;
    let scatter = percent(it.scatter, 1);
    let start = format!("Swing by swing this player scatters by {scatter}.");
    let rows: Vec<String> = found
        .readings
        .iter()
        .zip(&it.judged)
        .filter(|(_, judged)| judged.is_doubted())
        .map(|((line, reading), judged)| {
            let (read, more) = match reading.read {
                Read::Time { time_s, .. } => (spoken(Quantity::Time, time_s, 0.001, units), "longer"),
                Read::Speed { speed_m_s } => (spoken(Quantity::Speed, speed_m_s, 0.3, units), "faster"),
            };
            let less = if more == "longer" { "shorter" } else { "slower" };
            let off = if judged.off_share > 0.0 { more } else { less };
            format!(
                "line {line}: {} with {}, {read}, is {} {off} than the others say; it is given {} weight",
                reading.stroke,
                found.labels[reading.bat],
                percent(judged.off_share.abs(), 0),
                percent(judged.counted, 0)
            )
        })
        .collect();
    if rows.is_empty() {
        return format!("\n{start} No reading is doubted\n");
    }
    let look = "These readings are doubted; look at the film again:";
    format!("\n{}\n", paragraph(&format!("{start} {look}"))) + &each_set_in(rows)
}
