//! The bat as a solid in its own frame B, from the same shape that its mass is reckoned with.

use backlift::bat::blade::{Blade, Station};
use backlift::bat::figures::WeighedBat;
use backlift::bat::laws::Limits;
use backlift::bat::makeable::Wanted;
use backlift::bat::mesh::outline;
use backlift::bat::shape::BatShape;
use backlift::frames::DVec3;

use super::solid::{Solid, Tone, turned};

/// Willow, face and back, and its grain.
pub const WILLOW: Tone = [0.86, 0.75, 0.56];
const GRAIN: Tone = [0.76, 0.63, 0.44];
/// Twine round the handle below the grip.
pub const TWINE: Tone = [0.78, 0.72, 0.60];
/// How finely a blade is drawn.
#[derive(Clone, Copy)]
pub struct Fineness {
    /// Points across half of it, from edge to middle.
    pub across: usize,
    /// Rows from one station to the next.
    pub between: usize,
}

const SWUNG: Fineness = Fineness { across: 12, between: 4 };
/// The mark in the bat's colour across the blade, as shares of the way from shoulder to toe.
const BAND: [f64; 2] = [0.10, 0.16];

/// The shape that this weight and balance have in the bat's size; the size's own where no such blade can
/// be carved. What was not measured of a bat, its outline among it, is assumed.
pub fn shape(bat: &WeighedBat, limits: &Limits) -> BatShape {
    let (mass_kg, balance_m) = (bat.mass_kg.value, bat.balance_m.value);
    let wanted = Wanted { mass_kg, balance_m, swell_from_toe_m: None };
    let made = bat.family().make(&bat.reading.label, &wanted, limits);
    let shape = made.map_or_else(|_| bat.family().reference().clone(), |it| it.shape);
    shape.with_length_m(bat.length_m.value)
}

pub struct Spot {
    /// Share of the way from shoulder to toe.
    pub from_shoulder: f64,
    /// Share of the way from an edge to the middle.
    pub u: f64,
    /// Whether it lies on the face: else on the back or an edge.
    pub is_on_face: bool,
}

/// What is painted over the wood; none leaves it bare.
pub type Paint<'a> = &'a dyn Fn(Spot) -> Option<Tone>;

/// The surface; grip and a band across the blade in the bat's own colour.
pub fn solid(shape: &BatShape, around: usize, colour: Tone) -> Solid {
    let band = |it: Spot| (BAND[0]..=BAND[1]).contains(&it.from_shoulder).then_some(colour);
    painted(shape, (around, SWUNG), [colour, TWINE], &band)
}

/// The surface with a grip and a bare handle of these colours, and the blade painted; so many points round the
/// handle, and so finely the blade.
pub fn painted(
    shape: &BatShape,
    (around, fineness): (usize, Fineness),
    handle_tones: [Tone; 2],
    paint: Paint<'_>,
) -> Solid {
    let mut it = handle(shape, around, handle_tones);
    it.add(blade(&shape.blade, shape.handle.length_m, fineness, paint));
    it
}

fn handle(shape: &BatShape, around: usize, [colour, bound]: [Tone; 2]) -> Solid {
    let handle = &shape.handle;
    let through = |x_m: f64| handle.half_z_m(x_m) / handle.half_y_m(x_m);
    let circle = |x_m: f64, half_m: f64| {
        let point = |n: usize| {
            let (sin, cos) = turned(n, around);
            DVec3::new(x_m, half_m * cos, through(x_m) * half_m * sin)
        };
        (0..around).map(point).collect::<Vec<_>>()
    };
    let over_grip = |x_m: f64| 0.5 * handle.diameter_over_grip_m(x_m);
    let bare = |x_m: f64| over_grip(x_m) - f64::from(handle.grips) * handle.grip_m;
    // The end is rounded a little.
    let mut rows = vec![circle(0.0, 0.02 * over_grip(0.0)), circle(0.0, 0.8 * over_grip(0.0))];
    let mut tones = vec![colour; 2];
    let mut push = |x_m: f64, half_m: f64, tone: Tone| {
        rows.push(circle(x_m, half_m));
        tones.push(tone);
    };
    let end_m = handle.grip_length_m.min(handle.length_m);
    for share in [0.015, 0.25, 0.5, 0.75, 1.0] {
        push(share * end_m, over_grip(share * end_m), colour);
    }
    push(end_m, bare(end_m), bound);
    // Into the blade, where the splice takes over.
    push(handle.length_m, bare(handle.length_m), bound);
    push(handle.length_m + 0.05, 0.6 * bare(handle.length_m), bound);
    let mut it = Solid::default();
    it.sheet(&rows, true, |row, _| tones.get(row).copied().unwrap_or(bound));
    it.outward()
}

fn blade(blade: &Blade, shoulder_m: f64, fineness: Fineness, paint: Paint<'_>) -> Solid {
    let Fineness { across, between } = fineness;
    let stations = finer(&blade.stations, between);
    let outlines: Vec<_> =
        stations.iter().map(|it| outline(blade, shoulder_m, it, across)).collect();
    let spot = |row: usize, u: f64, is_on_face: bool| {
        let from_shoulder = stations.get(row).map_or(0.0, |it| it.from_shoulder);
        Spot { from_shoulder, u, is_on_face }
    };
    let mut it = Solid::default();
    for (n, is_on_face) in [true, false].into_iter().enumerate() {
        let rows: Vec<_> = outlines.iter().map(|it| it[n].clone()).collect();
        it.sheet(&rows, false, |row, column| {
            let u = 1.0 - (column as f64 / across as f64 - 1.0).abs();
            let grain = if column.is_multiple_of(3) { GRAIN } else { WILLOW };
            paint(spot(row, u, is_on_face)).unwrap_or(grain)
        });
    }
    // The two edges between face and back.
    for (from, to) in [(0, 1), (1, 0)] {
        let edge = |it: &[Vec<DVec3>; 2]| Some(vec![*it[from].last()?, *it[to].first()?]);
        let rows: Vec<_> = outlines.iter().filter_map(edge).collect();
        it.sheet(&rows, false, |row, _| paint(spot(row, 0.0, false)).unwrap_or(WILLOW));
    }
    // Shoulder and toe.
    let back = |it: &[Vec<DVec3>; 2]| it[1].iter().rev().copied().collect::<Vec<_>>();
    if let (Some(first), Some(last)) = (outlines.first(), outlines.last()) {
        it.sheet(&[back(first), first[0].clone()], false, |_, _| WILLOW);
        it.sheet(&[last[0].clone(), back(last)], false, |_, _| GRAIN);
    }
    it.outward()
}

/// Stations with others between them, so that grain and band have an even edge.
fn finer(stations: &[Station], between: usize) -> Vec<Station> {
    let mut all = Vec::with_capacity(stations.len() * between);
    for (a, b) in stations.iter().zip(stations.iter().skip(1)) {
        all.extend((0..between).map(|n| a.towards(b, n as f64 / between as f64)));
    }
    all.extend(stations.last());
    all
}
