//! How far a joint path misses the keys: hands, bat, loop, trunk, posture, ranges, smoothness.

use super::least_squares::{Row, SumOfSquares};
use super::task::{Task, Wish};
use super::unknowns::{joint, path};
use crate::dynamics::closed_loop::{gap, gap_rows};
use crate::dynamics::tree::Kinematics;
use crate::frames::{DVec3, rotation_vector};
use crate::player::joints::JOINT_COUNT;
use crate::player::posture::{HIGHEST_RAD, LOWEST_RAD, NEUTRAL_RAD};
use crate::stroke::joint_path::{CONTROL_COUNT, Weights};
use crate::swing::bottom_grip;
use nalgebra::DVector;

const N: usize = JOINT_COUNT;
const DEGREE: f64 = core::f64::consts::PI / 180.0;

/// Misses that count the same (assumptions: found by trial in the pilot study).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Allowance {
    /// Middle of the hands, m.
    pub grip_m: f64,
    /// Attitude of the bat, rad.
    pub attitude_rad: f64,
    /// Gap between bottom hand and handle, m.
    pub gap_m: f64,
    /// Rate at which the handle turns in the bottom hand, with respect to normalised time, rad.
    pub turn_rad: f64,
    /// Trunk, rad.
    pub trunk_rad: f64,
    /// Arms away from the neutral posture, rad.
    pub posture_rad: f64,
    /// Beyond a joint's range, rad.
    pub range_rad: f64,
    /// Second derivative of a joint angle with respect to normalised time, rad.
    pub bend_rad: f64,
    /// How many times more hands and bat may miss midway; contact and backlift are held tight.
    pub midway: f64,
}

impl Allowance {
    /// For a path by inverse kinematics.
    pub const BY_POSE: Self = Self {
        grip_m: 0.010,
        attitude_rad: 2.0 * DEGREE,
        gap_m: 0.0005,
        turn_rad: 10.0 * DEGREE,
        trunk_rad: 6.0 * DEGREE,
        posture_rad: 40.0 * DEGREE,
        range_rad: 3.0 * DEGREE,
        bend_rad: 60.0,
        midway: 0.0,
    };
    /// For a path that limited torques can follow: tight where the ball is met, loose on the way.
    pub const BY_TORQUE: Self = Self {
        grip_m: 0.004,
        attitude_rad: DEGREE,
        gap_m: 0.0005,
        turn_rad: 10.0 * DEGREE,
        trunk_rad: 15.0 * DEGREE,
        posture_rad: 150.0 * DEGREE,
        range_rad: 3.0 * DEGREE,
        bend_rad: 150.0,
        midway: 20.0,
    };

    /// Factor on the allowances of hands and bat: 1 at the top of the backlift and at contact.
    fn looseness(&self, s: f64) -> f64 {
        if s < 1.0 {
            let sine = libm::sin(core::f64::consts::PI * s);
            1.0 + self.midway * sine * sine
        } else {
            1.0 + self.midway * ((s - 1.0) / 0.08).min(1.0)
        }
    }
}

/// Middle of the hands off its wished place, m, W.
pub fn grip_error(task: &Task<'_>, wish: &Wish, k: &Kinematics<N>) -> DVec3 {
    middle_of_hands(task, k) - wish.grip_W
}

/// Bat off its wished attitude, as a rotation vector, rad, W.
pub fn attitude_error(task: &Task<'_>, wish: &Wish, k: &Kinematics<N>) -> DVec3 {
    rotation_vector(&(k.R[task.chain.link.bat] * wish.R_WB.transpose()))
}

/// How far a joint angle is out of its range, rad; negative below it.
pub fn range_excess_rad(joint: usize, q: f64) -> f64 {
    (q - HIGHEST_RAD[joint]).max(0.0) + (q - LOWEST_RAD[joint]).min(0.0)
}

fn middle_of_hands(task: &Task<'_>, k: &Kinematics<N>) -> DVec3 {
    let grip = &task.chain.grip;
    task.chain.on_bat(k, 0.5 * (grip.top_hand_m + grip.bottom_hand_m))
}

