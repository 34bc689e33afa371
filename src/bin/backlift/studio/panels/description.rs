//! The described bat in figures, and what follows from them.

use backlift::units::{Quantity, spoken};
use egui::{Grid, Ui};

use super::field::{Field, Told, edited};
use super::words::{caution, head, quiet, why};
use crate::studio::action::Action;
use crate::studio::fields::WOOD;
use crate::studio::state::Studio;
use crate::studio::wood::action::WoodAction;

/// The fields of the description.
pub fn fields(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    for (name, fields) in WOOD {
        head(ui, name);
        Grid::new(("wood", name)).num_columns(2).show(ui, |ui| {
            for [path, label, like, how] in fields {
                let field = Field { path, label, like, how };
                let faults = it.wood.about(path).map(|fault| it.beside(fault)).collect();
                let told = Told { kept: it.wood.paper.at(path), faults };
                // Measured sections have their places from the toe: their length stays.
                let fixed = *path == "blade.length" && it.wood.has_sections();
                if fixed {
                    continue;
                }
                if let Some(text) = edited(ui, &field, &told) {
                    out.push(Action::Wood(WoodAction::Set((*path).to_owned(), text)));
                }
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
        let of = |it_m: f64| spoken(Quantity::Length, it_m, 0.0, units);
        let words = breach.dimension.words();
        caution(ui, &format!("{words} {}, limit {}", of(breach.measured_m), of(breach.limit_m)));
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

/// Whether a fault is about one of these fields, and said there.
pub fn has_field(fault: &backlift::files::fault::Fault) -> bool {
    let path = crate::studio::derived::path_of(fault);
    path.is_some_and(|path| WOOD.iter().any(|(_, all)| all.iter().any(|it| it[0] == path)))
}
