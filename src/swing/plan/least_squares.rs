//! Sums of squares made small by the method of Levenberg and Marquardt, from sparse rows.

use core::ops::ControlFlow;
use nalgebra::{DMatrix, DVector};

/// Derivatives of one residual: unknowns in rising order.
#[derive(Clone, Debug, Default)]
pub struct Row {
    entries: Vec<(usize, f64)>,
}

impl Row {
    /// Forgets all entries.
    pub fn clear(&mut self) {
        self.entries.clear();
    }

    /// Adds the derivative with respect to an unknown, beyond those added before.
    pub fn push(&mut self, unknown: usize, derivative: f64) {
        if derivative != 0.0 {
            self.entries.push((unknown, derivative));
        }
    }
}

/// A sum of squared residuals; with its normal equations where a step is to be taken.
#[derive(Clone, Debug)]
pub struct SumOfSquares {
    cost: f64,
    equations: Option<Equations>,
}

/// Normal equations: the lower triangle of `JᵀJ`, and `Jᵀr`.
#[derive(Clone, Debug)]
struct Equations {
    H: DMatrix<f64>,
    g: DVector<f64>,
}

impl SumOfSquares {
    /// Whether rows are read; where not, they may be left empty.
    pub fn wants_rows(&self) -> bool {
        self.equations.is_some()
    }

    /// Adds a residual and its derivatives.
    pub fn add(&mut self, residual: f64, row: &Row) {
        self.cost += residual * residual;
        let Some(Equations { H, g }) = &mut self.equations else { return };
        for (i, &(a, x)) in row.entries.iter().enumerate() {
            g[a] += x * residual;
            let mut column = H.column_mut(a);
            for &(b, y) in &row.entries[i..] {
                column[b] += x * y;
            }
        }
    }
}

/// Damping at the start, as a share of the diagonal.
const DAMPING: f64 = 1e-3;
/// Least damping.
const LEAST_DAMPING: f64 = 1e-9;
/// Times a step is damped further before the search gives up.
const TRIES: usize = 16;
/// Relative fall of the sum below which the search ends.
const CONVERGED: f64 = 1e-6;
/// Added to the diagonal, so that an unknown that nothing depends on stays where it is.
const FLOOR: f64 = 1e-6;

/// Walks from `x` to a nearby least sum of squares in at most `iterations` steps, asking before each
/// whether to go on; none where it was told to stop.
pub fn minimise(
    mut x: DVector<f64>,
    iterations: usize,
    residuals: &dyn Fn(&DVector<f64>, &mut SumOfSquares),
    goes_on: &mut dyn FnMut() -> ControlFlow<()>,
) -> Option<DVector<f64>> {
    let mut damping = DAMPING;
    for _ in 0..iterations {
        if goes_on().is_break() {
            return None;
        }
        let n = x.len();
        let equations = Equations { H: DMatrix::zeros(n, n), g: DVector::zeros(n) };
        let mut here = SumOfSquares { cost: 0.0, equations: Some(equations) };
        residuals(&x, &mut here);
        let Some(Equations { H, g }) = here.equations else { break };
        let mut better = None;
        for _ in 0..TRIES {
            let mut damped = H.clone();
            for i in 0..n {
                damped[(i, i)] += damping * (H[(i, i)] + FLOOR);
            }
            if let Some(factor) = damped.cholesky() {
                let next = &x - factor.solve(&g);
                let mut there = SumOfSquares { cost: 0.0, equations: None };
                residuals(&next, &mut there);
                if there.cost < here.cost {
                    better = Some((next, there.cost));
                    break;
                }
            }
            damping *= 4.0;
        }
        let Some((next, cost)) = better else { break };
        x = next;
        damping = (damping / 5.0).max(LEAST_DAMPING);
        if here.cost - cost < CONVERGED * here.cost {
            break;
        }
    }
    Some(x)
}
