//! How fast one stroke with one bat is, for every strength the player may have.
//!
//! Full simulations at points spread over what the tables allow, and between them the smoothest
//! function through all (cubic radial basis functions with a linear tail). The limit passes from one
//! joint to another within that spread, so that neither a slope nor a parabola would do: the junior's pull takes 8.5 %
//! longer with a trunk 26 % weaker, and 0.8 % less with one 35 % stronger.

use super::limit::{FIGURES, LN_TIME, Limit, LnSwing, Near, Slopes, less, swing_at};
use super::points::even_point;
use super::radial::Radial;
use crate::measurement::nets::PART_COUNT;
use crate::normal;
use crate::swing::player_stroke::Held;
use core::ops::ControlFlow;
use rayon::prelude::*;

/// Swings at the limit of control, for every strength.
#[derive(Clone, Debug)]
pub struct Response {
    /// Lower triangle of the tables' covariance; nodes stand in coordinates of equal spread.
    spread: Triangle,
    surface: Radial<FIGURES>,
    /// Mean slopes at the limit of control.
    slopes: Option<Slopes>,
    /// Added for another bat than the one simulated: constant and slopes of each figure.
    shift: [[f64; PART_COUNT + 1]; FIGURES],
}

/// Why there is none.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum ResponseFault {
    /// Not half of the strengths tried let the player control the stroke.
    #[error("with most strengths that the tables allow, this bat is beyond this player's control")]
    BeyondControl,
    /// The caller asked to stop.
    #[error("cancelled")]
    Cancelled,
}

/// Simulations of one stroke. More make the curve truer: 40 leave about 1 % of the time.
const NODES: usize = 40;
/// Spread of the nodes over that of the tables, so that the tails are inside.
const REACH: f64 = 1.5;
/// Beyond this many standard deviations of the tables the curve is held.
const FURTHEST: f64 = 3.5;

/// A lower triangle over the parts.
pub type Triangle = [[f64; PART_COUNT]; PART_COUNT];

/// Lower triangle times a vector.
pub fn times(triangle: &Triangle, z: [f64; PART_COUNT]) -> [f64; PART_COUNT] {
    core::array::from_fn(|i| (0..PART_COUNT).map(|j| triangle[i][j] * z[j]).sum())
}

/// The lower triangle L with L Lᵀ the covariance; a direction without spread stays without.
pub fn triangle(covariance: &Triangle) -> Triangle {
    let mut l = [[0.0; PART_COUNT]; PART_COUNT];
    for i in 0..PART_COUNT {
        for j in 0..=i {
            let rest = covariance[i][j] - (0..j).map(|k| l[i][k] * l[j][k]).sum::<f64>();
            l[i][j] = match (i == j, l[j][j] > 0.0) {
                (true, _) => libm::sqrt(rest.max(0.0)),
                (false, true) => rest / l[j][j],
                (false, false) => 0.0,
            };
        }
    }
    l
}

/// A vector in coordinates in which the covariance L Lᵀ of this lower triangle is the unit matrix: solution x of
/// L x = b, the diagonal of L positive.
pub fn whitened(l: &Triangle, b: &[f64; PART_COUNT]) -> [f64; PART_COUNT] {
    let mut x = [0.0; PART_COUNT];
    for (i, row) in l.iter().enumerate() {
        let known: f64 = row.iter().zip(&x).take(i).map(|(l, x)| l * x).sum();
        x[i] = (b[i] - known) / row[i].max(f64::MIN_POSITIVE);
    }
    x
}

/// Strengths at which a stroke is simulated, as logarithms over the tables': the tables' own first.
pub fn node_strengths(spread: &Triangle) -> Vec<[f64; PART_COUNT]> {
    let node = |i: usize| {
        let p = even_point(i);
        times(spread, core::array::from_fn(|j| REACH * normal::quantile(p[j])))
    };
    core::iter::once([0.0; PART_COUNT]).chain((1..NODES).map(node)).collect()
}

/// Strengths at which the difference between two bats is simulated: four corners make a plane.
const CORNERS: [[f64; PART_COUNT]; 4] =
    [[0.9, 0.9, 0.9], [0.9, -0.9, -0.9], [-0.9, 0.9, -0.9], [-0.9, -0.9, 0.9]];

