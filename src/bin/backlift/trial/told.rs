//! What to tape where, in words and tables.

use backlift::bat::figures::WeighedBat;
use backlift::card::cautions::JUNIOR_BELOW_Y;
use backlift::comparison::difference::toe_words;
use backlift::fit::trial::{MOST_AT_A_PLACE_G, MOST_IN_ALL_G, Near, Pickup, Tape};
use backlift::questions::taped::wanted::Wanted;
use backlift::questions::taped::{StrokeSpeeds, Taped};
use backlift::uncertain::independent_sd;
use backlift::units::{Quantity, Units, spoken};

use crate::figure::{listed, number, percent, plain};
use crate::paragraph::paragraph;
use crate::table::table;

/// What must be said with every trial.
pub fn cautions(age_y: f64) -> Vec<String> {
    let mut out = vec![
        "Taped weights are for shadow swings and soft throws only: never hit a hard ball, never bat in a match with them.".to_owned(),
        "Fix each weight so that nothing can fly off: flat weights or coins under tape wound right round the bat; pull at it before every swing, and let nobody stand near.".to_owned(),
        "Stop at any pain.".to_owned(),
    ];
    if age_y < JUNIOR_BELOW_Y {
        out.push("An adult fixes and checks the tape.".to_owned());
    }
    out
}

pub fn told(owned: &WeighedBat, wanted: &Wanted, found: &Taped, units: Units) -> String {
    let mut out = paragraph(&sentence(owned, wanted, found)) + "\n\n";
    if !found.trial.weights.is_empty() {
        out += &tape(owned, found, units);
        out.push('\n');
    }
    out += &(pickups(owned, wanted, found, units) + "\n");
    out += &(paragraph(&in_each_stroke(owned, wanted, found)) + "\n\n");
    out + &paragraph(&doubt(owned, wanted)) + "\n"
}

fn off(reached: f64, wanted: f64) -> String {
    let share = reached / wanted - 1.0;
    match share {
        _ if share.abs() < 0.0005 => "the same".to_owned(),
        _ if share > 0.0 => format!("{} more", percent(share, 1)),
        _ => format!("{} less", percent(-share, 1)),
    }
}

/// "as fast in the pull", "0.4 % faster in the drive".
fn speed_off(it: &StrokeSpeeds) -> String {
    let share = it.off_share();
    let stroke = &it.stroke;
    match share {
        _ if share.abs() < 0.0005 => format!("as fast in the {stroke}"),
        _ if share > 0.0 => format!("{} faster in the {stroke}", percent(share, 1)),
        _ => format!("{} slower in the {stroke}", percent(-share, 1)),
    }
}

/// How near the bat, taped or not, comes in each stroke.
fn in_each_stroke(owned: &WeighedBat, wanted: &Wanted, found: &Taped) -> String {
    let each: Vec<String> = found.strokes.iter().map(speed_off).collect();
    let taped = if found.trial.weights.is_empty() { "As it is" } else { "Taped" };
    format!(
        "{taped}, {} is at fifty {}, against {}",
        owned.reading.label,
        listed(&each),
        wanted.words
    )
}

fn sentence(owned: &WeighedBat, wanted: &Wanted, found: &Taped) -> String {
    let (bat, like) = (&owned.reading.label, &wanted.words);
    let it = &found.trial;
    let (got, asked) = (&it.reached, &it.wanted);
    let Some(aimed) = found.strokes.get(found.aimed) else { return String::new() };
    let (stroke, speed) = (&aimed.stroke, speed_off(aimed));
    let moment = |name: &str, got: f64, asked: f64| match off(got, asked).as_str() {
        "the same" => format!("{name} the same"),
        other => format!("{other} {name}"),
    };
    let swings = moment("swing moment", got.swing_moment_kg_m2, asked.swing_moment_kg_m2);
    let holds = moment("hold moment", got.hold_moment_n_m(), asked.hold_moment_n_m());
    let grams = |it: &Tape| format!("{} {}", plain(f64::from(it.grams), 0, "g"), it.place.words);
    let tape = listed(&it.weights.iter().map(grams).collect::<Vec<_>>());
    match (it.near, it.weights.is_empty()) {
        (Near::Alike, true) => {
            format!("{bat} swings and picks up like {like} as it is: {speed}, {swings}, {holds}")
        }
        (Near::Alike, false) => format!(
            "Tape {tape}, and {bat} swings and picks up like {like}: {speed}, {swings}, {holds}"
        ),
        (Near::SwingOnly, true) => format!(
            "{bat} swings like {like} as it is, {speed}, but in the hand it feels different: {swings}, {holds}; tape does not mend that"
        ),
        (Near::SwingOnly, false) => format!(
            "Tape {tape}, and {bat} swings like {like}, {speed}, but in the hand it feels different: {swings}, {holds}"
        ),
        (Near::OwnedHeavier, _) => format!(
            "{bat} is already {speed} than with {like}: {swings}, {}. Tape only slows, so no tape on it can show how {like} swings; tape a bat whose {stroke} is faster",
            toe_words(it.owned.swing_moment_kg_m2 - asked.swing_moment_kg_m2, owned.length_m.value)
        ),
        (Near::TooFar, _) => format!(
            "{bat} is too light to be made to swing like {like} with {MOST_AT_A_PLACE_G} g a place and {MOST_IN_ALL_G} g in all: with {tape} it is still {speed}"
        ),
    }
}

