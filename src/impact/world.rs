//! Ball, handle, blade and hands as bodies of the engine. Each body's frame lies at its centre of mass.

use rapier3d_f64::parry::query::contact;
use rapier3d_f64::parry::shape::{Ball as Sphere, Cuboid};
use rapier3d_f64::prelude::{
    GenericJointBuilder, JointAxesMask, MultibodyJointHandle, PhysicsWorld, Pose, RigidBodyHandle,
    Rotation,
};

use super::ImpactFault;
use super::hand::Hand;
use super::strike::Hit;
use crate::frames::{DMat3, DVec3};
use crate::swing::engine::hinges::{free_body, world};

/// Half the thickness of the plate that stands for the face, m: enough for no ball to pass through.
const PLATE_M: f64 = 0.02;

/// A body of the hit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Body {
    Handle,
    Blade,
    Ball,
    /// By its place in the hit.
    Hand(usize),
}

/// How a body moves.
#[derive(Clone, Copy, Debug)]
pub(super) struct Motion {
    /// Of the centre of mass, m/s.
    pub(super) v: DVec3,
    /// rad/s.
    pub(super) omega: DVec3,
}

/// Rates of the two bodies that hang together: velocity and turning of the handle, and the hinge's rate.
const BAT_RATES: usize = 7;

