//! Points put anew where the answer was found.

use super::super::points::even_point;
use super::super::response::{Triangle, whitened};
use super::{LASTING, POINTS, Possible, Posterior};
use crate::normal;
use nalgebra::{Matrix4, Vector4};

/// How much wider than what was found the next points are put: the first find may be narrow by chance.
pub(super) const WIDER: [f64; 2] = [2.0, 1.4];

/// New points about those found, and the logarithm of how much likelier the tables make each than where
/// it was put. None if what was found has no width.
pub(super) fn near(
    found: &Posterior,
    spread: &Triangle,
    wider: f64,
) -> Option<(Vec<Possible>, Vec<f64>)> {
    let vector = |it: &Possible| {
        let [a, b, c] = it.ln_strength;
        Vector4::new(a, b, c, it.lasting)
    };
    let mut mean = Vector4::zeros();
    for (it, weight) in found.points.iter().zip(&found.weights) {
        mean += *weight * vector(it);
    }
    let mut covariance = Matrix4::zeros();
    for (it, weight) in found.points.iter().zip(&found.weights) {
        let off = vector(it) - mean;
        covariance += *weight * off * off.transpose();
    }
    let triangle = wider * covariance.cholesky()?.l();
    let each = |i: usize| {
        let z = Vector4::from(even_point(i).map(normal::quantile));
        let it = mean + triangle * z;
        let point = Possible { ln_strength: [it[0], it[1], it[2]], lasting: it[3] };
        let by_tables: f64 = whitened(spread, &point.ln_strength).iter().map(|it| it * it).sum();
        let by_band = (point.lasting - LASTING.mean) / LASTING.sd;
        let ln_weight = match point.lasting >= 0.0 {
            true => 0.5 * (z.norm_squared() - by_tables - by_band * by_band),
            false => f64::NEG_INFINITY,
        };
        (point, ln_weight)
    };
    Some((0..POINTS).map(each).unzip())
}
