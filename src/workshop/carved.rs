//! Turning one shape into another with given figures: thickness, taper and ends, and what the maker holds.

use crate::bat::family::{along_factor, slide};
use crate::bat::shape::BatShape;
use crate::bat::sizes::Craft;
use nalgebra::{DMatrix, DVector};

/// Figures that a shape shall have, or that the bench shows.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Figures {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point from the top of the handle, m.
    pub balance_m: f64,
    /// Swing moment, kg m²; none leaves it to come out as it will, or was not read.
    pub swing_moment_kg_m2: Option<f64>,
}

/// What the maker will not have changed; each is met exactly, at the cost of something else.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Held {
    /// Thickest edge, m.
    pub edge_m: Option<f64>,
    /// Spine height, m. The hollowing gives way.
    pub depth_m: Option<f64>,
    /// Height of the swell over the toe, m; free, it moves with the taper as in a size's family.
    pub swell_from_toe_m: Option<f64>,
    /// Hollowing at the swell.
    pub hollow: Option<f64>,
}

/// A shape as it was carved.
#[derive(Clone, Debug, PartialEq)]
pub struct Carved {
    /// The shape.
    pub shape: BatShape,
    /// Thickness towards the toe over that at the shoulder, less one.
    pub taper: f64,
    /// Wood at the ends of the blade, −1 to 1 of what craft allows.
    pub ends: f64,
    /// How far the swell went with the taper, as a share of the blade.
    pub swell_move: f64,
}

/// What is turned: in this order the unknowns.
#[derive(Clone, Copy, Debug)]
struct Turn {
    thickness: f64,
    taper: f64,
    ends: f64,
    edges: f64,
    hollow: f64,
}

const START: Turn = Turn { thickness: 1.0, taper: 0.0, ends: 0.0, edges: 1.0, hollow: 0.0 };
/// Newton steps: the figures are all but straight in what is turned.
const STEPS: usize = 25;
/// Step for the slopes.
const STEP: f64 = 1e-6;
/// How near the figures are met: kg, m, kg m², m.
const NEAR: f64 = 1e-10;

/// Share of the blade below the shoulder over which the cut sets in.
const SHOULDER: f64 = 0.07;

/// Carving thickens the blade towards one end, and another station may become the deepest: so often it is
/// begun anew from that one.
const SWELLS: usize = 4;
/// Where two stations are all but equally deep neither stays the deepest. The spine is then raised at the held
/// swell, so often at most, by a ten-thousandth more than the other stands over it.
const RAISES: usize = 8;
/// See [`RAISES`].
const RAISED_OVER: f64 = 1e-4;
/// The most that it is raised in all: a hump of 2 mm is no swell (assumption).
const MOST_RAISED: f64 = 1.03;

/// Carves `start` until it has the figures and what is held; none where no blade gets there.
pub fn carve(start: &BatShape, craft: &Craft, figures: &Figures, held: &Held) -> Option<Carved> {
    let is_free = held.swell_from_toe_m.is_none() && held.hollow.is_none();
    // With this station as the swell, its spine raised by so much.
    let at = |swell: usize, raised: f64| -> Option<Carved> {
        let mut start = start.clone();
        if let Some(from_toe_m) = held.swell_from_toe_m {
            start.blade.move_station(swell, from_toe_m).ok()?;
        }
        let station = start.blade.stations.get_mut(swell)?;
        station.depth_m *= raised;
        let now = station.hollow;
        if let Some(hollow) = held.hollow {
            start.blade.stations.iter_mut().for_each(|it| it.hollow += hollow - now);
        }
        carved_from(&start, craft, figures, held)
    };
    let mut swell = start.blade.deepest_index()?;
    // The station that came nearest to being the swell, and by what share another is deeper.
    let mut nearest: Option<(usize, f64)> = None;
    for _ in 0..SWELLS {
        let Some(carved) = at(swell, 1.0) else { break };
        let deepest = carved.shape.blade.deepest_index()?;
        if is_free || deepest == swell {
            return Some(carved);
        }
        let over = over(&carved, swell)?;
        if nearest.is_none_or(|it| over < it.1) {
            nearest = Some((swell, over));
        }
        swell = deepest;
    }
    let (swell, mut too_low) = nearest?;
    let mut raised = 1.0;
    for _ in 0..RAISES {
        raised *= 1.0 + too_low + RAISED_OVER;
        if raised > MOST_RAISED {
            return None;
        }
        let carved = at(swell, raised)?;
        if carved.shape.blade.deepest_index()? == swell {
            return Some(carved);
        }
        too_low = over(&carved, swell)?;
    }
    None
}

