//! Where and how the bat meets the ball: the crossing of the plane through the planned contact.

use super::state::State;
use super::swinger::Swinger;
use crate::dynamics::tree::Kinematics;
use crate::frames::{DMat3, DVec3};
use crate::player::joints::JOINT_COUNT;

const N: usize = JOINT_COUNT;

/// Share of the stroke before which no crossing counts.
pub const EARLIEST: f64 = 0.6;

/// The bat at the ball.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Contact {
    /// Stroke time asked for, s.
    pub stroke_time_s: f64,
    /// Time of the crossing from the top of the backlift, s.
    pub time_s: f64,
    /// Distance of the contact point from the planned place, m.
    pub position_error_m: f64,
    /// Angle of the face from the planned direction, rad.
    pub face_error_rad: f64,
    /// Angle of the bat's line from the planned direction, rad.
    pub line_error_rad: f64,
    /// The three errors over their tolerances, root of the sum of squares; 1 is the limit of control.
    pub error: f64,
    /// Speed of the contact point, m/s.
    pub bat_speed_m_s: f64,
    /// Part of that speed along the outward normal of the face, m/s.
    pub normal_speed_m_s: f64,
    /// Speed of the toe, m/s.
    pub toe_speed_m_s: f64,
    /// Contact point in W (above the ground), m.
    pub point_W: DVec3,
    /// Its velocity, m/s.
    pub velocity_W: DVec3,
    /// Attitude of the bat.
    pub R_WB: DMat3,
    /// Whether the bat came to the plane at all.
    pub reached: bool,
}

impl Contact {
    /// The bat never came to the ball.
    pub fn missed(stroke_time_s: f64) -> Self {
        Self {
            stroke_time_s,
            time_s: f64::NAN,
            position_error_m: 1.0,
            face_error_rad: 1.5,
            line_error_rad: 1.5,
            error: 40.0,
            bat_speed_m_s: 0.0,
            normal_speed_m_s: 0.0,
            toe_speed_m_s: 0.0,
            point_W: DVec3::ZERO,
            velocity_W: DVec3::ZERO,
            R_WB: DMat3::IDENTITY,
            reached: false,
        }
    }

    /// Measures a meeting against the plan.
    pub(super) fn of(s: &Swinger<'_>, stroke_time_s: f64, met: &Meeting) -> Self {
        let plan = s.reference.at_contact();
        let BatAt { point, velocity, toe_velocity, R } = met.bat;
        let t = &s.tolerance;
        let position_error_m = (point - (plan.point + plan.pelvis)).length();
        let face_error_rad = angle(R.z_axis, plan.R.z_axis);
        let line_error_rad = angle(R.x_axis, plan.R.x_axis);
        let parts = [
            position_error_m / t.position_m,
            face_error_rad / t.face_rad,
            line_error_rad / t.line_rad,
        ];
        Self {
            stroke_time_s,
            time_s: met.time_s,
            position_error_m,
            face_error_rad,
            line_error_rad,
            error: parts.iter().map(|p| p * p).sum::<f64>().sqrt(),
            bat_speed_m_s: velocity.length(),
            normal_speed_m_s: velocity.dot(R.z_axis),
            toe_speed_m_s: toe_velocity.length(),
            point_W: point + DVec3::new(0.0, 0.0, s.chain.hip_height_m),
            velocity_W: velocity,
            R_WB: R,
            reached: true,
        }
    }
}

/// Angle between two unit vectors, rad.
fn angle(a: DVec3, b: DVec3) -> f64 {
    libm::atan2(a.cross(b).length(), a.dot(b))
}

/// Cubic through two values and slopes, at the share `u` of a step `h`.
fn hermite(a: f64, b: f64, da: f64, db: f64, h: f64, u: f64) -> f64 {
    let (v, u2) = (1.0 - u, u * u);
    (1.0 + 2.0 * u) * v * v * a + u2 * (3.0 - 2.0 * u) * b + h * u * v * (v * da - u * db)
}

/// The bat at one instant, relative to the pelvis: contact point, its velocity, the toe's, attitude.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct BatAt {
    pub(super) point: DVec3,
    pub(super) velocity: DVec3,
    pub(super) toe_velocity: DVec3,
    pub(super) R: DMat3,
}

