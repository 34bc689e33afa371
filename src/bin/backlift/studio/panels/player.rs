//! The player as measured: tape, dynamometer, wrist hold.

use egui::{Grid, Ui};

use super::deeds::tick;
use super::field::{choice, fields};
use super::words::{caution, head, quiet};
use crate::studio::action::Action;
use crate::studio::fields::{ASKED, HANDED, PLAYER, SEX};
use crate::studio::state::Studio;

/// Draws it.
pub fn player(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "The player");
    quiet(ui, "Age, sex and height are enough; each of the others makes the advice surer");
    Grid::new("player").num_columns(2).show(ui, |ui| {
        fields(ui, it, out, &PLAYER);
        choice(ui, it, out, SEX, &["female", "male"]);
        choice(ui, it, out, HANDED, &["right", "left"]);
    });
    caution(ui, "Wrist hold: stop at 30 s, and at once if anything hurts");
    super::diagram::player(ui, &it.look);
    head(ui, "What is asked");
    Grid::new("asked").num_columns(2).show(ui, |ui| fields(ui, it, out, &ASKED));
    let invented = it.document.at("invented").starts_with(['y', 't']);
    tick(ui, out, invented, "Made-up people and figures", |on| {
        let word = if on { "yes" } else { "no" };
        Action::Set("invented".to_owned(), word.to_owned())
    });
}
