//! The map: dead weight against balance point, shaded by what is asked, lines of equal pickup, points.

use std::sync::Arc;

use backlift::card::Figure;
use backlift::drawing::axis::{Axis, round_step};
use backlift::drawing::contour::Field;
use backlift::drawing::palette::{LIGHT, bat_look, cividis};
use backlift::measurement::bench::bat_letter;
use backlift::units::Units;
use egui::{Align2, Mesh, Pos2, Rect, Sense, Shape, Stroke, Ui, WidgetType};

use super::chart::{Chart, LineWords};
use super::deeds::has_keyboard;
use super::kept::kept;
use super::words::named;
use crate::figure::number;
use crate::studio::action::Action;
use crate::studio::answers::key;
use crate::studio::ground::{Ground, axis_units};
use crate::studio::state::Studio;
use crate::studio::style::{ink, theme};

const SHADES: f64 = 9.0;

pub fn map(ui: &mut Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(drawn) = remembered(ui, it) else { return super::today::so_far(ui, it) };
    let ground = &drawn.ground;
    let (whole, response) = ui.allocate_exact_size(ui.available_size(), Sense::click_and_drag());
    named(&response, WidgetType::Image, &format!("map of bats: {}", ground.label));
    let (units, [mass_unit, length_unit]) = axis_units(it.look.units);
    let bats = || it.derived.loaded.iter().flat_map(|it| &it.bats);
    // What is to be ordered may lie a little beyond the bats that are shaded, with its limits.
    let card = it.fitted().map(|it| &it.it.card);
    let limits = |figure: Figure| card.into_iter().flat_map(move |it| it.asked(figure).tolerance);
    let masses = bats().map(|it| it.mass_kg.value).chain(limits(Figure::DeadWeight));
    let masses = masses.map(|it| it / units[0]);
    let balances = bats().map(|it| it.balance_m.value).chain(limits(Figure::Balance));
    let balances = balances.map(|it| it / units[1]);
    let x = match it.look.units {
        Units::Trade => "dead weight, lb oz".to_owned(),
        Units::Si => format!("dead weight, {mass_unit}"),
    };
    let x = Axis::around(x, ground.x.iter().copied().chain(masses), 0.0);
    let y = format!("balance point from the top, {length_unit}");
    let y = Axis::around(y, ground.y.iter().copied().chain(balances), 0.0);
    let mut chart = Chart::new(ui, &it.look, whole, x, y, 24.0);
    if it.look.units == Units::Trade {
        chart.said = Some(pounds);
    }
    chart.ground();
    hatch(&chart, it);
    let numbers = shade(&chart, &drawn);
    let weights = pickup(&chart, it, &drawn);
    points(&chart, it, units);
    // What stands on the lines gives way to what stands at the points.
    numbers.into_iter().chain(weights).for_each(|it| chart.label(it));
    let place =
        response.interact_pointer_pos().filter(|_| response.dragged() || response.clicked());
    if let Some(place) = place {
        let [x, y] = chart.under(place);
        try_here(it, out, x * units[0], y * units[1]);
    }
    if has_keyboard(ui, &response, whole) {
        by_keys(ui, it, out);
    }
}

/// The ground, worked out once for each thing shown.
fn remembered(ui: &Ui, it: &Studio) -> Option<Arc<Drawn>> {
    let fitted = it.fitted()?;
    let bat = it.playback.bats[0];
    let first = it.derived.bat_keys.get(bat);
    let is_si = it.look.units == Units::Si;
    let key = key((fitted.key, it.colour_by, is_si, bat, first, it.is_fit_stale()));
    kept(ui, "ground", key, || Some(Drawn::of(it.ground()?)))
}

/// A line or a polygon on the ground.
type Outline = Vec<[f64; 2]>;

/// The ground with its shades and lines, which are worked out once and not in every picture.
struct Drawn {
    ground: Ground,
    /// Shades: how far each is from the least to the most.
    shades: Vec<(f64, Vec<Outline>)>,
    /// Lines between them: value, the same share.
    lines: Vec<(f64, f64, Vec<Outline>)>,
    digits: usize,
    /// Lines along which bats pick up alike.
    pickup: Vec<(f64, Vec<Outline>)>,
}

