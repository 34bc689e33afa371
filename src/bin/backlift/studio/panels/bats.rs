//! Whose hands, and which bats: the left side.

use backlift::units::{Quantity, spoken};
use egui::{Color32, Frame, Sense, StrokeKind, Ui, WidgetType};

use super::deeds::{button, tick};
use super::words::{bat_mark, fault, head, named, pending, quiet, why};
use crate::figure::measured;
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;
use crate::studio::style::{GRID, mixed, theme};

pub fn hands_and_bats(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "In these hands");
    hands(ui, it, out);
    head(ui, "These bats");
    for bat in 0..it.document.bat_count() {
        one(ui, it, out, bat);
    }
    button(ui, out, "Measure the bats", Action::View(View::Bench));
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
        return quiet(ui, "Nobody yet: fill in the bench");
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

/// A bat: one click on it swings it beside the first.
fn one(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>, bat: usize) {
    let label = it.label(bat);
    let [first, second] = it.playback.bats;
    let is_first = bat == first;
    let is_second = !is_first && it.playback.second && bat == second;
    let chosen = is_first || is_second;
    let weighed = it.derived.loaded.as_ref().and_then(|it| it.bats.get(bat));
    let theme = theme(&it.look);
    let fill = if chosen { mixed(theme.ground, theme.bats[0], 0.08) } else { Color32::TRANSPARENT };
    let mut frame = Frame::new().inner_margin(0.5 * GRID).fill(fill).begin(ui);
    {
        let ui = &mut frame.content_ui;
        ui.set_width(ui.available_width());
        ui.horizontal_wrapped(|ui| {
            bat_mark(ui, &it.look, bat);
            ui.label(&label);
            super::today::suits(ui, it.given(bat));
            pending(ui, chosen && weighed.is_some() && it.is_pending(bat));
            if chosen {
                quiet(ui, if is_first { "swung first" } else { "beside it" });
            }
        });
        if let Some(weighed) = weighed {
            let told = |kg| measured(Quantity::Mass, kg, it.look.units);
            quiet(ui, &told(weighed.mass_kg));
            quiet(ui, &format!("picks up like {}", told(weighed.pickup_weight_kg)));
        }
    }
    // Over the words, so that all of it is one thing to click.
    let room = frame.content_ui.min_rect().expand(0.5 * GRID);
    let row = ui.interact(room, ui.id().with(("bat", bat)), Sense::click());
    if row.hovered() && !chosen {
        frame.frame.fill = mixed(theme.ground, theme.bats[0], 0.04);
    }
    frame.end(ui);
    if row.has_focus() {
        ui.painter().rect_stroke(room, 2.0, ui.visuals().selection.stroke, StrokeKind::Inside);
    }
    named(&row, WidgetType::Button, &format!("{label} second"));
    if row.clicked() {
        let wants_first = ui.input(|input| input.modifiers.shift);
        if !is_first {
            out.push(if wants_first { Action::FirstBat(bat) } else { Action::SecondBat(bat) });
        }
        if it.view == View::Bench && it.bench_bat != bat {
            out.push(Action::BenchBat(bat));
        }
    }
    row.on_hover_text("One click swings it beside the first; with Shift it becomes the first");
    if is_second {
        let swap = ui.small_button("Make it the first");
        named(&swap, WidgetType::Button, &format!("{label} first"));
        if swap.clicked() {
            out.push(Action::FirstBat(bat));
        }
    }
}

/// What is wrong stands where it is seen from every view.
fn faults(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    if !it.derived.is_stale() {
        return;
    }
    let (to_come, wrong): (Vec<_>, Vec<_>) =
        it.derived.faults.iter().partition(|fault| it.is_to_come(fault));
    let fields = to_come.iter().filter_map(|it| it.field.as_deref());
    let fields: Vec<String> = fields.filter_map(|path| it.spoken(path)).collect();
    if !fields.is_empty() {
        head(ui, "Still to come");
        fields.iter().for_each(|field| quiet(ui, field));
    }
    if !wrong.is_empty() {
        head(ui, "To be mended");
        if it.derived.loaded.is_some() {
            quiet(ui, "Until then every figure is of the state before");
        }
        for about in wrong.into_iter().map(|about| it.told(about)) {
            fault(ui, &about, &about.message);
        }
    }
    if it.view != View::Bench {
        button(ui, out, "Mend it at the bench", Action::View(View::Bench));
    }
}