/// The bodies in a world of the engine. The axes are those of B at first touch.
///
/// The engine steps velocities first and places after: leapfrog, with places at whole steps and velocities
/// half a step behind. All that is asked here is at the whole step: rates are carried on half a step, by the
/// last two. Those of handle and blade are worked out from the multibody's own rates; what the engine writes
/// to a link's body is a whole step older.
pub(super) struct World {
    world: PhysicsWorld,
    /// Handle, blade, ball, hands.
    bodies: Vec<RigidBodyHandle>,
    /// The multibody's rates, then velocity and turning of each other body: at this instant.
    rates: Vec<f64>,
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
        let hands: Vec<RigidBodyHandle> = hit.hands.iter().map(&mut add_hand).collect();

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
        let free: [f64; BAT_RATES] = [v.x, v.y, v.z, omega.x, omega.y, omega.z, 0.0];
        if multibody.ndofs() != free.len() {
            return Err(lost);
        }
        for (rate, wanted) in multibody.generalized_velocity_mut().iter_mut().zip(free) {
            *rate = wanted;
        }
        multibody.update_rigid_bodies(bodies, true);
        let length_m = parts.toe_m - parts.shoulder_m;
        let middle = DVec3::new(parts.shoulder_m + 0.5 * length_m, 0.0, parts.face_m - PLATE_M);
        let mut it = Self {
            world,
            bodies: [handle, blade, ball].into_iter().chain(hands).collect(),
            rates: Vec::new(),
            hinge,
            plate: Cuboid::new(DVec3::new(0.5 * length_m, parts.half_width_m, PLATE_M)),
            plate_on_blade: Pose::from_translation(middle - parts.blade.com_B),
            sphere: Sphere::new(r),
        };
        it.rates = it.rates_of_step().ok_or(lost)?;
        Ok(it)
    }

    fn handle_of(&self, it: Body) -> RigidBodyHandle {
        let place = match it {
            Body::Handle => 0,
            Body::Blade => 1,
            Body::Ball => 2,
            Body::Hand(n) => 3 + n,
        };
        self.bodies[place]
    }

    /// Where a body is and how it is turned; its origin is its centre of mass.
    pub(super) fn pose(&self, it: Body) -> &Pose {
        self.world.bodies[self.handle_of(it)].position()
    }

    /// How a body moves at this instant; standing still if the engine has lost it.
    pub(super) fn motion(&self, it: Body) -> Motion {
        let of = |rates: &[f64]| match rates {
            [x, y, z, a, b, c, ..] => {
                Motion { v: DVec3::new(*x, *y, *z), omega: DVec3::new(*a, *b, *c) }
            }
            _ => Motion { v: DVec3::ZERO, omega: DVec3::ZERO },
        };
        match it {
            Body::Handle => of(&self.of_link(0)),
            Body::Blade => of(&self.of_link(1)),
            Body::Ball => of(&self.rates[BAT_RATES..]),
            Body::Hand(n) => of(&self.rates[BAT_RATES + 6 * (n + 1)..]),
        }
    }

    /// Velocity and turning of a link, by its Jacobian.
    fn of_link(&self, link: usize) -> [f64; 6] {
        let mut out = [0.0; 6];
        if let Some((multibody, _)) = self.world.multibody_joints.get(self.hinge) {
            let columns = multibody.body_jacobian(link).column_iter();
            for (column, rate) in columns.zip(&self.rates) {
                out.iter_mut().zip(column.iter()).for_each(|(it, share)| *it += share * rate);
            }
        }
        out
    }

    /// Velocity of the point of a body that lies there.
    pub(super) fn velocity(&self, it: Body, at: DVec3) -> DVec3 {
        let Motion { v, omega } = self.motion(it);
        v + omega.cross(at - self.pose(it).translation)
    }

    /// All rates as the engine left them: half a step behind the places.
    fn rates_of_step(&self) -> Option<Vec<f64>> {
        let (multibody, _) = self.world.multibody_joints.get(self.hinge)?;
        let bat = multibody.generalized_velocity();
        let free = self.bodies.iter().skip(2).flat_map(|it| {
            let body = &self.world.bodies[*it];
            [body.linvel().to_array(), body.angvel().to_array()].concat()
        });
        Some(bat.iter().copied().chain(free).collect())
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
    pub(super) fn hinge(&self) -> Option<[f64; 2]> {
        let (multibody, id) = self.world.multibody_joints.get(self.hinge)?;
        Some([multibody.link(id)?.joint().coords()[3], *self.rates.get(BAT_RATES - 1)?])
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
            // The engine's own arm is a step old.
            let arm = at - self.pose(it).translation;
            let handle = self.handle_of(it);
            let body = &mut self.world.bodies[handle];
            body.add_force(force, false);
            body.add_torque(arm.cross(force), false);
        }
    }

    /// A couple on one body and its opposite on another.
    pub(super) fn turn(&mut self, on: Body, from: Body, couple: DVec3) {
        for (it, couple) in [(on, couple), (from, -couple)] {
            let handle = self.handle_of(it);
            self.world.bodies[handle].add_torque(couple, false);
        }
    }

    /// One step; none if the engine has lost the bat.
    pub(super) fn step(&mut self) -> Option<()> {
        let before = self.rates_of_step()?;
        self.world.step();
        let after = self.rates_of_step()?;
        self.rates = after.iter().zip(&before).map(|(now, was)| 1.5 * now - 0.5 * was).collect();
        Some(())
    }

    /// Momentum, moment of momentum about the origin, and energy of motion of all bodies.
    pub(super) fn totals(&self) -> (DVec3, DVec3, f64) {
        let hands = (0..self.bodies.len() - 3).map(Body::Hand);
        let mut sum = (DVec3::ZERO, DVec3::ZERO, 0.0);
        for it in [Body::Handle, Body::Blade, Body::Ball].into_iter().chain(hands) {
            let body = &self.world.bodies[self.handle_of(it)];
            let pose = self.pose(it);
            let R = DMat3::from_quat(pose.rotation);
            let local = body.mass_properties().local_mprops.reconstruct_inertia_matrix();
            let I = R * local * R.transpose();
            let Motion { v, omega } = self.motion(it);
            let p = v * body.mass();
            let spin = I * omega;
            sum.0 += p;
            sum.1 += pose.translation.cross(p) + spin;
            sum.2 += 0.5 * (v.dot(p) + omega.dot(spin));
        }
        sum
    }
}
