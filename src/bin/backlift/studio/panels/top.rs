//! The top bar: the file, steps back, the questions, how it looks.

use backlift::units::Units;
use egui::Ui;

use super::deeds::{button, button_if, item, paper_menu, tick};
use super::{Row, VIEWS};
use crate::studio::action::{Action, Which};
use crate::studio::state::Studio;

pub fn top(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    ui.horizontal_wrapped(|ui| {
        file(ui, it, out);
        steps(ui, it, out);
        ui.separator();
        for Row { view, name, what, .. } in &VIEWS {
            let chosen = it.view == *view;
            if ui.selectable_label(chosen, *name).on_hover_text(*what).clicked() && !chosen {
                out.push(Action::View(*view));
            }
        }
        ui.separator();
        look(ui, it, out);
    });
}

fn file(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    paper_menu(ui, it.paper(Which::Scenario), |ui| {
        item(ui, out, "Open…", Action::AskOpen);
        item(ui, out, "Save", Action::Save);
        item(ui, out, "Save as…", Action::AskSave);
        item(ui, out, "New player", Action::New);
        item(ui, out, "The demo", Action::Demo);
        if !it.recent.is_empty() {
            ui.separator();
            ui.weak("Used last");
            for path in &it.recent {
                let name = path.file_name().unwrap_or(path.as_os_str()).to_string_lossy();
                item(ui, out, &name, Action::Open(path.clone()));
            }
        }
        ui.separator();
        item(ui, out, "Close the window", Action::Close);
    });
}

fn steps(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let history = it.paper(it.view.paper()).history();
    let (back, on) = (history.last(), history.next());
    button_if(ui, out, back.is_some(), "Undo", Action::Undo)
        .on_hover_text(format!("Take back: {}", back.unwrap_or("nothing")));
    button_if(ui, out, on.is_some(), "Redo", Action::Redo)
        .on_hover_text(format!("Bring again: {}", on.unwrap_or("nothing")));
}

fn look(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let si = it.look.units == Units::Si;
    let words = if si { "kg, m" } else { "lb, in" };
    button(ui, out, words, Action::Si(!si))
        .on_hover_text("Units of every figure: change them here");
    ui.menu_button("Look", |ui| {
        tick(ui, out, it.look.dark, "Dark", Action::Dark);
        let mut percent = (100.0 * it.look.text_scale).round();
        let slider = egui::Slider::new(&mut percent, 80.0..=200.0).step_by(10.0).suffix(" %");
        if ui.add(slider.text("Text size")).changed() {
            out.push(Action::TextScale(percent / 100.0));
        }
        tick(ui, out, it.look.reduced_motion, "Nothing moves by itself", Action::ReducedMotion);
        let words = "Less detail, for slow machines";
        tick(ui, out, it.look.reduced_detail, words, Action::ReducedDetail);
    });
}