/// By what share the deepest station is deeper than this one.
fn over(carved: &Carved, swell: usize) -> Option<f64> {
    let blade = &carved.shape.blade;
    Some(blade.deepest()?.depth_m / blade.stations.get(swell)?.depth_m - 1.0)
}

/// Carved from a start whose swell and hollow are where they shall be.
fn carved_from(start: &BatShape, craft: &Craft, figures: &Figures, held: &Held) -> Option<Carved> {
    let swell_per_taper = match held.swell_from_toe_m {
        Some(_) => 0.0,
        None => craft.swell_per_taper,
    };
    let turned = |turn: &Turn| turned(start, craft, turn, swell_per_taper);
    let free = [
        true,
        true,
        figures.swing_moment_kg_m2.is_some(),
        held.edge_m.is_some(),
        held.depth_m.is_some(),
    ];
    let miss = |turn: &Turn| -> Vec<f64> {
        let shape = turned(turn);
        let moments = shape.mass_moments();
        let wanted = [
            Some(moments.mass_kg - figures.mass_kg),
            Some(moments.com_B().x - figures.balance_m),
            figures.swing_moment_kg_m2.map(|it| moments.swing_moment_kg_m2() - it),
            held.edge_m.map(|it| shape.blade.thickest_edge_m() - it),
            held.depth_m.map(|it| shape.blade.deepest().map_or(0.0, |s| s.depth_m) - it),
        ];
        wanted.into_iter().flatten().collect()
    };
    let mut turn = START;
    for _ in 0..STEPS {
        let off = miss(&turn);
        if off.iter().all(|it| it.abs() < NEAR) {
            let (shape, swell_move) = (turned(&turn), swell_per_taper * turn.taper);
            return Some(Carved { shape, taper: turn.taper, ends: turn.ends, swell_move });
        }
        let n = off.len();
        let mut slopes = DMatrix::<f64>::zeros(n, n);
        let unknowns = (0..5).filter(|k| free[*k]);
        for (column, k) in unknowns.clone().enumerate() {
            let mut moved = turn;
            *moved.at(k) += STEP;
            for (row, (after, before)) in miss(&moved).iter().zip(&off).enumerate() {
                slopes[(row, column)] = (after - before) / STEP;
            }
        }
        let step = slopes.lu().solve(&DVector::from_vec(off))?;
        for (column, k) in unknowns.enumerate() {
            *turn.at(k) -= step[column];
        }
        // Beyond these the blade has no thickness left somewhere.
        let sane = turn.thickness > 0.05 && turn.taper.abs() < 0.95 && turn.edges > 0.05;
        if !(sane && turn.ends.abs() < 8.0 && turn.hollow.abs() < 3.0) {
            return None;
        }
    }
    None
}

impl Turn {
    fn at(&mut self, k: usize) -> &mut f64 {
        match k {
            0 => &mut self.thickness,
            1 => &mut self.taper,
            2 => &mut self.ends,
            3 => &mut self.edges,
            _ => &mut self.hollow,
        }
    }
}

/// The shape with its thickness multiplied smoothly along the blade, and its handle heavier or lighter as
/// the ends go: what one size's craft allows.
fn turned(start: &BatShape, craft: &Craft, turn: &Turn, swell_per_taper: f64) -> BatShape {
    let mut shape = start.clone();
    shape.handle.density_kg_m3 *= 1.0 + turn.ends * craft.handle_spread;
    for it in &mut shape.blade.stations {
        it.from_shoulder += swell_per_taper * turn.taper * slide(it.from_shoulder);
        let ends = turn.ends * craft.ends_spread;
        let factor = along_factor(it.from_shoulder, turn.thickness, turn.taper, ends);
        // At the very shoulder the wood has to hold the handle, whatever the blade does.
        let cut = (it.from_shoulder / SHOULDER).min(1.0);
        let eased = |factor: f64| 1.0 + cut * (factor - 1.0);
        it.edge_m *= eased(factor * turn.edges);
        it.depth_m *= eased(factor);
        it.hollow += turn.hollow;
    }
    shape
}
