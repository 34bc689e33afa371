//! The torques nearest to what is wanted inside what the muscles can reach: a convex problem with a
//! smooth wall, a log barrier.
//!
//! Minimises `½ xᵀHx − gᵀx − μ Σ ln((hi − x)(x − lo))` by Newton's method with a step kept inside the
//! box. With a hard box the set of spent joints changes in jumps, and the fastest time scatters by up to 0.7 %, so
//! that a gram more can seem to help. A log barrier of fixed weight keeps it smooth in weight, balance, inertia and
//! strength.
#![allow(
    clippy::manual_clamp,
    reason = "clamp panics on NaN; a swing that ran away is caught after its step"
)]

use multiversion::multiversion;

use crate::dynamics::symmetric::{add_scaled, cholesky, solve};

const ITERATIONS: usize = 40;
/// Nearest to a wall that a search starts, as a share of the box.
const NEAREST: f64 = 1e-6;
/// Step, as a share of the box, after which the minimum counts as found: Newton's method squares the
/// error, so that what is left is about 1e-6. (With 1e-5 a fit's figures move in the seventh digit.)
const CONVERGED: f64 = 1e-3;

/// Solves the problem. `place` holds where in the box to start, as a share of its width in each
/// direction, and is left at the minimum's: close to a wall the share changes far less from one
/// problem to the next than the value does.
#[multiversion(targets("x86_64+avx2", "x86_64+avx"))]
pub fn minimise<const N: usize>(
    H: &[[f64; N]; N],
    g: &[f64; N],
    lo: &[f64; N],
    hi: &[f64; N],
    barrier: f64,
    place: &mut [f64; N],
) -> [f64; N] {
    let mut x: [f64; N] = core::array::from_fn(|j| lo[j] + place[j] * (hi[j] - lo[j]));
    for _ in 0..ITERATIONS {
        let mut K = *H;
        let mut step = *g;
        // H is symmetric: its rows in turn are the product's columns, and no sum waits for the one before.
        let mut Hx = [0.0; N];
        for (row, x) in H.iter().zip(&x) {
            add_scaled(&mut Hx, *x, row);
        }
        for i in 0..N {
            let (a, b) = (1.0 / (hi[i] - x[i]), 1.0 / (x[i] - lo[i]));
            step[i] -= Hx[i] + barrier * (a - b);
            K[i][i] += barrier * (a * a + b * b);
        }
        cholesky(&mut K);
        solve(&K, &mut step);
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
    for j in 0..N {
        let share = (x[j] - lo[j]) / (hi[j] - lo[j]);
        place[j] = share.max(NEAREST).min(1.0 - NEAREST);
    }
    x
}
