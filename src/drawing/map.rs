//! The map: dead weight against balance point, and what the player gains or loses over it.

use super::DrawingFault;
use super::axis::{Axis, Plot, round_step};
use super::contour::Field;
use super::palette::{Theme, bat_letter, bat_look, cividis};
use super::picture::{Area, Picture, Stroke};
use super::type_setting::{Anchor, Lettering, Size};
use super::words::{joined, number, pounds_ounces};

/// A bat to mark.
#[derive(Clone, Debug, PartialEq)]
pub struct MapBat {
    /// Its place in the list: gives colour and letter.
    pub bat: usize,
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point, m from the top of the handle.
    pub balance_m: f64,
}

/// The bat to make, with the limits within which the advice holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MapTarget {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Its limits, kg.
    pub mass_tolerance_kg: [f64; 2],
    /// Balance point, m from the top of the handle.
    pub balance_m: f64,
    /// Its limits, m.
    pub balance_tolerance_m: [f64; 2],
}

/// What the map shows.
#[derive(Clone, Debug, PartialEq)]
pub struct MapPicture {
    /// What it says, in one sentence.
    pub sentence: String,
    /// Columns: dead weights, kg, rising.
    pub mass_kg: Vec<f64>,
    /// Rows: balance points, m from the top of the handle, rising.
    pub balance_m: Vec<f64>,
    /// Row by row: what is gained or lost; none where no legal bat can be made or the player cannot.
    pub value: Vec<Option<f64>>,
    /// What the value is, with its unit: "ball speed off the bat at fifty, km/h".
    pub value_label: String,
    /// Row by row: pickup weight, kg; none where unknown.
    pub pickup_weight_kg: Vec<Option<f64>>,
    /// Bats to mark.
    pub bats: Vec<MapBat>,
    /// The bat to make.
    pub target: Option<MapTarget>,
}

/// The map as an SVG of so many px.
pub fn svg(
    map: &MapPicture,
    theme: &Theme,
    width: f64,
    height: f64,
) -> Result<String, DrawingFault> {
    let mut picture = Picture::new(width, height, theme);
    let sentence = Lettering::new(Size::Sentence, theme.ink);
    let quiet = Lettering::new(Size::Quiet, theme.quiet);
    let mut top = 16.0;
    for line in sentence.wrapped(&map.sentence, width - 32.0) {
        top += Size::Sentence.line_px();
        picture.text(16.0, top - 8.0, sentence, &line);
    }
    let key = format!(
        "Shades and solid lines: {}. Dashed: same pickup weight. Hatched: cannot be made or swung.",
        map.value_label
    );
    for line in quiet.wrapped(&key, width - 32.0) {
        top += Size::Quiet.line_px();
        picture.text(16.0, top - 4.0, quiet, &line);
    }
    draw(&mut picture, Area::new(0.0, top + 8.0, width, height - top - 8.0), map, theme, true)?;
    Ok(picture.finish())
}

