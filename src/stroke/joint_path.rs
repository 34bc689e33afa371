//! Joint angles over the stroke: a spline of degree 4 that starts at rest.

use crate::player::joints::JOINT_COUNT;

/// Last normalised time of a path: a tenth beyond the planned contact.
pub const END: f64 = 1.10;
/// Free control points of a path; the first is used twice, so that the velocity at 0 is zero.
pub const CONTROL_COUNT: usize = 10;
const DEGREE: usize = 4;
const BASIS_COUNT: usize = CONTROL_COUNT + 1;
const KNOT_COUNT: usize = BASIS_COUNT + DEGREE + 1;

/// Control points of all joint angles, rad.
#[derive(Clone, Debug, PartialEq)]
pub struct JointPath {
    /// One row of joint angles per control point.
    pub control_rad: [[f64; JOINT_COUNT]; CONTROL_COUNT],
}

/// Weights of the control points for a value and its first two derivatives with respect to `s`.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weights {
    /// For the value.
    pub value: [f64; CONTROL_COUNT],
    /// For the first derivative.
    pub first: [f64; CONTROL_COUNT],
    /// For the second derivative.
    pub second: [f64; CONTROL_COUNT],
}

fn knot(i: usize) -> f64 {
    let inner = KNOT_COUNT - 2 * (DEGREE + 1);
    if i <= DEGREE {
        0.0
    } else if i > DEGREE + inner {
        END
    } else {
        END * (i - DEGREE) as f64 / (inner + 1) as f64
    }
}

/// B-spline basis of one degree at `s` by the Cox–de Boor recursion.
fn basis(degree: usize, s: f64) -> [f64; KNOT_COUNT] {
    let mut n = [0.0; KNOT_COUNT];
    // The last span is closed at its right end.
    let span = (DEGREE..BASIS_COUNT).rev().find(|&i| s >= knot(i)).unwrap_or(DEGREE);
    n[span] = 1.0;
    for d in 1..=degree {
        for i in (span - d)..=span {
            let left = knot(i + d) - knot(i);
            let right = knot(i + d + 1) - knot(i + 1);
            let mut value = 0.0;
            if left > 0.0 {
                value += (s - knot(i)) / left * n[i];
            }
            if right > 0.0 {
                value += (knot(i + d + 1) - s) / right * n[i + 1];
            }
            n[i] = value;
        }
    }
    n
}

/// Derivative of basis functions of `degree`, from those of one degree less (or their derivatives).
fn differentiate(degree: usize, lower: &[f64; KNOT_COUNT]) -> [f64; KNOT_COUNT] {
    let mut out = [0.0; KNOT_COUNT];
    let count = KNOT_COUNT - degree - 1;
    for i in 0..count {
        let left = knot(i + degree) - knot(i);
        let right = knot(i + degree + 1) - knot(i + 1);
        if left > 0.0 {
            out[i] += degree as f64 * lower[i] / left;
        }
        if right > 0.0 {
            out[i] -= degree as f64 * lower[i + 1] / right;
        }
    }
    out
}

fn free_controls(n: &[f64; KNOT_COUNT]) -> [f64; CONTROL_COUNT] {
    core::array::from_fn(|i| if i == 0 { n[0] + n[1] } else { n[i + 1] })
}

impl Weights {
    /// Weights at normalised time `s`, held inside the path.
    pub fn at(s: f64) -> Self {
        let s = s.clamp(0.0, END);
        Self {
            value: free_controls(&basis(DEGREE, s)),
            first: free_controls(&differentiate(DEGREE, &basis(DEGREE - 1, s))),
            second: free_controls(&differentiate(
                DEGREE,
                &differentiate(DEGREE - 1, &basis(DEGREE - 2, s)),
            )),
        }
    }
}

impl JointPath {
    /// The weighted sum of the control points.
    pub fn weighted(&self, weights: &[f64; CONTROL_COUNT]) -> [f64; JOINT_COUNT] {
        let mut out = [0.0; JOINT_COUNT];
        for (w, row) in weights.iter().zip(&self.control_rad) {
            for (o, c) in out.iter_mut().zip(row) {
                *o += w * c;
            }
        }
        out
    }
}
