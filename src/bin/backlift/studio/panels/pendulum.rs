//! The pendulum test: a tap-timer for ten swings, and the doubt that shrinks with each.

use backlift::drawing::axis::Axis;
use backlift::drawing::palette::bat_look;
use egui::{Align2, Grid, Sense, Ui, WidgetType};

use super::chart::Chart;
use super::deeds::button_if;
use super::field::fields;
use super::words::{head, named, quiet};
use crate::figure::{percent, plain};
use crate::studio::action::Action;
use crate::studio::fields::PENDULUM;
use crate::studio::figures::swing_moment;
use crate::studio::state::Studio;
use crate::studio::style::{GRID, ink, theme};

/// Swings that are usually timed.
const USUAL: usize = 10;

pub fn pendulum(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "Pendulum");
    quiet(
        ui,
        "Hang the bat face first from two rods bound to the handle, let it swing a hand's breadth, and count full swings, out and back",
    );
    super::diagram::pendulum(ui, &it.look);
    let bat = it.bench_bat;
    Grid::new(("pendulum", bat)).num_columns(2).show(ui, |ui| {
        fields(ui, it, out, &format!("bats.{bat}."), &PENDULUM);
    });
    taps(ui, it, out);
    doubt(ui, it);
}

fn taps(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    head(ui, "Tap-timer");
    let swings = it.taps.swings();
    let words = match (it.taps.is_empty(), swings) {
        (true, _) => "Tap when it passes".to_owned(),
        (false, 0) => "Tap each time it is back".to_owned(),
        (false, n) => format!("Swing {n}, {} so far", plain(it.taps.time_s(), 2, "s")),
    };
    let size = egui::vec2(28.0, 8.0) * GRID * it.look.text_scale;
    let button = ui.add_sized(size, egui::Button::new(egui::RichText::new(&words).heading()));
    named(&button, WidgetType::Button, "Tap: the bat is back");
    // The press counts, not the release.
    if button.is_pointer_button_down_on() && ui.input(|input| input.pointer.any_pressed())
        || button.clicked() && !ui.input(|input| input.pointer.any_released())
    {
        out.push(Action::Tap(ui.input(|input| input.time)));
    }
    ui.horizontal_wrapped(|ui| {
        button_if(ui, out, swings > 0, "Use this time", Action::UseTaps);
        button_if(ui, out, !it.taps.is_empty(), "Start again", Action::ClearTaps);
    });
    if let Some(now) = it.tapped_swing_moment() {
        let left = USUAL.saturating_sub(swings);
        let more = if left > 0 { format!("; {left} more make ten") } else { String::new() };
        quiet(ui, &format!("So far the swing moment is {}{more}", swing_moment(now)));
    }
    if let Some((odd, usual)) = odd_one(&it.taps.each_s()) {
        let [odd, usual] = [odd, usual].map(|it| plain(it, 2, "s"));
        quiet(ui, &format!("One swing took {odd}, the others about {usual}: was one missed?"));
    }
}

/// A swing half as long again as the middle one.
fn odd_one(each_s: &[f64]) -> Option<(f64, f64)> {
    let mut sorted = each_s.to_vec();
    sorted.sort_by(f64::total_cmp);
    let middle = *sorted.get(sorted.len() / 2)?;
    let longest = *sorted.last()?;
    (longest > 1.5 * middle).then_some((longest, middle))
}

/// Doubt of the swing moment against the number of swings timed.
fn doubt(ui: &mut Ui, it: &Studio) {
    let points = it.doubt_by_swings();
    if points.is_empty() {
        return;
    }
    head(ui, "Every swing makes it surer");
    let size = egui::vec2(ui.available_width(), 22.0 * GRID);
    let (whole, response) = ui.allocate_exact_size(size, Sense::hover());
    let line: Vec<(f64, f64)> = points.iter().map(|it| (f64::from(it.0), 100.0 * it.1)).collect();
    let without = it.untimed_swing_moment().map(|it| 100.0 * it.relative_sd());
    let values = line.iter().map(|it| it.1).chain([0.0]);
    let x = Axis { label: "swings timed".to_owned(), range: [0.0, 31.0] };
    let top = values.clone().fold(0.0, f64::max).min(20.0);
    let y = Axis { label: "doubt of the swing moment, ± %".to_owned(), range: [0.0, 1.1 * top] };
    let chart = Chart::new(ui, &it.look, whole, x, y, 16.0);
    let theme = theme(&it.look);
    chart.ground();
    let seen: Vec<_> = line.iter().copied().filter(|it| it.1 <= top).collect();
    chart.curve(&seen, it.bench_bat, ink(bat_look(theme, it.bench_bat).0));
    if let Some(without) = without.filter(|it| *it < 1.1 * top) {
        let at = chart.at(31.0, without);
        let line = [chart.at(0.0, without), at];
        let stroke = egui::Stroke::new(1.0, ink(theme.quiet));
        chart.painter.extend(egui::Shape::dashed_line(&line, stroke, 4.0, 4.0));
        chart.words(at, Align2::RIGHT_BOTTOM, "without a pendulum", ink(theme.quiet));
    }
    let now = match it.taps.swings() {
        0 => it.at_bench().and_then(|it| Some(f64::from(it.reading.pendulum.as_ref()?.swings))),
        taps => Some(taps as f64),
    };
    let relative = it.tapped_swing_moment().or(it.at_bench().map(|it| it.swing_moment_kg_m2));
    if let (Some(now), Some(doubt)) = (now, relative.map(|it| it.relative_sd())) {
        let at = chart.at(now, (100.0 * doubt).min(1.1 * top));
        chart.painter.circle_filled(at, 5.0, ink(theme.ink));
        let beside = at + egui::vec2(8.0, -6.0);
        chart.words(beside, Align2::LEFT_BOTTOM, &percent(doubt, 1), ink(theme.ink));
    }
    let words = "doubt of the swing moment against the number of swings timed";
    named(&response, WidgetType::Image, words);
}
