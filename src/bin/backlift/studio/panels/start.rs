//! Where to start: one sentence on what moves, and three ways on.

use egui::Ui;

use super::words::{quiet, sentence};
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;

/// Draws it.
pub fn start(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(
        ui,
        "Watch the two toes: the same hands swing both bats, and the one that is harder to get moving comes late to the ball",
    );
    ui.add_space(ui.spacing().item_spacing.y);
    way(
        ui,
        "I coach",
        "A player, a kit bag, and which bat to use this season: measure, swing, and get the card for the maker",
        &mut || out.extend([Action::New]),
    );
    way(
        ui,
        "I play",
        "Two bats, and what the heavier one costs me at fifty: compare them in hands like mine",
        &mut || out.extend([Action::View(View::Innings)]),
    );
    way(
        ui,
        "I make bats",
        "Pickup against dead weight, to show a customer in a minute: equal on the scale, unlike in the hand",
        &mut || out.extend([Action::Maker]),
    );
    ui.add_space(ui.spacing().item_spacing.y);
    ui.horizontal_wrapped(|ui| {
        if ui.button("Open a scenario…").clicked() {
            out.push(Action::AskOpen);
        }
        if ui.button("Look round the demo").clicked() {
            out.push(Action::View(View::Swing));
        }
    });
    for path in &it.recent {
        if ui.link(path.display().to_string()).clicked() {
            out.push(Action::Open(path.clone()));
        }
    }
}

fn way(ui: &mut Ui, name: &str, what: &str, go: &mut dyn FnMut()) {
    if ui.button(egui::RichText::new(name).heading()).clicked() {
        go();
    }
    quiet(ui, what);
}
