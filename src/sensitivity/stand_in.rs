//! A smooth stand-in for a figure: a straight line and a square in each coordinate, fitted to the draws
//! themselves. What each input carries of it is known exactly, so that the draws need only say how the
//! figure differs from it.

use super::design::{Design, Row};
use crate::normal::quantile;
use nalgebra::{DMatrix, DVector};

/// Terms of a coordinate, each of mean nought and variance one over the draws: z and (z² − 1)/√2.
pub(super) type Terms = [f64; 2];

/// The stand-in: nought on average, whatever the figure's mean.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct StandIn {
    coefficients: Vec<Terms>,
}

/// Draws for each coefficient below which a fit says nothing.
const LEAST_PER_COEFFICIENT: usize = 3;

impl StandIn {
    /// One that is nought everywhere.
    pub(super) fn nothing(design: &Design) -> Self {
        Self { coefficients: vec![[0.0; 2]; design.coordinates()] }
    }

    /// Least squares over all draws of these rows; nothing where they are too few.
    pub(super) fn fit(design: &Design, rows: &[&Row]) -> Self {
        let coordinates = design.coordinates();
        let size = 1 + 2 * coordinates;
        let count = rows.len() * (2 + design.inputs());
        if count < LEAST_PER_COEFFICIENT * size {
            return Self::nothing(design);
        }
        let mut normal = DMatrix::<f64>::zeros(size, size);
        let mut right = DVector::<f64>::zeros(size);
        let mut observe = |point: &[Terms], value: f64| {
            let terms = || core::iter::once(1.0).chain(point.iter().flatten().copied());
            for (i, a) in terms().enumerate() {
                right[i] += a * value;
                for (j, b) in terms().enumerate().take(i + 1) {
                    normal[(i, j)] += a * b;
                }
            }
        };
        for row in rows {
            let (a, b) = (terms(&design.a(row.number)), terms(&design.b(row.number)));
            observe(&a, row.a);
            observe(&b, row.b);
            for (i, value) in row.mixed.iter().enumerate() {
                let mut mixed = a.clone();
                mixed[design.places(i)].copy_from_slice(&b[design.places(i)]);
                observe(&mixed, *value);
            }
        }
        let Some(factor) = normal.cholesky() else { return Self::nothing(design) };
        let solved = factor.solve(&right);
        let of = |coordinate: usize| [solved[1 + 2 * coordinate], solved[2 + 2 * coordinate]];
        Self { coefficients: (0..coordinates).map(of).collect() }
    }

    /// Share of the variance over both sets of these rows that it explains.
    pub(super) fn explains(&self, design: &Design, rows: &[&Row]) -> f64 {
        let at = |point: Vec<f64>| self.parts(design, &point).iter().sum::<f64>();
        let pairs: Vec<[f64; 2]> = rows
            .iter()
            .flat_map(|it| [[it.a, at(design.a(it.number))], [it.b, at(design.b(it.number))]])
            .collect();
        let spread = |of: &dyn Fn(&[f64; 2]) -> f64| {
            let mean = pairs.iter().map(of).sum::<f64>() / pairs.len() as f64;
            pairs.iter().map(|it| (of(it) - mean) * (of(it) - mean)).sum::<f64>()
        };
        let all = spread(&|it| it[0]);
        if all > 0.0 { 1.0 - spread(&|it| it[0] - it[1]) / all } else { 0.0 }
    }

    /// Variance that each input carries, first order and total alike: there is nothing but sums in it.
    pub(super) fn variances(&self, design: &Design) -> Vec<f64> {
        let of = |c: &Terms| c[0] * c[0] + c[1] * c[1];
        (0..design.inputs())
            .map(|input| self.coefficients[design.places(input)].iter().map(of).sum())
            .collect()
    }

    /// What each input adds at a point.
    pub(super) fn parts(&self, design: &Design, point: &[f64]) -> Vec<f64> {
        let terms = terms(point);
        let of = |place: usize| {
            let (c, t) = (self.coefficients[place], terms[place]);
            c[0] * t[0] + c[1] * t[1]
        };
        (0..design.inputs()).map(|input| design.places(input).map(of).sum()).collect()
    }
}

fn terms(point: &[f64]) -> Vec<Terms> {
    let of = |u: &f64| {
        let z = quantile(*u);
        [z, (z * z - 1.0) * core::f64::consts::FRAC_1_SQRT_2]
    };
    point.iter().map(of).collect()
}