impl Response {
    /// Simulates one stroke with one bat at these strengths, the likeliest first; `spread` is the lower
    /// triangle of a covariance that they fill, `near` a guess of the first's stroke time, on the logarithm.
    pub fn over(
        held: &Held,
        spread: &Triangle,
        strengths: &[[f64; PART_COUNT]],
        near: Option<f64>,
        step: &(dyn Fn() -> ControlFlow<()> + Sync),
    ) -> Result<Self, ResponseFault> {
        let likeliest = strengths.first().ok_or(ResponseFault::BeyondControl)?;
        let near = near.map(|ln_time| Near { ln_time, slopes: None });
        let start = swing_at(held, likeliest, near).ok_or(ResponseFault::BeyondControl)?;
        let mut found = vec![(whitened(spread, likeliest), start)];
        let others = strengths.get(1..).unwrap_or_default();
        let (first, rest) = others.split_at(FIRST.min(others.len()));
        for part in [first, rest] {
            let guide = Guide::through(&found, start.swing[LN_TIME]);
            let swung = part
                .par_iter()
                .map(|strength| {
                    let x = whitened(spread, strength);
                    match step() {
                        ControlFlow::Break(()) => Err(ResponseFault::Cancelled),
                        ControlFlow::Continue(()) => {
                            Ok((x, swing_at(held, strength, Some(guide.near(&x)))))
                        }
                    }
                })
                .collect::<Result<Vec<_>, _>>()?;
            found.extend(swung.into_iter().filter_map(|(x, it)| Some((x, it?))));
        }
        if 2 * found.len() < strengths.len() {
            return Err(ResponseFault::BeyondControl);
        }
        let slopes = Slopes::mean(found.iter().filter_map(|(_, it)| it.slopes));
        let (nodes, values): (Vec<_>, Vec<_>) = found.iter().map(|(x, it)| (*x, it.swing)).unzip();
        let surface = Radial::through(nodes, &values).ok_or(ResponseFault::BeyondControl)?;
        Ok(Self { spread: *spread, surface, slopes, shift: [[0.0; PART_COUNT + 1]; FIGURES] })
    }

    /// The same stroke with another bat: the difference is simulated at four strengths and taken as a
    /// plane between them. `longer` is a guess of how much longer the stroke takes, on the logarithm.
    pub fn with_bat(&self, held: &Held, longer: f64) -> Result<Self, ResponseFault> {
        let difference = |corner: &[f64; PART_COUNT], longer: f64| {
            let strength = times(&self.spread, *corner);
            let here = self.at(&strength);
            let there = swing_at(held, &strength, Some(self.near(here[LN_TIME] + longer)))
                .ok_or(ResponseFault::BeyondControl)?;
            Ok(less(&there.swing, &here))
        };
        // The first tells the others where to look.
        let [first, others @ ..] = &CORNERS;
        let first = difference(first, longer)?;
        let others = others.par_iter().map(|corner| difference(corner, first[0]));
        let others = others.collect::<Result<Vec<_>, _>>()?;
        let differences: Vec<_> = core::iter::once(first).chain(others).collect();
        let mut out = self.clone();
        // The corners are those of a regular tetrahedron: their signs are orthogonal.
        for (f, shift) in out.shift.iter_mut().enumerate() {
            for (corner, by) in CORNERS.iter().zip(&differences) {
                shift[0] += 0.25 * by[f];
                for (slope, side) in shift.iter_mut().skip(1).zip(corner) {
                    *slope += 0.25 * by[f] / side;
                }
            }
        }
        Ok(out)
    }

    /// Where a search near a stroke time starts, by what this stroke's own searches saw.
    pub fn near(&self, ln_time: f64) -> Near {
        Near { ln_time, slopes: self.slopes }
    }

    /// The fastest controlled swing with this strength, as logarithms over the tables'.
    pub fn at(&self, ln_strength: &[f64; PART_COUNT]) -> LnSwing {
        let mut x = whitened(&self.spread, ln_strength);
        let away = libm::sqrt(x.iter().map(|it| it * it).sum::<f64>());
        if away > FURTHEST {
            x = x.map(|it| it * FURTHEST / away);
        }
        let mut figures = self.surface.at(&x);
        for (figure, shift) in figures.iter_mut().zip(&self.shift) {
            *figure += core::iter::once(1.0).chain(x).zip(shift).map(|(x, s)| x * s).sum::<f64>();
        }
        figures
    }
}

/// A strength, whitened, and the limit of control there.
type Found = ([f64; PART_COUNT], Limit);

/// What the strengths swung so far say of the others.
struct Guide {
    ln_time: Option<Radial<1>>,
    start: f64,
    slopes: Option<Slopes>,
}

/// Strengths swung before the others, besides the likeliest.
const FIRST: usize = 7;

impl Guide {
    fn through(found: &[Found], start: f64) -> Self {
        let (nodes, values): (Vec<_>, Vec<_>) =
            found.iter().map(|(x, it)| (*x, [it.swing[LN_TIME]])).unzip();
        let determined = nodes.len() > PART_COUNT + 1;
        Self {
            ln_time: determined.then(|| Radial::through(nodes, &values)).flatten(),
            start,
            slopes: Slopes::mean(found.iter().filter_map(|(_, it)| it.slopes)),
        }
    }

    fn near(&self, x: &[f64; PART_COUNT]) -> Near {
        let ln_time = self.ln_time.as_ref().map_or(self.start, |it| it.at(x)[0]);
        Near { ln_time, slopes: self.slopes }
    }
}
