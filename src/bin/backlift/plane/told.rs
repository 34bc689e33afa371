//! The plan in words.

use backlift::card::Figure;
use backlift::questions::plane::Planned;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::{Pass, PickupMoments, Plan};

use crate::figure::{figure_words, percent, plain};
use crate::paragraph::{paragraph, set_in};
use crate::sentences::planing::{ESTIMATED, rules, sentence, to_come_words};
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

/// What a kitchen scale tells, kg; for the digits only.
const SCALE_KG: f64 = 0.001;

fn grams(pass: &Pass) -> String {
    let grams = 1e3 * pass.off_kg;
    match pass.place.has_two_sides() {
        true => format!("{}: {} each side", plain(grams, 0, "g"), plain(0.5 * grams, 1, "g")),
        false => plain(grams, 0, "g"),
    }
}

fn to_come(plan: &Plan, units: Units) -> String {
    match to_come_words(plan, units).as_str() {
        "" => String::new(),
        words => paragraph(words) + "\n",
    }
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
