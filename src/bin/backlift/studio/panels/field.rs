//! One field of the scenario, written as people write it.

use backlift::files::fault::Fault;
use egui::{Key, TextEdit, Ui};

use super::words::{fault, quiet, with_mend};
use crate::studio::action::Action;
use crate::studio::derived::words;
use crate::studio::fields::Line;
use crate::studio::state::Studio;

pub struct Field<'a> {
    /// Its path in the scenario: `bats.0.mass`.
    pub path: &'a str,
    pub label: &'a str,
    /// What may stand in it.
    pub like: &'a str,
    /// How to measure it.
    pub how: &'a str,
}

impl Studio {
    /// What a fault says beside its own field.
    pub fn beside(&self, fault: &Fault) -> Fault {
        let message = self.in_words(words(fault));
        Fault { message, help: self.told(fault).help, ..fault.clone() }
    }
}

/// Draws fields of the scenario, whose paths begin with `under`, in two columns of a grid; what is typed counts on Enter,
/// or when the field is left.
pub fn fields(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, under: &str, all: &[Line]) {
    for line @ [name, label, _, how] in all {
        let (path, like) = (format!("{under}{name}"), it.like(line));
        // What is not filled in yet is no mistake.
        let faults = it.derived.about(&path).filter(|fault| !it.is_to_come(fault));
        let faults: Vec<Fault> = faults.map(|fault| it.beside(fault)).collect();
        let field = Field { path: &path, label, like: &like, how };
        if let Some(text) = edited(ui, &field, &it.document.at(&path), &faults) {
            out.push(Action::Set(path, text));
        }
    }
}

/// The same of any document, `kept` being what stands there and `faults` what is wrong or odd about it, in the window's
/// words: what was typed, when it counts.
pub fn edited(ui: &mut Ui, field: &Field<'_>, kept: &str, faults: &[Fault]) -> Option<String> {
    let Field { path, label, like, how } = *field;
    let mut typed = None;
    let name = ui.label(label).on_hover_text(how);
    ui.vertical(|ui| {
        let id = id(path);
        let draft = ui.data(|data| data.get_temp::<String>(id));
        let mut text = draft.unwrap_or_else(|| kept.to_owned());
        let edit = TextEdit::singleline(&mut text).id(id).hint_text(format!("like {like}"));
        let response = ui.add(edit).labelled_by(name.id).on_hover_text(how);
        if response.lost_focus() {
            let pressed = |key| ui.input(|input| input.key_pressed(key));
            let given_up = pressed(Key::Escape);
            if pressed(Key::Enter) {
                ui.data_mut(|data| data.insert_temp(egui::Id::new(ENTERED), path.to_owned()));
            }
            if !given_up && text.trim() != kept {
                typed = Some(text);
            }
            ui.data_mut(|data| data.remove::<String>(id));
        } else if response.changed() {
            ui.data_mut(|data| data.insert_temp(id, text));
        }
        under_it(ui, faults);
    });
    ui.end_row();
    typed
}

/// What is wrong or odd about a field, under it.
pub fn under_it(ui: &mut Ui, faults: &[Fault]) {
    for it in faults {
        if it.is_warning {
            quiet(ui, &with_mend(it, &it.message));
        } else {
            fault(ui, it, &it.message);
        }
    }
}

/// Where it is kept which field was left by Enter.
const ENTERED: &str = "field left by Enter";

fn id(path: &str) -> egui::Id {
    egui::Id::new(("field", path))
}

/// The field that was left by Enter, once.
pub fn entered(ui: &Ui) -> Option<String> {
    let id = egui::Id::new(ENTERED);
    let path = ui.data(|data| data.get_temp(id));
    ui.data_mut(|data| data.remove::<String>(id));
    path
}

pub fn focus(ui: &Ui, path: &str) {
    ui.memory_mut(|memory| memory.request_focus(id(path)));
}

/// One of a few words.
pub fn choice(
    ui: &mut Ui,
    it: &Studio,
    out: &mut Vec<Action>,
    [path, label]: [&str; 2],
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
