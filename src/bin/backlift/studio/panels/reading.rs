//! The last reading of a bat that has its own file: filled in, mended, and followed by the next.

use egui::{Button, Grid, Ui};

use super::field::{Field, Told, edited};
use super::words::{caution, head, quiet};
use crate::studio::action::Action;
use crate::studio::derived::{path_of, words};
use crate::studio::fields::READING;
use crate::studio::state::Studio;
use crate::studio::wood::action::WoodAction;
use backlift::files::document::values::MISSING;

/// Draws it.
pub fn reading(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(n) = it.wood.paper.fields().log.len().checked_sub(1) else { return };
    head(ui, &format!("Reading {}", n + 1));
    Grid::new(("reading", n)).num_columns(2).show(ui, |ui| {
        for [name, label, like, how] in READING {
            let path = format!("log.{n}.{name}");
            // What is not filled in yet is no mistake.
            let faults = it.wood.about(&path).filter(|it| words(it) != MISSING);
            let faults = faults.map(|fault| it.beside(fault)).collect();
            let told = Told { kept: it.wood.paper.at(&path), faults };
            if let Some(text) = edited(ui, &Field { path: &path, label, like, how }, &told) {
                out.push(Action::Wood(WoodAction::Set(path, text)));
            }
        }
    });
    let of_it = format!("log.{n}.");
    for fault in &it.wood.faults {
        if !path_of(fault).is_some_and(|it| it.starts_with(&of_it)) {
            caution(ui, &it.told(fault).message);
        }
    }
    let is_whole = it.wood.faults.is_empty();
    if !is_whole {
        quiet(ui, "The plan is made anew when weight, balance point and time are there");
    }
    if ui.add_enabled(is_whole, Button::new("Next reading")).clicked() {
        out.push(Action::Wood(WoodAction::NextReading));
    }
}
