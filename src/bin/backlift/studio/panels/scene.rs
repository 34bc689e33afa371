//! The room for the net: drag to look round, scroll to come nearer.

use egui::{Rect, Sense, Ui, WidgetType};

use super::words::named;
use crate::studio::action::{Action, View};
use crate::studio::state::Studio;
use crate::studio::wood::action::WoodAction;

/// Turn for each point dragged, rad.
const TURN_RAD: f32 = 0.008;

/// Takes the pointer in; the window draws the net itself.
pub fn scene(ui: &mut Ui, it: &Studio, room: Rect, out: &mut Vec<Action>) {
    let response = ui.allocate_rect(room, Sense::click_and_drag());
    let dragged = response.drag_delta();
    if dragged != egui::Vec2::ZERO {
        out.push(Action::Orbit(-TURN_RAD * dragged.x, TURN_RAD * dragged.y));
    }
    if response.hovered() {
        let scrolled = ui.input(|input| input.smooth_scroll_delta.y);
        if scrolled != 0.0 {
            out.push(Action::Nearer((0.002 * scrolled).exp()));
        }
    }
    if response.double_clicked() {
        out.push(match it.view {
            View::Wood => Action::Wood(WoodAction::See(it.wood.seen)),
            _ => Action::Camera(it.playback.camera),
        });
    }
    let what = if it.view == View::Wood { "the bench" } else { "the net" };
    let how = "drag to look round, scroll to come nearer, double click to go back";
    named(&response, WidgetType::Image, &format!("{what}: {how}"));
}
