//! Time, stroke and camera of the scene.

use egui::{Rect, Sense, Ui, WidgetType};

use super::deeds::{button, choice, tick};
use super::through::through;
use super::words::named;
use crate::studio::action::{Action, View};
use crate::studio::playback::Camera;
use crate::studio::state::Studio;
use crate::studio::wood::action::WoodAction;

/// Slow motions: seconds of the stroke in a second on the screen.
const RATES: [(f64, &str); 4] =
    [(0.05, "a 20th"), (0.15, "a 7th"), (0.4, "two fifths"), (1.0, "as it is")];

/// Turn for each point dragged, rad.
const TURN_RAD: f32 = 0.008;

const CAMERAS: [(Camera, &str); 5] = [
    (Camera::Side, "the side"),
    (Camera::Bowler, "the bowler"),
    (Camera::Keeper, "the keeper"),
    (Camera::Above, "above"),
    (Camera::Batter, "the batter's eyes"),
];

const SAME_TIME: [(bool, &str); 2] = [(false, "same effort"), (true, "same time")];

pub fn playback(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let now = &it.playback;
    // There the score is what is looked at, or nothing but the net.
    let has_swing = it.stroke_time_s(0).is_some();
    if has_swing && !matches!(it.view, View::Start | View::Innings) {
        through(ui, it, out);
    }
    ui.horizontal_wrapped(|ui| {
        let (words, action) =
            if now.playing { ("Pause", Action::Pause) } else { ("Play", Action::Play) };
        button(ui, out, words, action).on_hover_text("Space");
        button(ui, out, "Back", Action::Step(-1)).on_hover_text("One picture back: left arrow");
        button(ui, out, "On", Action::Step(1)).on_hover_text("One picture on: right arrow");
        if !matches!(it.view, View::Innings) {
            ui.separator();
            strokes(ui, it, out);
        }
        ui.separator();
        speed(ui, it, out);
        camera(ui, it, out);
        if now.second {
            ui.separator();
            choice(ui, out, &SAME_TIME, now.same_time, Action::SameTime);
            tick(ui, out, now.overlay, "in one place", Action::Overlay);
        }
    });
}

fn speed(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let now = &it.playback;
    let chosen = |rate: f64| (now.rate - rate).abs() < 1e-9;
    let words = RATES.iter().find(|it| chosen(it.0)).map_or("slow", |it| it.1);
    ui.menu_button(format!("speed: {words}"), |ui| {
        for (rate, words) in RATES {
            if ui.selectable_label(chosen(rate), words).clicked() {
                out.push(Action::Rate(rate));
                ui.close();
            }
        }
        tick(ui, out, now.slows, "slower near the ball", Action::Slows);
        tick(ui, out, now.looping, "again and again", Action::Loop);
    });
}

fn camera(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let now = it.playback.camera;
    let words = CAMERAS.iter().find(|it| it.0 == now).map_or("", |it| it.1);
    ui.menu_button(format!("from {words}"), |ui| {
        for (camera, words) in CAMERAS {
            if ui.selectable_label(now == camera, words).clicked() {
                out.push(Action::Camera(camera));
                ui.close();
            }
        }
    });
}

pub fn strokes(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(loaded) = &it.derived.loaded else { return };
    for stroke in &loaded.strokes {
        let chosen = it.playback.stroke == stroke.name;
        if ui.selectable_label(chosen, &stroke.name).clicked() && !chosen {
            out.push(Action::Stroke(stroke.name.clone()));
        }
    }
}

/// The room for the net: drag to look round, scroll to come nearer; the window draws the net itself.
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
