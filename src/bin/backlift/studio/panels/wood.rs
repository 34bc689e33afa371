//! Beside the wood: the blade against its card, carved to it, and its description in figures.

use backlift::card::Card;
use backlift::measurement::person::Handed;
use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::cautions::SHAPE;
use egui::Ui;

use super::target::{self, Target};
use super::words::{caution, head, quiet, sentence};
use super::{carve, description};
use crate::figure::measured;
use crate::studio::action::Action;
use crate::studio::state::Studio;
use crate::studio::wood::action::{Face, WoodAction, Work};
use crate::studio::work::Question;

/// What a maker could say of the blade.
pub fn told(it: &Studio, targets: &[Target]) -> String {
    let Some(worked) = &it.wood.worked else {
        return "The bat's description has faults: mend them below".to_owned();
    };
    let units = it.look.units;
    let (mass, pickup) = (worked.bat.mass_kg, worked.bat.pickup_weight_kg);
    if !it.wood.faults.is_empty() {
        return "The description has a fault now; bat and figures are those before it".to_owned();
    }
    let weighs = format!(
        "This bat would weigh {} and pick up like {}",
        measured(Quantity::Mass, mass, units),
        measured(Quantity::Mass, pickup, units)
    );
    let met = targets.iter().filter(|it| it.is_met()).count();
    match (targets.len(), met) {
        (0, _) => weighs,
        (all, met) if all == met => format!("{weighs}: all the card asks"),
        (all, met) => format!("{weighs}: {met} of the card's {all} figures"),
    }
}

/// Draws it.
pub fn wood(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    work(ui, it, out);
    match it.wood.work {
        Work::Shape => shape(ui, it, out),
        Work::Plane => super::planing::planing(ui, it, out),
    }
    head(ui, "In the workshop");
    for it in SHAPE {
        quiet(ui, it);
    }
}

/// Shaping or planing.
fn work(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        let works = [(Work::Shape, "Shape a blade"), (Work::Plane, "Plane a bat")];
        for (work, words) in works {
            if ui.selectable_label(it.wood.work == work, words).clicked() {
                out.push(Action::Wood(WoodAction::Work(work)));
            }
        }
    });
}

/// From where it is seen.
pub fn sides(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let all = [(Face::Back, "back"), (Face::Front, "face"), (Face::Edge, "profile")];
    ui.horizontal_wrapped(|ui| {
        for (face, words) in all {
            if ui.selectable_label(it.wood.seen == face, words).clicked() {
                out.push(Action::Wood(WoodAction::See(face)));
            }
        }
        ui.separator();
        let mark = if it.wood.file.is_changed() { " (unsaved)" } else { "" };
        ui.menu_button(format!("{}{mark}", it.wood.name()), |ui| {
            for (words, action) in [
                ("Open a described bat…", WoodAction::AskOpen),
                ("Save it", WoodAction::Save),
                ("Save it as…", WoodAction::AskSave),
                ("A new blade", WoodAction::New),
                ("Templates and solid…", WoodAction::AskFolder),
            ] {
                if ui.button(words).clicked() {
                    out.push(Action::Wood(action));
                    ui.close();
                }
            }
        });
    });
}

fn shape(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let targets = target::targets(it);
    sentence(ui, &told(it, &targets));
    for fault in it.wood.faults.iter().filter(|it| !description::has_field(it)) {
        caution(ui, &fault.message);
    }
    head(ui, "The card");
    card(ui, it, out);
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

/// Which card, and how to get one.
pub fn card(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    match (it.wood_card(), &it.wood.card) {
        (None, _) => {
            quiet(ui, "There is no card yet: open one, or find the bat for this player first");
        }
        (Some(card), opened) => {
            let whence = match opened {
                Some(_) => "A card that was opened",
                None => "The fitting's card",
            };
            let who = player(card, it.look.units);
            quiet(ui, &format!("{whence}: size {}, for {who}", card.size));
            let own = it.wood.worked.as_ref().map(|it| it.loaded.size.name.as_str());
            if own.is_some_and(|own| own != card.size) {
                caution(ui, "The blade is of another size: start a new one, or change its size");
            }
        }
    }
    ui.horizontal_wrapped(|ui| {
        if ui.button("Open a card…").clicked() {
            out.push(Action::Wood(WoodAction::AskCard));
        }
        if it.wood.card.is_some() && it.results.fitted.is_some() {
            let back = ui.button("The fitting's own");
            if back.clicked() {
                out.push(Action::Wood(WoodAction::FittedCard));
            }
        }
    });
    // Weighing a bat again does not change what was asked for: its card stays.
    if it.wood_card().is_none() || it.work.job(Question::Fit).is_some() {
        super::map_figures::search(ui, it, out);
    } else if it.wood.card.is_none() && it.is_fit_stale() {
        quiet(
            ui,
            "The scenario has changed since: if the player did, find the bat again on the map",
        );
    }
}

/// For whom a card is.
fn player(card: &Card, units: Units) -> String {
    let it = &card.player;
    let hand = match it.handed {
        Handed::Right => "right-handed",
        Handed::Left => "left-handed",
    };
    let stature = spoken(Quantity::Length, it.stature_m, 0.01, units);
    let made_up = if card.invented { ", invented" } else { "" };
    format!("a player of {:.0} years, {stature}, {hand}{made_up}", it.age_y.floor())
}
