//! The top bar: the file, steps back, the questions, how it looks.

use egui::{Button, Ui};

use super::deeds::{button, item, tick};
use super::{Row, VIEWS, row};
use crate::studio::action::{Action, Which};
use crate::studio::state::Studio;

/// Draws it.
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
    ui.menu_button(it.paper(Which::Scenario).marked_name(), |ui| {
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
        by_name(ui, out);
        item(ui, out, "Close the window", Action::Close);
    });
}

/// A file by its name, where the system has no window for it.
fn by_name(ui: &mut Ui, out: &mut Vec<Action>) {
    let id = egui::Id::new("file by name");
    let mut name = ui.data(|data| data.get_temp::<String>(id)).unwrap_or_default();
    let label = ui.weak("File by name");
    ui.text_edit_singleline(&mut name).labelled_by(label.id);
    ui.horizontal(|ui| {
        let given = !name.trim().is_empty();
        let path = || std::path::PathBuf::from(name.trim());
        if ui.add_enabled(given, Button::new("Open it")).clicked() {
            out.push(Action::Open(path()));
            ui.close();
        }
        if ui.add_enabled(given, Button::new("Save there")).clicked() {
            out.push(Action::SaveAs(path()));
            ui.close();
        }
    });
    ui.data_mut(|data| data.insert_temp(id, name));
}

fn steps(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let history = it.paper(row(it.view).paper).history();
    let (back, on) = (history.last(), history.next());
    let undo = ui.add_enabled(back.is_some(), Button::new("Undo"));
    if undo.on_hover_text(format!("Take back: {}", back.unwrap_or("nothing"))).clicked() {
        out.push(Action::Undo);
    }
    let redo = ui.add_enabled(on.is_some(), Button::new("Redo"));
    if redo.on_hover_text(format!("Bring again: {}", on.unwrap_or("nothing"))).clicked() {
        out.push(Action::Redo);
    }
}

fn look(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    use backlift::units::Units;
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
        tick(
            ui,
            out,
            it.look.reduced_detail,
            "Less detail, for slow machines",
            Action::ReducedDetail,
        );
    });
}

/// Keys that do the same as buttons.
pub fn keys(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    use egui::{Key, KeyboardShortcut, Modifiers};
    let command = |key| KeyboardShortcut::new(Modifiers::COMMAND, key);
    let shifted = |key| KeyboardShortcut::new(Modifiers::COMMAND | Modifiers::SHIFT, key);
    // Each is done to the paper in front.
    let front = row(it.view).paper;
    let shortcuts = [
        (shifted(Key::Z), Action::Redo),
        (shifted(Key::S), Action::AskSave.on(front)),
        (command(Key::Z), Action::Undo),
        (command(Key::Y), Action::Redo),
        (command(Key::S), Action::Save.on(front)),
        (command(Key::O), Action::AskOpen.on(front)),
        (command(Key::N), Action::New.on(front)),
    ];
    for (keys, action) in shortcuts {
        if ui.input_mut(|input| input.consume_shortcut(&keys)) {
            out.push(action);
        }
    }
    if ui.memory(|memory| memory.focused().is_some()) {
        return;
    }
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    if pressed(Key::Space) {
        out.push(if it.playback.playing { Action::Pause } else { Action::Play });
    }
    if pressed(Key::ArrowRight) {
        out.push(Action::Step(1));
    }
    if pressed(Key::ArrowLeft) {
        out.push(Action::Step(-1));
    }
    for (n, row) in VIEWS.iter().enumerate() {
        if Key::from_name(&format!("F{}", n + 1)).is_some_and(pressed) {
            out.push(Action::View(row.view));
        }
    }
}
