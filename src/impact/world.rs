//! Ball, handle, blade and hands as bodies of the engine. Each body's frame lies at its centre of mass.

use rapier3d_f64::parry::query::contact;
use rapier3d_f64::parry::shape::{Ball as Sphere, Cuboid};
use rapier3d_f64::prelude::{
    GenericJointBuilder, JointAxesMask, MultibodyJointHandle, PhysicsWorld, Pose, RigidBody,
    RigidBodyHandle, Rotation,
};

use super::ImpactFault;
use super::hand::Hand;
use super::strike::Hit;
use crate::frames::{DMat3, DVec3};
use crate::swing::engine::hinges::{free_body, world};

/// Half the thickness of the plate that stands for the face, m: enough for no ball to pass through.
const PLATE_M: f64 = 0.02;

/// The bodies in a world of the engine. The axes are those of B at first touch.
pub(super) struct World {
    world: PhysicsWorld,
    pub(super) ball: RigidBodyHandle,
    pub(super) handle: RigidBodyHandle,
    pub(super) blade: RigidBodyHandle,
    pub(super) hands: Vec<RigidBodyHandle>,
    hinge: MultibodyJointHandle,
    plate: Cuboid,
    plate_on_blade: Pose,
    sphere: Sphere,
}

impl World {
    /// Puts the bodies where they first touch: the bat turning about its axis, the ball coming.
    pub(super) fn new(hit: &Hit, dt_s: f64) -> Result<Self, ImpactFault> {
        let lost = ImpactFault::Lost { at_s: 0.0 };
        let mut world = world();
        world.gravity = DVec3::ZERO;
        world.integration_parameters.dt = dt_s;
        let parts = &hit.parts;
        let omega = DVec3::Y * -hit.turning_rad_s();
        let velocity = |p: DVec3| omega.cross(p - DVec3::X * hit.turns_about_m);
        let mut add = |mass_kg: f64, p: DVec3, I: &DMat3, v: DVec3, omega: DVec3| {
            let body = free_body(mass_kg, DVec3::ZERO, I).translation(p).linvel(v).angvel(omega);
            let it = world.bodies.insert(body);
            // Else the engine knows no masses before its first step.
            world.bodies[it].recompute_mass_properties_from_colliders(&world.colliders);
            it
        };
        let [handle, blade] = [&parts.handle, &parts.blade]
            .map(|it| add(it.mass_kg, it.com_B, &it.I_Com_B, velocity(it.com_B), omega));
        let r = hit.ball.radius_m;
        let centre = DVec3::new(hit.contact_from_top_m, hit.across_m, parts.face_m + r);
        let round = DMat3::from_diagonal(DVec3::splat(0.4 * hit.ball.mass_kg * r * r));
        let towards = DVec3::Z * -hit.ball_m_s;
        let ball = add(hit.ball.mass_kg, centre, &round, towards, DVec3::ZERO);
        let mut add_hand = |it: &Hand| {
            let p = DVec3::X * it.from_top_m;
            let I = DMat3::from_diagonal(DVec3::splat(it.turning_kg_m2()));
            add(it.mass_kg, p, &I, velocity(p), DVec3::ZERO)
        };
        let hands = hit.hands.iter().map(&mut add_hand).collect();

        // The engine's hinges turn about x of the joint frame; ours turns about y.
        let to_y = Rotation::from_rotation_arc(DVec3::X, DVec3::Y);
        let shoulder = DVec3::X * parts.shoulder_m;
        let joint = GenericJointBuilder::new(
            JointAxesMask::LIN_AXES | JointAxesMask::ANG_Y | JointAxesMask::ANG_Z,
        )
        .local_frame1(Pose::from_parts(shoulder - parts.handle.com_B, to_y))
        .local_frame2(Pose::from_parts(shoulder - parts.blade.com_B, to_y))
        .build();
        let hinge = world.multibody_joints.insert(handle, blade, joint, true).ok_or(lost)?;
        let PhysicsWorld { multibody_joints, bodies, .. } = &mut world;
        let (multibody, _) = multibody_joints.get_mut(hinge).ok_or(lost)?;
        multibody.forward_kinematics(bodies, true);
        multibody.damping_mut().fill(0.0);
        let v = bodies[handle].linvel();
        let free: [f64; 7] = [v.x, v.y, v.z, omega.x, omega.y, omega.z, 0.0];
        if multibody.ndofs() != free.len() {
            return Err(lost);
        }
        for (rate, wanted) in multibody.generalized_velocity_mut().iter_mut().zip(free) {
            *rate = wanted;
        }
        multibody.update_rigid_bodies(bodies, true);
        let length_m = parts.toe_m - parts.shoulder_m;
        let middle = DVec3::new(parts.shoulder_m + 0.5 * length_m, 0.0, parts.face_m - PLATE_M);
        Ok(Self {
            world,
            ball,
            handle,
            blade,
            hands,
            hinge,
            plate: Cuboid::new(DVec3::new(0.5 * length_m, parts.half_width_m, PLATE_M)),
            plate_on_blade: Pose::from_translation(middle - parts.blade.com_B),
            sphere: Sphere::new(r),
        })
    }

