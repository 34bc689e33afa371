//! Ball, handle, blade and hands as bodies of the engine. Each body's frame lies at its centre of mass.

use rapier3d_f64::parry::query::contact;
use rapier3d_f64::parry::shape::{Ball as Sphere, Cuboid};
use rapier3d_f64::prelude::{
    GenericJointBuilder, JointAxesMask, PhysicsWorld, Pose, RigidBody, RigidBodyHandle, Rotation,
};

use super::hand::Hand;
use super::hit::Hit;
use crate::frames::{DMat3, DVec3};
use crate::swing::engine::hinges::{free_body, world};

/// Half the thickness of the plate that stands for the face, m: enough for no ball to pass through.
const PLATE_M: f64 = 0.02;

/// Natural frequency of the engine's joint, Hz: so high that a gap closes within a step of any length used.
const JOINT_HZ: f64 = 1e9;

/// A body of the hit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Body {
    Handle,
    Blade,
    Ball,
    /// By its place in the hit.
    Hand(usize),
}

impl Body {
    /// Among the bodies of a world.
    fn place(self) -> usize {
        match self {
            Self::Handle => 0,
            Self::Blade => 1,
            Self::Ball => 2,
            Self::Hand(n) => 3 + n,
        }
    }
}

/// How a body moves.
#[derive(Clone, Copy, Debug)]
pub(super) struct Motion {
    /// Of the centre of mass, m/s.
    pub(super) v: DVec3,
    /// rad/s.
    pub(super) omega: DVec3,
}

/// Where the ball meets the face, and how the face lies there.
struct Met {
    place: DVec3,
    normal: DVec3,
    /// Slope of the face along the blade there, its tangent.
    slope: f64,
}

impl Met {
    fn of(hit: &Hit) -> Self {
        let (parts, bow) = (&hit.parts, hit.parts.bow());
        let share = parts.from_shoulder(hit.contact_from_top_m);
        let z = parts.face_m - bow.behind_chord_m(share);
        let [sine, cosine] = bow.slope(share);
        Self {
            place: DVec3::new(hit.contact_from_top_m, hit.across_m, z),
            normal: DVec3::new(-sine, 0.0, cosine),
            slope: sine / cosine,
        }
    }

    /// Half the length and the middle of the plate that stands for the face: it lies in the tangent plane at the place
    /// met, and reaches from the shoulder to the toe. In the thousandth of a second of a hit the ball moves along the
    /// face by a millimetre or two, over which an arc of some metres leaves its tangent by about a micrometre.
    fn plate(&self, hit: &Hit) -> (f64, DVec3) {
        let parts = &hit.parts;
        let length_m = parts.toe_m - parts.shoulder_m;
        let x = parts.shoulder_m + 0.5 * length_m;
        let z = self.place.z + self.slope * (x - self.place.x);
        (0.5 * length_m / self.normal.z, DVec3::new(x, 0.0, z) - self.normal * PLATE_M)
    }
}

/// The bodies in a world of the engine. The axes are those of B at first touch.
///
/// The engine steps velocities first and places after: leapfrog, with places at whole steps and velocities
/// half a step behind. All that is asked here is at the whole step: velocities are carried on half a step, by
/// the last two, so that the hit is of second order in the step.
///
/// The hinge is a joint between two free bodies, not a multibody: what it gives one body it takes from the
/// other, so that momentum is kept to rounding. As a multibody the bat lost up to 3e-4 of the ball's impulse,
/// in proportion to the step, because the engine takes centrifugal forces at the step's end.
pub(super) struct World {
    world: PhysicsWorld,
    /// Handle, blade, ball, hands.
    bodies: Vec<RigidBodyHandle>,
    /// How they move at this instant.
    motions: Vec<Motion>,
    plate: Cuboid,
    plate_on_blade: Pose,
    sphere: Sphere,
}

