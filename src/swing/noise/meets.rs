//! How a small deviation of the swing moves the place, the face and the time at which bat and ball meet.

use super::jacobian::STATES;
use crate::dynamics::tree::Kinematics;
use crate::frames::DVec3;
use crate::player::joints::JOINT_COUNT;
use crate::swing::chain::Chain;

const N: usize = JOINT_COUNT;

/// Place along and across the blade, turn of the face about both, time.
pub const FIGURES: usize = 5;

/// What the bat is to meet.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Meets {
    /// A ball that flies at this velocity, m/s; it is met when it comes to the face.
    Ball(DVec3),
    /// Whatever waits in the plane through the planned contact with this unit normal.
    Plane(DVec3),
}

/// What is told of a meeting.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct AtContact {
    /// Where on the blade the ball is met, from where it was meant to be, towards the toe, m.
    pub along_m: f64,
    /// The same across the blade, along y of B, m.
    pub across_m: f64,
    /// Turn of the face about the bat's long axis, rad.
    pub face_rad: f64,
    /// Turn of the face about the axis across the bat, rad.
    pub lie_rad: f64,
    /// Later by, s.
    pub time_s: f64,
}

/// Rows of the figures per unit of the state's numbers, and what a ball that comes a second early does to the place.
pub(super) struct Rows {
    pub(super) by_state: [[f64; STATES]; FIGURES],
    pub(super) early_m_s: [f64; 2],
}

/// The rows at a state whose kinematics is `k`; the base moves at `base_m_s`.
pub(super) fn rows(
    chain: &Chain,
    k: &Kinematics<N>,
    contact_m: f64,
    base_m_s: DVec3,
    meets: Meets,
) -> Rows {
    let bat = chain.link.bat;
    let point = chain.on_bat(k, contact_m);
    let (velocity, omega) = (k.velocity(bat, point) + base_m_s, k.omega[bat]);
    let [x, y, z] = [k.R[bat].x_axis, k.R[bat].y_axis, k.R[bat].z_axis];
    let (normal, closing) = match meets {
        Meets::Ball(flies) => (z, velocity - flies),
        Meets::Plane(normal) => (normal, velocity),
    };
    let rate = closing.dot(normal);
    let mut by_state = [[0.0; STATES]; FIGURES];
    for j in chain.tree.joints_towards_base(bat) {
        let moved = k.axis_moment[j] + k.axis[j].cross(point);
        let later = -moved.dot(normal) / rate;
        // The ball lies on the blade where the blade is not: against its own deviation.
        let place = -(moved + closing * later);
        let turned = k.axis[j] + omega * later;
        let figures = [place.dot(x), place.dot(y), turned.dot(x), turned.dot(y), later];
        for (row, figure) in by_state.iter_mut().zip(figures) {
            row[j] = figure;
        }
    }
    let early = match meets {
        Meets::Ball(flies) => flies - closing * (flies.dot(normal) / rate),
        Meets::Plane(_) => DVec3::ZERO,
    };
    Rows { by_state, early_m_s: [early.dot(x), early.dot(y)] }
}
