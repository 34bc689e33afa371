//! The planing plan beside the wood: passes with the reading to expect after each, and what it ends in.

use backlift::card::Figure;
use backlift::questions::plane::TOO_LIGHT;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::plan::PLANING_SD;
use backlift::workshop::plane::{DrawnOn, PickupMoments, Plan};
use backlift::workshop::stages::BatLog;
use egui::{RichText, Slider, Ui};

use super::deeds::{button, choice, tick};
use super::description::reading;
use super::table::{Table, name};
use super::target;
use super::words::{caution, head, quiet, sentence, small, why, wrapped};
use crate::figure::{percent, plain};
use crate::sentences::planing::{
    ESTIMATED, how, rules, sentence as plan_told, thin_edges, to_come_words,
};
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;
use crate::studio::wood::Planned;
use crate::studio::wood::action::{Part, WoodAction};

const NO_PLAN_YET: &str =
    "Where to take how many grams off, and what the bench reads after each pass";

pub fn planing(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    match it.wood.planned.as_ref().map(|it| &it.plan) {
        Some(Ok(plan)) => sentence(ui, &plan_told(plan)),
        Some(Err(fault)) => {
            sentence(ui, "This bat is too light for its card already: wood cannot go back");
            caution(ui, fault);
            quiet(ui, TOO_LIGHT);
        }
        None => sentence(ui, NO_PLAN_YET),
    }
    head(ui, "The card");
    target::card(ui, it, out);
    bench(ui, it, out);
    let Some(planned) = &it.wood.planned else { return };
    let Ok(plan) = &planned.plan else { return };
    if !plan.passes.is_empty() {
        done(ui, it, plan, out);
        passes(ui, it, planned, plan);
        quiet(ui, &rules(PLANING_SD, plan.overshoot_limit));
    }
    if let Some(next) = plan.passes.get(it.wood.done) {
        quiet(ui, &format!("Pass {}: {}", it.wood.done + 1, how(next, it.look.units)));
    }
    let blade_m = planned.shape.blade.length_m;
    let size = it.wood_card().map_or("", |it| &it.size);
    if let Some(words) = thin_edges(&planned.thin_edges, size, blade_m, it.look.units) {
        caution(ui, &words);
    }
    let to_come = to_come_words(plan, it.look.units);
    if !to_come.is_empty() {
        quiet(ui, &to_come);
    }
    finished(ui, it, plan);
    if let Some(card) = it.wood_card() {
        super::card::cautions(ui, card);
    }
}

/// The bat on the bench, and what is on it.
fn bench(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "On the bench");
    if it.wood.has_log() {
        if let Some(log) = it.own_log() {
            own(ui, log, it.look.units);
        }
        return reading(ui, it, out);
    }
    ui.horizontal_wrapped(|ui| {
        super::bench::each(ui, it, out);
        button(ui, out, "Weigh and time it", Action::View(View::Bench));
    });
    if it.derived.is_stale() {
        caution(ui, "The scenario has a fault: these are the readings before it");
    }
    let (bat, card) = (it.at_bench(), it.wood_card());
    if let (Some(bat), Some(card)) = (bat, card)
        && bat.size != card.size
    {
        let (its, asked) = (&bat.size, &card.size);
        let words = format!("This bat is of size {its}, the card of size {asked}");
        caution(ui, &format!("{words}: the plan is not for it"));
    }
    if let Some(planned) = &it.wood.planned {
        quiet(ui, drawn_on(planned.drawn_on));
    } else if card.is_some() && bat.is_some() {
        caution(ui, "The card's size is not known here");
    }
    let reading = bat.map(|it| &it.reading);
    if reading.is_some_and(|it| it.pendulum.is_none() || it.balance_m.is_none()) {
        caution(ui, ESTIMATED);
    }
    quiet(ui, "On it already; what is not ticked and the card asks is counted before the plane");
    let two = card.is_some_and(|it| it.condition.grips > 1);
    let grips = if two { "both grips" } else { "grip" };
    ui.horizontal_wrapped(|ui| {
        let on = &it.wood.on;
        for (part, words, is_on) in [
            (Part::Twine, "twine", on.bound),
            (Part::Grip, grips, on.grips > 0),
            (Part::ToeGuard, "toe guard", on.toe_guard),
            (Part::Labels, "labels", on.labels),
            (Part::Oil, "oil", on.oiled),
        ] {
            tick(ui, out, is_on, words, |on| Action::Wood(WoodAction::On(part, on)));
        }
    });
    if card.is_some() {
        quiet(ui, "With a file of its own every reading and every pass is kept, and counts");
        button(ui, out, "Give this bat its own file", Action::Wood(WoodAction::NextReading));
    }
}

