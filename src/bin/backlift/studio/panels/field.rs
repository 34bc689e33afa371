//! One field of the scenario, written as people write it.

use backlift::files::fault::Fault;
use egui::{Key, TextEdit, Ui};

use super::words::{fault, quiet, with_mend};
use crate::studio::action::Action;
use crate::studio::derived::words;
use crate::studio::state::Studio;

/// A field and how to fill it.
pub struct Field<'a> {
    /// Its path in the scenario: `bats.0.mass`.
    pub path: &'a str,
    /// What it is called.
    pub label: &'a str,
    /// What may stand in it.
    pub like: &'a str,
    /// How to measure it.
    pub how: &'a str,
}

/// What a field's document has to say of it.
pub struct Told<'a> {
    /// What is written there now.
    pub kept: String,
    /// What is wrong or odd about it.
    pub faults: Vec<&'a Fault>,
}

/// Draws a field of the scenario in two columns of a grid; what is typed counts on Enter, or when the field is
/// left.
pub fn field(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, field: &Field<'_>) {
    let told =
        Told { kept: it.document.at(field.path), faults: it.derived.about(field.path).collect() };
    if let Some(text) = edited(ui, field, &told) {
        out.push(Action::Set(field.path.to_owned(), text));
    }
}

/// Several fields, each its path, its name, what may stand in it, and how to measure it.
pub fn fields(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, all: &[[&str; 4]]) {
    for [path, label, like, how] in all {
        field(ui, it, out, &Field { path, label, like, how });
    }
}

/// The same of any document: what was typed, when it counts.
pub fn edited(ui: &mut Ui, field: &Field<'_>, told: &Told<'_>) -> Option<String> {
    let Field { path, label, like, how } = *field;
    let mut typed = None;
    let name = ui.label(label).on_hover_text(how);
    ui.vertical(|ui| {
        let id = egui::Id::new(("field", path));
        let draft = ui.data(|data| data.get_temp::<String>(id));
        let mut text = draft.unwrap_or_else(|| told.kept.clone());
        let edit = TextEdit::singleline(&mut text).id(id).hint_text(like);
        let response = ui.add(edit).labelled_by(name.id).on_hover_text(how);
        if response.lost_focus() {
            let given_up = ui.input(|input| input.key_pressed(Key::Escape));
            if !given_up && text.trim() != told.kept {
                typed = Some(text);
            }
            ui.data_mut(|data| data.remove::<String>(id));
        } else if response.changed() {
            ui.data_mut(|data| data.insert_temp(id, text));
        }
        for it in &told.faults {
            if it.is_warning {
                quiet(ui, &with_mend(it, words(it)));
            } else {
                fault(ui, it, words(it));
            }
        }
    });
    ui.end_row();
    typed
}

/// One of a few words.
pub fn choice(
    ui: &mut Ui,
    it: &Studio,
    out: &mut Vec<Action>,
    path: &str,
    label: &str,
    words: &[&str],
) {
    ui.label(label);
    ui.horizontal_wrapped(|ui| {
        let kept = it.document.at(path);
        for word in words {
            let chosen = kept.eq_ignore_ascii_case(word);
            if ui.selectable_label(chosen, *word).clicked() && !chosen {
                out.push(Action::Set(path.to_owned(), (*word).to_owned()));
            }
        }
    });
    ui.end_row();
}
