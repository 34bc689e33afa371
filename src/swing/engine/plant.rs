//! Player and bat in the engine: a multibody of hinges, and a free bat held by two joints; the load of each hand on the
//! bat is read from the impulses of its joint.

use rapier3d_f64::prelude::{
    FixedJointBuilder, ImpulseJointHandle, PhysicsWorld, Pose, RigidBodyHandle, Rotation,
    SphericalJointBuilder,
};

use super::EngineFault;
use super::hinges::{Hinges, free_body, world};
use crate::dynamics::tree::Kinematics;
use crate::frames::{DMat3, DVec3};
use crate::player::joints::JOINT_COUNT;
use crate::swing::chain::Chain;
use crate::swing::hand_wrench::{HandWrench, Hands};

const N: usize = JOINT_COUNT;

/// Motion of the bat, relative to the pelvis, in the axes of W.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct BatMotion {
    /// Centre of mass, m.
    pub com: DVec3,
    /// Attitude.
    pub R: DMat3,
    /// Velocity of the centre of mass, m/s.
    pub v_com: DVec3,
    /// Angular velocity, rad/s.
    pub omega: DVec3,
}

/// Player and bat in a world of the engine.
pub struct Plant {
    world: PhysicsWorld,
    hinges: Hinges<N>,
    bat: RigidBodyHandle,
    bat_link: usize,
    bottom_hand_link: usize,
    com_B: DVec3,
    top: ImpulseJointHandle,
    bottom: ImpulseJointHandle,
}

impl Plant {
    /// Builds the bodies and joints of a chain; [`place`](Self::place) it before the first step.
    pub fn new(chain: &Chain) -> Result<Self, EngineFault> {
        let mut world = world();
        let bat_link = chain.link.bat;
        let hinges = Hinges::insert(&mut world, &chain.tree, Some(bat_link))?;
        let link = &chain.tree.links()[bat_link];
        let bat = world.bodies.insert(free_body(link.mass_kg, link.com, &link.I_Com));
        let on_handle = DVec3::new(chain.grip.top_hand_m, 0.0, 0.0);
        let in_palm = Pose::from_parts(
            link.offset + link.R_rest * on_handle,
            Rotation::from_mat3(&link.R_rest),
        );
        let top = FixedJointBuilder::new()
            .local_frame1(in_palm)
            .local_frame2(Pose::from_translation(on_handle))
            .contacts_enabled(false);
        let top = world.impulse_joints.insert(hinges.body(chain.link.top[2]), bat, top, true);
        let hold = &chain.bottom_hand;
        let bottom = SphericalJointBuilder::new()
            .local_anchor1(hold.point_b)
            .local_anchor2(hold.point_a)
            .contacts_enabled(false);
        let bottom = world.impulse_joints.insert(hinges.body(hold.link_b), bat, bottom, true);
        Ok(Self {
            world,
            hinges,
            bat,
            bat_link,
            bottom_hand_link: hold.link_b,
            com_B: link.com,
            top,
            bottom,
        })
    }

    /// Sets joint angles and rates; `k` is the chain's kinematics there, which says where the bat is.
    pub fn place(&mut self, k: &Kinematics<N>, q: &[f64; N], v: &[f64; N]) {
        self.hinges.place(&mut self.world, q, v);
        let R = k.R[self.bat_link];
        let bat = &mut self.world.bodies[self.bat];
        bat.set_position(Pose::from_parts(k.p[self.bat_link], Rotation::from_mat3(&R)), true);
        let com = k.point(self.bat_link, self.com_B);
        bat.set_linvel(k.velocity(self.bat_link, com), true);
        bat.set_angvel(k.omega[self.bat_link], true);
    }

    /// One step under joint torques and a couple of the bottom hand on the bat, the base accelerating by
    /// `a_base` (free fall upwards in it): the mean load of the hands over the step.
    pub fn step(
        &mut self,
        torque_n_m: &[f64; N],
        couple_bottom_W: DVec3,
        a_base: DVec3,
        dt: f64,
    ) -> Hands {
        self.hinges.pull(&mut self.world, torque_n_m);
        let hand = self.hinges.body(self.bottom_hand_link);
        self.world.bodies[hand].add_torque(-couple_bottom_W, false);
        let bat = &mut self.world.bodies[self.bat];
        bat.reset_torques(false);
        bat.add_torque(couple_bottom_W, false);
        let before = [self.top, self.bottom].map(|j| joint_frame(&self.world, j));
        self.world.gravity = -a_base;
        self.world.integration_parameters.dt = dt;
        self.world.step();
        let top = load(&self.world, self.top, before[0], dt);
        let bottom = load(&self.world, self.bottom, before[1], dt);
        Hands { top, bottom: HandWrench { couple_W: couple_bottom_W, ..bottom } }
    }

    /// Joint angles and rates.
    pub fn state(&self) -> ([f64; N], [f64; N]) {
        self.hinges.state(&self.world)
    }

    /// The bat.
    pub fn bat(&self) -> BatMotion {
        let bat = &self.world.bodies[self.bat];
        let at = bat.position();
        BatMotion {
            com: at.transform_point(self.com_B),
            R: DMat3::from_quat(at.rotation),
            v_com: bat.linvel(),
            omega: bat.angvel(),
        }
    }
}

/// Attitude of a joint's frame on its first body: the impulses of a step stand in it as it was
/// before the step.
fn joint_frame(world: &PhysicsWorld, joint: ImpulseJointHandle) -> Rotation {
    world.impulse_joints.get(joint).map_or(Rotation::IDENTITY, |j| {
        world.bodies[j.body1()].position().rotation * j.data.local_frame1.rotation
    })
}

/// Mean force and couple of a joint's first body on its second over the step just made, at the joint.
///
/// The rows of rotation carry twice the torque (measured against Newton–Euler with rapier 0.36.1; the
/// tests repeat it).
fn load(
    world: &PhysicsWorld,
    joint: ImpulseJointHandle,
    frame_before: Rotation,
    dt: f64,
) -> HandWrench {
    let i = world.impulse_joints.get(joint).map_or([f64::NAN; 6], |j| j.impulses);
    HandWrench {
        force_W: frame_before * DVec3::new(i[0], i[1], i[2]) / -dt,
        couple_W: frame_before * DVec3::new(i[3], i[4], i[5]) * (-0.5 / dt),
    }
}
