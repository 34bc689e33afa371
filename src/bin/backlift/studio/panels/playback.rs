//! Time, stroke and camera of the scene.

use egui::emath::round_to_decimals;
use egui::{Slider, Ui};

use super::deeds::{button, choice, tick};
use crate::studio::action::{Action, View};
use crate::studio::playback::Camera;
use crate::studio::state::Studio;

/// Slow motions: seconds of the stroke in a second on the screen.
const RATES: [(f64, &str); 4] = [(0.05, "1/20"), (0.15, "1/7"), (0.4, "2/5"), (1.0, "as it is")];

const CAMERAS: [(Camera, &str); 5] = [
    (Camera::Side, "side"),
    (Camera::Bowler, "bowler"),
    (Camera::Keeper, "keeper"),
    (Camera::Above, "above"),
    (Camera::Batter, "batter's eyes"),
];

/// Time is shown to a millisecond.
const SHOWN_DECIMALS: usize = 3;

/// Draws the controls.
pub fn playback(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let now = &it.playback;
    ui.horizontal_wrapped(|ui| {
        let (words, action) =
            if now.playing { ("Pause", Action::Pause) } else { ("Play", Action::Play) };
        button(ui, out, words, action).on_hover_text("Space");
        button(ui, out, "Back", Action::Step(-1)).on_hover_text("One picture back: left arrow");
        button(ui, out, "On", Action::Step(1)).on_hover_text("One picture on: right arrow");
        // The slider rounds what it is given and calls that a change, so it is given what is round already:
        // then only a hand on it, or keys, change it.
        let length_s = round_to_decimals(it.length_s(), SHOWN_DECIMALS);
        let mut time_s = round_to_decimals(now.time_s, SHOWN_DECIMALS).min(length_s);
        let rest = ui.text_style_height(&egui::TextStyle::Body) * 14.0;
        if ui.available_size_before_wrap().x < rest {
            // It does not wrap by itself.
            ui.end_row();
        }
        ui.spacing_mut().slider_width =
            (ui.available_size_before_wrap().x - rest).clamp(60.0, 400.0);
        let slider = Slider::new(&mut time_s, 0.0..=length_s)
            .fixed_decimals(SHOWN_DECIMALS)
            .suffix("\u{2009}s");
        let slider = ui.add(slider);
        slider.widget_info(|| {
            let words = "time after the top of the backlift";
            egui::WidgetInfo::slider(true, time_s, words)
        });
        if slider.on_hover_text("Time after the top of the backlift").changed() {
            out.push(Action::Scrub(time_s));
        }
        tick(ui, out, now.looping, "again and again", Action::Loop);
    });
    ui.horizontal_wrapped(|ui| {
        if it.view != View::Innings {
            strokes(ui, it, out);
            ui.separator();
        }
        ui.weak("speed");
        for (rate, words) in RATES {
            let chosen = (now.rate - rate).abs() < 1e-9;
            if ui.selectable_label(chosen, words).clicked() {
                out.push(Action::Rate(rate));
            }
        }
        ui.separator();
        ui.weak("seen from");
        choice(ui, out, &CAMERAS, now.camera, Action::Camera);
        if now.second {
            ui.separator();
            tick(ui, out, now.overlay, "in one place", Action::Overlay);
        }
    });
}

/// The strokes there are.
pub fn strokes(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(loaded) = &it.derived.loaded else { return };
    for stroke in &loaded.strokes {
        let chosen = it.playback.stroke == stroke.name;
        if ui.selectable_label(chosen, &stroke.name).clicked() && !chosen {
            out.push(Action::Stroke(stroke.name.clone()));
        }
    }
}
