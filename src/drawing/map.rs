//! The map: dead weight against balance point, and what the player gains or loses over it.

use super::DrawingFault;
use super::area::Area;
use super::axis::{Axis, Plot, TICK_LINE, Tick, decimals, multiples, round_step};
use super::contour::Field;
use super::map_marks;
use super::map_picture::MapPicture;
use super::palette::{BLACK, Theme, cividis};
use super::picture::{Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::words::{THIN, joined, number, pounds_ounces};
use crate::ounce::cost::OUNCE_KG;
use crate::units::INCH_M;

/// The map as an SVG of so many px.
pub fn svg(
    map: &MapPicture,
    theme: &Theme,
    width: f64,
    height: f64,
) -> Result<String, DrawingFault> {
    let mut picture = Picture::new(width, height, theme);
    let quiet = Lettering::new(Size::Quiet, theme.quiet);
    let top = picture.sentence(picture.whole(), &map.sentence);
    let key = format!(
        "Shades and solid lines: {}. Dashed: same pickup weight. Hatched: cannot be made.",
        map.value_label
    );
    let top = picture.paragraph([16.0, top - 4.0], width - 32.0, quiet, &key) + 4.0;
    draw(&mut picture, Area::new(0.0, top + 8.0, width, height - top - 8.0), map, true)?;
    Ok(picture.finish())
}

/// Draws the map into an area; `full` with lines of the same pickup weight.
pub(super) fn draw(
    picture: &mut Picture,
    area: Area,
    map: &MapPicture,
    full: bool,
) -> Result<(), DrawingFault> {
    let theme = picture.theme;
    let nodes = map.mass_kg.len() * map.balance_m.len();
    if map.value.len() != nodes || map.pickup_weight_kg.len() != nodes {
        let what = format!("the map has {nodes} places but {} values", map.value.len());
        return Err(DrawingFault::refused("a picture", what));
    }
    // The frame of what will do must lie on the map too.
    let frame_kg = map.target.iter().flat_map(|it| it.mass_kg.tolerance);
    let frame_m = map.target.iter().flat_map(|it| it.balance_m.tolerance);
    let bats_kg = map.bats.iter().map(|it| it.mass_kg).chain(frame_kg);
    let bats_mm = map.bats.iter().map(|it| it.balance_m).chain(frame_m);
    let plot = Plot {
        area: Area::new(
            area.x + 50.0,
            area.y + 26.0,
            (area.width - 66.0).max(40.0),
            (area.height - 72.0 - TICK_LINE).max(40.0),
        ),
        x: Axis::around("dead weight", map.mass_kg.iter().copied().chain(bats_kg), 0.0),
        y: Axis::around(
            if full {
                "balance point from the top of the handle, mm and in"
            } else {
                "balance from the top, mm and in"
            },
            map.balance_m.iter().copied().chain(bats_mm).map(|it| 1e3 * it),
            0.0,
        ),
    };
    plot.draw_ruled(picture, &weights(&plot), &balances(&plot));
    picture.rect(plot.area, theme.panel);
    picture.hatch(plot.area, Stroke::solid(theme.quiet, 0.5), if full { 9.0 } else { 6.0 });

    let rows_mm: Vec<f64> = map.balance_m.iter().map(|it| 1e3 * it).collect();
    let field = Field { x: &map.mass_kg, y: &rows_mm, value: &map.value };
    let at = |[x, y]: [f64; 2]| plot.at(x, y);
    let mut names = shaded(picture, &field, if full { 8.0 } else { 5.0 }, &at);
    if full {
        // Only where there is a shade: a line through the hatching would promise a bat.
        let shown = map.pickup_weight_kg.iter().zip(&map.value);
        let pickup_kg: Vec<Option<f64>> =
            shown.map(|(pickup, value)| pickup.filter(|_| value.is_some())).collect();
        let pickup = Field { x: &map.mass_kg, y: &rows_mm, value: &pickup_kg };
        for ounces in pickup_levels_oz(&pickup_kg) {
            let level_kg = f64::from(ounces) * OUNCE_KG;
            let lines = on_page(&pickup.lines(level_kg), &at);
            let stroke = Stroke { colour: BLACK, width: 1.0, dash: "4 5" };
            let text = format!("picks up {}", joined(&pounds_ounces(level_kg)).replace(".0", ""));
            names.extend(draw_named(picture, lines, stroke, text));
        }
    }
    // Names last, so that no line runs through them.
    let mut taken = map_marks::areas(map, &plot);
    for name in &names {
        name.draw(picture, &plot, &mut taken);
    }
    map_marks::draw(picture, map, &plot);
    Ok(())
}

/// Least room for a weight under the axis, px.
const WEIGHT_PX: f64 = 64.0;

/// Dead weights at whole ounces, in pounds and ounces and in grams.
fn weights(plot: &Plot) -> Vec<Tick> {
    let [low_kg, high_kg] = plot.x.range;
    let ounce_px = plot.area.width * OUNCE_KG / (high_kg - low_kg);
    let step = [1.0, 2.0, 4.0, 8.0].into_iter().find(|it| it * ounce_px >= WEIGHT_PX);
    let tick = |at: f64| {
        let trade = joined(&pounds_ounces(at)).replace(".0", "");
        Tick { at, words: vec![trade, format!("{}{THIN}g", number(1e3 * at, 0))] }
    };
    multiples(OUNCE_KG * step.unwrap_or(16.0), plot.x.range).into_iter().map(tick).collect()
}

/// Balance points at round millimetres, the inches below; the axis says which is which.
fn balances(plot: &Plot) -> Vec<Tick> {
    let (ticks, decimals) = plot.y.ticks((plot.area.height / 55.0).max(2.0));
    let words = |mm: f64| {
        let inches = number(1e-3 * mm / INCH_M, 1);
        vec![number(mm, decimals), inches]
    };
    ticks.into_iter().map(|at| Tick { at, words: words(at) }).collect()
}

/// Lines of a grid on the page, each of their points `at` its place there.
fn on_page(lines: &[Vec<[f64; 2]>], at: &dyn Fn([f64; 2]) -> [f64; 2]) -> Vec<Vec<[f64; 2]>> {
    lines.iter().map(|line| line.iter().map(|it| at(*it)).collect()).collect()
}

/// Draws a field's shades between its levels, about `wanted` of them, and a line at each but the outermost, whose names
/// are still to be written. `at` puts a point of the grid on the page.
pub(super) fn shaded(
    picture: &mut Picture,
    field: &Field<'_>,
    wanted: f64,
    at: &dyn Fn([f64; 2]) -> [f64; 2],
) -> Vec<Named> {
    let levels = levels(field.value, wanted);
    for (k, band) in levels.windows(2).enumerate() {
        if let [low, high] = band {
            let polygons = on_page(&field.band(*low, *high), at);
            // The lower end of the scale is left out: black marks must show on it.
            let share = 0.3 + 0.7 * k as f64 / levels.len().saturating_sub(2).max(1) as f64;
            picture.polygons(polygons.iter().map(Vec::as_slice), cividis(share), 1.0);
        }
    }
    let [_, inner @ .., _] = levels.as_slice() else { return Vec::new() };
    let mut names = Vec::new();
    for level in inner {
        let lines = on_page(&field.lines(*level), at);
        let name = number(*level, decimals(levels[1] - levels[0]));
        names.extend(draw_named(picture, lines, Stroke::solid(BLACK, 1.2), name));
    }
    names
}

/// Round levels that enclose all values.
fn levels(values: &[Option<f64>], wanted: f64) -> Vec<f64> {
    let known = values.iter().flatten().filter(|it| it.is_finite());
    let (low, high) =
        known.fold((f64::INFINITY, f64::NEG_INFINITY), |(a, b), it| (a.min(*it), b.max(*it)));
    if low >= high {
        return Vec::new();
    }
    let step = round_step((high - low) / wanted);
    let (first, last) = ((low / step).floor() as i64, (high / step).ceil() as i64);
    (first..=last).map(|k| k as f64 * step).collect()
}

/// Whole ounces, every second or fourth, so that no more than six lines are drawn.
fn pickup_levels_oz(pickup_kg: &[Option<f64>]) -> Vec<u16> {
    let ounces =
        levels(&pickup_kg.iter().map(|it| it.map(|kg| kg / OUNCE_KG)).collect::<Vec<_>>(), 64.0);
    let (Some(low), Some(high)) = (ounces.first(), ounces.last()) else {
        return Vec::new();
    };
    let step =
        [1, 2, 4, 8].into_iter().find(|it| (high - low) / f64::from(*it) <= 6.0).unwrap_or(16);
    (low.ceil().max(0.0) as u16..=high.floor().max(0.0) as u16)
        .filter(|it| it % step == 0)
        .collect()
}

/// A shorter line is not named: its name would hide it.
const LEAST_NAMED_PX: f64 = 50.0;

fn length(line: &[[f64; 2]]) -> f64 {
    let pieces = line.iter().zip(line.iter().skip(1));
    pieces.map(|(a, b)| libm::hypot(b[0] - a[0], b[1] - a[1])).sum()
}

/// A level line and what it is called.
pub(super) struct Named {
    line: Vec<[f64; 2]>,
    name: String,
}

/// Draws the lines of one level; the longest of them is to be named.
fn draw_named(
    picture: &mut Picture,
    lines: Vec<Vec<[f64; 2]>>,
    stroke: Stroke,
    name: String,
) -> Option<Named> {
    for line in &lines {
        picture.polyline(line, stroke);
    }
    let line = lines.into_iter().max_by(|a, b| length(a).total_cmp(&length(b)))?;
    (length(&line) >= LEAST_NAMED_PX).then_some(Named { line, name })
}

impl Named {
    /// Writes the name on the line, as near its middle as it covers nothing else; not at all if it must.
    pub(super) fn draw(&self, picture: &mut Picture, plot: &Plot, taken: &mut Vec<Area>) {
        let theme = picture.theme;
        let lettering = Lettering::new(Size::Quiet, theme.ink).anchored(Anchor::Middle);
        let middle = self.line.len() / 2;
        let mut places: Vec<usize> = (0..self.line.len()).collect();
        places.sort_by_key(|it| it.abs_diff(middle));
        for [x, y] in places.into_iter().filter_map(|k| self.line.get(k)) {
            let extent = lettering.extent(*x, y + 4.5, &self.name);
            let inside = extent.x > plot.area.x
                && extent.right() < plot.area.right()
                && extent.y > plot.area.y
                && extent.bottom() < plot.area.bottom();
            if inside && !taken.iter().any(|it| it.touches(extent)) {
                picture.text_on_patch(*x, y + 4.5, lettering, &self.name, theme.panel);
                taken.push(extent);
                return;
            }
        }
    }
}
