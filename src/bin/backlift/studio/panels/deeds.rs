//! Buttons, choices and boxes that say what was done, and what has the keyboard.

use egui::text::LayoutJob;
use egui::{
    Button, Color32, EventFilter, FontSelection, Rect, Response, StrokeKind, TextFormat, TextStyle,
    Ui, WidgetText, WidgetType,
};

use super::words::named;
use crate::studio::action::Action;
use crate::studio::paper::OnDesk;

pub fn button(
    ui: &mut Ui,
    out: &mut Vec<Action>,
    words: impl Into<WidgetText>,
    does: Action,
) -> Response {
    button_if(ui, out, true, words, does)
}

/// A button that is pale where nothing can be done.
pub fn button_if(
    ui: &mut Ui,
    out: &mut Vec<Action>,
    is_possible: bool,
    words: impl Into<WidgetText>,
    does: Action,
) -> Response {
    let button = ui.add_enabled(is_possible, Button::new(words.into()));
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

/// The menu of a paper, under its name; a dot while there is something that no file holds. Its room is always there: what
/// stands beside it does not move when it comes.
pub fn paper_menu(ui: &mut Ui, paper: &dyn OnDesk, items: impl FnOnce(&mut Ui)) {
    let name = paper.name();
    // A long name in a small window would take the room of the other buttons.
    let letter = 0.5 * ui.text_style_height(&TextStyle::Button);
    let most = (0.16 * ui.ctx().content_rect().width() / letter) as usize;
    let shown = match name.chars().count() > most.max(8) {
        true => name.chars().take(most.max(8) - 1).chain(['…']).collect(),
        false => name.clone(),
    };
    let is_changed = paper.is_changed();
    let font_id = FontSelection::from(TextStyle::Button).resolve(ui.style());
    let format = |color| TextFormat { font_id: font_id.clone(), color, ..TextFormat::default() };
    let mut words = LayoutJob::default();
    words.append(&shown, 0.0, format(Color32::PLACEHOLDER));
    let dot = if is_changed { Color32::PLACEHOLDER } else { Color32::TRANSPARENT };
    words.append("•", 0.5 * ui.spacing().item_spacing.x, format(dot));
    let menu = ui.menu_button(words, items).response;
    let unsaved = if is_changed { " (unsaved)" } else { "" };
    let words = format!("{name}{unsaved}");
    named(&menu, WidgetType::Button, &words);
    if is_changed || shown != name {
        menu.on_hover_text(words);
    }
}

pub fn tick(
    ui: &mut Ui,
    out: &mut Vec<Action>,
    mut on: bool,
    words: &str,
    does: impl FnOnce(bool) -> Action,
) {
    if ui.checkbox(&mut on, words).changed() {
        out.push(does(on));
    }
}

/// Whether it has the keyboard; then it is ringed, and the arrows do not go on to the next control.
pub fn has_keyboard(ui: &Ui, response: &Response, whole: Rect) -> bool {
    if !response.has_focus() {
        return false;
    }
    let filter =
        EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    ui.painter().rect_stroke(whole, 2.0, ui.visuals().selection.stroke, StrokeKind::Inside);
    true
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
