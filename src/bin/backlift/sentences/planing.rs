//! A planing plan in sentences.

use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::Plan;

use crate::figure::{capital, listed, number, percent};

/// Of a bat that was not balanced or timed.
pub const ESTIMATED: &str = "Balance or swing moment is estimated from the size: time ten swings, and the plan is surer and goes further";

/// What a maker could say of it.
pub fn sentence(plan: &Plan) -> String {
    let off_kg: f64 = plan.passes.iter().map(|it| it.off_kg).sum();
    let grams = number(1e3 * off_kg, 0);
    let meets = plan.meets.len() + usize::from(plan.handle_m.1);
    match (plan.passes.len(), meets) {
        (0, 4) => "Nothing needs to come off: finished, the bat meets the card".to_owned(),
        (0, _) => "No wood that a plane can take off brings this bat to its card".to_owned(),
        (n, 4) => {
            format!("Take {grams} g off in {} and the finished bat meets the card", passes(n))
        }
        (n, _) => format!(
            "{} take {grams} g off and bring the bat nearer, but not wholly to the card",
            capital(&passes(n))
        ),
    }
}

fn passes(n: usize) -> String {
    if n == 1 { "one pass".to_owned() } else { format!("{n} passes") }
}

/// How to work by it, with a plane that is off by such a share.
pub fn rules(planing_sd: f64, overshoot_limit: f64) -> String {
    format!(
        "Stop after each pass, weigh, balance and swing again, and ask anew: the plane takes off {} more or less than it should (one standard deviation, assumed), and no pass may leave the finished bat too light with more than 1 chance in {}. Wood cannot go back",
        percent(planing_sd, 0),
        number(1.0 / overshoot_limit, 0)
    )
}

/// What goes on after the plane; empty where nothing does.
pub fn to_come_words(plan: &Plan, units: Units) -> String {
    if plan.to_come.is_empty() {
        return String::new();
    }
    let each: Vec<String> = plan
        .to_come
        .iter()
        .map(|it| {
            let sd = it.relative_sd * it.adds.mass_kg;
            format!(
                "{} {} ± {}",
                it.what,
                spoken(Quantity::Mass, it.adds.mass_kg, sd, units),
                spoken(Quantity::Mass, sd, sd, units)
            )
        })
        .collect();
    format!("Still to go on, and counted: {}", listed(&each))
}
