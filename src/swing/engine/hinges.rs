//! A tree of hinges as one multibody of the engine.

use nalgebra::Matrix3;
use rapier3d_f64::prelude::{
    FixedJointBuilder, GenericJoint, GenericJointBuilder, JointAxesMask, MassProperties,
    MultibodyJointHandle, PhysicsWorld, Pose, RigidBodyBuilder, RigidBodyHandle, Rotation,
};

use super::EngineFault;
use crate::dynamics::tree::{Link, Tree};
use crate::frames::{DMat3, DVec3};

/// One hinge in the engine.
#[derive(Clone, Copy, Debug)]
struct Hinge {
    body: RigidBodyHandle,
    /// None where the base carries the hinge: it takes no torque.
    parent: Option<RigidBodyHandle>,
    axis: DVec3,
    joint: MultibodyJointHandle,
}

/// The hinges of a tree in a world, in the order of the tree.
#[derive(Clone, Debug)]
pub struct Hinges<const N: usize> {
    hinges: Vec<Hinge>,
    bodies: Vec<RigidBodyHandle>,
}

/// A world set up as the swing needs it: one solver iteration to a step, ten sweeps over the two hand
/// joints (with one, the grip's rotation is off by 5 mrad, with ten by 0.05), nothing else in it.
pub fn world() -> PhysicsWorld {
    let mut world = PhysicsWorld::default();
    let p = &mut world.integration_parameters;
    p.num_solver_iterations = 1;
    p.num_internal_pgs_iterations = 10;
    p.num_internal_stabilization_iterations = 10;
    world
}

/// Mass properties of a link for the engine. The principal axes are taken by nalgebra's iteration, which
/// needs square roots only: the engine's closed form takes arc cosines from the platform, and the last
/// digits of a swing would depend on it.
fn mass_properties(mass_kg: f64, com: DVec3, I_Com: &DMat3) -> MassProperties {
    let eigen = Matrix3::from_column_slice(&I_Com.to_cols_array()).symmetric_eigen();
    let column = |i: usize| DVec3::from_slice(eigen.eigenvectors.column(i).as_slice());
    let (x, y) = (column(0), column(1));
    let frame = Rotation::from_mat3(&DMat3::from_cols(x, y, x.cross(y))).normalize();
    let moments = DVec3::from_slice(eigen.eigenvalues.as_slice());
    MassProperties::with_principal_inertia_frame(com, mass_kg, moments, frame)
}

/// A body that moves freely, never sleeps, and has no shape.
pub fn free_body(mass_kg: f64, com: DVec3, I_Com: &DMat3) -> RigidBodyBuilder {
    RigidBodyBuilder::dynamic()
        .additional_mass_properties(mass_properties(mass_kg, com, I_Com))
        .can_sleep(false)
}

/// Joint of a link on its parent: the engine's hinges turn about x of the joint frame.
fn joint(link: &Link) -> GenericJoint {
    let rest = Rotation::from_mat3(&link.R_rest);
    match link.axis {
        Some(axis) => {
            let to_axis = Rotation::from_rotation_arc(DVec3::X, axis);
            GenericJointBuilder::new(
                JointAxesMask::LIN_AXES | JointAxesMask::ANG_Y | JointAxesMask::ANG_Z,
            )
            .local_frame1(Pose::from_parts(link.offset, rest * to_axis))
            .local_frame2(Pose::from_rotation(to_axis))
            .build()
        }
        None => FixedJointBuilder::new()
            .local_frame1(Pose::from_parts(link.offset, rest))
            .build()
            .into(),
    }
}

impl<const N: usize> Hinges<N> {
    /// Adds the links of a tree to a world, all but `free_link`, which carries nothing and which the
    /// caller adds (the bat). The base stands still at the origin.
    pub fn insert(
        world: &mut PhysicsWorld,
        tree: &Tree<N>,
        free_link: Option<usize>,
    ) -> Result<Self, EngineFault> {
        let base = world.bodies.insert(RigidBodyBuilder::fixed());
        let mut bodies = Vec::with_capacity(tree.links().len());
        let mut hinges = Vec::with_capacity(N);
        for (i, link) in tree.links().iter().enumerate() {
            if free_link == Some(i) {
                bodies.push(base);
                continue;
            }
            let parent = link.parent.map(|p| bodies[p]);
            let body = world.bodies.insert(free_body(link.mass_kg, link.com, &link.I_Com));
            bodies.push(body);
            let joint = world
                .multibody_joints
                .insert(parent.unwrap_or(base), body, joint(link), true)
                .ok_or(EngineFault::Hinge { link: i })?;
            if let Some(axis) = link.axis {
                hinges.push(Hinge { body, parent, axis, joint });
            }
        }
        Ok(Self { hinges, bodies })
    }

    /// The engine's body of a link.
    pub fn body(&self, link: usize) -> RigidBodyHandle {
        self.bodies[link]
    }

    /// Sets angles and rates, and takes out the damping that the engine puts into every hinge.
    pub fn place(&self, world: &mut PhysicsWorld, q: &[f64; N], v: &[f64; N]) {
        let now = self.state(world).0;
        let Some(first) = self.hinges.first() else { return };
        let PhysicsWorld { multibody_joints, bodies, .. } = world;
        let places: Vec<usize> = self
            .hinges
            .iter()
            .filter_map(|h| multibody_joints.get(h.joint).map(|(_, id)| id))
            .collect();
        let Some((multibody, _)) = multibody_joints.get_mut(first.joint) else { return };
        // A multibody starts with a free root; this call fixes it to the base.
        multibody.forward_kinematics(bodies, true);
        multibody.damping_mut().fill(0.0);
        let mut displacement = vec![0.0; multibody.ndofs()];
        for (j, id) in places.into_iter().enumerate() {
            let Some(at) = multibody.link(id).map(|l| l.assembly_id()) else { continue };
            displacement[at] = q[j] - now[j];
            multibody.generalized_velocity_mut()[at] = v[j];
        }
        multibody.apply_displacements(&displacement);
        multibody.forward_kinematics(bodies, false);
        multibody.update_rigid_bodies(bodies, true);
    }

    /// Angles and rates.
    pub fn state(&self, world: &PhysicsWorld) -> ([f64; N], [f64; N]) {
        let mut q = [f64::NAN; N];
        let mut v = [f64::NAN; N];
        for (j, hinge) in self.hinges.iter().enumerate() {
            if let Some((multibody, id)) = world.multibody_joints.get(hinge.joint)
                && let Some(link) = multibody.link(id)
            {
                q[j] = link.joint().coords()[3];
                v[j] = multibody.joint_velocity(link)[0];
            }
        }
        (q, v)
    }

    /// Puts joint torques on: equal and opposite on the two bodies of each hinge.
    pub fn pull(&self, world: &mut PhysicsWorld, torque_n_m: &[f64; N]) {
        for hinge in &self.hinges {
            for body in [Some(hinge.body), hinge.parent].into_iter().flatten() {
                world.bodies[body].reset_torques(false);
            }
        }
        for (hinge, torque) in self.hinges.iter().zip(torque_n_m) {
            let couple = world.bodies[hinge.body].position().rotation * hinge.axis * *torque;
            world.bodies[hinge.body].add_torque(couple, false);
            if let Some(parent) = hinge.parent {
                world.bodies[parent].add_torque(-couple, false);
            }
        }
    }
}
