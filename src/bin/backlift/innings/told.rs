//! The innings in words and tables.

use backlift::innings::played::{AtScore, StrokeNow};
use backlift::questions::innings::{Lead, Played};
use backlift::units::{Quantity, Units, spoken};

use crate::figure::{if_read_in, number, percent};
use crate::paragraph::{each_set_in, paragraph, set_in};
use crate::table::table;

/// What the figures do not hold.
pub const LIMITS: [&str; 4] = [
    "nobody has measured how trunk and arms tire in an innings: the lasting part is a third of what legs lose, anything from none to all of it",
    "wrists are judged at the same stroke time throughout, somewhat slower than the fastest fresh swing",
    "heat, drink, concentration and injury are not in it",
    "the absolute speeds hang on the player's strength; the change from fresh to tired much less",
];

/// The first of them where tired swings of this player were read.
const READ_IN_NETS: &str = "how this player tires was read in the nets, over one innings' worth of work: another day may differ";

/// What these figures do not hold.
pub fn limits(played: &Played<'_>) -> Vec<&'static str> {
    let [tables, rest @ ..] = LIMITS;
    let first = if played.read_in_nets { READ_IN_NETS } else { tables };
    std::iter::once(first).chain(rest).collect()
}

/// Everything, the sentence first.
pub fn told(played: &Played<'_>, units: Units) -> String {
    let mut out = paragraph(&sentence(played, units))
        + "\n\nBat speed where it meets the ball, runs by runs:\n";
    out += &speeds(played, units);
    let closely = if played.shown.len() == 1 { played.shown[0] } else { played.loaded.lead() };
    if let Some(name) = played.loaded.stroke_names().get(closely) {
        out += &format!("\nThe {name} more closely:\n{}", closely_at(played, closely, units));
    }
    out += "\nWhat is not known of lasting fatigue:\n";
    out += &band(played, &played.at_fifty, units);
    if played.at_end.runs != played.at_fifty.runs {
        out += &band(played, &played.at_end, units);
    }
    out + "\nWhat the model does not know:\n" + &each_set_in(limits(played))
}

/// What a coach could say aloud.
pub fn sentence(played: &Played<'_>, units: Units) -> String {
    let it = &played.at_fifty;
    let now = it.drop_share(&it.with_slow);
    let low = it.drop_share(&it.with_slow_low);
    let high = it.drop_share(&it.with_slow_high);
    let fresh = it.fresh.bat_speed_m_s();
    let lost_m_s = now * fresh;
    format!(
        "The {} at fifty with {} is {} ({}) slower than at the first ball; anything from {} to {}, {}",
        lead(played),
        played.bat_label,
        percent(now, 1),
        spoken(Quantity::Speed, lost_m_s, 0.3 * lost_m_s.abs(), units),
        percent(low, 1),
        percent(high, 1),
        match played.read_in_nets {
            true => "as far as this player's tired swings in the nets say",
            false => "since nobody has measured lasting fatigue",
        }
    )
}

fn speeds(played: &Played<'_>, units: Units) -> String {
    let shown = || played.shown.iter().copied();
    let names = shown().filter_map(|i| played.loaded.strokes.get(i)).map(|it| it.name.as_str());
    let heads: Vec<&str> = ["runs", "balls faced"].into_iter().chain(names).collect();
    let row = |it: &AtScore| {
        let mut row = start(it);
        row.extend(shown().filter_map(|i| it.with_slow.get(i)).map(|now| speed(now, units)));
        row
    };
    table(&heads, played.points.iter().map(row))
}

fn closely_at(played: &Played<'_>, stroke: usize, units: Units) -> String {
    let bowled = spoken(Quantity::Speed, played.loaded.scenario.bowling.speed_m_s, 0.3, units);
    let row = |it: &AtScore| {
        let now = it.with_slow.get(stroke)?;
        let mut row = start(it);
        row.push(percent(now.wrist_share, 0));
        row.push(spoken(Quantity::Time, now.time_in_hand_s, 0.001, units));
        if !played.loaded.is_junior() {
            row.push(spoken(Quantity::Speed, now.fastest_ball_m_s, 0.3, units));
        }
        Some(row)
    };
    let in_hand = format!("time in hand, {bowled}");
    let mut heads = vec!["runs", "balls faced", "average wrist effort", &in_hand];
    heads.extend((!played.loaded.is_junior()).then_some("fastest ball it meets"));
    let read_in =
        format!("time in hand: {}", if_read_in(played.loaded.scenario.bowling.reaction_time_s));
    table(&heads, played.points.iter().filter_map(row)) + &set_in(&read_in) + "\n"
}

fn start(it: &AtScore) -> Vec<String> {
    vec![number(it.left.runs, 0), it.left.balls_faced.to_string()]
}

fn speed(now: &StrokeNow, units: Units) -> String {
    spoken(Quantity::Speed, now.bat_speed_m_s(), 0.05, units)
}

/// Name of the leading stroke.
pub fn lead<'a>(played: &Played<'a>) -> &'a str {
    let loaded = played.loaded;
    loaded.strokes.get(loaded.lead()).map_or("stroke", |it| &it.name)
}

fn band(played: &Played<'_>, it: &Lead, units: Units) -> String {
    let now = |words: &str, now: &StrokeNow| {
        format!("{words} {} ({} lost)", speed(now, units), percent(it.drop_share(now), 1))
    };
    let words = format!(
        "the {} at {}: {}, {}, {}",
        lead(played),
        number(it.runs, 0),
        now(if played.read_in_nets { "least" } else { "none" }, &it.with_slow_low),
        now("taken here", &it.with_slow),
        now("most", &it.with_slow_high)
    );
    set_in(&words) + "\n"
}
