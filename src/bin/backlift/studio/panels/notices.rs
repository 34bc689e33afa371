//! What was said and waits for an answer: notices, unsaved work found, changes in the way, a path that is asked for.

use std::path::MAIN_SEPARATOR;

use egui::text::{CCursor, CCursorRange};
use egui::{Button, Id, Key, Modal, Modifiers, RichText, TextEdit, Ui};

use super::deeds::button;
use super::words::{quiet, sentence, wrapped};
use crate::studio::action::{Action, Keep, Which};
use crate::studio::asking::Way;
use crate::studio::state::{Ask, Studio};
use crate::studio::style::GRID;

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
            let (plain, alarm) = (ui.visuals().text_color(), ui.visuals().error_fg_color);
            ui.colored_label(if notice.is_fault { alarm } else { plain }, &notice.words);
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
        ui.set_max_width(48.0 * GRID * it.look.text_scale);
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

/// Where to: a path typed, beside the system's own window for files or where there is none.
pub fn path(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(ask) = it.asks.front().copied() else { return };
    let scale = it.look.text_scale;
    let modal = Modal::new(Id::new("a path")).show(ui.ctx(), |ui| {
        let room = ui.ctx().content_rect().width() - 8.0 * GRID * scale;
        ui.set_width((64.0 * GRID * scale).min(room));
        sentence(ui, ask.asked().title);
        typed(ui, it, ask, out);
    });
    // A click beside it is meant for the system's window perhaps.
    if modal.is_top_modal && ui.input_mut(|it| it.consume_key(Modifiers::NONE, Key::Escape)) {
        out.push(Action::Withdraw);
    }
}

fn typed(ui: &mut Ui, it: &Studio, ask: Ask, out: &mut Vec<Action>) {
    let id = Id::new(("path", it.answered));
    let before = ui.data(|data| data.get_temp::<String>(id));
    let is_new = before.is_none();
    let mut text = before.unwrap_or_else(|| {
        format!("{}{MAIN_SEPARATOR}{}", it.asked_folder(ask).display(), it.asked_name(ask))
    });
    let words = match it.has_chooser {
        true => "Choose in the system's window, or type where",
        false => "This system has no window for files: type where",
    };
    let label = wrapped(ui, RichText::new(words).small().weak());
    let edit = TextEdit::singleline(&mut text).id(id).desired_width(f32::INFINITY);
    let response = ui.add(edit).labelled_by(label.id);
    if is_new {
        response.request_focus();
        let mut state = TextEdit::load_state(ui.ctx(), id).unwrap_or_default();
        let end = CCursor::new(text.chars().count());
        state.cursor.set_char_range(Some(CCursorRange::one(end)));
        state.store(ui.ctx(), id);
    }
    let path = it.typed_path(ask, &text);
    ui.data_mut(|data| data.insert_temp(id, text));
    let asked = ask.asked();
    let is_file = path.as_ref().is_some_and(|it| it.is_file());
    let is_folder = path.as_ref().is_some_and(|it| it.is_dir());
    // What is said under the field, and whether it can be done.
    let (told, can) = match (asked.way, is_file, is_folder) {
        (Way::Open, true, _) | (Way::Folder, false, true) => ("", true),
        (Way::Open, ..) => ("No file has this name", false),
        (Way::Folder, true, _) => ("A file has this name already", false),
        (Way::Folder, ..) => ("The folder is made", true),
        (Way::Save, true, _) => ("The file is there already", true),
        (Way::Save, _, true) => ("A folder has this name already", false),
        (Way::Save, ..) => ("", true),
    };
    // Its line stands always, so that the buttons stay where they are.
    quiet(ui, if told.is_empty() { " " } else { told });
    let does = if asked.way == Way::Save && is_file { "Replace it" } else { asked.does };
    ui.horizontal_wrapped(|ui| {
        let path = path.filter(|_| can);
        let clicked = ui.add_enabled(path.is_some(), Button::new(does)).clicked();
        let entered = response.lost_focus() && ui.input(|it| it.key_pressed(Key::Enter));
        if let Some(path) = path.filter(|_| clicked || entered) {
            out.push(Action::Given(path));
        }
        button(ui, out, "Cancel", Action::Withdraw);
    });
}
