//! The plan in words.

use backlift::card::Figure;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::{Pass, PickupMoments, Plan};

use crate::figure::{number, percent, plain};
use crate::paragraph::{paragraph, set_in};
use crate::sentences::planing::{ESTIMATED, rules, sentence, to_come_words};
use crate::table::table;
use backlift::questions::plane::Planned;

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
    let row = |figure: Figure, value: String, asked: [String; 3]| {
        let within = if plan.meets.contains(&figure) { "yes" } else { "no" };
        let [target, low, high] = asked;
        vec![
            figure.words().to_owned(),
            value,
            target,
            format!("{low} to {high}"),
            within.to_owned(),
        ]
    };
    let asked = |figure: Figure, print: &dyn Fn(f64) -> String| {
        let it = card.asked(figure);
        [it.target, it.tolerance[0], it.tolerance[1]].map(print)
    };
    let mass = |it: f64| spoken(Quantity::Mass, it, mass_sd, units);
    let length = |it: f64| spoken(Quantity::Length, it, 0.0, units);
    let swing = |it: f64| number(it, 4);
    let rows = vec![
        row(
            Figure::DeadWeight,
            format!("{} ± {}", mass(end.mass_kg), mass(mass_sd)),
            asked(Figure::DeadWeight, &mass),
        ),
        row(
            Figure::Balance,
            format!("{} ± {}", length(end.balance_m()), length(balance_sd)),
            asked(Figure::Balance, &length),
        ),
        row(
            Figure::SwingMoment,
            format!("{} ± {}", swing(end.second_kg_m2), swing(swing_sd)),
            asked(Figure::SwingMoment, &swing),
        ),
    ];
    let chance = format!("Chance that all three end within: {}", percent(plan.chance, 0));
    "Finished:\n".to_owned()
        + &table(&["", "expected", "the card", "its limits", "within"], &rows)
        + &paragraph(&chance)
        + "\n"
}
