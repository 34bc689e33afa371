//! The plan in words.

use backlift::card::Figure;
use backlift::questions::plane::Planned;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::{DrawnOn, PickupMoments};
use backlift::workshop::stages::Entry;

use crate::figure::{figure_words, percent, plain, yes_or_no};
use crate::paragraph::{each_set_in, paragraph, set_in};
use crate::sentences::planing::{ESTIMATED, how, rules, sentence, thin_edges, to_come_words};
use crate::table::table;

/// Everything, the sentence first.
pub fn told(it: &Planned, kept: Option<&Entry>, units: Units) -> String {
    let plan = &it.plan;
    let mut out = paragraph(&sentence(plan)) + "\n\n";
    if let Some(place) = kept.and_then(|it| it.planed) {
        let words = format!("Planed since the reading before: {}", place.words());
        out += &(paragraph(&words) + "\n\n");
    }
    if it.readings > 1 {
        out += &(paragraph(&together(it, units)) + "\n\n");
    }
    let swings = it.card.pendulum_swings;
    let row = |n: String, where_: &str, off: String, at: &PickupMoments| {
        [
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
    out += &table(&heads, rows);
    let passes = plan.passes.iter().enumerate();
    out += &each_set_in(passes.map(|(n, pass)| format!("{}: {}", n + 1, how(pass, units))));
    let length_m = it.shape.blade.length_m;
    if let Some(words) = thin_edges(&it.thin_edges, &it.card.size, length_m, units) {
        out += &(set_in(&words) + "\n");
    }
    if !plan.passes.is_empty() {
        out += &(set_in(&rules(it.planing_sd, plan.overshoot_limit)) + "\n");
    }
    out += "\n";
    let to_come = to_come_words(plan, units);
    if !to_come.is_empty() {
        out += &(paragraph(&to_come) + "\n");
    }
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
    let odd = ". The two do not go together: weigh again, or say where wood came off (--planed)";
    let is_doubted = it.apart_sds.is_some_and(|it| it.abs() > DOUBTED_SDS);
    if is_doubted { words + odd } else { words }
}

/// Said where no blade of the size comes to what was read.
const OTHER_WEIGHT: &str = "No blade of the size weighs and balances like this one: what each place can give is taken from a blade of another weight. Describe the bat as it is (`--shape`), and the plan knows its wood";

/// What a kitchen scale tells, kg; for the digits only.
const SCALE_KG: f64 = 0.001;

fn finished(it: &Planned, units: Units) -> String {
    let (plan, card) = (&it.plan, &it.card);
    let [mass_sd, balance_sd, swing_sd] = plan.finished_sd;
    let end = &plan.finished;
    let row = |figure: Figure, value: f64, sd: Option<f64>, within: bool| {
        // A balance point is spoken of as the card has it, whatever its doubt.
        let digit = sd.filter(|_| figure == Figure::DeadWeight).unwrap_or(0.0);
        let print = |it: f64| figure_words(figure, it, digit, units);
        let asked = card.asked(figure);
        let [low, high] = asked.tolerance.map(print);
        [
            figure.words().to_owned(),
            print(value) + &sd.map(|sd| format!(" ± {}", print(sd))).unwrap_or_default(),
            print(asked.target),
            format!("{low} to {high}"),
            yes_or_no(within).to_owned(),
        ]
    };
    let within = |it: Figure| plan.meets.contains(&it);
    let (mass, balance, swing) = (Figure::DeadWeight, Figure::Balance, Figure::SwingMoment);
    let (handle_m, handle_within) = plan.handle_m;
    let rows = [
        row(mass, end.mass_kg, Some(mass_sd), within(mass)),
        row(balance, end.balance_m(), Some(balance_sd), within(balance)),
        row(swing, end.second_kg_m2, Some(swing_sd), within(swing)),
        row(Figure::HandleDiameter, handle_m, None, handle_within),
    ];
    let chance = format!(
        "Chance that weight, balance and swing moment end within: {}",
        percent(plan.chance, 0)
    );
    "Finished:\n".to_owned()
        + &table(&["", "expected", "the card", "its limits", "within"], rows)
        + &paragraph(&chance)
        + "\n"
}
