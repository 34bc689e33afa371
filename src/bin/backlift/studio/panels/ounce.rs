//! An ounce that can be put anywhere along the first bat, and what it takes from the late pull there.

use backlift::drawing::bat_outline::outline;
use backlift::drawing::palette::bat_look;
use backlift::innings::score::runs_words;
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::ounce::cost::NEXT_TO_NOTHING;
use backlift::questions::ounces::Ounces;
use backlift::units::{INCH_M, Quantity, Units, spoken};
use egui::{Align2, Color32, Key, Pos2, Rect, Sense, Shape, Stroke, TextStyle, Ui, WidgetType};

use super::deeds::has_keyboard;
use super::words::{caution, head, named, pending, quiet};
use crate::figure::{capital, number, speed_unit};
use crate::ounce;
use crate::studio::action::Action;
use crate::studio::state::Studio;
use crate::studio::style::{GRID, ink, theme};

/// Radius of the weight, px at scale 1.
const WEIGHT_PX: f32 = 8.0;

pub fn ounce(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let bat = it.playback.bats[0];
    let Some(weighed) = it.derived.loaded.as_ref().and_then(|it| it.bats.get(bat)) else { return };
    let (units, length_m) = (it.look.units, weighed.length_m.value);
    let ounces = it.ounces();
    head(ui, &format!("Drag {} along {}", ounce::ounce(units), it.label(bat)));
    let from_top_m = it.ounce_at * length_m;
    let costs = ounces.and_then(|it| cost(it, from_top_m, units));
    laid_down(ui, it, out, [length_m, weighed.balance_m.value], costs.as_deref());
    match ounces {
        Some(ounces) => quiet(ui, &told(ounces, from_top_m, units)),
        None => pending(ui, true),
    }
    let failed = it.ounce_key(bat).map_or(&[][..], |key| it.answers.faults(key));
    for fault in failed {
        caution(ui, &fault.message);
    }
}

/// "−0.31 km/h": what the ounce does to the late pull there.
fn cost(it: &Ounces, from_top_m: f64, units: Units) -> Option<String> {
    let (unit, per_m_s) = speed_unit(units);
    let change = per_m_s * it.lead()?.ounce_at_m_s(from_top_m);
    let digits = if units == Units::Trade { 2 } else { 3 };
    let sign = if change > 0.0 { "+" } else { "" };
    Some(format!("{sign}{}\u{2009}{unit}", number(change, digits)))
}

fn told(it: &Ounces, from_top_m: f64, units: Units) -> String {
    let Some(pull) = it.lead() else { return String::new() };
    let at_toe = pull.ounce_at_m_s(pull.length_m).abs();
    format!(
        "{} {} from the top of the handle takes {} ± {} from the {} at {}. Along the bat it goes {}. Swung with it on and off at both ends and in the middle; the likeliest player",
        capital(&ounce::ounce(units)),
        spoken(Quantity::Length, from_top_m, 0.003, units),
        ounce::takes(pull.ounce_at_m_s(from_top_m), units),
        ounce::takes(-NEXT_TO_NOTHING * at_toe, units),
        pull.stroke,
        runs_words(it.runs),
        ounce::about(pull, units),
    )
}

/// The bat on its side, its handle left, and the weight on it.
fn laid_down(
    ui: &mut Ui,
    it: &Studio,
    out: &mut Vec<Action>,
    [length_m, balance_m]: [f64; 2],
    costs: Option<&str>,
) {
    let scale = it.look.text_scale;
    let small = TextStyle::Small.resolve(ui.style());
    let body = TextStyle::Body.resolve(ui.style());
    let radius = WEIGHT_PX * scale;
    let width = ui.available_width().max(16.0 * GRID);
    let px_per_m = (width - 2.0 * radius - 4.0) / length_m as f32;
    let shape = outline(length_m, HANDLE_M);
    let half = px_per_m * shape.iter().map(|it| it[1] as f32).fold(0.0, f32::max);
    let (over, under) = (1.5 * body.size + radius, 1.6 * small.size);
    let size = egui::vec2(width, over + 2.0 * half + under);
    let (whole, response) = ui.allocate_exact_size(size, Sense::click_and_drag());
    let middle = whole.top() + over + half;
    let along = |from_top_m: f64| whole.left() + radius + 2.0 + px_per_m * from_top_m as f32;
    let theme = theme(&it.look);
    let colour = ink(bat_look(theme, it.playback.bats[0]).0);
    let (paper, dark, soft) = (ink(theme.panel), ink(theme.ink), ink(theme.quiet));
    let points: Vec<Pos2> =
        shape.iter().map(|[x, y]| Pos2::new(along(*x), middle + px_per_m * *y as f32)).collect();
    let painter = ui.painter_at(whole);
    painter.add(Shape::closed_line(points, Stroke::new(2.0, colour)));
    for (station_m, name) in [(PICKUP_AXIS_FROM_TOP_M, "pickup axis"), (balance_m, "balance")] {
        let x = along(station_m);
        painter.vline(x, middle - half..=middle + half + 3.0, Stroke::new(1.0, soft));
        let at = Pos2::new(x, middle + half + 4.0);
        painter.text(at, Align2::CENTER_TOP, name, small.clone(), soft);
    }
    let at = Pos2::new(along(it.ounce_at * length_m), middle);
    painter.vline(at.x, whole.top() + over - radius..=middle, Stroke::new(1.0, dark));
    painter.circle(at, radius, dark, Stroke::new(2.0, paper));
    if let Some(costs) = costs {
        let galley = painter.layout_no_wrap(costs.to_owned(), body, Color32::PLACEHOLDER);
        let half = 0.5 * galley.size().x;
        let x = at.x.clamp(whole.left() + half, (whole.right() - half).max(whole.left() + half));
        painter.galley(Pos2::new(x - half, whole.top()), galley, dark);
    }
    let inches = it.ounce_at * length_m / INCH_M;
    let costs = costs.unwrap_or("being worked out");
    let words = format!("ounce on the bat, {inches:.1} in from the top: {costs}");
    named(&response, WidgetType::Slider, &words);
    let moved = moved(ui, it, &response, whole, [length_m, f64::from(px_per_m)], radius);
    out.extend(moved.map(Action::Ounce));
}

/// Thickness of the handle in the picture, m.
const HANDLE_M: f64 = 0.034;

/// Where a hand or the arrows move it to, as a share of the length.
fn moved(
    ui: &Ui,
    it: &Studio,
    response: &egui::Response,
    whole: Rect,
    [length_m, px_per_m]: [f64; 2],
    radius: f32,
) -> Option<f64> {
    let share = |from_top_m: f64| (from_top_m / length_m).clamp(0.0, 1.0);
    let place =
        response.interact_pointer_pos().filter(|_| response.dragged() || response.clicked());
    if let Some(place) = place {
        response.request_focus();
        let from_top_m = f64::from(place.x - whole.left() - radius - 2.0) / px_per_m;
        return Some(share(from_top_m)).filter(|share| *share != it.ounce_at);
    }
    if !has_keyboard(ui, response, whole) {
        return None;
    }
    let step_m = if it.look.units == Units::Trade { 0.25 * INCH_M } else { 0.005 };
    let now_m = it.ounce_at * length_m;
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    [
        (Key::ArrowLeft, now_m - step_m),
        (Key::ArrowRight, now_m + step_m),
        (Key::Home, 0.0),
        (Key::End, length_m),
    ]
    .into_iter()
    .find(|(key, _)| pressed(*key))
    .map(|(_, to_m)| share(to_m))
}
