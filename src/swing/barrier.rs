//! The torques nearest to what is wanted inside what the muscles can reach: a convex problem with a
//! smooth wall.
//!
//! Minimises `½ xᵀHx − gᵀx − μ Σ ln((hi − x)(x − lo))` by Newton's method with a step kept inside the
//! box. A hard box makes the outcome of a swing jump; a fixed barrier keeps it smooth.

use crate::dynamics::symmetric::{backward, cholesky, forward};

const ITERATIONS: usize = 40;
/// Step, as a share of the box, below which the minimum counts as found.
const CONVERGED: f64 = 1e-9;

/// Solves the problem, starting at `x` (moved into the box), and leaves the minimum there.
pub fn minimise<const N: usize>(
    H: &[[f64; N]; N],
    g: &[f64; N],
    lo: &[f64; N],
    hi: &[f64; N],
    barrier: f64,
    x: &mut [f64; N],
) {
    for j in 0..N {
        let w = hi[j] - lo[j];
        x[j] = x[j].max(lo[j] + 0.02 * w).min(hi[j] - 0.02 * w);
    }
    for _ in 0..ITERATIONS {
        let mut K = *H;
        let mut step = *g;
        for i in 0..N {
            let (a, b) = (1.0 / (hi[i] - x[i]), 1.0 / (x[i] - lo[i]));
            let mut s = 0.0;
            for j in 0..N {
                s += H[i][j] * x[j];
            }
            step[i] -= s + barrier * (a - b);
            K[i][i] += barrier * (a * a + b * b);
        }
        cholesky(&mut K);
        forward(&K, &mut step);
        backward(&K, &mut step);
        let mut length = 1.0_f64;
        let mut largest = 0.0_f64;
        for j in 0..N {
            let room = if step[j] < 0.0 { lo[j] - x[j] } else { hi[j] - x[j] };
            if step[j] != 0.0 {
                length = length.min(0.95 * room / step[j]);
            }
            largest = largest.max((step[j] / (hi[j] - lo[j])).abs());
        }
        for j in 0..N {
            x[j] += length * step[j];
        }
        if length == 1.0 && largest < CONVERGED {
            break;
        }
    }
}