fn tape(owned: &WeighedBat, found: &Taped, units: Units) -> String {
    let length = |it: f64| match units {
        Units::Trade => spoken(Quantity::Length, it, 0.003, units),
        Units::Si => plain(1000.0 * it, 0, "mm"),
    };
    let row = |it: &Tape| {
        [
            it.place.words.to_owned(),
            plain(f64::from(it.grams), 0, "g"),
            length(it.place.from_top_m),
            length(owned.length_m.value - it.place.from_top_m),
        ]
    };
    let heads = ["tape, measured to its middle", "weight", "from the top", "from the toe"];
    table(&heads, found.trial.weights.iter().map(row))
}

fn pickups(owned: &WeighedBat, wanted: &Wanted, found: &Taped, units: Units) -> String {
    let label = &owned.reading.label;
    let (taped, asked) = (format!("{label}, taped"), format!("wanted: {}", wanted.words));
    type Speed = fn(&StrokeSpeeds) -> f64;
    let it = &found.trial;
    let mut columns: Vec<(&str, &Pickup, Speed)> =
        vec![(label.as_str(), &it.owned, |it| it.owned_m_s)];
    if !it.weights.is_empty() {
        columns.push((taped.as_str(), &it.reached, |it| it.reached_m_s));
    }
    columns.push((asked.as_str(), &it.wanted, |it| it.wanted_m_s));
    let mut heads = vec![""];
    heads.extend(columns.iter().map(|it| it.0));
    let row = |name: &str, shown: &dyn Fn(&Pickup) -> String| {
        let mut row = vec![name.to_owned()];
        row.extend(columns.iter().map(|it| shown(it.1)));
        row
    };
    let mut rows = vec![
        row("dead weight", &|it| spoken(Quantity::Mass, it.mass_kg, 0.001, units)),
        row("balance from the top", &|it| spoken(Quantity::Length, it.balance_m, 0.001, units)),
        row("swing moment, kg m²", &|it| number(it.swing_moment_kg_m2, 4)),
        row("hold moment, N m", &|it| number(it.hold_moment_n_m(), 2)),
    ];
    for speeds in &found.strokes {
        let mut row = vec![format!("{} at fifty", speeds.stroke)];
        let speed = |of: Speed| spoken(Quantity::Speed, of(speeds), DIGIT_M_S, units);
        row.extend(columns.iter().map(|it| speed(it.2)));
        rows.push(row);
    }
    table(&heads, &rows)
}

/// A tenth of a km/h.
const DIGIT_M_S: f64 = 0.03;

/// The tape is exact; the bats are only as well known as they were weighed.
fn doubt(owned: &WeighedBat, wanted: &Wanted) -> String {
    let sd = independent_sd(&[owned.swing_moment_kg_m2.sd, wanted.swing_sd_kg_m2.unwrap_or(0.0)]);
    let share = percent(sd / wanted.pickup.swing_moment_kg_m2, 1);
    let mend = match owned.swing_moment_kg_m2.is_estimated() {
        true => ": the bat to be taped was not timed on a pendulum",
        false => "",
    };
    format!("The grams are as good as the weighing: the swing moments are known to ± {share}{mend}")
}
