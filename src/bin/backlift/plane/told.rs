//! The plan in words.

use backlift::card::Figure;
use backlift::questions::plane::Planned;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::{DrawnOn, PickupMoments, Plan};
use backlift::workshop::stages::Entry;

use crate::figure::{figure_words, percent, plain};
use crate::paragraph::{paragraph, set_in};
use crate::sentences::planing::{ESTIMATED, how, rules, sentence, thin_edges, to_come_words};
use crate::table::table;

/// Everything, the sentence first.
pub(super) fn told(it: &Planned, kept: Option<&Entry>, units: Units) -> String {
    let plan = &it.plan;
    let mut out = paragraph(&sentence(plan)) + "\n\n";
    if let Some(place) = kept.and_then(|it| it.planed) {
        out +=
            &(paragraph(&format!("Planed since the reading before: {}", place.words())) + "\n\n");
    }
    if it.readings > 1 {
        out += &(paragraph(&together(it, units)) + "\n\n");
    }
    let swings = it.card.pendulum_swings;
    let row = |n: String, where_: &str, off: String, at: &PickupMoments| {
        vec![
            n,
            where_.to_owned(),
            off,
            spoken(Quantity::Mass, at.mass_kg, SCALE_KG, units),
            spoken(Quantity::Length, at.balance_m(), 0.0, units),
            at.swings_s(swings).map_or_else(String::new, |it| plain(it, 2, "s")),
        ]
    };
    let mut rows = vec![row(String::new(), "on the bench now", String::new(), &it.now)];
    for (n, pass) in plan.passes.iter().enumerate() {
        let off = plain(1e3 * pass.off_kg, 0, "g");
        rows.push(row((n + 1).to_string(), pass.place.words(), off, &pass.then));
    }
    let timed = format!("{swings} swings");
    let heads = ["", "take off", "", "then it weighs", "balance, from top", &timed];
    out += &table(&heads, &rows);
    for (n, pass) in plan.passes.iter().enumerate() {
        out += &(set_in(&format!("{}: {}", n + 1, how(pass, units))) + "\n");
    }
    let length_m = it.shape.blade.length_m;
    if let Some(words) = thin_edges(&it.thin_edges, &it.card.size, length_m, units) {
        out += &(set_in(&words) + "\n");
    }
    if !plan.passes.is_empty() {
        out += &(set_in(&rules(it.planing_sd, plan.overshoot_limit)) + "\n");
    }
    out += "\n";
    out += &to_come(plan, units);
    out += &finished(it, units);
    if it.weighed.reading.pendulum.is_none() || it.weighed.reading.balance_m.is_none() {
        out += &(paragraph(ESTIMATED) + "\n");
    }
    if it.drawn_on == DrawnOn::OtherWeight {
        out += &(paragraph(OTHER_WEIGHT) + "\n");
    }
    out
}

/// Standard deviations from which on a reading is doubted.
const DOUBTED_SDS: f64 = 3.0;

/// What all readings say together.
fn together(it: &Planned, units: Units) -> String {
    let mass = |kg: f64| spoken(Quantity::Mass, kg, SCALE_KG, units);
    let sd = it.together.mass_kg.sd;
    let words = format!(
        "All {} readings together, with what was planed between them: {} ± {}, where the scale alone says {}",
        it.readings,
        mass(it.together.mass_kg.value),
        mass(sd),
        mass(it.weighed.mass_kg.value)
    );
    match it.apart_sds.filter(|it| it.abs() > DOUBTED_SDS) {
        None => words,
        Some(_) => {
            words
                + ". The two do not go together: weigh again, or say where wood came off (--planed)"
        }
    }
}

/// Said where no blade of the size comes to what was read.
const OTHER_WEIGHT: &str = "No blade of the size weighs and balances like this one: what each place can give is taken from a blade of another weight. Describe the bat as it is (`--shape`), and the plan knows its wood";

/// What a kitchen scale tells, kg; for the digits only.
const SCALE_KG: f64 = 0.001;

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
    let mut rows = vec![
        row(Figure::DeadWeight, end.mass_kg, mass_sd),
        row(Figure::Balance, end.balance_m(), balance_sd),
        row(Figure::SwingMoment, end.second_kg_m2, swing_sd),
    ];
    let (handle_m, within) = plan.handle_m;
    let asked = card.asked(Figure::HandleDiameter);
    let print = |it: f64| figure_words(Figure::HandleDiameter, it, 0.0, units);
    let [low, high] = asked.tolerance.map(print);
    rows.push(vec![
        Figure::HandleDiameter.words().to_owned(),
        print(handle_m),
        print(asked.target),
        format!("{low} to {high}"),
        if within { "yes" } else { "no" }.to_owned(),
    ]);
    let chance = format!(
        "Chance that weight, balance and swing moment end within: {}",
        percent(plan.chance, 0)
    );
    "Finished:\n".to_owned()
        + &table(&["", "expected", "the card", "its limits", "within"], &rows)
        + &paragraph(&chance)
        + "\n"
}
