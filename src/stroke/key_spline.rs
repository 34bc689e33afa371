//! The keys of a stroke as smooth curves: natural cubic splines in the path parameter `p = s²`.
#![allow(clippy::needless_range_loop, reason = "channels of several arrays side by side")]

use super::Key;
use crate::frames::{DMat3, DVec3};
use crate::player::joints::TOP_ARM;

const CHANNELS: usize = 16;

/// Everything a key holds, at one normalised time.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pose {
    /// Middle of the hands from the middle of the shoulders at rest, arm lengths, W.
    pub grip: DVec3,
    /// Attitude of the bat in W.
    pub R_WB: DMat3,
    /// Hips' turn to the bowler, spine's turn on them, bend, lean, rad.
    pub trunk_rad: [f64; TOP_ARM],
}

/// Natural cubic splines through the keys.
#[derive(Clone, Debug, PartialEq)]
pub struct KeySpline {
    p: Vec<f64>,
    value: Vec<[f64; CHANNELS]>,
    curvature: Vec<[f64; CHANNELS]>,
}

fn channels(key: &Key) -> [f64; CHANNELS] {
    let mut c = [0.0; CHANNELS];
    c[0..3].copy_from_slice(&key.grip.to_array());
    c[3..6].copy_from_slice(&key.toe.to_array());
    c[6..9].copy_from_slice(&key.face.to_array());
    c[9..12].copy_from_slice(&key.trunk_rad);
    c[12..15].copy_from_slice(&key.pelvis.to_array());
    c[15] = key.pelvis_turn_rad;
    c
}

fn vector(c: &[f64; CHANNELS], first: usize) -> DVec3 {
    DVec3::new(c[first], c[first + 1], c[first + 2])
}

impl KeySpline {
    /// Splines through keys in increasing order of `p`; the curvature at both ends is zero.
    pub fn new(keys: &[Key]) -> Self {
        let p: Vec<f64> = keys.iter().map(|k| k.p).collect();
        let value: Vec<_> = keys.iter().map(channels).collect();
        let n = keys.len();
        let mut curvature = vec![[0.0; CHANNELS]; n];
        if n > 2 {
            // Thomas algorithm on the tridiagonal system of the second derivatives.
            let mut upper = vec![0.0; n];
            for i in 1..n - 1 {
                let (h0, h1) = (p[i] - p[i - 1], p[i + 1] - p[i]);
                let pivot = 2.0 * (h0 + h1) - h0 * upper[i - 1];
                upper[i] = h1 / pivot;
                for c in 0..CHANNELS {
                    let slope1 = (value[i + 1][c] - value[i][c]) / h1;
                    let slope0 = (value[i][c] - value[i - 1][c]) / h0;
                    curvature[i][c] = (6.0 * (slope1 - slope0) - h0 * curvature[i - 1][c]) / pivot;
                }
            }
            for i in (1..n - 1).rev() {
                for c in 0..CHANNELS {
                    curvature[i][c] -= upper[i] * curvature[i + 1][c];
                }
            }
        }
        Self { p, value, curvature }
    }

    /// Channels and their first two derivatives with respect to `p`.
    fn at_p(&self, p: f64) -> [[f64; CHANNELS]; 3] {
        let n = self.p.len();
        let i = (1..n - 1).rev().find(|&i| p >= self.p[i]).unwrap_or(0);
        let h = self.p[i + 1] - self.p[i];
        let b = (p - self.p[i]) / h;
        let a = 1.0 - b;
        let mut out = [[0.0; CHANNELS]; 3];
        for c in 0..CHANNELS {
            let (y0, y1) = (self.value[i][c], self.value[i + 1][c]);
            let (m0, m1) = (self.curvature[i][c], self.curvature[i + 1][c]);
            out[0][c] =
                a * y0 + b * y1 + ((a * a * a - a) * m0 + (b * b * b - b) * m1) * h * h / 6.0;
            out[1][c] =
                (y1 - y0) / h + ((1.0 - 3.0 * a * a) * m0 + (3.0 * b * b - 1.0) * m1) * h / 6.0;
            out[2][c] = a * m0 + b * m1;
        }
        out
    }

    /// Wanted pose of hands, bat, hips and trunk at normalised time `s`.
    pub fn pose(&self, s: f64) -> Pose {
        let [c, ..] = self.at_p(s * s);
        let toe = vector(&c, 3).normalize();
        let face = vector(&c, 6);
        let face = (face - toe * toe.dot(face)).normalize();
        Pose {
            grip: vector(&c, 0),
            R_WB: DMat3::from_cols(toe, face.cross(toe), face),
            trunk_rad: [c[15], c[9] - c[15], c[10], c[11]],
        }
    }

    /// Displacement of the pelvis at normalised time `s`, leg lengths, W, with its first and second derivative with
    /// respect to it.
    pub fn pelvis(&self, s: f64) -> [DVec3; 3] {
        let [y, y1, y2] = self.at_p(s * s);
        let (dp, ddp) = (2.0 * s, 2.0);
        [vector(&y, 12), vector(&y1, 12) * dp, vector(&y2, 12) * (dp * dp) + vector(&y1, 12) * ddp]
    }
}
