//! The plan in words.

use backlift::card::Figure;
use backlift::questions::plane::Planned;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::{Pass, PickupMoments, Plan};

use crate::figure::{capital, figure_words, listed, number, percent, plain};
use crate::paragraph::{paragraph, set_in};
use crate::table::table;

/// Everything, the sentence first.
pub(super) fn told(it: &Planned, units: Units) -> String {
    let plan = &it.plan;
    let mut out = paragraph(&sentence(plan)) + "\n\n";
    let row = |n: String, where_: &str, off: String, at: &PickupMoments| {
        vec![
            n,
            where_.to_owned(),
            off,
            spoken(Quantity::Mass, at.mass_kg, SCALE_KG, units),
            spoken(Quantity::Length, at.balance_m(), 0.0, units),
            at.ten_swings_s().map_or_else(String::new, |it| plain(it, 2, "s")),
        ]
    };
    let mut rows = vec![row(String::new(), "on the bench now", String::new(), &it.now)];
    for (n, pass) in plan.passes.iter().enumerate() {
        rows.push(row((n + 1).to_string(), pass.place.words(), grams(pass), &pass.then));
    }
    let heads = ["", "take off", "", "then it weighs", "balance", "ten swings"];
    out += &table(&heads, &rows);
    out += &(set_in(&rules(it.planing_sd)) + "\n\n");
    out += &to_come(plan, units);
    out += &finished(it, units);
    if it.weighed.reading.pendulum.is_none() || it.weighed.reading.balance_m.is_none() {
        out += &(paragraph(ESTIMATED) + "\n");
    }
    out
}

/// Of a bat that was not balanced or timed.
pub const ESTIMATED: &str = "Balance or swing moment is estimated from the size: time ten swings, and the plan is surer and goes further";
/// What a kitchen scale tells, kg; for the digits only.
const SCALE_KG: f64 = 0.001;

/// What a maker could say of it.
pub fn sentence(plan: &Plan) -> String {
    let off_kg: f64 = plan.passes.iter().map(|it| it.off_kg).sum();
    let grams = number(1e3 * off_kg, 0);
    match (plan.passes.len(), plan.meets.len()) {
        (0, 3) => "Nothing needs to come off: finished, the bat meets the card".to_owned(),
        (0, _) => "No wood that a plane can take off brings this bat to its card".to_owned(),
        (n, 3) => {
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

fn grams(pass: &Pass) -> String {
    let grams = 1e3 * pass.off_kg;
    match pass.place.has_two_sides() {
        true => format!("{}: {} each side", plain(grams, 0, "g"), plain(0.5 * grams, 1, "g")),
        false => plain(grams, 0, "g"),
    }
}

/// How to work by it, with a plane that is off by such a share.
pub fn rules(planing_sd: f64) -> String {
    format!(
        "Stop after each pass, weigh, balance and swing again, and ask anew: the plane takes off {} more or less than it should (one standard deviation, assumed), and no pass may leave the finished bat too light with more than 1 chance in 20. Wood cannot go back",
        percent(planing_sd, 0)
    )
}

fn to_come(plan: &Plan, units: Units) -> String {
    match to_come_words(plan, units).as_str() {
        "" => String::new(),
        words => paragraph(words) + "\n",
    }
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

fn finished(it: &Planned, units: Units) -> String {
    let (plan, card) = (&it.plan, &it.card);
    let [mass_sd, balance_sd, swing_sd] = plan.finished_sd;
    let end = &plan.finished;
    let row = |figure: Figure, value: f64, sd: f64| {
        // A balance point is spoken of as the card has it, whatever its doubt.
        let digit = if figure == Figure::DeadWeight { sd } else { 0.0 };
        let print = |it: f64| figure_words(figure, it, digit, units);
        let asked = card.asked(figure);
        let [low, high] = asked.tolerance.map(print);
        let within = if plan.meets.contains(&figure) { "yes" } else { "no" };
        vec![
            figure.words().to_owned(),
            format!("{} ± {}", print(value), print(sd)),
            print(asked.target),
            format!("{low} to {high}"),
            within.to_owned(),
        ]
    };
    let rows = [
        row(Figure::DeadWeight, end.mass_kg, mass_sd),
        row(Figure::Balance, end.balance_m(), balance_sd),
        row(Figure::SwingMoment, end.second_kg_m2, swing_sd),
    ];
    let chance = format!("Chance that all three end within: {}", percent(plan.chance, 0));
    "Finished:\n".to_owned()
        + &table(&["", "expected", "the card", "its limits", "within"], &rows)
        + &paragraph(&chance)
        + "\n"
}