impl World {
    /// Puts the bodies where they first touch: the bat turning about its axis, the ball coming.
    pub(super) fn new(hit: &Hit, dt_s: f64) -> Self {
        let mut world = world();
        world.gravity = DVec3::ZERO;
        world.integration_parameters.dt = dt_s;
        // Else the engine takes from the velocities what closed the gap, with arms that are a step old.
        world.integration_parameters.num_internal_stabilization_iterations = 0;
        let parts = &hit.parts;
        let omega = DVec3::Y * -hit.turning_rad_s();
        let velocity = |p: DVec3| omega.cross(p - DVec3::X * hit.turns_about_m);
        let mut add = |mass_kg: f64, p: DVec3, I: &DMat3, v: DVec3, omega: DVec3| {
            let body = free_body(mass_kg, DVec3::ZERO, I).translation(p).linvel(v).angvel(omega);
            // Ours, at the whole step: the engine's are of first order.
            let body = body.gyroscopic_forces_enabled(false);
            let it = world.bodies.insert(body);
            // Else the engine knows no masses before its first step.
            world.bodies[it].recompute_mass_properties_from_colliders(&world.colliders);
            it
        };
        let [handle, blade] = [&parts.handle, &parts.blade]
            .map(|it| add(it.mass_kg, it.com_B, &it.I_Com_B, velocity(it.com_B), omega));
        let r = hit.ball.radius_m;
        let met = Met::of(hit);
        let centre = met.place + met.normal * r;
        let round = DMat3::from_diagonal(DVec3::splat(0.4 * hit.ball.mass_kg * r * r));
        let towards = DVec3::Z * -hit.ball_m_s;
        let ball = add(hit.ball.mass_kg, centre, &round, towards, DVec3::ZERO);
        let mut add_hand = |it: &Hand| {
            let p = DVec3::X * it.from_top_m;
            let I = DMat3::from_diagonal(DVec3::splat(it.turning_kg_m2()));
            add(it.mass_kg, p, &I, velocity(p), DVec3::ZERO)
        };
        let hands: Vec<RigidBodyHandle> = hit.hands.iter().map(&mut add_hand).collect();

        // The engine's hinges turn about x of the joint frame; ours turns about y.
        let to_y = Rotation::from_rotation_arc(DVec3::X, DVec3::Y);
        let shoulder = DVec3::X * parts.shoulder_m;
        let locked = JointAxesMask::LIN_AXES | JointAxesMask::ANG_Y | JointAxesMask::ANG_Z;
        let mut joint = GenericJointBuilder::new(locked)
            .local_frame1(Pose::from_parts(shoulder - parts.handle.com_B, to_y))
            .local_frame2(Pose::from_parts(shoulder - parts.blade.com_B, to_y))
            .build();
        joint.softness.natural_frequency = JOINT_HZ;
        world.impulse_joints.insert(handle, blade, joint, true);
        let (half_m, middle) = met.plate(hit);
        let mut it = Self {
            world,
            bodies: [handle, blade, ball].into_iter().chain(hands).collect(),
            motions: Vec::new(),
            plate: Cuboid::new(DVec3::new(half_m, parts.half_width_m, PLATE_M)),
            plate_on_blade: Pose::from_parts(
                middle - parts.blade.com_B,
                Rotation::from_rotation_arc(DVec3::Z, met.normal),
            ),
            sphere: Sphere::new(r),
        };
        it.motions = it.motions_of_step();
        it
    }

    /// All velocities as the engine left them: half a step behind the places.
    fn motions_of_step(&self) -> Vec<Motion> {
        let of = |it: &RigidBodyHandle| {
            let body = &self.world.bodies[*it];
            Motion { v: body.linvel(), omega: body.angvel() }
        };
        self.bodies.iter().map(of).collect()
    }

    /// Where a body is and how it is turned; its origin is its centre of mass.
    pub(super) fn pose(&self, it: Body) -> &Pose {
        self.world.bodies[self.bodies[it.place()]].position()
    }

