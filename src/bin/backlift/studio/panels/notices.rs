//! What was said and waits for an answer: notices, unsaved work found, changes in the way.

use egui::{Id, Modal, Ui};

use super::deeds::button;
use super::words::{quiet, sentence};
use crate::studio::action::{Action, Keep, Which};
use crate::studio::state::Studio;

/// The latest last.
pub fn notices(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    for which in [Which::Scenario, Which::Bat] {
        let Some(of) = it.paper(which).offered() else { continue };
        ui.horizontal_wrapped(|ui| {
            ui.label(format!("Unsaved work on {of} was found"));
            button(ui, out, "Restore", Action::Rescue.on(which));
            button(ui, out, "Discard", Action::DropRescued.on(which));
        });
    }
    for (n, notice) in it.notices.iter().enumerate() {
        ui.horizontal_wrapped(|ui| {
            let colour = match notice.is_fault {
                true => ui.visuals().error_fg_color,
                false => ui.visuals().text_color(),
            };
            ui.colored_label(colour, &notice.words);
            if let Some(mend) = &notice.mend {
                quiet(ui, mend);
            }
            if ui.small_button("Dismiss").clicked() {
                out.push(Action::Dismiss(n));
            }
        });
    }
}

/// Asks what becomes of changes that stand in the way.
pub fn changes_in_the_way(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    // Where to save them is asked over it.
    if !it.asks.is_empty() {
        return;
    }
    let Some(paper) = it.waiting.as_ref().and_then(|action| it.in_the_way(action)) else { return };
    let name = it.paper(paper).name();
    let modal = Modal::new(Id::new("changes in the way")).show(ui.ctx(), |ui| {
        ui.set_max_width(48.0 * crate::studio::style::GRID * it.look.text_scale);
        sentence(ui, &format!("Unsaved changes: {name}"));
        ui.horizontal_wrapped(|ui| {
            button(ui, out, "Save", Action::Keep(Keep::Save));
            button(ui, out, "Discard", Action::Keep(Keep::Drop));
            button(ui, out, "Cancel", Action::Keep(Keep::Stay));
        });
    });
    if modal.should_close() {
        out.push(Action::Keep(Keep::Stay));
    }
}
