//! The surrogate: all bats of one size as every possible player swings them.
//!
//! At 20 strengths spread over the possible players the bat now used was swung already; at 18 of them four bats of the
//! size are swung too, others at every strength, and a low polynomial in the bat's three variables, the strength and
//! their products goes through the differences. What no bat changes (the kinks where the limit passes from one joint
//! to another) is in the bat now used and cancels. Its error is measured on bats and strengths it has not seen;
//! every figure that goes on a card is simulated again. What second path and slow rise of torque do to a bat is a plane
//! through four bats.

use super::domain::{Domain, VARIABLES};
use crate::bat::{Bat, BatFault};
use crate::calibration::limit::{FIGURES, LN_TIME, LnSwing, less, swing_at};
use crate::calibration::points::even_point;
use crate::calibration::response::{times, whitened};
use crate::calibration::tiredness::Tiredness;
use crate::measurement::nets::PART_COUNT;
use crate::normal;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::{Held, SwingFault};
use crate::worth::other_path::on_paths;
use crate::worth::possible::Possible;
use crate::worth::swings::{Step, Swings};
use crate::worth::swung_bat::moved;
use crate::worth::ways::SwingsFault;
use nalgebra::{DMatrix, DVector};
use rayon::prelude::*;

/// Why a size could not be swung.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SizeFault {
    /// A swing or an innings failed, or the caller asked to stop.
    #[error(transparent)]
    Swings(#[from] SwingsFault),
    /// A node is not a bat.
    #[error(transparent)]
    Bat(#[from] BatFault),
    /// Too few nodes could be swung to determine the polynomial.
    #[error("the range of bats is too narrow to fit: widen the limits of weight")]
    Degenerate,
}

impl From<SwingFault> for SizeFault {
    fn from(fault: SwingFault) -> Self {
        Self::Swings(fault.into())
    }
}

impl SizeFault {
    /// Whether the bats were beyond the player's control.
    pub fn is_beyond_control(&self) -> bool {
        matches!(self, Self::Swings(SwingsFault::BeyondControl) | Self::Degenerate)
    }
}

/// Terms of the bat alone but the constant: cubic in mass and balance, quadratic in the swing moment's deviation.
const BAT_TERMS: usize = 13;
/// Terms of the strength alone, with the constant: quadratic.
const STRENGTH_TERMS: usize = 10;
/// Their products: each variable with each strength and its square.
const PRODUCTS: usize = 2 * VARIABLES * PART_COUNT;
/// All of them.
const TERMS: usize = BAT_TERMS + STRENGTH_TERMS + PRODUCTS;

fn terms(bat: [f64; VARIABLES], x: &[f64; PART_COUNT]) -> [f64; TERMS] {
    let [a, b, c] = bat;
    let [s, t, u] = *x;
    let of_bat = [
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
    ];
    let of_strength = [1.0, s, t, u, s * s, s * t, s * u, t * t, t * u, u * u];
    let mut out = [0.0; TERMS];
    out[..BAT_TERMS].copy_from_slice(&of_bat);
    out[BAT_TERMS..BAT_TERMS + STRENGTH_TERMS].copy_from_slice(&of_strength);
    let products = bat.iter().flat_map(|b| x.iter().flat_map(move |x| [b * x, b * x * x]));
    for (place, product) in out[BAT_TERMS + STRENGTH_TERMS..].iter_mut().zip(products) {
        *place = product;
    }
    out
}

/// Mean and slopes.
const PLANE: usize = 1 + VARIABLES;

fn plane([a, b, c]: [f64; VARIABLES]) -> [f64; PLANE] {
    [1.0, a, b, c]
}

/// Corners of the box that are enough for a plane.
const CORNERS: [[f64; VARIABLES]; 4] =
    [[1.0, 1.0, 1.0], [1.0, -1.0, -1.0], [-1.0, 1.0, -1.0], [-1.0, -1.0, 1.0]];

/// Bats swung at each strength.
const BATS_EACH: usize = 4;
/// Strengths at which bats of the size are swung.
const STRENGTHS: usize = 18;
/// Strengths and bats not swung before, on which the polynomial is tried.
const HELD_OUT: core::ops::Range<usize> = 600..604;
/// Further off than this the products are held.
const FURTHEST: f64 = 2.5;

/// Four by four points in mass and balance (Chebyshev and Lobatto), the third variable cycling through its levels,
/// and both ends of the third in the middle; in an order in which four neighbours lie far apart.
fn design() -> Vec<[f64; VARIABLES]> {
    let levels = [-1.0, -0.5, 0.5, 1.0];
    let mut all = vec![[0.0, 0.0, -1.0], [0.0, 0.0, 1.0]];
    for (i, a) in levels.into_iter().enumerate() {
        for (j, b) in levels.into_iter().enumerate() {
            all.push([a, b, [-1.0, 0.0, 1.0][(i + 2 * j) % 3]]);
        }
    }
    // 7 has no factor in common with 18: every point comes once.
    (0..all.len()).map(|n| all[(7 * n) % all.len()]).collect()
}

/// One bat of the size at one strength.
#[derive(Clone, Copy, Debug)]
struct Node {
    bat: [f64; VARIABLES],
    ln_strength: [f64; PART_COUNT],
}

/// A size swung.
#[derive(Clone, Debug)]
pub struct SizeSwings {
    /// The box it covers.
    pub domain: Domain,
    /// Largest error of a time or speed against the bat now used, on bats and strengths not swung before, as a share.
    pub held_out_error: f64,
    /// By stroke.
    strokes: Vec<Stroke>,
    /// By score: fatigue without lasting loss and for all of it, as planes in the bat's variables.
    tired: Vec<[[[f64; PLANE]; PART_COUNT]; 2]>,
}

/// One stroke: what the bat now used lacks to any bat of the size.
#[derive(Clone, Debug)]
struct Stroke {
    against: [[f64; TERMS]; FIGURES],
    path: [[f64; PLANE]; FIGURES],
    rise: [[f64; PLANE]; FIGURES],
    law: [[f64; PLANE]; FIGURES],
}

impl SizeSwings {
    /// Swings the size.
    pub fn new(swings: &Swings, domain: Domain, step: Step<'_>) -> Result<Self, SizeFault> {
        let batter = &swings.ways.batter;
        let design = design();
        let mut nodes: Vec<Node> =
            CORNERS.map(|bat| Node { bat, ln_strength: swings.strengths[0] }).to_vec();
        for (n, ln_strength) in swings.strengths.iter().take(STRENGTHS).enumerate().skip(1) {
            let bats = (0..BATS_EACH).map(|j| design[(BATS_EACH * n + j) % design.len()]);
            nodes.extend(bats.map(|bat| Node { bat, ln_strength: *ln_strength }));
        }
        let corners: Vec<Bat> = CORNERS.iter().map(|x| domain.bat(*x)).collect::<Result<_, _>>()?;
        let taken_up: Vec<Vec<Held>> =
            corners.iter().map(|bat| batter.take_up(bat)).collect::<Result<_, _>>()?;
        let tired = tired(swings, &taken_up)?;
        let strokes: Vec<(Stroke, f64)> = (0..batter.strokes.len())
            .map(|k| one_stroke(swings, &domain, &nodes, k, step))
            .collect::<Result<_, _>>()?;
        let held_out_error = strokes.iter().map(|(_, error)| *error).fold(0.0, f64::max);
        let strokes = strokes.into_iter().map(|(stroke, _)| stroke).collect();
        Ok(Self { domain, held_out_error, strokes, tired })
    }

    /// Figures of a stroke at a score with a bat of the size, for a possible player.
    pub fn figures(
        &self,
        swings: &Swings,
        bat: [f64; VARIABLES],
        stroke: usize,
        score: usize,
        it: &Possible,
    ) -> [f64; FIGURES] {
        let at = plane(bat);
        let [without, per_share] = &self.tired[score];
        let tiredness = Tiredness {
            ln_without: without.map(|it| dot(&it, &at)),
            ln_per_share: per_share.map(|it| dot(&it, &at)),
        };
        let strength = tiredness.tired(&it.strength.ln_strength, it.strength.lasting);
        let swung = &self.strokes[stroke];
        let base = swings.base_at(stroke, &strength);
        let terms = terms(bat, &held(swings, &strength));
        core::array::from_fn(|f| {
            base[f]
                + dot(&swung.against[f], &terms)
                + it.path * dot(&swung.path[f], &at)
                + it.rise * dot(&swung.rise[f], &at)
                + it.law * dot(&swung.law[f], &at)
        })
    }
}

fn dot<const K: usize>(a: &[f64; K], b: &[f64; K]) -> f64 {
    a.iter().zip(b).map(|(a, b)| a * b).sum()
}

/// A strength in coordinates of equal spread, held where nothing was swung.
fn held(swings: &Swings, ln_strength: &[f64; PART_COUNT]) -> [f64; PART_COUNT] {
    let x = whitened(&swings.region, ln_strength);
    let away = libm::sqrt(x.iter().map(|it| it * it).sum::<f64>());
    if away > FURTHEST { x.map(|it| it * FURTHEST / away) } else { x }
}

/// Fatigue at every score, as planes through the corners.
fn tired(
    swings: &Swings,
    taken_up: &[Vec<Held>],
) -> Result<Vec<[[[f64; PLANE]; PART_COUNT]; 2]>, SizeFault> {
    let by_corner: Vec<Vec<Tiredness>> = taken_up
        .par_iter()
        .map(|it| swings.ways.tiredness(it, &swings.scores))
        .collect::<Result<_, SwingsFault>>()?;
    let through = |of: &dyn Fn(&Tiredness) -> f64, score: usize| {
        through_corners(&core::array::from_fn(|c| of(&by_corner[c][score])))
    };
    let scores = 0..swings.scores.runs.len();
    Ok(scores
        .map(|score| {
            [
                core::array::from_fn(|part| through(&|it| it.ln_without[part], score)),
                core::array::from_fn(|part| through(&|it| it.ln_per_share[part], score)),
            ]
        })
        .collect())
}

/// The plane through values at the corners, whose signs are orthogonal.
fn through_corners(values: &[f64; 4]) -> [f64; PLANE] {
    let mut out = [0.0; PLANE];
    for (corner, value) in CORNERS.iter().zip(values) {
        for (c, x) in out.iter_mut().zip(plane(*corner)) {
            *c += 0.25 * x * value;
        }
    }
    out
}

/// The same of each figure.
fn planes(by_corner: &[[f64; FIGURES]]) -> [[f64; PLANE]; FIGURES] {
    core::array::from_fn(|f| through_corners(&core::array::from_fn(|c| by_corner[c][f])))
}

type Sample = (Node, [f64; FIGURES]);

fn one_stroke(
    swings: &Swings,
    domain: &Domain,
    nodes: &[Node],
    stroke: usize,
    step: Step<'_>,
) -> Result<(Stroke, f64), SizeFault> {
    let ways = &swings.ways;
    // A bat against the bat now used at the same strength; nothing where it is beyond control.
    let against = |node: &Node, base: &LnSwing, usual: Option<&[[f64; PLANE]; FIGURES]>| {
        if step().is_break() {
            return Err(SizeFault::from(SwingsFault::Cancelled));
        }
        let bat = domain.bat(node.bat)?;
        let held = ways.batter.strokes[stroke].hold(&bat)?;
        let more = usual.map_or_else(
            || swings.expected_shift(stroke, &bat),
            |it| dot(&it[0], &plane(node.bat)),
        );
        let near = swings.near(stroke, base[LN_TIME] + more);
        let swung = swing_at(&held, &node.ln_strength, Some(near));
        Ok(swung.map(|it| less(&it.swing, base)))
    };
    let of_node = |node: &Node, usual: Option<&[[f64; PLANE]; FIGURES]>| {
        against(node, &swings.base_at(stroke, &node.ln_strength), usual)
    };
    // The corners at the likeliest strength tell nearly what to expect of the others.
    let (first, rest) = nodes.split_at(CORNERS.len());
    let at_corners: Vec<Option<[f64; FIGURES]>> =
        first.par_iter().map(|it| of_node(it, None)).collect::<Result<_, _>>()?;
    let Some(at_corners) = at_corners.into_iter().collect::<Option<Vec<_>>>() else {
        return Err(SwingsFault::BeyondControl.into());
    };
    let usual = planes(&at_corners);
    let others: Vec<Option<[f64; FIGURES]>> =
        rest.par_iter().map(|it| of_node(it, Some(&usual))).collect::<Result<_, _>>()?;
    let mut samples: Vec<Sample> = first.iter().copied().zip(at_corners.iter().copied()).collect();
    samples.extend(rest.iter().zip(others).filter_map(|(node, it)| Some((*node, it?))));
    let against_terms = regress(swings, &samples).ok_or(SizeFault::Degenerate)?;

    let base = swings.base_at(stroke, &[0.0; PART_COUNT]);
    let here: [LnSwing; 4] =
        core::array::from_fn(|corner| core::array::from_fn(|f| base[f] + at_corners[corner][f]));
    let of_base = &swings.base.strokes[stroke];
    // What a way of swinging adds, at the corners and between them.
    type Added<'a> = &'a (dyn Fn(&Bat, &LnSwing) -> Result<[f64; FIGURES], SwingFault> + Sync);
    let way = |added: Added<'_>| -> Result<[[f64; PLANE]; FIGURES], SizeFault> {
        let by_corner: Vec<[f64; FIGURES]> = CORNERS
            .par_iter()
            .zip(&here)
            .map(|(corner, here)| Ok(added(&domain.bat(*corner)?, here)?))
            .collect::<Result<_, SizeFault>>()?;
        Ok(planes(&by_corner))
    };
    let near = |ln_time: f64| swings.near(stroke, ln_time);
    let by_law = |batter: &Batter, usual: &[f64; FIGURES]| {
        way(&|bat, here| {
            let held = batter.strokes[stroke].hold(bat)?;
            Ok(moved(&held, here, near(here[LN_TIME] + usual[0])))
        })
    };
    let swung = Stroke {
        against: against_terms,
        path: way(&|bat, here| {
            let paths = &ways.other_paths[stroke];
            Ok(on_paths(paths, bat, here, &near, Some(&of_base.on_paths))?.best)
        })?,
        rise: by_law(&ways.slow_rise, &of_base.rise)?,
        law: by_law(&ways.held_harder, &of_base.law)?,
    };

    let tried = |i: usize| -> Result<f64, SizeFault> {
        let [a, b, c, d] = even_point(i);
        let z = [a, b, c].map(normal::quantile);
        let ln_strength = times(&swings.region, z.map(|it| SEEN_SHARE * it));
        let bat = [2.0 * d - 1.0, 2.0 * a - 1.0, 2.0 * b - 1.0];
        let node = Node { bat, ln_strength };
        // The bat now used is swung too: between its own strengths it is not exact.
        let base_held = ways.batter.strokes[stroke].hold(&swings.base_made)?;
        let near = near(swings.base_at(stroke, &ln_strength)[LN_TIME]);
        let Some(base) = swing_at(&base_held, &ln_strength, Some(near)) else { return Ok(0.0) };
        let Some(truth) = against(&node, &base.swing, Some(&usual))? else { return Ok(0.0) };
        let terms = terms(bat, &held(swings, &ln_strength));
        let off = |f: usize| (dot(&swung.against[f], &terms) - truth[f]).abs();
        Ok((0..FIGURES).map(off).fold(0.0, f64::max))
    };
    let errors: Vec<f64> = HELD_OUT.into_par_iter().map(tried).collect::<Result<_, _>>()?;
    Ok((swung, errors.into_iter().fold(0.0, f64::max)))
}

/// How far the strengths tried lie, over the possible players' spread.
const SEEN_SHARE: f64 = 0.7;

/// Least squares of each figure on the terms.
fn regress(swings: &Swings, samples: &[Sample]) -> Option<[[f64; TERMS]; FIGURES]> {
    if samples.len() < TERMS + TERMS / 4 {
        return None;
    }
    let rows: Vec<[f64; TERMS]> =
        samples.iter().map(|(node, _)| terms(node.bat, &held(swings, &node.ln_strength))).collect();
    let a = DMatrix::from_fn(rows.len(), TERMS, |i, j| rows[i][j]);
    let factor = (a.transpose() * &a).cholesky()?;
    let mut out = [[0.0; TERMS]; FIGURES];
    for (f, row) in out.iter_mut().enumerate() {
        let y = DVector::from_iterator(samples.len(), samples.iter().map(|(_, it)| it[f]));
        row.copy_from_slice(factor.solve(&(a.transpose() * y)).as_slice());
    }
    Some(out)
}
