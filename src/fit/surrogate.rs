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
/// levels, and both ends of the third in the middle.
fn design() -> Vec<[f64; 3]> {
    let levels = [-1.0, -0.5, 0.5, 1.0];
    let mut nodes = vec![[0.0, 0.0, -1.0], [0.0, 0.0, 1.0]];
    for (i, a) in levels.into_iter().enumerate() {
        for (j, b) in levels.into_iter().enumerate() {
            nodes.push([a, b, [-1.0, 0.0, 1.0][(i + 2 * j) % 3]]);
        }
    }
    nodes
}

impl SurrogateFault {
    /// Whether a bat was beyond the player's control.
    pub fn is_beyond_control(&self) -> bool {
        matches!(self, Self::Innings(InningsFault::Swing(SwingFault::NoControlledSwing { .. })))
    }
}

/// Four corners of the box, enough for a plane.
const TETRAHEDRON: [[f64; 3]; 4] =
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
        let guess: Vec<f64> = middle.iter().map(|s| s.time_s).collect();
        let done = core::sync::atomic::AtomicUsize::new(0);
        let total = nodes.len() + held_out.len();
        let simulate = |bat: &Bat| {
            let near = near_times_s(&guess, &domain.middle, bat);
            let out = setting.at_end(bat, Some(&near))?;
            let n = done.fetch_add(1, core::sync::atomic::Ordering::Relaxed) + 1;
            match progress(n as f64 / total as f64) {
                ControlFlow::Continue(()) => Ok(out),
                ControlFlow::Break(()) => Err(SurrogateFault::Cancelled),
            }
        };
        let bats: Vec<Bat> = nodes.iter().map(|x| domain.bat(*x)).collect::<Result<_, _>>()?;
        let all: Vec<Vec<StrokeAtEnd>> =
            bats.par_iter().chain(held_out).map(simulate).collect::<Result<_, _>>()?;
        let (at_nodes, unseen) = all.split_at(nodes.len());
        let coefficients = regress(&nodes, at_nodes, terms).ok_or(SurrogateFault::Degenerate)?;
        let mut it = Self { domain, held_out_error: 0.0, coefficients };
        for (bat, truth) in held_out.iter().zip(unseen) {
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
        let x = self.domain.coded(bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2());
        let t = terms(x);
        self.coefficients
            .iter()
            .map(|stroke| {
                StrokeAtEnd::from_logarithms(
                    stroke.map(|c| c.iter().zip(&t).map(|(c, t)| c * t).sum::<f64>()),
                )
            })
            .collect()
    }

    /// The same surrogate for a setting a little changed: the change is simulated at four corners
    /// of the box and taken as linear in between. Where the player so changed cannot control the
    /// heaviest of them, the corners move towards the light bats with their balance near the hands.
    pub fn shifted(
        &self,
        changed: &Setting,
        progress: &(dyn Fn(f64) -> ControlFlow<()> + Sync),
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
        nodes: &[[f64; 3]; 4],
        progress: &(dyn Fn(f64) -> ControlFlow<()> + Sync),
    ) -> Result<Self, SurrogateFault> {
        let done = core::sync::atomic::AtomicUsize::new(0);
        let differences: Vec<Vec<[f64; FIGURES]>> = nodes
            .par_iter()
            .map(|x| {
                let bat = self.domain.bat(*x)?;
                let base = self.at(&bat);
                let near: Vec<f64> = base.iter().map(|s| s.time_s).collect();
                let out = changed.at_end(&bat, Some(&near))?;
                let n = done.fetch_add(1, core::sync::atomic::Ordering::Relaxed) + 1;
                if progress(n as f64 / nodes.len() as f64).is_break() {
                    return Err(SurrogateFault::Cancelled);
                }
                Ok(out
                    .iter()
                    .zip(&base)
                    .map(|(o, b)| {
                        let (o, b) = (o.logarithms(), b.logarithms());
                        core::array::from_fn(|f| o[f] - b[f])
                    })
                    .collect())
            })
            .collect::<Result<_, SurrogateFault>>()?;
        let linear = regress_values(nodes, &differences, |x| [1.0, x[0], x[1], x[2]])
            .ok_or(SurrogateFault::Degenerate)?;
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

/// Times to start searches from: the middle bat's, with the swing moment's usual pull.
pub fn near_times_s(middle_s: &[f64], middle: &Bat, bat: &Bat) -> Vec<f64> {
    let ratio = bat.swing_moment_kg_m2() / middle.swing_moment_kg_m2();
    middle_s.iter().map(|t| t * libm::pow(ratio, 0.33)).collect()
}

fn regress(
    nodes: &[[f64; 3]],
    at_nodes: &[Vec<StrokeAtEnd>],
    terms: fn([f64; 3]) -> [f64; TERMS],
) -> Option<Vec<[[f64; TERMS]; FIGURES]>> {
    let values: Vec<Vec<[f64; FIGURES]>> = at_nodes
        .iter()
        .map(|strokes| strokes.iter().map(StrokeAtEnd::logarithms).collect())
        .collect();
    regress_values(nodes, &values, terms)
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