impl Drawn {
    fn of(ground: Ground) -> Self {
        let [low, high] = span(&ground.value).unwrap_or([0.0; 2]);
        let field = Field { x: &ground.x, y: &ground.y, value: &ground.value };
        let step = round_step((high - low) / SHADES);
        let share = |value: f64| (value - low) / (high - low);
        let levels = match high > low {
            true => (low / step).floor() as i64..(high / step).ceil() as i64,
            false => 0..0,
        };
        let shade = |level: i64| {
            let from = level as f64 * step;
            (share(from + 0.5 * step), field.band(from, from + step))
        };
        let line = |level: i64| {
            let value = level as f64 * step;
            (value, share(value), field.lines(value))
        };
        Self {
            shades: levels.clone().map(shade).collect(),
            lines: levels.skip(1).map(line).collect(),
            digits: if step < 0.1 { 2 } else { usize::from(step < 1.0) },
            pickup: alike(&ground),
            ground,
        }
    }
}

/// Lines of equal pickup at round weights.
fn alike(ground: &Ground) -> Vec<(f64, Vec<Outline>)> {
    let Some([low, high]) = span(&ground.pickup) else { return Vec::new() };
    let field = Field { x: &ground.x, y: &ground.y, value: &ground.pickup };
    let step = round_step((high - low) / 5.0);
    let first = (low / step).ceil() as i64;
    let levels = (first..).map(|n| n as f64 * step).take_while(|level| *level < high);
    levels.map(|level| (level, field.lines(level))).collect()
}

/// Ounces as the trade says them.
fn pounds(ounces: f64) -> String {
    let whole = ounces.round();
    format!("{:.0}\u{2009}lb {:.0}", (whole / 16.0).floor(), whole.rem_euclid(16.0))
}

fn span(values: &[Option<f64>]) -> Option<[f64; 2]> {
    let all = || values.iter().flatten().copied();
    let (low, high) =
        (all().fold(f64::INFINITY, f64::min), all().fold(f64::NEG_INFINITY, f64::max));
    (high > low).then_some([low, high])
}

/// What is not shaded over cannot be made, or breaks the Laws.
fn hatch(chart: &Chart<'_>, it: &Studio) {
    const GAP: f32 = 9.0;
    let area = chart.area;
    let line = Stroke::new(1.0, ink(theme(&it.look).hairline));
    let painter = chart.painter.with_clip_rect(area);
    let mut x = area.left() - area.height();
    while x < area.right() {
        let ends = [Pos2::new(x, area.bottom()), Pos2::new(x + area.height(), area.top())];
        painter.line_segment(ends, line);
        x += GAP;
    }
    let words = "hatched: cannot be made in this size, or breaks the Laws";
    let quiet = ink(theme(&it.look).quiet);
    chart.patch(area.left_top() + egui::vec2(6.0, 4.0), Align2::LEFT_TOP, words, quiet);
}

/// Shades, and lines between them; what is to be written on those.
fn shade(chart: &Chart<'_>, drawn: &Drawn) -> Vec<LineWords> {
    let mut mesh = Mesh::default();
    for (share, polygons) in &drawn.shades {
        let colour = ink(cividis(*share));
        for polygon in polygons {
            let start = mesh.vertices.len() as u32;
            polygon.iter().for_each(|it| mesh.colored_vertex(chart.at(it[0], it[1]), colour));
            for corner in 2..polygon.len() as u32 {
                mesh.add_triangle(start, start + corner - 1, start + corner);
            }
        }
    }
    chart.painter.add(Shape::mesh(mesh));
    let mut numbers = Vec::new();
    for (value, share, lines) in &drawn.lines {
        // Ink on the light shades, paper on the dark ones, by day and by night.
        let pale = if *share > 0.55 { ink(LIGHT.ink) } else { ink(LIGHT.panel) };
        for line in lines {
            let line = on_chart(chart, line);
            numbers.push(LineWords::along(&line, number(*value, drawn.digits), pale, false));
            chart.painter.add(Shape::line(line, Stroke::new(1.0, pale)));
        }
    }
    numbers
}

fn on_chart(chart: &Chart<'_>, line: &Outline) -> Vec<Pos2> {
    line.iter().map(|it| chart.at(it[0], it[1])).collect()
}

