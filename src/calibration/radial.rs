//! The smoothest surface through points of strength: cubic radial basis functions with a linear tail.
//!
//! Source: Duchon 1977, Splines minimizing rotation-invariant semi-norms (from memory, high).

use crate::measurement::nets::PART_COUNT;
use nalgebra::{DMatrix, DVector};

/// `F` figures at every point, through all that were given.
#[derive(Clone, Debug)]
pub struct Radial<const F: usize> {
    nodes: Vec<[f64; PART_COUNT]>,
    /// Of each node all figures, then the constant and the slopes of the tail.
    weights: Vec<[f64; F]>,
}

fn cubic(a: &[f64; PART_COUNT], b: &[f64; PART_COUNT]) -> f64 {
    let r2: f64 = a.iter().zip(b).map(|(a, b)| (a - b) * (a - b)).sum();
    r2 * libm::sqrt(r2)
}

impl<const F: usize> Radial<F> {
    /// Through these values at these nodes; none where the nodes do not determine it.
    pub fn through(nodes: Vec<[f64; PART_COUNT]>, values: &[[f64; F]]) -> Option<Self> {
        let m = nodes.len();
        let size = m + 1 + PART_COUNT;
        let tail = |node: usize, k: usize| if k == 0 { 1.0 } else { nodes[node][k - 1] };
        let system = DMatrix::from_fn(size, size, |row, column| match (row < m, column < m) {
            (true, true) => cubic(&nodes[row], &nodes[column]),
            (true, false) => tail(row, column - m),
            (false, true) => tail(column, row - m),
            (false, false) => 0.0,
        })
        .lu();
        let mut weights = vec![[0.0; F]; size];
        for figure in 0..F {
            let right = DVector::from_fn(size, |i, _| values.get(i).map_or(0.0, |it| it[figure]));
            let solved = system.solve(&right)?;
            for (row, value) in weights.iter_mut().zip(solved.iter()) {
                row[figure] = *value;
            }
        }
        Some(Self { nodes, weights })
    }

    /// All figures at a point.
    pub fn at(&self, x: &[f64; PART_COUNT]) -> [f64; F] {
        let mut sums = [0.0; F];
        let mut add = |factor: f64, weights: &[f64; F]| {
            for (sum, weight) in sums.iter_mut().zip(weights) {
                *sum += factor * weight;
            }
        };
        let (near, tail) = self.weights.split_at(self.nodes.len());
        for (node, weights) in self.nodes.iter().zip(near) {
            add(cubic(x, node), weights);
        }
        for (factor, weights) in core::iter::once(1.0).chain(*x).zip(tail) {
            add(factor, weights);
        }
        sums
    }
}
