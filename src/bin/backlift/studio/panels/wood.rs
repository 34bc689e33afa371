//! Beside the wood: the blade against its card, carved to it, and its description in figures.

use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::cautions::SHAPE;
use egui::Ui;

use super::deeds::{choice, item, paper_menu};
use super::target::{self, Target};
use super::words::{caution, head, quiet, sentence};
use super::{carve, description, wood_card};
use crate::figure::{measured, percent, plain};
use crate::studio::action::{Action, Which};
use crate::studio::fields::name;
use crate::studio::state::Studio;
use crate::studio::wood::action::{Face, WoodAction, Work};
use crate::studio::wood::{Stop, is_share};

/// Below this, m, a size of the blade is told in millimetres where the trade's units are.
const SMALL_M: f64 = 0.06;

/// What a maker could say of the blade.
pub fn told(it: &Studio, targets: &[Target]) -> String {
    let Some(worked) = &it.wood.worked else {
        return "The bat's description has faults: mend them below".to_owned();
    };
    if !it.wood.faults.is_empty() {
        return "The description has a fault now; bat and figures are those before it".to_owned();
    }
    let [mass, pickup] = [worked.bat.mass_kg, worked.bat.pickup_weight_kg]
        .map(|kg| measured(Quantity::Mass, kg, it.look.units));
    let weighs = format!("This bat would weigh {mass} and pick up like {pickup}");
    let met = targets.iter().filter(|it| it.is_met()).count();
    match (targets.len(), met) {
        (0, _) => weighs,
        (all, met) if all == met => format!("{weighs}: all the card asks"),
        (all, met) => format!("{weighs}: {met} of the card's {all} figures"),
    }
}

pub fn wood(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let works = [(Work::Shape, "Shape a blade"), (Work::Plane, "Plane a bat")];
        choice(ui, out, &works, it.wood.work, |work| Action::Wood(WoodAction::Work(work)));
    });
    match it.wood.work {
        Work::Shape => shape(ui, it, out),
        Work::Plane => super::planing::planing(ui, it, out),
    }
    head(ui, "In the workshop");
    for it in SHAPE {
        quiet(ui, it);
    }
}

pub fn sides(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let all = [(Face::Back, "back"), (Face::Front, "face"), (Face::Edge, "profile")];
    ui.horizontal_wrapped(|ui| {
        choice(ui, out, &all, it.wood.seen, |face| Action::Wood(WoodAction::See(face)));
        ui.separator();
        paper_menu(ui, it.paper(Which::Bat), |ui| {
            for (words, action) in [
                ("Open a described bat…", WoodAction::AskOpen),
                ("Save it", WoodAction::Save),
                ("Save it as…", WoodAction::AskSave),
                ("A new blade", WoodAction::New),
                ("Templates and solid…", WoodAction::AskFolder),
            ] {
                item(ui, out, words, Action::Wood(action));
            }
        });
    });
}

/// Where and why a drag went no further.
pub fn stopped(stop: &Stop, units: Units) -> String {
    let at = match units {
        _ if is_share(&stop.path) => percent(stop.value, 1),
        // Small sizes are told in millimetres by every maker.
        Units::Trade if stop.value < SMALL_M => plain(1e3 * stop.value, 1, "mm"),
        _ => spoken(Quantity::Length, stop.value, 1e-4, units),
    };
    let called = name(&stop.path).unwrap_or(&stop.path);
    format!("{called} stops at {at}: {}", stop.why)
}

fn shape(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let targets = target::targets(it);
    sentence(ui, &told(it, &targets));
    for fault in it.wood.faults.iter().filter(|it| !description::has_field(it)) {
        caution(ui, &fault.message);
    }
    if let Some(stop) = &it.wood.stop {
        quiet(ui, &stopped(stop, it.look.units));
    }
    head(ui, "The card");
    wood_card::wood_card(ui, it, out);
    target::show(ui, it, &targets);
    if !targets.is_empty() {
        carve::carve(ui, it, out);
    }
    if let Some(card) = it.wood_card() {
        super::card::cautions(ui, card);
    }
    description::fields(ui, it, out);
    description::follows(ui, it);
}
