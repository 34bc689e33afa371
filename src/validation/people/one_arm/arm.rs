//! One arm that swings a rod overarm in its own plane: shoulder, elbow, wrist and nothing else moves.
//!
//! The reference man's capacities, the curve of torque over speed and the rise of torque are the swing's own. Each
//! joint is told twice: what it gives from the start, and from when on it gives all in the way of the swing. Those six
//! figures are sought that make a point of the rod, always as far from the hand, fastest where the rod comes level.

use crate::dynamics::mass_matrix::MassMatrix;
use crate::dynamics::symmetric::{cholesky, mirror, solve};
use crate::dynamics::tree::{Kinematics, Link, Tree, TreeFault};
use crate::frames::{DMat3, DVec3, STANDARD_GRAVITY_M_S2, rotation};
use crate::player::capacity::{JointMaximum, REFERENCE_MAN};
use crate::player::force_velocity::HillCurve;
use crate::player::joints::TOP_ARM;
use crate::player::posture::{HIGHEST_RAD, LOWEST_RAD};
use crate::player::{Segment, Segments};
use crate::swing::activation::ACTIVATION_TIME_S;
use crate::swing::chain::with_mass;

/// Shoulder, elbow, wrist.
pub const N: usize = 3;
/// Of an arm's seven joints those that move in the plane: flexion of shoulder and elbow, radial deviation.
const OF_ARM: [usize; N] = [TOP_ARM, TOP_ARM + 3, TOP_ARM + 6];
/// Rod across the palm: how far it lies off square to the forearm, towards its line, rad (assumption: held as a
/// racket).
const OBLIQUE_RAD: f64 = 40.0 * DEGREE;
/// Cocked behind the head: shoulder, elbow, wrist, rad.
const START_RAD: [f64; N] = [160.0 * DEGREE, 120.0 * DEGREE, 20.0 * DEGREE];
const DEGREE: f64 = std::f64::consts::PI / 180.0;
/// A joint at the end of its range is held by a spring and a damper, N m/rad and N m s/rad (assumption).
const STOP: [f64; 2] = [300.0, 5.0];
/// The point whose speed counts, m from the middle of the hand along the rod.
pub const POINT_M: f64 = 0.60;
/// Step, s, and the longest swing.
const STEP_S: f64 = 1e-3;
const LONGEST_S: f64 = 0.8;

/// A rod in the hand.
#[derive(Clone, Copy)]
pub struct Rod {
    mass_kg: f64,
    /// Its centre from the middle of the hand, m.
    com_m: f64,
    com_moment_kg_m2: f64,
}

impl Rod {
    /// An even rod that ends in the middle of the hand, with this moment about it.
    pub fn even(mass_kg: f64, swing_moment_kg_m2: f64) -> Self {
        let length_m = libm::sqrt(3.0 * swing_moment_kg_m2 / mass_kg);
        let com_moment_kg_m2 = mass_kg * length_m * length_m / 12.0;
        Self { mass_kg, com_m: 0.5 * length_m, com_moment_kg_m2 }
    }

    /// About the middle of the hand, kg m².
    fn swing_moment_kg_m2(&self) -> f64 {
        self.com_moment_kg_m2 + self.mass_kg * self.com_m * self.com_m
    }

    /// The same with a small mass at a place, m from the middle of the hand.
    pub fn with(&self, more_kg: f64, at_m: f64) -> Self {
        let mass_kg = self.mass_kg + more_kg;
        let com_m = (self.mass_kg * self.com_m + more_kg * at_m) / mass_kg;
        let moment = self.swing_moment_kg_m2() + more_kg * at_m * at_m;
        Self { mass_kg, com_m, com_moment_kg_m2: moment - mass_kg * com_m * com_m }
    }
}

/// What the joints are told: what each gives at first, −1 to 1 with −1 the way of the swing, and from when on all, s.
pub type Told = [f64; 2 * N];

/// An arm with its rod.
pub struct OneArm {
    tree: Tree<N>,
    rod: usize,
    level_rad: f64,
}

