//! What has the keyboard shows it, and keeps the arrows for itself.

use egui::{EventFilter, Rect, Response, StrokeKind, Ui};

/// Whether it has the keyboard; then it is ringed, and the arrows do not go on to the next control.
pub fn held(ui: &Ui, response: &Response, whole: Rect) -> bool {
    if !response.has_focus() {
        return false;
    }
    let filter =
        EventFilter { horizontal_arrows: true, vertical_arrows: true, ..EventFilter::default() };
    ui.memory_mut(|memory| memory.set_focus_lock_filter(response.id, filter));
    ui.painter().rect_stroke(whole, 2.0, ui.visuals().selection.stroke, StrokeKind::Inside);
    true
}