/// Adds the misses of the path in `x` to a sum of squares.
pub fn add(task: &Task<'_>, allowance: &Allowance, x: &DVector<f64>, sum: &mut SumOfSquares) {
    let path = path(x);
    let mut k = task.chain.tree.kinematics();
    let mut row = Row::default();
    for wish in &task.wishes {
        let q = path.weighted(&wish.weights.value);
        let bend = path.weighted(&wish.weights.second);
        let rate = path.weighted(&wish.weights.first);
        task.chain.tree.forward_kinematics(&q, &rate, DVec3::ZERO, &mut k);
        add_hands_and_bat(task, allowance, wish, &k, sum, &mut row);
        for j in 0..N {
            let value = &wish.weights.value;
            let (from, allowed) = match wish.trunk_rad.get(j) {
                Some(trunk) => (*trunk, allowance.trunk_rad),
                None => (NEUTRAL_RAD[j], allowance.posture_rad),
            };
            add_joint(sum, &mut row, j, (q[j] - from) / allowed, value, 1.0 / allowed);
            let excess = range_excess_rad(j, q[j]);
            if excess != 0.0 {
                let per = 1.0 / allowance.range_rad;
                add_joint(sum, &mut row, j, excess * per, value, per);
            }
            let per = 1.0 / allowance.bend_rad;
            add_joint(sum, &mut row, j, bend[j] * per, &wish.weights.second, per);
        }
    }
}

fn add_joint(
    sum: &mut SumOfSquares,
    row: &mut Row,
    j: usize,
    residual: f64,
    weights: &[f64; CONTROL_COUNT],
    factor: f64,
) {
    row.clear();
    for (c, w) in weights.iter().enumerate() {
        row.push(joint(c, j), w * factor);
    }
    sum.add(residual, row);
}

/// Adds the misses of hands and bat. The bottom hand is closed: the handle should not turn in it. The axes' own change
/// is left out of the derivatives of that turning; the miss is small where it counts.
fn add_hands_and_bat(
    task: &Task<'_>,
    allowance: &Allowance,
    wish: &Wish,
    k: &Kinematics<N>,
    sum: &mut SumOfSquares,
    row: &mut Row,
) {
    let (chain, loose) = (task.chain, allowance.looseness(wish.s));
    let (bat, hand) = (chain.link.bat, chain.bottom_hand.link_b);
    let turning_rows = bottom_grip::turning(chain, k);
    let middle = middle_of_hands(task, k);
    let mut grip_rows = [DVec3::ZERO; N];
    let mut attitude_rows = [DVec3::ZERO; N];
    for j in chain.tree.joints_towards_base(bat) {
        grip_rows[j] = k.axis_moment[j] + k.axis[j].cross(middle);
        attitude_rows[j] = k.axis[j];
    }
    let (gap_rows, _) = gap_rows(&chain.tree, k, &chain.bottom_hand);
    let attitude = attitude_error(task, wish, k);
    let Weights { value, first, .. } = &wish.weights;
    for (error, rows, weights, allowed) in [
        (k.omega[bat] - k.omega[hand], &turning_rows, first, allowance.turn_rad),
        (grip_error(task, wish, k), &grip_rows, value, allowance.grip_m * loose),
        (attitude, &attitude_rows, value, allowance.attitude_rad * loose),
        (gap(k, &chain.bottom_hand), &gap_rows, value, allowance.gap_m),
    ] {
        for axis in [DVec3::X, DVec3::Y, DVec3::Z] {
            row.clear();
            if sum.wants_rows() {
                for (c, w) in weights.iter().enumerate().filter(|(_, w)| **w != 0.0) {
                    for (j, r) in rows.iter().enumerate() {
                        row.push(joint(c, j), w * r.dot(axis) / allowed);
                    }
                }
            }
            sum.add(error.dot(axis) / allowed, row);
        }
    }
}
