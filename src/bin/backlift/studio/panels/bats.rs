//! Whose hands, and which bats: the left side.

use backlift::units::{Quantity, spoken};
use egui::{Ui, WidgetType};

use super::deeds::{button, tick};
use super::words::{bat_mark, fault, head, named, pending, quiet, why};
use crate::figure::measured;
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;

/// Draws it.
pub fn hands_and_bats(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "In these hands");
    hands(ui, it, out);
    head(ui, "These bats");
    for bat in 0..it.document.bat_count() {
        one(ui, it, out, bat);
    }
    ui.horizontal_wrapped(|ui| {
        if ui.button("Add a bat").clicked() {
            out.push(Action::AddBat);
            out.push(Action::View(View::Bench));
        }
        if it.document.bat_count() > 1 {
            tick(ui, out, it.playback.second, "Two at once", Action::ShowSecond);
        }
    });
    faults(ui, it, out);
}

fn hands(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(loaded) = &it.derived.loaded else {
        quiet(ui, "Nobody yet: fill in the bench");
        return;
    };
    let player = &loaded.player;
    let stature = spoken(Quantity::Length, player.stature_m, 0.005, it.look.units);
    let handed = it.document.at("player.handed");
    let handed = if handed.is_empty() { "right" } else { &handed };
    let age = it.document.at("player.age");
    let years = if age.parse::<f64>().is_ok() { " years" } else { "" };
    let words = format!("{age}{years}, {stature}, {handed}-hander");
    let made_up = if loaded.scenario.invented { "; invented" } else { "" };
    let estimated: Vec<String> =
        player.estimated.iter().map(|it| format!("{} (from {})", it.what, it.from)).collect();
    let why_words = match estimated.as_slice() {
        [] => "Everything about this player was measured".to_owned(),
        all => format!("Not measured, so estimated: {}", all.join("; ")),
    };
    why(ui, &format!("{words}{made_up}"), &why_words);
    button(ui, out, "Measure the player", Action::View(View::Bench));
}

fn one(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, bat: usize) {
    let label = it.label(bat);
    let chosen = it.playback.bats;
    let shown = chosen[0] == bat || (it.playback.second && chosen[1] == bat);
    ui.horizontal_wrapped(|ui| {
        bat_mark(ui, &it.look, bat);
        ui.label(&label);
        if let Some(weighed) = it.derived.loaded.as_ref().and_then(|it| it.bats.get(bat)) {
            let mass =
                spoken(Quantity::Mass, weighed.mass_kg.value, weighed.mass_kg.sd, it.look.units);
            let why_words = format!(
                "Scale weight {}; picks up like a {} bat of {}",
                measured(Quantity::Mass, weighed.mass_kg, it.look.units),
                weighed.size,
                measured(Quantity::Mass, weighed.pickup_weight_kg, it.look.units)
            );
            why(ui, &mass, &why_words);
        }
        super::today::suits(ui, it.given(bat));
        pending(ui, shown && it.is_pending(bat));
    });
    ui.horizontal_wrapped(|ui| {
        let first = ui.selectable_label(chosen[0] == bat, "first");
        named(&first, WidgetType::Button, &format!("{label} first"));
        if first.on_hover_text("Swing this bat first").clicked() {
            out.push(Action::FirstBat(bat));
        }
        let is_second = it.playback.second && chosen[1] == bat;
        let second = ui.selectable_label(is_second, "second");
        named(&second, WidgetType::Button, &format!("{label} second"));
        if second.on_hover_text("Swing this bat beside the first").clicked() {
            out.push(Action::SecondBat(bat));
        }
        let bench = ui.small_button("bench");
        named(&bench, WidgetType::Button, &format!("{label} to the bench"));
        if bench.clicked() {
            out.push(Action::BenchBat(bat));
            out.push(Action::View(View::Bench));
        }
    });
}

/// What is wrong stands where it is seen from every view.
fn faults(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    if !it.derived.is_stale() {
        return;
    }
    head(ui, "To be mended");
    quiet(ui, "Until then every figure is of the state before");
    for it in &it.derived.faults {
        fault(ui, it, &it.message);
    }
    button(ui, out, "Mend it at the bench", Action::View(View::Bench));
}
