//! Noise of the muscles, and what it makes of the place at contact.
//!
//! A muscle's torque scatters in proportion to itself, the less the stronger the joint. Noisy swings are swung: the
//! torque of each joint over what is called for wanders about one, and the law follows the plan from wherever that has
//! brought the swing. The law takes errors back without delay, which no player does: what is left is what the best
//! control of this kind leaves. The wandering is the same for every bat and player, in pairs of opposite sign, so that
//! two bats differ by what the bats do. (The covariance by linearised equations was tried: it meets a thousand noisy
//! swings of pull and hook, and not of the drive, where joints at their limit make kinks; it costs as much.)

use super::contact::Contact;
use super::run::STEPS;
use super::swinger::Swinger;
use crate::frames::DVec3;
use crate::normal;
use crate::player::Strength;
use crate::player::joints::JOINT_COUNT;
use rayon::prelude::*;

const N: usize = JOINT_COUNT;

/// How the torque of a joint scatters about what is called for.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MotorNoise {
    /// One standard deviation of the torque of a joint of [`USUAL_JOINT_N_M`], as a share of the torque.
    pub share: f64,
    /// The share goes with the joint's greatest torque to the power of less this.
    pub scaling: f64,
    /// Time over which the scatter stays alike, s: its correlation falls as exp(−t/this).
    pub time_s: f64,
}

/// Greatest torque of the joint of which the share is told, N m: an elbow's, in round figures.
pub const USUAL_JOINT_N_M: f64 = 70.0;

impl Default for MotorNoise {
    /// Sizes and time: assumption. That the scatter goes with the torque was measured (Jones, Hamilton & Wolpert
    /// 2002, J Neurophysiol 88:1533), and that stronger joints have the smaller share (Hamilton, Jones & Wolpert 2004,
    /// Exp Brain Res 157:417); both read in abstract, without the figures.
    fn default() -> Self {
        Self { share: 0.02, scaling: 0.25, time_s: 0.05 }
    }
}

impl MotorNoise {
    /// One standard deviation of each joint's torque as a share of it.
    pub fn shares(&self, strength: &Strength) -> [f64; N] {
        core::array::from_fn(|j| {
            let greatest_n_m = 0.5 * (strength.positive_n_m[j] + strength.negative_n_m[j]);
            self.share * libm::pow(greatest_n_m / USUAL_JOINT_N_M, -self.scaling)
        })
    }

    /// What each joint gives over what is called for, by sample of the plan, in the noisy swing of that number; an odd
    /// number is the even one before it with its sign turned. The noise is the same in however many steps it is swung.
    fn given(&self, s: &Swinger<'_>, stroke_time_s: f64, number: u64) -> Vec<[f64; N]> {
        let mut random = oorandom::Rand64::new(u128::from(number / 2) + SEED);
        let mut next = || normal::quantile(random.rand_float().clamp(LEAST, 1.0 - LEAST));
        let sign = if number.is_multiple_of(2) { 1.0 } else { -1.0 };
        let shares = self.shares(&s.strength).map(|it| sign * it);
        let keeps = libm::exp(-stroke_time_s / GRID as f64 / self.time_s);
        let new = libm::sqrt(1.0 - keeps * keeps);
        let mut z: [f64; N] = core::array::from_fn(|_| next());
        let on_grid = |sample: usize| sample * GRID / s.reference.per_unit;
        let last = s.reference.samples.len().saturating_sub(1);
        let given: Vec<[f64; N]> = (0..=on_grid(last))
            .map(|_| {
                let given = core::array::from_fn(|j| 1.0 + shares[j] * z[j]);
                z = z.map(|z| keeps * z + new * next());
                given
            })
            .collect();
        (0..=last).filter_map(|sample| given.get(on_grid(sample)).copied()).collect()
    }
}

/// Values of the noise from the top of the backlift to the planned contact: one a sample of the usual plan.
const GRID: usize = 2 * STEPS;
/// Where the noise of the first pair begins in the generator.
const SEED: u128 = 15;
/// Keeps a draw off nought and one.
const LEAST: f64 = 1e-12;

/// How a meeting scatters from swing to swing, root of the mean square about the swing without noise.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Scatter {
    /// Where on the blade the ball is met, along it, m.
    pub along_m: f64,
    /// The same across it, m.
    pub across_m: f64,
    /// Where on the blade a ball is met that comes a second early, along and across, m/s: for small shares of a second.
    pub early_m_s: [f64; 2],
}

/// The scatter of a stroke over `stroke_time_s` against a ball that flies at `ball_W`, m/s, by so many noisy swings;
/// none where a bat does not come to the ball.
pub fn scatter(
    s: &Swinger<'_>,
    stroke_time_s: f64,
    noise: &MotorNoise,
    ball_W: DVec3,
    swings: u64,
) -> Option<Scatter> {
    let quiet = s.swing(stroke_time_s, None);
    if !quiet.reached {
        return None;
    }
    let [x, y, z] = [quiet.R_WB.x_axis, quiet.R_WB.y_axis, quiet.R_WB.z_axis];
    let closing = ball_W - quiet.velocity_W;
    // From where the ball is when the bat comes, on to the face.
    let on_face = |off: DVec3| off - closing * (off.dot(z) / closing.dot(z));
    let early = on_face(ball_W);
    let mut out = Scatter { early_m_s: [early.dot(x), early.dot(y)], ..Scatter::default() };
    let met = |number: u64| {
        let given = noise.given(s, stroke_time_s, number);
        let met = Swinger { given_share: Some(&given), ..s.clone() }.swing(stroke_time_s, None);
        met.reached.then_some(met)
    };
    let all: Option<Vec<Contact>> = (0..swings).into_par_iter().map(met).collect();
    for met in all? {
        let later_s = met.time_s - quiet.time_s;
        let off = on_face(ball_W * later_s - (met.point_W - quiet.point_W));
        out.along_m += off.dot(x) * off.dot(x);
        out.across_m += off.dot(y) * off.dot(y);
    }
    let root = |sum: f64| libm::sqrt(sum / swings.max(1) as f64);
    out.along_m = root(out.along_m);
    out.across_m = root(out.across_m);
    Some(out)
}
