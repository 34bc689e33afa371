//! The load of each hand on the bat, read from the impulses of its joint.

use rapier3d_f64::prelude::{ImpulseJointHandle, PhysicsWorld, Rotation};

use crate::frames::DVec3;

/// What the hands do to the bat at one instant, in the axes of W.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HandsOnBat {
    /// Force of the top hand on the bat, N.
    pub force_top_W: DVec3,
    /// Couple of the top hand on the bat about the middle of its grip, N m.
    pub couple_top_W: DVec3,
    /// Force of the bottom hand on the bat, N.
    pub force_bottom_W: DVec3,
    /// Couple of the bottom hand on the bat about the middle of its grip, N m: what was put on.
    pub couple_bottom_W: DVec3,
}

impl HandsOnBat {
    /// First-order error taken out: `2 x(h/2) − x(h)`.
    pub fn extrapolated(coarse: &Self, fine: &Self) -> Self {
        Self {
            force_top_W: 2.0 * fine.force_top_W - coarse.force_top_W,
            couple_top_W: 2.0 * fine.couple_top_W - coarse.couple_top_W,
            force_bottom_W: 2.0 * fine.force_bottom_W - coarse.force_bottom_W,
            couple_bottom_W: 2.0 * fine.couple_bottom_W - coarse.couple_bottom_W,
        }
    }
}

/// Attitude of a joint's frame on its first body: the impulses of a step stand in it as it was
/// before the step.
pub(super) fn joint_frame(world: &PhysicsWorld, joint: ImpulseJointHandle) -> Rotation {
    world.impulse_joints.get(joint).map_or(Rotation::IDENTITY, |j| {
        world.bodies[j.body1()].position().rotation * j.data.local_frame1.rotation
    })
}

/// Mean force and couple of a joint's first body on its second over the step just made, at the joint.
///
/// The rows of rotation carry twice the torque (measured against Newton–Euler with rapier 0.36.1; the
/// tests repeat it).
pub(super) fn load(
    world: &PhysicsWorld,
    joint: ImpulseJointHandle,
    frame_before: Rotation,
    dt: f64,
) -> (DVec3, DVec3) {
    let i = world.impulse_joints.get(joint).map_or([f64::NAN; 6], |j| j.impulses);
    (
        frame_before * DVec3::new(i[0], i[1], i[2]) / -dt,
        frame_before * DVec3::new(i[3], i[4], i[5]) * (-0.5 / dt),
    )
}
