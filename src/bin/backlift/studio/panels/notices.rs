//! What was said and waits for an answer: notices, unsaved work found, changes in the way.

use egui::{Id, Modal, Ui};

use super::words::{quiet, sentence};
use crate::studio::action::{Action, Keep};
use crate::studio::state::Studio;

/// Draws them, the latest last.
pub fn notices(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    if let Some(rescued) = &it.rescued {
        ui.horizontal_wrapped(|ui| {
            let of = rescued.path.as_ref().map_or("a new player".into(), |it| it.to_string_lossy());
            ui.label(format!("Unsaved work on {of} was found"));
            if ui.button("Take it up again").clicked() {
                out.push(Action::Rescue);
            }
            if ui.button("Let it go").clicked() {
                out.push(Action::DropRescued);
            }
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
            if ui.small_button("Put away").clicked() {
                out.push(Action::Dismiss(n));
            }
        });
    }
}

/// Asks what becomes of changes that stand in the way.
pub fn changes_in_the_way(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    if it.waiting.is_none() {
        return;
    }
    let modal = Modal::new(Id::new("changes in the way")).show(ui.ctx(), |ui| {
        ui.set_max_width(48.0 * crate::studio::style::GRID * it.look.text_scale);
        sentence(ui, &format!("{} has changes that no file holds", it.document.name()));
        ui.horizontal_wrapped(|ui| {
            if ui.button("Save them first").clicked() {
                out.push(Action::Keep(Keep::Save));
            }
            if ui.button("Let them go").clicked() {
                out.push(Action::Keep(Keep::Drop));
            }
            if ui.button("Stay here").clicked() {
                out.push(Action::Keep(Keep::Stay));
            }
        });
    });
    if modal.should_close() {
        out.push(Action::Keep(Keep::Stay));
    }
}