fn link(parent: Option<usize>, offset: DVec3, axis: Option<DVec3>) -> Link {
    let (R_rest, I_Com) = (DMat3::IDENTITY, DMat3::ZERO);
    Link { parent, offset, R_rest, axis, mass_kg: 0.0, com: DVec3::ZERO, I_Com }
}

impl OneArm {
    /// The arm of these segments with a rod; the swing ends where the rod points `level_rad` over level, forward.
    pub fn new(s: &Segments, rod: &Rod, level_rad: f64) -> Result<Self, TreeFault> {
        let hanging = |parent: Option<usize>, offset: DVec3, it: &Segment| {
            with_mass(link(parent, offset, Some(DVec3::NEG_Y)), it, -1.0)
        };
        let thin = DMat3::from_diagonal(DVec3::new(1e-5, 1.0, 1.0) * rod.com_moment_kg_m2);
        let R_rest = rotation(DVec3::Y, OBLIQUE_RAD);
        let grip = DVec3::NEG_Z * s.wrist_to_grip_m;
        let links = vec![
            hanging(None, DVec3::ZERO, &s.upper_arm),
            hanging(Some(0), DVec3::NEG_Z * s.upper_arm.length_m, &s.forearm),
            hanging(Some(1), DVec3::NEG_Z * s.forearm.length_m, &s.hand),
            Link {
                R_rest,
                mass_kg: rod.mass_kg,
                com: DVec3::X * rod.com_m,
                I_Com: thin,
                ..link(Some(2), grip, None)
            },
        ];
        Ok(Self { tree: Tree::new(links)?, rod: 3, level_rad })
    }

    /// Speed of the point where the rod comes level, m/s; nought where it never does.
    pub fn speed_m_s(&self, told: &Told) -> f64 {
        let mut room = (self.tree.kinematics(), MassMatrix::new(&self.tree));
        let (mut q, mut v) = (START_RAD, [0.0; N]);
        let mut a: [f64; N] = core::array::from_fn(|j| told[2 * j]);
        let mut before = self.over_level(&q);
        let mut speed_before = 0.0;
        let mut t = 0.0;
        while t < LONGEST_S {
            let along = |x: &[f64; N], dx: &[f64; N], step_s: f64| -> [f64; N] {
                core::array::from_fn(|j| x[j] + step_s * dx[j])
            };
            let half = |x: &[f64; N], dx: &[f64; N]| along(x, dx, 0.5 * STEP_S);
            let whole = |x: &[f64; N], dx: &[f64; N]| along(x, dx, STEP_S);
            let (dv, da) = (self.acceleration(&q, &v, &a, &mut room), rise(told, t, &a));
            let (qh, vh, ah) = (half(&q, &v), half(&v, &dv), half(&a, &da));
            let dv = self.acceleration(&qh, &vh, &ah, &mut room);
            let da = rise(told, t + 0.5 * STEP_S, &ah);
            (q, v, a) = (whole(&q, &vh), whole(&v, &dv), whole(&a, &da));
            t += STEP_S;
            let (now, speed) = (self.over_level(&q), self.point_m_s(&q, &v, &mut room.0));
            if now <= 0.0 {
                return speed_before + (speed - speed_before) * before / (before - now);
            }
            (before, speed_before) = (now, speed);
        }
        0.0
    }

    /// How far the rod has still to turn, rad.
    fn over_level(&self, q: &[f64; N]) -> f64 {
        // Square to a hanging forearm it points level forward.
        q.iter().sum::<f64>() - OBLIQUE_RAD - self.level_rad
    }

    fn point_m_s(&self, q: &[f64; N], v: &[f64; N], k: &mut Kinematics<N>) -> f64 {
        self.tree.forward_kinematics(q, v, DVec3::ZERO, k);
        k.velocity(self.rod, k.point(self.rod, DVec3::X * POINT_M)).length()
    }

