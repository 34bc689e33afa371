//! Where to start: one sentence on what moves, and three ways on.

use egui::Ui;

use super::deeds::button;
use super::words::{quiet, sentence};
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;

pub fn start(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(
        ui,
        "The same hands swing both: the bat that is harder to get moving comes late to the ball",
    );
    ui.add_space(ui.spacing().item_spacing.y);
    let ways = [
        (
            "I coach",
            "A player, a kit bag, and which bat to use this season: measure, swing, and get the card for the maker",
            Action::New,
        ),
        (
            "I play",
            "Two bats, and what the heavier one costs me at fifty: compare them in hands like mine",
            Action::View(View::Innings),
        ),
        (
            "I make bats",
            "Pickup against dead weight, to show a customer in a minute: equal on the scale, unlike in the hand",
            Action::Maker,
        ),
    ];
    for (name, what, does) in ways {
        button(ui, out, egui::RichText::new(name).heading(), does);
        quiet(ui, what);
    }
    ui.add_space(ui.spacing().item_spacing.y);
    ui.horizontal_wrapped(|ui| {
        button(ui, out, "Open a scenario…", Action::AskOpen);
        button(ui, out, "Look round the demo", Action::View(View::Swing));
    });
    for path in &it.recent {
        if ui.link(path.display().to_string()).clicked() {
            out.push(Action::Open(path.clone()));
        }
    }
}