/// Lines along which bats pick up alike; what is to be written on them.
fn pickup(chart: &Chart<'_>, it: &Studio, drawn: &Drawn) -> Vec<LineWords> {
    let colour = ink(theme(&it.look).quiet);
    let mut weights = Vec::new();
    for (level, lines) in &drawn.pickup {
        for line in lines {
            let line = on_chart(chart, line);
            chart.painter.extend(Shape::dashed_line(&line, Stroke::new(1.5, colour), 6.0, 4.0));
            let weight = match it.look.units {
                Units::Trade => pounds(*level),
                Units::Si => format!("{}\u{2009}g", number(*level, 0)),
            };
            weights.push(LineWords::along(&line, format!("picks up {weight}"), colour, true));
        }
    }
    weights
}

/// The weighed bats, the bat to order with its tolerance, the bat tried.
fn points(chart: &Chart<'_>, it: &Studio, [mass, length]: [f64; 2]) {
    let theme = theme(&it.look);
    let (page, dark) = (ink(theme.panel), ink(theme.ink));
    let at = |mass_kg: f64, balance_m: f64| chart.at(mass_kg / mass, balance_m / length);
    if let Some(fitted) = it.fitted() {
        let card = &fitted.it.card;
        let [mass, balance] =
            [Figure::DeadWeight, Figure::Balance].map(|it| card.asked(it).tolerance);
        let [a, b] = [0, 1].map(|k| at(mass[k], balance[k]));
        let frame = Rect::from_two_pos(a, b);
        chart.painter.rect_stroke(frame, 0.0, Stroke::new(4.0, page), egui::StrokeKind::Middle);
        chart.painter.rect_stroke(frame, 0.0, Stroke::new(2.0, dark), egui::StrokeKind::Middle);
        let place = at(card.mass_kg(), card.balance_m());
        chart.painter.circle_filled(place, 4.0, dark);
        chart.patch(place + egui::vec2(8.0, 0.0), Align2::LEFT_CENTER, "bat to order", dark);
    }
    for (n, bat) in it.derived.loaded.iter().flat_map(|it| it.bats.iter().enumerate()) {
        let place = at(bat.mass_kg.value, bat.balance_m.value);
        let colour = ink(bat_look(theme, n).0);
        chart.taken.take(Rect::from_center_size(place, egui::Vec2::splat(20.0)));
        chart.painter.circle(place, 9.0, page, Stroke::new(2.0, colour));
        chart.words(place, Align2::CENTER_CENTER, &bat_letter(n), colour);
    }
    if let Some([mass_kg, balance_m]) = it.tried {
        let place = at(mass_kg, balance_m);
        chart.taken.take(Rect::from_center_size(place, egui::Vec2::splat(18.0)));
        chart.painter.circle(place, 7.0, page, Stroke::new(3.0, dark));
        chart.patch(place + egui::vec2(12.0, 0.0), Align2::LEFT_CENTER, "tried", dark);
    }
}

/// Tries the bat at a place, kept inside what was swung.
fn try_here(it: &Studio, out: &mut Vec<Action>, mass_kg: f64, balance_m: f64) {
    let Some(fitted) = it.fitted() else { return };
    let domain = &fitted.it.fitting.one.swings.domain;
    let [m0, m1] = domain.mass_kg;
    let [b0, b1] = domain.balance_m;
    let (mass_kg, balance_m) = (mass_kg.clamp(m0, m1), balance_m.clamp(b0, b1));
    if it.tried != Some([mass_kg, balance_m]) {
        out.push(Action::Try(mass_kg, balance_m));
    }
}

/// The arrows move the tried bat by 5 g and by 1 mm.
fn by_keys(ui: &Ui, it: &Studio, out: &mut Vec<Action>) {
    let Some(card) = it.fitted().map(|it| &it.it.card) else { return };
    let [mass_kg, balance_m] = it.tried.unwrap_or([card.mass_kg(), card.balance_m()]);
    let pressed = |key| ui.input(|input| input.key_pressed(key));
    for (key, mass, balance) in [
        (egui::Key::ArrowLeft, -0.005, 0.0),
        (egui::Key::ArrowRight, 0.005, 0.0),
        (egui::Key::ArrowDown, 0.0, -0.001),
        (egui::Key::ArrowUp, 0.0, 0.001),
    ] {
        if pressed(key) {
            try_here(it, out, mass_kg + mass, balance_m + balance);
        }
    }
}