/// Draws the map into an area; `full` with lines of the same pickup weight.
pub fn draw(
    picture: &mut Picture,
    area: Area,
    map: &MapPicture,
    theme: &Theme,
    full: bool,
) -> Result<(), DrawingFault> {
    let nodes = map.mass_kg.len() * map.balance_m.len();
    if map.value.len() != nodes || map.pickup_weight_kg.len() != nodes {
        let what = format!("the map has {nodes} places but {} values", map.value.len());
        return Err(DrawingFault::Refused { format: "a picture", what });
    }
    let bats_kg = map.bats.iter().map(|it| it.mass_kg).chain(map.target.map(|it| it.mass_kg));
    let bats_mm = map.bats.iter().map(|it| it.balance_m).chain(map.target.map(|it| it.balance_m));
    let plot = Plot {
        area: Area::new(
            area.x + 50.0,
            area.y + 26.0,
            (area.width - 66.0).max(40.0),
            (area.height - 72.0).max(40.0),
        ),
        x: Axis::around("dead weight, kg", map.mass_kg.iter().copied().chain(bats_kg), 0.0),
        y: Axis::around(
            if full {
                "balance point, mm from the top of the handle"
            } else {
                "balance, mm from the top"
            },
            map.balance_m.iter().copied().chain(bats_mm).map(|it| 1e3 * it),
            0.0,
        ),
    };
    plot.draw_ground(picture, theme);
    picture.rect(plot.area, theme.panel);
    picture.hatch(plot.area, Stroke::solid(theme.quiet, 0.5), if full { 9.0 } else { 6.0 });

    let rows_mm: Vec<f64> = map.balance_m.iter().map(|it| 1e3 * it).collect();
    let field = Field { x: &map.mass_kg, y: &rows_mm, value: &map.value };
    let on_page = |line: &[[f64; 2]]| -> Vec<[f64; 2]> {
        line.iter().map(|[x, y]| plot.at(*x, *y)).collect()
    };
    let levels = levels(&map.value, if full { 8.0 } else { 5.0 });
    for (k, band) in levels.windows(2).enumerate() {
        if let [low, high] = band {
            let polygons: Vec<Vec<[f64; 2]>> =
                field.band(*low, *high).iter().map(|it| on_page(it)).collect();
            // The lower end of the scale is left out: black marks must show on it.
            let share = 0.3 + 0.7 * k as f64 / (levels.len().saturating_sub(2).max(1)) as f64;
            picture.polygons(polygons.iter().map(Vec::as_slice), cividis(share), 1.0);
        }
    }
    let own = marks(map, &plot);
    let mut taken = own.clone();
    let decimals = decimals(&levels);
    for level in levels.iter().skip(1).take(levels.len().saturating_sub(2)) {
        let lines: Vec<_> = field.lines(*level).iter().map(|it| on_page(it)).collect();
        let stroke = Stroke::solid(BLACK, 1.2);
        label_lines(picture, &lines, stroke, &number(*level, decimals), &plot, &mut taken, theme);
    }
    if full {
        // Only where there is a shade: a line through the hatching would promise a bat.
        let shown = map.pickup_weight_kg.iter().zip(&map.value);
        let pickup_kg: Vec<Option<f64>> =
            shown.map(|(pickup, value)| pickup.filter(|_| value.is_some())).collect();
        let pickup = Field { x: &map.mass_kg, y: &rows_mm, value: &pickup_kg };
        for ounces in pickup_levels_oz(&pickup_kg) {
            let level_kg = f64::from(ounces) * OUNCE_KG;
            let lines: Vec<_> = pickup.lines(level_kg).iter().map(|it| on_page(it)).collect();
            let stroke = Stroke { colour: BLACK, width: 1.0, dash: "4 5" };
            let text = format!("picks up {}", joined(&pounds_ounces(level_kg)).replace(".0", ""));
            label_lines(picture, &lines, stroke, &text, &plot, &mut taken, theme);
        }
    }
    mark(picture, map, &plot, &own, theme);
    Ok(())
}

/// Lines and outlines on the shades are black by day and by night, for the shades are the same.
const BLACK: super::palette::Colour = super::palette::Colour([0, 0, 0]);
/// One ounce, kg.
const OUNCE_KG: f64 = 0.453_592_37 / 16.0;

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