    /// How a body moves at this instant.
    pub(super) fn motion(&self, it: Body) -> Motion {
        self.motions[it.place()]
    }

    /// Velocity of the point of a body that lies there.
    pub(super) fn velocity(&self, it: Body, at: DVec3) -> DVec3 {
        let Motion { v, omega } = self.motion(it);
        v + omega.cross(at - self.pose(it).translation)
    }

    /// Where the ball touches the face: the place on the face, the normal out of it, and how far the ball is
    /// pressed in (negative where they are apart). None where they are far apart.
    pub(super) fn touch(&self) -> Option<(DVec3, DVec3, f64)> {
        let face = *self.pose(Body::Blade) * self.plate_on_blade;
        let ball = self.pose(Body::Ball);
        let found = contact(&face, &self.plate, ball, &self.sphere, self.sphere.radius).ok()??;
        Some((found.point1, found.normal1, -found.dist))
    }

    /// Angle and rate of the hinge, rad and rad/s: positive where the toe lags behind.
    pub(super) fn hinge(&self) -> [f64; 2] {
        let [handle, blade] = [Body::Handle, Body::Blade].map(|it| self.pose(it).rotation);
        let bent = handle.inverse() * blade;
        let rate = self.motion(Body::Blade).omega - self.motion(Body::Handle).omega;
        [2.0 * libm::atan2(bent.y, bent.w), rate.dot(handle * DVec3::Y)]
    }

    /// Takes all forces off.
    pub(super) fn release(&mut self) {
        for it in &self.bodies {
            let body = &mut self.world.bodies[*it];
            body.reset_forces(false);
            body.reset_torques(false);
        }
    }

    /// A force on one body and its opposite on another, at one point.
    pub(super) fn press(&mut self, on: Body, from: Body, force: DVec3, at: DVec3) {
        for (it, force) in [(on, force), (from, -force)] {
            let arm = at - self.pose(it).translation;
            let body = &mut self.world.bodies[self.bodies[it.place()]];
            body.add_force(force, false);
            body.add_torque(arm.cross(force), false);
        }
    }

    /// A couple on one body and its opposite on another.
    pub(super) fn turn(&mut self, on: Body, from: Body, couple: DVec3) {
        for (it, couple) in [(on, couple), (from, -couple)] {
            self.world.bodies[self.bodies[it.place()]].add_torque(couple, false);
        }
    }

    /// One step.
    pub(super) fn step(&mut self) {
        for (it, Motion { omega, .. }) in self.bodies.iter().zip(&self.motions) {
            let body = &mut self.world.bodies[*it];
            let spin = inertia(body) * *omega;
            body.add_torque(-omega.cross(spin), false);
        }
        let before = self.motions_of_step();
        self.world.step();
        let ahead = |now: DVec3, was: DVec3| now + (now - was) * 0.5;
        self.motions = self.motions_of_step();
        for (it, was) in self.motions.iter_mut().zip(&before) {
            *it = Motion { v: ahead(it.v, was.v), omega: ahead(it.omega, was.omega) };
        }
    }

    /// Momentum, moment of momentum about the origin, and energy of motion of all bodies.
    pub(super) fn totals(&self) -> (DVec3, DVec3, f64) {
        let mut sum = (DVec3::ZERO, DVec3::ZERO, 0.0);
        for (it, Motion { v, omega }) in self.bodies.iter().zip(&self.motions) {
            let body = &self.world.bodies[*it];
            let p = *v * body.mass();
            let spin = inertia(body) * *omega;
            sum.0 += p;
            sum.1 += body.position().translation.cross(p) + spin;
            sum.2 += 0.5 * (v.dot(p) + omega.dot(spin));
        }
        sum
    }
}

/// Tensor of inertia about the centre of mass, turned as the body is.
fn inertia(body: &RigidBody) -> DMat3 {
    let R = DMat3::from_quat(body.position().rotation);
    R * body.mass_properties().local_mprops.reconstruct_inertia_matrix() * R.transpose()
}
