//! Buttons, choices and boxes that say what was done.

use egui::{Response, Ui, WidgetText};

use crate::studio::action::Action;

/// A button.
pub fn button(
    ui: &mut Ui,
    out: &mut Vec<Action>,
    words: impl Into<WidgetText>,
    does: Action,
) -> Response {
    let button = ui.button(words.into());
    if button.clicked() {
        out.push(does);
    }
    button
}

/// A button in a menu, which it closes.
pub fn item(ui: &mut Ui, out: &mut Vec<Action>, words: &str, does: Action) {
    if ui.button(words).clicked() {
        out.push(does);
        ui.close();
    }
}

/// A box that is ticked or not.
pub fn tick(
    ui: &mut Ui,
    out: &mut Vec<Action>,
    on: bool,
    words: &str,
    does: impl FnOnce(bool) -> Action,
) {
    let mut on = on;
    if ui.checkbox(&mut on, words).changed() {
        out.push(does(on));
    }
}

/// One of a few, side by side.
pub fn choice<T: Copy + PartialEq>(
    ui: &mut Ui,
    out: &mut Vec<Action>,
    all: &[(T, &str)],
    now: T,
    does: impl Fn(T) -> Action,
) {
    for (it, words) in all {
        if ui.selectable_label(now == *it, *words).clicked() {
            out.push(does(*it));
        }
    }
}
