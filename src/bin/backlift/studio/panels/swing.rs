//! What the swing does: figures of both bats and the difference.

use egui::{Grid, RichText, Ui};

use super::words::{bat_mark, head, pending, quiet, sentence, why};
use crate::studio::action::Action;
use crate::studio::state::Studio;

/// Draws the sentence, and then the figures.
pub fn swing(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    sentence(ui, &it.pair_sentence());
    let late = it.playback.second && !it.is_compared();
    pending(ui, late && it.playback.bats[0] != it.playback.bats[1]);
    let runs = it.playback.runs;
    let when = if runs == 0 { "fresh".to_owned() } else { format!("at {runs} runs") };
    head(ui, &format!("The {}, {when}", it.playback.stroke));
    rows(ui, it);
    let mut score = runs;
    let slider = egui::Slider::new(&mut score, 0..=100).suffix(" runs").text("score");
    if ui.add(slider).on_hover_text("How tired the player is").changed() {
        out.push(Action::Score(score));
    }
    failed(ui, it);
    quiet(
        ui,
        "± one standard deviation. What is in doubt about the player is much the same for both bats, so the difference is surer than the figures",
    );
}

/// Figures side by side.
pub fn rows(ui: &mut Ui, it: &Studio) {
    let both = it.playback.second && it.playback.bats[0] != it.playback.bats[1];
    let shown = if both { 2 } else { 1 };
    Grid::new("figures").num_columns(shown + 2).show(ui, |ui| {
        ui.label("");
        for bat in it.playback.bats.iter().take(shown) {
            bat_mark(ui, &it.look, *bat);
        }
        if both {
            ui.weak("second less first");
        }
        ui.end_row();
        for row in it.swing_rows() {
            ui.add(egui::Label::new(RichText::new(row.name).weak()).wrap());
            for told in row.values.iter().take(shown) {
                ui.vertical(|ui| match told {
                    Some(told) => {
                        why(ui, &told.value, &format!("{}. {}", told.doubt, row.why));
                        quiet(ui, &told.doubt);
                    }
                    None => {
                        quiet(ui, "…");
                    }
                });
            }
            if let Some((words, real)) = row.difference.as_ref().filter(|_| both) {
                ui.vertical(|ui| {
                    let sure = if *real {
                        "More than the doubt of the difference: real"
                    } else {
                        "Within the doubt of the difference: not real as far as can be told"
                    };
                    why(ui, words, sure);
                    quiet(ui, if *real { "real" } else { "within the doubt" });
                });
            }
            ui.end_row();
        }
    });
}

/// Why a bat has no figures.
pub fn failed(ui: &mut Ui, it: &Studio) {
    for bat in it.playback.bats {
        let key = it.derived.bat_keys.get(bat);
        for fault in key.and_then(|key| it.results.failed.get(key)).into_iter().flatten() {
            let mend = fault.help.as_deref().map_or(String::new(), |it| format!("; {it}"));
            super::words::caution(ui, &format!("{}: {}{mend}", it.label(bat), fault.message));
        }
    }
}