fn decimals(levels: &[f64]) -> usize {
    match levels {
        [a, b, ..] => (-libm::floor(libm::log10(b - a) + 1e-9)).max(0.0) as usize,
        _ => 0,
    }
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

/// Draws level lines with a light edge, so that they show on every shade, and names the longest where its
/// name covers no other.
fn label_lines(
    picture: &mut Picture,
    lines: &[Vec<[f64; 2]>],
    stroke: Stroke,
    text: &str,
    plot: &Plot,
    taken: &mut Vec<Area>,
    theme: &Theme,
) {
    for line in lines {
        picture.polyline(line, stroke);
    }
    let lettering = Lettering::new(Size::Quiet, theme.ink).anchored(Anchor::Middle);
    let Some(longest) = lines.iter().max_by_key(|it| it.len()) else {
        return;
    };
    let middle = longest.len() / 2;
    let mut places: Vec<usize> = (0..longest.len()).collect();
    places.sort_by_key(|it| it.abs_diff(middle));
    for [x, y] in places.into_iter().filter_map(|k| longest.get(k)) {
        let extent = lettering.extent(*x, y + 4.5, text);
        let inside = extent.x > plot.area.x
            && extent.right() < plot.area.right()
            && extent.y > plot.area.y
            && extent.bottom() < plot.area.bottom();
        if inside && !taken.iter().any(|it| it.touches(extent)) {
            picture.text_on_patch(*x, y + 4.5, lettering, text, theme.panel);
            taken.push(extent);
            return;
        }
    }
}

/// The areas that the bats' marks take, kept free of other names; last the target's name.
fn marks(map: &MapPicture, plot: &Plot) -> Vec<Area> {
    let around = |mass_kg: f64, balance_m: f64| {
        let [x, y] = plot.at(mass_kg, 1e3 * balance_m);
        Area::new(x - 13.0, y - 13.0, 26.0, 26.0)
    };
    let bats = map.bats.iter().map(|it| around(it.mass_kg, it.balance_m));
    let mut taken: Vec<Area> = bats.collect();
    if let Some(target) = &map.target {
        taken.push(around(target.mass_kg, target.balance_m));
        taken.push(limits(target, plot));
        let [x, y] = name_of_target(target, plot, &taken);
        taken.push(NAME.extent(x, y, TARGET_NAME));
    }
    taken
}

/// How the target is named, and in what letters.
const TARGET_NAME: &str = "make this";
const NAME: Lettering = Lettering::new(Size::Quiet, BLACK).bold().anchored(Anchor::Middle);

/// Where the target's limits lie on the page.
fn limits(target: &MapTarget, plot: &Plot) -> Area {
    let [low_kg, high_kg] = target.mass_tolerance_kg;
    let [low_m, high_m] = target.balance_tolerance_m;
    let [left, bottom] = plot.at(low_kg, 1e3 * low_m);
    let [right, top] = plot.at(high_kg, 1e3 * high_m);
    Area::new(left, top, right - left, bottom - top)
}

/// Where the target's name covers no bat: above, below, right or left of its limits.
fn name_of_target(target: &MapTarget, plot: &Plot, taken: &[Area]) -> [f64; 2] {
    let frame = limits(target, plot);
    let [x, y] = plot.at(target.mass_kg, 1e3 * target.balance_m);
    let half = 0.5 * NAME.width(TARGET_NAME) + 8.0;
    let above = [x, frame.y.min(y - 9.0) - 6.0];
    let below = [x, frame.bottom().max(y + 9.0) + 16.0];
    let right = [frame.right().max(x + 9.0) + half, y + 4.5];
    let left = [frame.x.min(x - 9.0) - half, y + 4.5];
    let free =
        |[x, y]: &[f64; 2]| !taken.iter().any(|it| it.touches(NAME.extent(*x, *y, TARGET_NAME)));
    [above, below, right, left].into_iter().find(free).unwrap_or(above)
}

fn mark(picture: &mut Picture, map: &MapPicture, plot: &Plot, taken: &[Area], theme: &Theme) {
    let letter = Lettering::new(Size::Quiet, theme.ink).bold().anchored(Anchor::Middle);
    for bat in &map.bats {
        let centre = plot.at(bat.mass_kg, 1e3 * bat.balance_m);
        let (colour, _) = bat_look(theme, bat.bat);
        picture.disc(centre, 12.0, theme.panel, Stroke::solid(theme.panel, 1.0));
        picture.disc(centre, 9.5, theme.panel, Stroke::solid(colour, 3.0));
        picture.text(centre[0], centre[1] + 4.5, letter, &bat_letter(bat.bat));
    }
    if let Some(target) = map.target {
        let limits = limits(&target, plot);
        picture.frame(limits, Stroke::solid(theme.panel, 4.5));
        picture.frame(limits, Stroke::solid(theme.ink, 2.0));
        let [x, y] = plot.at(target.mass_kg, 1e3 * target.balance_m);
        let diamond = |r: f64| [[x - r, y], [x, y - r], [x + r, y], [x, y + r]];
        picture.polygons([diamond(9.0).as_slice()], theme.panel, 1.0);
        picture.polygons([diamond(6.5).as_slice()], theme.ink, 1.0);
        if let Some(name) = taken.last() {
            let middle = name.x + 0.5 * name.width;
            let baseline = name.y + 0.86 * Size::Quiet.px();
            picture.text_on_patch(middle, baseline, letter, TARGET_NAME, theme.panel);
        }
    }
}