/// The bat as it crosses the plane, in the axes of W from where the pelvis started.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Meeting {
    pub(super) time_s: f64,
    pub(super) bat: BatAt,
}

/// One step of a run over the plan.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct StepOfPlan {
    /// Index of the step.
    pub(super) index: usize,
    /// Samples of the plan to a step.
    pub(super) samples: usize,
    /// Length, s.
    pub(super) dt: f64,
}

/// The crossing inside a step of our own dynamics, if there is one. `from` and `to` are the states at
/// its ends with their derivatives.
pub(super) fn crossing(
    s: &Swinger<'_>,
    stroke_time_s: f64,
    step: StepOfPlan,
    from: (&State, &State),
    to: (&State, &State),
    k: &mut Kinematics<N>,
) -> Option<Contact> {
    let bat_at = |u: f64| {
        let mut q = [0.0; N];
        let mut v = [0.0; N];
        for j in 0..N {
            q[j] = hermite(from.0.q[j], to.0.q[j], from.1.q[j], to.1.q[j], step.dt, u);
            v[j] = hermite(from.0.v[j], to.0.v[j], from.1.v[j], to.1.v[j], step.dt, u);
        }
        s.chain.tree.forward_kinematics(&q, &v, DVec3::ZERO, k);
        let point = s.chain.on_bat(k, s.reference.contact_m);
        let bat = s.chain.link.bat;
        let toe = s.chain.on_bat(k, s.chain.bat_length_m);
        BatAt {
            point,
            velocity: k.velocity(bat, point),
            toe_velocity: k.velocity(bat, toe),
            R: k.R[bat],
        }
    };
    meeting(s, stroke_time_s, step, bat_at).map(|m| Contact::of(s, stroke_time_s, &m))
}

/// Where within a step the contact point crosses the plane; `bat_at` gives the bat relative to the
/// pelvis at a share of the step.
pub(super) fn meeting(
    s: &Swinger<'_>,
    stroke_time_s: f64,
    step: StepOfPlan,
    mut bat_at: impl FnMut(f64) -> BatAt,
) -> Option<Meeting> {
    let plan = s.reference.at_contact();
    let leg = |j: usize| {
        let r = &s.reference.samples[j.min(s.reference.samples.len() - 1)];
        (r.pelvis, r.pelvis1 / stroke_time_s)
    };
    let place = plan.point + plan.pelvis;
    let planned_velocity = plan.point1 + plan.pelvis1;
    let normal = planned_velocity.try_normalize()?;
    let first = step.index * step.samples;
    let (pelvis_a, pelvis_b) = (leg(first), leg(first + step.samples));
    let mut at = |u: f64| {
        let bat = bat_at(u);
        let axis = |x: fn(DVec3) -> f64| {
            hermite(x(pelvis_a.0), x(pelvis_b.0), x(pelvis_a.1), x(pelvis_b.1), step.dt, u)
        };
        let pelvis = DVec3::new(axis(|v| v.x), axis(|v| v.y), axis(|v| v.z));
        let pelvis_velocity = pelvis_a.1 * (1.0 - u) + pelvis_b.1 * u;
        BatAt {
            point: bat.point + pelvis,
            velocity: bat.velocity + pelvis_velocity,
            toe_velocity: bat.toe_velocity + pelvis_velocity,
            R: bat.R,
        }
    };
    let mut ahead = |u: f64| (at(u).point - place).dot(normal);
    let (mut a, mut fa, mut b, mut fb) = (0.0, ahead(0.0), 1.0, ahead(1.0));
    if !(fa < 0.0 && fb >= 0.0) {
        return None;
    }
    for _ in 0..60 {
        // Bisection steadied by the secant.
        let secant = a + (b - a) * fa / (fa - fb);
        for u in [secant, 0.5 * (a + b)] {
            if u > a && u < b {
                let f = ahead(u);
                if f < 0.0 { (a, fa) = (u, f) } else { (b, fb) = (u, f) }
            }
        }
        if b - a < 1e-12 || fb < 1e-13 {
            break;
        }
    }
    Some(Meeting { time_s: (step.index as f64 + b) * step.dt, bat: at(b) })
}
