//! A low polynomial in the bat's three figures fitted to full simulations of this very player.
//!
//! Variables: logarithm of the mass, balance point, and logarithm of the swing moment over that of a
//! bat with the reference's spread of mass. Good for the map and for finding where to look; every
//! figure that goes on a card is simulated again. Its error on bats it has not seen is measured.

use super::setting::{FIGURES, Setting, StrokeAtEnd};
use crate::bat::expected::bat_with_swing_moment;
use crate::bat::family::Family;
use crate::bat::{Bat, BatFault};
use crate::innings::played::InningsFault;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::swing::player_stroke::SwingFault;
use core::ops::ControlFlow;
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

/// Why a surrogate could not be made.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SurrogateFault {
    /// A simulation failed.
    #[error(transparent)]
    Innings(#[from] InningsFault),
    /// A node is not a bat.
    #[error(transparent)]
    Bat(#[from] BatFault),
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
    /// The nodes do not determine the quadratic.
    #[error("the range of bats is too narrow to fit: widen the limits of weight")]
    Degenerate,
}

/// The box of bats a surrogate covers.
#[derive(Clone, Debug, PartialEq)]
pub struct Domain {
    /// Family whose bats these are.
    pub family: Family,
    /// Its reference bat.
    pub middle: Bat,
    /// Lowest and highest mass, kg.
    pub mass_kg: [f64; 2],
    /// Nearest and furthest balance point from the top, m.
    pub balance_m: [f64; 2],
    /// Half the range of the logarithm of the swing moment about the plain one.
    pub swing_spread: f64,
}

/// Cubic in mass and balance, quadratic in the swing moment's deviation with its products.
const TERMS: usize = 14;

impl Domain {
    /// Swing moment of a bat whose mass is spread about its balance point as the middle bat's is.
    fn plain_swing_moment(&self, mass_kg: f64, balance_m: f64) -> f64 {
        let gyration2 = self.middle.I_Com_B().y_axis.y / self.middle.mass_kg();
        let d = balance_m - PICKUP_AXIS_FROM_TOP_M;
        mass_kg * (gyration2 + d * d)
    }

    /// Coded variables of a bat, each within ±1 inside the box.
    pub fn coded(&self, mass_kg: f64, balance_m: f64, swing_moment_kg_m2: f64) -> [f64; 3] {
        let [m0, m1] = self.mass_kg.map(libm::log);
        let [b0, b1] = self.balance_m;
        let plain = self.plain_swing_moment(mass_kg, balance_m);
        [
            (2.0 * libm::log(mass_kg) - m0 - m1) / (m1 - m0),
            (2.0 * balance_m - b0 - b1) / (b1 - b0),
            libm::log(swing_moment_kg_m2 / plain) / self.swing_spread,
        ]
    }

    /// Coded variables of a bat.
    fn coded_of(&self, bat: &Bat) -> [f64; 3] {
        self.coded(bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2())
    }

    /// A bat at coded variables.
    pub fn bat(&self, x: [f64; 3]) -> Result<Bat, BatFault> {
        let [m0, m1] = self.mass_kg.map(libm::log);
        let mass_kg = libm::exp(0.5 * (m0 + m1 + x[0] * (m1 - m0)));
        let balance_m = 0.5
            * (self.balance_m[0]
                + self.balance_m[1]
                + x[1] * (self.balance_m[1] - self.balance_m[0]));
        let swing =
            self.plain_swing_moment(mass_kg, balance_m) * libm::exp(x[2] * self.swing_spread);
        bat_with_swing_moment(&self.family, self.middle.label(), mass_kg, balance_m, swing)
    }
}

fn terms(x: [f64; 3]) -> [f64; TERMS] {
    let [a, b, c] = x;
    [
        1.0,
        a,
        b,
        c,
        a * a,
        a * b,
        b * b,
        a * a * a,
        a * a * b,
        a * b * b,
        b * b * b,
        c * c,
        a * c,
        b * c,
    ]
}

/// Four by four points in mass and balance (Chebyshev–Lobatto), the third variable cycling through its
/// levels, and both ends of the third in the middle. The corners and the ends come first, [`OUTER`] in all.
fn design() -> Vec<[f64; 3]> {
    let levels = [-1.0, -0.5, 0.5, 1.0];
    let mut corners = vec![[0.0, 0.0, -1.0], [0.0, 0.0, 1.0]];
    let mut others = Vec::new();
    for (i, a) in levels.into_iter().enumerate() {
        for (j, b) in levels.into_iter().enumerate() {
            let node = [a, b, [-1.0, 0.0, 1.0][(i + 2 * j) % 3]];
            let corner = (i == 0 || i == 3) && (j == 0 || j == 3);
            if corner { corners.push(node) } else { others.push(node) }
        }
    }
    corners.extend(others);
    corners
}

/// Nodes that are swung first: they tell nearly what to expect of the others.
const OUTER: usize = 6;

/// Mean and slopes.
fn plane([a, b, c]: [f64; 3]) -> [f64; 4] {
    [1.0, a, b, c]
}

impl SurrogateFault {
    /// Whether a bat was beyond the player's control.
    pub fn is_beyond_control(&self) -> bool {
        matches!(self, Self::Innings(InningsFault::Swing(SwingFault::NoControlledSwing { .. })))
    }
}

/// Corners of the box that are enough for a plane.
pub const CORNERS: usize = 4;
const TETRAHEDRON: [[f64; 3]; CORNERS] =
    [[1.0, 1.0, 1.0], [1.0, -1.0, -1.0], [-1.0, 1.0, -1.0], [-1.0, -1.0, 1.0]];

/// A surrogate of all strokes at the end of the innings.
#[derive(Clone, Debug)]
pub struct Surrogate {
    /// The box it covers.
    pub domain: Domain,
    /// Largest error of a time or speed on bats it was not fitted to, as a share.
    pub held_out_error: f64,
    coefficients: Vec<[[f64; TERMS]; FIGURES]>,
}

/// Figures whose error counts: times and speeds, not the wrist share, whose peak is not smooth.
const JUDGED: [usize; 4] = [0, 1, 2, 3];

impl Surrogate {
    /// Simulates the nodes and fits; `held_out` are bats of the box to measure the error on.
    pub fn fit(
        setting: &Setting,
        domain: Domain,
        held_out: &[Bat],
        progress: &(dyn Fn(f64) -> ControlFlow<()> + Sync),
    ) -> Result<Self, SurrogateFault> {
        let nodes = design();
        let middle = setting.at_end(&domain.bat([0.0; 3])?, None)?;
        let done = core::sync::atomic::AtomicUsize::new(0);
        let total = nodes.len() + held_out.len();
        let simulate = |bat: &Bat, near: Vec<StrokeAtEnd>| {
            let out = setting.at_end(bat, Some(&near))?;
            let n = done.fetch_add(1, core::sync::atomic::Ordering::Relaxed) + 1;
            match progress(n as f64 / total as f64) {
                ControlFlow::Continue(()) => Ok(out),
                ControlFlow::Break(()) => Err(SurrogateFault::Cancelled),
            }
        };
        let bats: Vec<Bat> = nodes.iter().map(|x| domain.bat(*x)).collect::<Result<_, _>>()?;
        let mut at_nodes: Vec<Vec<StrokeAtEnd>> = bats[..OUTER]
            .par_iter()
            .map(|bat| simulate(bat, near_middle(&middle, &domain.middle, bat)))
            .collect::<Result<_, _>>()?;
        let slopes =
            regress(&nodes[..OUTER], &at_nodes, plane).ok_or(SurrogateFault::Degenerate)?;
        let expect = |bat: &Bat| evaluate(&slopes, plane(domain.coded_of(bat)));
        let mut rest: Vec<Vec<StrokeAtEnd>> = bats[OUTER..]
            .par_iter()
            .chain(held_out)
            .map(|bat| simulate(bat, expect(bat)))
            .collect::<Result<_, _>>()?;
        let unseen = rest.split_off(nodes.len() - OUTER);
        at_nodes.append(&mut rest);
        let coefficients = regress(&nodes, &at_nodes, terms).ok_or(SurrogateFault::Degenerate)?;
        let mut it = Self { domain, held_out_error: 0.0, coefficients };
        for (bat, truth) in held_out.iter().zip(&unseen) {
            for (ours, truth) in it.at(bat).iter().zip(truth) {
                let (a, b) = (ours.logarithms(), truth.logarithms());
                for f in JUDGED {
                    it.held_out_error = it.held_out_error.max((a[f] - b[f]).abs());
                }
            }
        }
        Ok(it)
    }

    /// All strokes with a bat of the box.
    pub fn at(&self, bat: &Bat) -> Vec<StrokeAtEnd> {
        evaluate(&self.coefficients, terms(self.domain.coded_of(bat)))
    }

    /// The same surrogate for a setting a little changed: the change is simulated at four corners
    /// of the box and taken as linear in between. Where the player so changed cannot control the
    /// heaviest of them, the corners move towards the light bats with their balance near the hands.
    /// `progress` is told of each corner swung.
    pub fn shifted(
        &self,
        changed: &Setting,
        progress: &(dyn Fn() -> ControlFlow<()> + Sync),
    ) -> Result<Self, SurrogateFault> {
        let mut shifted = self.shifted_by(changed, &TETRAHEDRON, progress);
        for shrink in [0.5, 0.25] {
            if !shifted.as_ref().is_err_and(SurrogateFault::is_beyond_control) {
                break;
            }
            let light = |at: f64| shrink * (at + 1.0) - 1.0;
            let nodes =
                TETRAHEDRON.map(|[mass, balance, swing]| [light(mass), light(balance), swing]);
            shifted = self.shifted_by(changed, &nodes, progress);
        }
        shifted
    }

    fn shifted_by(
        &self,
        changed: &Setting,
        nodes: &[[f64; 3]; CORNERS],
        progress: &(dyn Fn() -> ControlFlow<()> + Sync),
    ) -> Result<Self, SurrogateFault> {
        let at_node = |x: &[f64; 3], usual: Option<&Vec<[f64; FIGURES]>>| {
            let bat = self.domain.bat(*x)?;
            let base = self.at(&bat);
            let out = changed.at_end(&bat, Some(&moved_by(&base, usual)))?;
            if progress().is_break() {
                return Err(SurrogateFault::Cancelled);
            }
            let difference = |(o, b): (&StrokeAtEnd, &StrokeAtEnd)| {
                let (o, b) = (o.logarithms(), b.logarithms());
                core::array::from_fn(|f| o[f] - b[f])
            };
            Ok(out.iter().zip(&base).map(difference).collect())
        };
        // The first tells nearly what to expect of the others.
        let [first, others @ ..] = nodes;
        let mut differences: Vec<Vec<[f64; FIGURES]>> = vec![at_node(first, None)?];
        let usual = differences.first();
        let rest: Vec<_> =
            others.par_iter().map(|x| at_node(x, usual)).collect::<Result<_, _>>()?;
        differences.extend(rest);
        let linear =
            regress_values(nodes, &differences, plane).ok_or(SurrogateFault::Degenerate)?;
        let mut out = self.clone();
        for (stroke, add) in out.coefficients.iter_mut().zip(&linear) {
            for (c, a) in stroke.iter_mut().zip(add) {
                for (c, a) in c.iter_mut().zip(a) {
                    *c += a;
                }
            }
        }
        Ok(out)
    }
}

/// To start searches from: the middle bat's strokes, their times with the swing moment's usual pull.
pub fn near_middle(at_middle: &[StrokeAtEnd], middle: &Bat, bat: &Bat) -> Vec<StrokeAtEnd> {
    let slower = libm::pow(bat.swing_moment_kg_m2() / middle.swing_moment_kg_m2(), 0.33);
    let near = |it: &StrokeAtEnd| StrokeAtEnd {
        time_s: it.time_s * slower,
        held_back_time_s: it.held_back_time_s * slower,
        ..*it
    };
    at_middle.iter().map(near).collect()
}

/// Each stroke's figures by polynomials in their logarithms.
fn evaluate<const K: usize>(
    coefficients: &[[[f64; K]; FIGURES]],
    terms: [f64; K],
) -> Vec<StrokeAtEnd> {
    let value = |c: [f64; K]| c.iter().zip(&terms).map(|(c, t)| c * t).sum::<f64>();
    coefficients.iter().map(|stroke| StrokeAtEnd::from_logarithms(stroke.map(value))).collect()
}

fn regress<const K: usize>(
    nodes: &[[f64; 3]],
    at_nodes: &[Vec<StrokeAtEnd>],
    terms: fn([f64; 3]) -> [f64; K],
) -> Option<Vec<[[f64; K]; FIGURES]>> {
    let values: Vec<Vec<[f64; FIGURES]>> = at_nodes
        .iter()
        .map(|strokes| strokes.iter().map(StrokeAtEnd::logarithms).collect())
        .collect();
    regress_values(nodes, &values, terms)
}

/// Figures moved by differences of their logarithms.
fn moved_by(base: &[StrokeAtEnd], by: Option<&Vec<[f64; FIGURES]>>) -> Vec<StrokeAtEnd> {
    let Some(by) = by else { return base.to_vec() };
    let moved = |(it, by): (&StrokeAtEnd, &[f64; FIGURES])| {
        let l = it.logarithms();
        StrokeAtEnd::from_logarithms(core::array::from_fn(|f| l[f] + by[f]))
    };
    base.iter().zip(by).map(moved).collect()
}

/// Least squares of each figure of each stroke on the terms.
fn regress_values<const K: usize>(
    nodes: &[[f64; 3]],
    values: &[Vec<[f64; FIGURES]>],
    terms: fn([f64; 3]) -> [f64; K],
) -> Option<Vec<[[f64; K]; FIGURES]>> {
    let a = DMatrix::from_fn(nodes.len(), K, |i, j| terms(nodes[i])[j]);
    let factor = (a.transpose() * &a).cholesky()?;
    let strokes = values.first()?.len();
    let mut out = vec![[[0.0; K]; FIGURES]; strokes];
    for (s, stroke) in out.iter_mut().enumerate() {
        for (f, row) in stroke.iter_mut().enumerate() {
            let y = DVector::from_iterator(nodes.len(), values.iter().map(|v| v[s][f]));
            let c = factor.solve(&(a.transpose() * y));
            row.copy_from_slice(c.as_slice());
        }
    }
    Some(out)
}
