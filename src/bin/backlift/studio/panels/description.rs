//! What stands in a described bat's own file: its figures with what follows from them, and its last reading.

use backlift::files::document::values::MISSING;
use backlift::files::fault::Fault;
use backlift::units::{Quantity, spoken};
use backlift::workshop::plane::Place;
use backlift::workshop::stages::Stage;
use egui::{ComboBox, Grid, Ui};

use super::deeds::button_if;
use super::field::{Field, edited, under_it};
use super::words::{caution, head, quiet, why};
use crate::bat_figure::breach_words;
use crate::studio::action::Action;
use crate::studio::derived::words;
use crate::studio::fields::{READING, WOOD};
use crate::studio::state::Studio;
use crate::studio::wood::action::WoodAction;

/// The fields of the description.
pub fn fields(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    for (name, fields) in WOOD {
        head(ui, name);
        Grid::new(("wood", name)).num_columns(2).show(ui, |ui| {
            for [path, label, like, how] in fields {
                // Measured sections have their places from the toe: their length stays.
                if *path == "blade.length" && it.wood.has_sections() {
                    continue;
                }
                let faults: Vec<Fault> =
                    it.wood.about(path).map(|fault| it.beside(fault)).collect();
                let field = Field { path, label, like, how };
                let typed = edited(ui, &field, &it.wood.paper.at(path), &faults);
                out.extend(typed.map(|text| set(path, text)));
            }
        });
    }
    quiet(ui, "What is left empty is as in the standard bat of this size");
    let stations = it.wood.paper.fields().blade.stations.len();
    if stations > 0 {
        quiet(ui, &format!("{stations} measured sections; figures above are carved out of them"));
    }
}

/// What follows from the shape beside the card's figures.
pub fn follows(ui: &mut Ui, it: &Studio) {
    let Some(worked) = &it.wood.worked else { return };
    let (bat, units) = (&worked.bat, it.look.units);
    head(ui, "What follows");
    let law = match bat.handle_share_allowed {
        _ if bat.is_legal() => "Within the Laws",
        false => "The handle is longer than its share of the bat that the Laws allow",
        _ if !bat.rubber_share_allowed => "There is more rubber in the handle than the Laws allow",
        _ => "The Laws forbid it",
    };
    quiet(ui, law);
    for breach in &bat.law.breaches {
        caution(ui, &breach_words(breach, units));
    }
    if let (Some(node), Some(hz)) = (bat.bending_node_m, bat.bending_hz) {
        let from_toe_m = bat.bat.length_m() - node.value;
        let from_toe = spoken(Quantity::Length, from_toe_m, node.sd, units);
        why(
            ui,
            &format!("Quiet place {from_toe} from the toe"),
            &format!(
                "A ball there does not set the blade ringing. It rings at {} Hz, by a slender beam free at both ends: some 4 % too high",
                crate::figure::bare(hz, 0)
            ),
        );
    }
    quiet(ui, "± is the doubt of the willow's density alone; the shape is taken as described");
}

fn set(path: &str, text: String) -> Action {
    Action::Wood(WoodAction::Set(path.to_owned(), text))
}

/// Whether a fault is about one of these fields, and said there.
pub fn has_field(fault: &Fault) -> bool {
    fault
        .field
        .as_deref()
        .is_some_and(|path| WOOD.iter().any(|(_, all)| all.iter().any(|it| it[0] == path)))
}

/// The last reading of a bat that has its own file: filled in, mended, and followed by the next.
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
            let faults: Vec<Fault> = wrong.map(|fault| it.beside(fault)).collect();
            let (kept, field) = (it.wood.paper.at(&path), Field { path: &path, label, like, how });
            let typed = match one_of {
                Some((none, words)) => chosen(ui, &field, none, &words, &kept, &faults),
                None => edited(ui, &field, &kept, &faults),
            };
            out.extend(typed.map(|text| set(&path, text)));
        }
    });
    let of_it = format!("log.{n}.");
    for fault in &it.wood.faults {
        if !fault.field.as_ref().is_some_and(|it| it.starts_with(&of_it)) {
            caution(ui, &it.told(fault).message);
        }
    }
    let is_whole = it.wood.faults.is_empty();
    if !is_whole {
        quiet(ui, "The plan is made anew when weight, balance point and time are there");
    }
    button_if(ui, out, is_whole, "Next reading", Action::Wood(WoodAction::NextReading));
}

/// One of several words, or none of them, which is called so: what was chosen.
fn chosen(
    ui: &mut Ui,
    Field { label, how, .. }: &Field<'_>,
    none: &str,
    words: &[&str],
    kept: &str,
    faults: &[Fault],
) -> Option<String> {
    let mut chosen = None;
    let name = ui.label(*label).on_hover_text(*how);
    let now = if kept.is_empty() { none } else { kept };
    ui.vertical(|ui| {
        let width = ui.spacing().text_edit_width;
        let list = ComboBox::from_id_salt(*label).width(width).truncate().selected_text(now);
        let list = list.show_ui(ui, |ui| {
            for word in [none].into_iter().chain(words.iter().copied().filter(|it| *it != none)) {
                if ui.selectable_label(word == now, word).clicked() && word != now {
                    chosen = Some(if word == none { "" } else { word }.to_owned());
                }
            }
        });
        list.response.labelled_by(name.id).on_hover_text(*how);
        under_it(ui, faults);
    });
    ui.end_row();
    chosen
}
