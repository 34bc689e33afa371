//! The last reading of a bat that has its own file: filled in, mended, and followed by the next.

use backlift::files::document::values::MISSING;
use backlift::workshop::plane::Place;
use backlift::workshop::stages::Stage;
use egui::{Button, ComboBox, Grid, Ui};

use super::field::{Field, Told, edited, faults};
use super::words::{caution, head, quiet};
use crate::studio::action::Action;
use crate::studio::derived::{path_of, words};
use crate::studio::fields::READING;
use crate::studio::state::Studio;
use crate::studio::wood::action::WoodAction;

/// Draws it.
pub fn reading(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(n) = it.wood.paper.fields().log.len().checked_sub(1) else { return };
    head(ui, &format!("Reading {}", n + 1));
    // A place and a time are longer than a weight.
    ui.spacing_mut().text_edit_width = 0.55 * ui.available_width();
    Grid::new(("reading", n)).num_columns(2).show(ui, |ui| {
        for [name, label, like, how] in READING {
            let path = format!("log.{n}.{name}");
            let one_of = match name {
                "planed" => Some(("nowhere", Place::ALL.map(Place::words).to_vec())),
                "stage" if n > 0 => Some(("as before", Stage::ALL.map(Stage::name).to_vec())),
                "stage" => Some(("shaped", Stage::ALL.map(Stage::name).to_vec())),
                _ => None,
            };
            // What is not filled in yet is no mistake.
            let wrong = it.wood.about(&path).filter(|it| words(it) != MISSING);
            let faults = wrong.map(|fault| it.beside(fault)).collect();
            let told = Told { kept: it.wood.paper.at(&path), faults };
            let typed = match one_of {
                Some((none, words)) => chosen(ui, [label, how, none], &words, &told),
                None => edited(ui, &Field { path: &path, label, like, how }, &told),
            };
            if let Some(text) = typed {
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

/// One of several words, or none of them, which is called so: what was chosen.
fn chosen(
    ui: &mut Ui,
    [label, how, none]: [&str; 3],
    words: &[&str],
    told: &Told,
) -> Option<String> {
    let mut chosen = None;
    let name = ui.label(label).on_hover_text(how);
    let now = if told.kept.is_empty() { none } else { &told.kept };
    ui.vertical(|ui| {
        let width = ui.spacing().text_edit_width;
        let list = ComboBox::from_id_salt(label).width(width).truncate().selected_text(now);
        let list = list.show_ui(ui, |ui| {
            for word in [none].into_iter().chain(words.iter().copied().filter(|it| *it != none)) {
                if ui.selectable_label(word == now, word).clicked() && word != now {
                    chosen = Some(if word == none { "" } else { word }.to_owned());
                }
            }
        });
        list.response.labelled_by(name.id).on_hover_text(how);
        faults(ui, told);
    });
    ui.end_row();
    chosen
}