/// A bat that has its own file: what was read and done stands there.
fn own(ui: &mut Ui, log: &BatLog, units: Units) {
    let Some(last) = log.last() else { return };
    let mass = spoken(Quantity::Mass, last.mass_kg, 0.001, units);
    let times = match log.entries.len() {
        1 => "once".to_owned(),
        n => format!("{n} times"),
    };
    small(ui, &format!("{}: read {times}, last {}: {mass}", log.label, last.at));
    for it in log.entries.iter().filter_map(|it| it.planed) {
        quiet(ui, &format!("planed: {}", it.words()));
    }
    quiet(ui, "This bat has its own file: what was cut stays cut in the plan");
}

fn drawn_on(it: DrawnOn) -> &'static str {
    match it {
        DrawnOn::Described => "Drawn on the blade described here, at this weight and balance",
        DrawnOn::Size => "Drawn on the size's own blade, at this weight and balance",
        DrawnOn::OtherWeight => {
            "Drawn on a blade of another weight: none of this size has this weight and balance. Describe it under Shape a blade"
        }
    }
}

/// Before, after, and every pass between.
fn done(ui: &mut Ui, it: &Studio, plan: &Plan, out: &mut Vec<Action>) {
    let all = plan.passes.len();
    let show = |passes: usize| Action::Wood(WoodAction::Done(passes));
    ui.horizontal_wrapped(|ui| {
        choice(ui, out, &[(0, "before")], it.wood.done, show);
        let mut done = it.wood.done;
        ui.spacing_mut().slider_width = 120.0;
        let slider = ui.add(Slider::new(&mut done, 0..=all).show_value(false));
        slider.widget_info(|| egui::WidgetInfo::slider(true, done as f64, "passes done"));
        if slider.changed() {
            out.push(show(done));
        }
        choice(ui, out, &[(all, "after")], it.wood.done, show);
        let words = match it.wood.done {
            0 => "as it lies on the bench".to_owned(),
            1 => "after the first pass".to_owned(),
            n => format!("after {n} passes"),
        };
        quiet(ui, &words);
    });
}

fn passes(ui: &mut Ui, it: &Studio, planned: &Planned, plan: &Plan) {
    let units = it.look.units;
    let table = Table::new(ui, &[0.2, 1.9, 0.5, 1.25, 0.9, 0.85]);
    let swings = it.wood_card().map_or(10, |it| it.pendulum_swings);
    let timed = format!("{swings} swings, 6 in");
    table.heads(ui, &["", "take off", "", "then it weighs", "balance, from top", &timed]);
    let row = |ui: &mut Ui, number: usize, [words, off, how]: [&str; 3], at: &PickupMoments| {
        table.row(ui, |ui, n| match n {
            0 if number == it.wood.done => {
                ui.label("▶").on_hover_text("Shown");
            }
            0 => name(ui, &number.to_string()),
            1 if how.is_empty() => small(ui, words),
            1 => {
                wrapped(ui, RichText::new(words).small()).on_hover_text(how);
            }
            2 => small(ui, off),
            3 => small(ui, &spoken(Quantity::Mass, at.mass_kg, 0.001, units)),
            4 => small(ui, &spoken(Quantity::Length, at.balance_m(), 0.0005, units)),
            _ => small(ui, &at.swings_s(swings).map_or_else(String::new, |it| plain(it, 2, "s"))),
        });
    };
    row(ui, 0, ["as it lies on the bench", "", ""], &planned.now);
    for (n, pass) in plan.passes.iter().enumerate() {
        let off = plain(1e3 * pass.off_kg, 0, "g");
        row(ui, n + 1, [pass.place.words(), &off, &how(pass, units)], &pass.then);
    }
}

fn finished(ui: &mut Ui, it: &Studio, plan: &Plan) {
    let Some(card) = it.wood_card() else { return };
    head(ui, "Finished, as expected");
    let end = &plan.finished;
    let targets = [
        (Figure::DeadWeight, end.mass_kg),
        (Figure::Balance, end.balance_m()),
        (Figure::SwingMoment, end.second_kg_m2),
    ]
    .map(|(figure, value)| target::of(card, figure, value));
    target::show(ui, it, &targets);
    why(
        ui,
        &format!("All three within: {}", percent(plan.chance, 0)),
        "Chance, each on its own and multiplied, if every pass is weighed after and the plan made anew",
    );
}
