//! The check in words, and for other programs.

use backlift::card::Figure;
use backlift::card::returned_bat::{Check, DecidedBy, Item, Within};
use backlift::questions::miss::Miss;
use backlift::units::{Quantity, Units, spoken};
use serde_json::{Value, json};

use crate::paragraph::{paragraph, set_in};
use crate::sentences::returned::{Told, in_words};
use crate::table::table;

/// Everything, the verdict first.
pub fn told(check: &Check, miss: Option<&Miss>, units: Units) -> String {
    let mut out = paragraph(&check.sentence()) + "\n\n";
    let row = |it: &Item| {
        let Told { measured, asked, limits, within } = in_words(it, units);
        vec![it.figure.words().to_owned(), measured, format!("{asked}\n{limits}"), within]
    };
    let rows: Vec<Vec<String>> = check.items.iter().map(row).collect();
    out += &table(&["", "measured", "asked, and its limits", "within"], &rows);
    let places = Figure::ALL
        .iter()
        .filter_map(|it| Some(format!("{} {}", it.words(), it.taken_from()?)))
        .collect::<Vec<_>>();
    let units_apart = Figure::ALL
        .iter()
        .filter(|it| it.quantity().is_none())
        .map(|it| format!("{} in {}", it.words(), it.unit()))
        .collect::<Vec<_>>();
    let whence = format!("{}; {}", places.join(", "), units_apart.join(", "));
    out += &(set_in(&whence) + "\n");
    let unproven = |it: &&Item| it.within == Within::Unsure;
    if let Some(it) = check.items.iter().find(unproven) {
        let mend = match it.figure {
            Figure::SwingMoment => "time more swings",
            _ => "measure again, more closely",
        };
        let words = "best guess: the error of the reading reaches past a limit; to be surer,";
        out += &(set_in(&format!("{words} {mend}")) + "\n");
    }
    out += &match miss {
        Some(miss) => pull_at_fifty(miss, units),
        None => "For what a miss does to the pull at fifty, name the scenario after the card\n"
            .to_owned(),
    };
    out
}

fn pull_at_fifty(miss: &Miss, units: Units) -> String {
    let speed = |it: f64| spoken(Quantity::Speed, it, miss.difference_sd_m_s, units);
    let size = miss.difference_m_s.abs();
    let told = if size <= 1.96 * miss.difference_sd_m_s {
        "no different within the measuring error".to_owned()
    } else {
        let way = if miss.difference_m_s < 0.0 { "slower" } else { "faster" };
        format!("{} {way}", speed(size))
    };
    let words = format!(
        "The pull at fifty: {} with the bat as ordered, {} as delivered ({} ± {}): {told}",
        speed(miss.as_ordered_m_s),
        speed(miss.as_delivered_m_s),
        speed(miss.difference_m_s),
        speed(miss.difference_sd_m_s)
    );
    paragraph(&words) + "\n"
}

/// The result for other programs, SI; a line's figure has its unit in its name.
pub fn figures(check: &Check, miss: Option<&Miss>) -> Value {
    json!({
        "accepted": check.accepted,
        "sentence": check.sentence(),
        "decided_by": match check.decided_by {
            DecidedBy::Worth => "worth",
            DecidedBy::SwingMoment => "swing_moment",
            DecidedBy::SwingMomentReading => "swing_moment_reading",
            DecidedBy::WeightAndBalance => "weight_and_balance",
            DecidedBy::TooLittleMeasured => "too_little_measured",
        },
        "worth_lost_share": check.worth_lost_share,
        "items": check.items.iter().map(item).collect::<Value>(),
        "pull_at_fifty": miss.map(|it| json!({
            "as_ordered_m_s": it.as_ordered_m_s,
            "as_delivered_m_s": it.as_delivered_m_s,
            "difference_m_s": it.difference_m_s,
            "difference_sd_m_s": it.difference_sd_m_s,
        })),
    })
}

fn item(it: &Item) -> Value {
    json!({
        "figure": it.figure.keys()[0],
        "asked": it.asked.target,
        "tolerance": it.asked.tolerance,
        "measured": it.measured.map(|it| it.value),
        "measured_sd": it.measured.map(|it| it.sd),
        // Whether the measured value itself lies between the limits; then with its error considered.
        "within": it.measured.map(|_| it.reads_inside()),
        "verdict": match it.within {
            Within::Yes => "yes",
            Within::No => "no",
            Within::Unsure => "unsure",
            Within::NotMeasured => "not_measured",
        },
    })
}