    fn acceleration(
        &self,
        q: &[f64; N],
        v: &[f64; N],
        a: &[f64; N],
        (k, m): &mut (Kinematics<N>, MassMatrix<N>),
    ) -> [f64; N] {
        self.tree.forward_kinematics(q, v, DVec3::Z * STANDARD_GRAVITY_M_S2, k);
        m.fill(&self.tree, k);
        let mut M = m.M;
        mirror(&mut M);
        let mut x: [f64; N] = core::array::from_fn(|j| {
            torque_n_m(j, a[j], v[j]) + stop_n_m(j, q[j], v[j]) - m.bias[j]
        });
        cholesky(&mut M);
        solve(&M, &mut x);
        x
    }
}

/// What is called for, and how activation rises to it.
fn rise(told: &Told, t: f64, a: &[f64; N]) -> [f64; N] {
    core::array::from_fn(|j| {
        let called = if t < told[2 * j + 1] { told[2 * j] } else { -1.0 };
        (called - a[j]) / ACTIVATION_TIME_S
    })
}

fn torque_n_m(joint: usize, activation: f64, rate_rad_s: f64) -> f64 {
    let it: &JointMaximum = &REFERENCE_MAN[OF_ARM[joint]];
    let w = rate_rad_s / it.max_rate_rad_s;
    match activation > 0.0 {
        true => activation * it.positive_n_m * HillCurve::JOINT.at(w).value,
        false => activation * it.negative_n_m * HillCurve::JOINT.at(-w).value,
    }
}

fn stop_n_m(joint: usize, q: f64, rate_rad_s: f64) -> f64 {
    let [spring, damper] = STOP;
    let (low, high) = (LOWEST_RAD[OF_ARM[joint]], HIGHEST_RAD[OF_ARM[joint]]);
    let past = if q < low { q - low } else { (q - high).max(0.0) };
    if past == 0.0 { 0.0 } else { -spring * past - damper * rate_rad_s }
}

/// How many of the searches that were begun are followed to the end, and the scramble of their starts.
const FOLLOWED: usize = 3;
const SEED: u32 = 6;
/// First step: of what is given at first, and of time, s; a share of it at which a search is left or followed on, and
/// the last.
const STEPS: [f64; 2] = [0.4, 0.04];
const COARSE: f64 = 0.2;
const FINEST: f64 = 1e-3;
/// Latest that a joint is told to give all, s.
const LATEST_S: f64 = 0.5;

/// Greatest speed, m/s: the best of so many searches spread evenly over all that can be told, and of those that start
/// where `known` ended.
pub fn fastest(arm: &OneArm, searches: u32, known: &[Told]) -> (f64, Told) {
    let at = |number: u32, i: usize| f64::from(sobol_burley::sample(number, i as u32, SEED));
    let spread = (0..searches).map(|number| {
        core::array::from_fn(|i| match i % 2 {
            0 => 2.0 * at(number, i) - 1.0,
            _ => LATEST_S * at(number, i),
        })
    });
    let mut found: Vec<(f64, Told)> =
        spread.chain(known.iter().copied()).map(|it| climbed(arm, it, COARSE)).collect();
    found.sort_by(|a, b| b.0.total_cmp(&a.0));
    found
        .iter()
        .take(FOLLOWED)
        .map(|(_, told)| climbed(arm, *told, FINEST))
        .fold((0.0, [0.0; 2 * N]), |best, it| if it.0 > best.0 { it } else { best })
}

/// Greatest speed by stepping along the coordinates, the step halved where none helps.
fn climbed(arm: &OneArm, mut told: Told, finest: f64) -> (f64, Told) {
    let mut best = arm.speed_m_s(&told);
    let mut share = 1.0;
    while share > finest {
        let mut helped = false;
        for i in 0..2 * N {
            for way in [-1.0, 1.0] {
                let mut tried = told;
                tried[i] += way * share * STEPS[i % 2];
                tried[i] = match i % 2 {
                    0 => tried[i].clamp(-1.0, 1.0),
                    _ => tried[i].clamp(0.0, LATEST_S),
                };
                let speed = arm.speed_m_s(&tried);
                if speed > best {
                    (best, told, helped) = (speed, tried, true);
                }
            }
        }
        if !helped {
            share *= 0.5;
        }
    }
    (best, told)
}