    /// One body.
    pub(super) fn body(&self, it: RigidBodyHandle) -> &RigidBody {
        &self.world.bodies[it]
    }

    /// Where the ball touches the face: the place on the face, the normal out of it, and how far the ball is
    /// pressed in (negative where they are apart). None where they are far apart.
    pub(super) fn touch(&self) -> Option<(DVec3, DVec3, f64)> {
        let face = *self.body(self.blade).position() * self.plate_on_blade;
        let at = self.body(self.ball).position();
        let found = contact(&face, &self.plate, at, &self.sphere, self.sphere.radius).ok()??;
        Some((found.point1, found.normal1, -found.dist))
    }

    /// Angle and rate of the hinge, rad and rad/s: positive where the toe lags behind.
    pub(super) fn hinge(&self) -> Option<[f64; 2]> {
        let (multibody, id) = self.world.multibody_joints.get(self.hinge)?;
        let link = multibody.link(id)?;
        Some([link.joint().coords()[3], *multibody.joint_velocity(link).iter().next()?])
    }

    /// Takes all forces off.
    pub(super) fn release(&mut self) {
        let bodies = [self.ball, self.handle, self.blade];
        for it in bodies.iter().chain(&self.hands) {
            let body = &mut self.world.bodies[*it];
            body.reset_forces(false);
            body.reset_torques(false);
        }
    }

    /// A force on one body and its opposite on another, at one point.
    pub(super) fn press(
        &mut self,
        on: RigidBodyHandle,
        from: RigidBodyHandle,
        force: DVec3,
        at: DVec3,
    ) {
        self.world.bodies[on].add_force_at_point(force, at, false);
        self.world.bodies[from].add_force_at_point(-force, at, false);
    }

    /// A couple on one body and its opposite on another.
    pub(super) fn turn(&mut self, on: RigidBodyHandle, from: RigidBodyHandle, couple: DVec3) {
        self.world.bodies[on].add_torque(couple, false);
        self.world.bodies[from].add_torque(-couple, false);
    }

    /// One step.
    pub(super) fn step(&mut self) {
        self.world.step();
    }

    /// Momentum, moment of momentum about the origin, and energy of motion of all bodies.
    pub(super) fn totals(&self) -> (DVec3, DVec3, f64) {
        let mut sum = (DVec3::ZERO, DVec3::ZERO, 0.0);
        for (_, body) in self.world.bodies.iter() {
            let R = DMat3::from_quat(body.position().rotation);
            let local = body.mass_properties().local_mprops.reconstruct_inertia_matrix();
            let I = R * local * R.transpose();
            let (v, omega) = (body.linvel(), body.angvel());
            let p = v * body.mass();
            let spin = I * omega;
            sum.0 += p;
            sum.1 += body.center_of_mass().cross(p) + spin;
            sum.2 += 0.5 * (v.dot(p) + omega.dot(spin));
        }
        sum
    }
}
