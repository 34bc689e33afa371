//! One hit, from first touch to the end of what the hands feel of it.
//!
//! The engine steps velocities first and places after: leapfrog, with places at whole steps and velocities
//! half a step behind. Dampers therefore take their rate half a step ahead, by the last two; so the hit is of
//! second order in the step.

use rapier3d_f64::prelude::RigidBodyHandle;

use super::ImpactFault;
use super::ball::{Ball, force_n, loss, stored_j};
use super::hand::Hand;
use super::parts::Parts;
use super::splice::Hinge;
use super::world::World;
use crate::frames::DVec3;

/// Step, s.
pub const STEP_S: f64 = 5e-6;
/// For so long after first touch the hands are listened to, s.
pub const FELT_S: f64 = 0.010;
/// A contact that lasts longer than this is no hit, s.
const LONGEST_CONTACT_S: f64 = 0.020;

/// Everything a hit hangs on.
#[derive(Clone, Debug, PartialEq)]
pub struct Hit {
    /// Bat.
    pub parts: Parts,
    /// Hinge at the shoulder.
    pub hinge: Hinge,
    /// Ball.
    pub ball: Ball,
    /// Hands: the top one and the bottom one, or none for a free bat.
    pub hands: Vec<Hand>,
    /// Where the ball meets the face, m from the top of the handle.
    pub contact_from_top_m: f64,
    /// Where it meets the face across, m off the middle, along y of B.
    pub across_m: f64,
    /// Bat speed at the place met, m/s, out of the face.
    pub bat_m_s: f64,
    /// The bat turns about an axis across it there, m from the top of the handle.
    pub turns_about_m: f64,
    /// Ball speed towards the bat, m/s.
    pub ball_m_s: f64,
}

impl Hit {
    /// Angular speed of the bat before the hit, rad/s.
    pub fn turning_rad_s(&self) -> f64 {
        self.bat_m_s / (self.contact_from_top_m - self.turns_about_m)
    }

    fn fault(&self) -> Option<ImpactFault> {
        let parts = &self.parts;
        let on = (parts.shoulder_m..=parts.toe_m).contains(&self.contact_from_top_m)
            && self.across_m.abs() <= parts.half_width_m;
        if !on {
            return Some(ImpactFault::OffTheFace {
                from_top_m: self.contact_from_top_m,
                across_m: self.across_m,
                shoulder_m: parts.shoulder_m,
                toe_m: parts.toe_m,
                half_width_m: parts.half_width_m,
            });
        }
        let closing_m_s = self.ball_m_s + self.bat_m_s;
        let closing = closing_m_s > 0.0 && closing_m_s.is_finite();
        (!closing).then_some(ImpactFault::NotClosing { closing_m_s })
    }
}

/// What one hand feels, over and above the load of the swing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Felt {
    /// Greatest force, N.
    pub peak_n: f64,
    /// When, s after first touch.
    pub peak_s: f64,
    /// Force summed over the time listened, as a vector, N s.
    pub impulse_n_s: f64,
    /// Greatest couple about the handle while the grip holds, N m.
    pub couple_n_m: f64,
}

/// One instant of the hit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Since first touch, s.
    pub t_s: f64,
    /// Ball on face, N.
    pub contact_n: f64,
    /// Force of the handle on each hand out of the face, N.
    pub hands_n: [f64; 2],
    /// Bend at the shoulder, rad.
    pub bend_rad: f64,
}

/// What is left open when everything before is compared with everything after.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Account {
    /// Momentum gained or lost, as a share of what the ball gave.
    pub momentum_share: f64,
    /// Moment of momentum about the top of the handle, as a share of the ball's impulse × its arm.
    pub moment_share: f64,
    /// Energy that is neither motion, nor in a spring, nor lost in ball, hinge or hands, as a share of the
    /// energy before.
    pub energy_share: f64,
    /// Energy lost in the ball, J.
    pub ball_j: f64,
    /// In the hinge, J.
    pub hinge_j: f64,
    /// In the hands, J.
    pub hands_j: f64,
}

/// What came of a hit.
#[derive(Clone, Debug, PartialEq)]
pub struct Struck {
    /// Ball speed out of the face when it leaves, m/s.
    pub exit_m_s: f64,
    /// Length of the contact, s.
    pub contact_s: f64,
    /// Greatest force of the ball, N.
    pub contact_peak_n: f64,
    /// Impulse of the ball, N s.
    pub impulse_n_s: f64,
    /// Bend at the shoulder furthest either way, rad.
    pub bend_rad: f64,
    /// Turning of the handle about its long axis when the ball leaves, rad/s.
    pub twist_rad_s: f64,
    /// How far it has turned by the end, rad.
    pub twist_rad: f64,
    /// Hands, as given.
    pub hands: Vec<Felt>,
    /// Every tenth step.
    pub moments: Vec<Moment>,
    /// The accounts.
    pub account: Account,
}

/// Until when a hit is followed.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Until {
    /// The ball leaves.
    Away,
    /// The hands have felt it.
    Felt,
}

/// A rate at this instant from those half a step before and one and a half.
#[derive(Clone, Copy, Default)]
struct Ahead<T>(Option<T>);

impl<
    T: Copy + std::ops::Add<Output = T> + std::ops::Sub<Output = T> + std::ops::Mul<f64, Output = T>,
> Ahead<T>
{
    fn now(&mut self, rate: T) -> T {
        let before = self.0.replace(rate).unwrap_or(rate);
        rate + (rate - before) * 0.5
    }
}

struct HandState {
    body: RigidBodyHandle,
    rate: Ahead<DVec3>,
    twist_rate: Ahead<f64>,
    twist_rad: f64,
    impulse: DVec3,
    felt: Felt,
}

/// Follows a hit at the usual step.
pub fn strike(hit: &Hit, until: Until) -> Result<Struck, ImpactFault> {
    strike_in_steps(hit, until, STEP_S)
}

/// Follows a hit at steps of `dt_s`.
pub fn strike_in_steps(hit: &Hit, until: Until, dt_s: f64) -> Result<Struck, ImpactFault> {
    if let Some(fault) = hit.fault() {
        return Err(fault);
    }
    let mut world = World::new(hit, dt_s)?;
    let before = world.totals();
    let closing_m_s = hit.ball_m_s + hit.bat_m_s;
    let loss = loss(hit.ball.restitution);
    let mut hands: Vec<HandState> = world
        .hands
        .iter()
        .map(|body| HandState {
            body: *body,
            rate: Ahead(None),
            twist_rate: Ahead(None),
            twist_rad: 0.0,
            impulse: DVec3::ZERO,
            felt: Felt::default(),
        })
        .collect();
    let (mut pressing, mut bending) = (Ahead(None), Ahead(None));
    let mut out = Struck {
        exit_m_s: f64::NAN,
        contact_s: f64::NAN,
        contact_peak_n: 0.0,
        impulse_n_s: 0.0,
        bend_rad: 0.0,
        twist_rad_s: f64::NAN,
        twist_rad: 0.0,
        hands: Vec::new(),
        moments: Vec::new(),
        account: Account {
            momentum_share: 0.0,
            moment_share: 0.0,
            energy_share: 0.0,
            ball_j: 0.0,
            hinge_j: 0.0,
            hands_j: 0.0,
        },
    };
    let (mut away, mut stored_j_now) = (false, 0.0);
    for step in 0.. {
        let t_s = f64::from(step) * dt_s;
        let lost = ImpactFault::Lost { at_s: t_s };
        world.release();
        let stored_j_before = stored_j_now;
        stored_j_now = 0.0;

        let mut contact_n = 0.0;
        if let Some((at, normal, pressed_m)) = world.touch().filter(|_| !away) {
            let [ball, blade] =
                [world.ball, world.blade].map(|it| world.body(it).velocity_at_point(at));
            let rate = pressing.now((blade - ball).dot(normal));
            away = step > 1 && pressed_m <= 0.0;
            if !away {
                let [spring, damper] = force_n(&hit.ball, loss, closing_m_s, pressed_m, rate);
                contact_n = spring + damper;
                let (ball, blade) = (world.ball, world.blade);
                world.press(ball, blade, normal * contact_n, at);
                stored_j_now += stored_j(&hit.ball, pressed_m);
                out.account.ball_j += damper * rate * dt_s;
                out.impulse_n_s += contact_n * dt_s;
                out.contact_peak_n = out.contact_peak_n.max(contact_n);
            }
        }
        if away && out.exit_m_s.is_nan() {
            out.exit_m_s = world.body(world.ball).linvel().z;
            out.contact_s = t_s;
            let handle = world.body(world.handle);
            out.twist_rad_s = handle.angvel().dot(handle.position().rotation * DVec3::X);
        }

        let [angle, rate] = world.hinge().ok_or(lost)?;
        let rate = bending.now(rate);
        let couple = -hit.hinge.stiffness_n_m * angle - hit.hinge.damping_n_m_s * rate;
        let (handle, blade) = (world.handle, world.blade);
        let axis = world.body(handle).position().rotation * DVec3::Y;
        world.turn(blade, handle, axis * couple);
        stored_j_now += 0.5 * hit.hinge.stiffness_n_m * angle * angle;
        out.account.hinge_j += hit.hinge.damping_n_m_s * rate * rate * dt_s;
        if angle.abs() > out.bend_rad.abs() {
            out.bend_rad = angle;
        }

        let mut hands_n = [0.0; 2];
        let long = world.body(handle).position().rotation * DVec3::X;
        for ((n, state), hand) in hands.iter_mut().enumerate().zip(&hit.hands) {
            let on_handle = DVec3::X * hand.from_top_m - hit.parts.handle.com_B;
            let grasped = world.body(handle).position().transform_point(on_handle);
            let held = world.body(state.body);
            let apart = grasped - held.translation();
            // At the hand's own point, where the force acts: what the damper takes is then all that is lost.
            let rate = world.body(handle).velocity_at_point(held.translation()) - held.linvel();
            let (twist_rate, damping) =
                ((world.body(handle).angvel() - held.angvel()).dot(long), hand.damping_n_s_m());
            let rate = state.rate.now(rate);
            let force = apart * hand.stiffness_n_m + rate * damping;
            // Both forces at one point, the hand's own: the hand is not turned by it.
            let (body, middle) = (state.body, held.translation());
            world.press(body, handle, force, middle);
            let [skin, skin_damping] = hand.skin();
            state.twist_rad += twist_rate * dt_s * if step > 0 { 1.0 } else { 0.0 };
            let twist_now = state.twist_rate.now(twist_rate);
            let couple = skin * state.twist_rad + skin_damping * twist_now;
            world.turn(body, handle, long * couple);
            stored_j_now += 0.5 * hand.stiffness_n_m * apart.length_squared()
                + 0.5 * skin * state.twist_rad * state.twist_rad;
            out.account.hands_j +=
                (damping * rate.length_squared() + skin_damping * twist_now * twist_now) * dt_s;
            state.impulse += force * dt_s;
            if force.length() > state.felt.peak_n {
                (state.felt.peak_n, state.felt.peak_s) = (force.length(), t_s);
            }
            state.felt.couple_n_m = state.felt.couple_n_m.max(couple.abs());
            if let Some(shown) = hands_n.get_mut(n) {
                *shown = force.z;
            }
        }
        let turned = world.body(handle).angvel().dot(long);
        out.twist_rad += turned * dt_s;
        if step % 10 == 0 {
            out.moments.push(Moment { t_s, contact_n, hands_n, bend_rad: angle });
        }
        let felt = match until {
            Until::Away => away,
            Until::Felt => away && t_s >= FELT_S,
        };
        if felt {
            let after = world.totals();
            let energy_j = after.2 + 0.5 * (stored_j_now + stored_j_before);
            let lost_j = out.account.ball_j + out.account.hinge_j + out.account.hands_j;
            let arm = libm::hypot(hit.contact_from_top_m, hit.across_m);
            out.account.momentum_share = (after.0 - before.0).length() / out.impulse_n_s;
            out.account.moment_share = (after.1 - before.1).length() / (out.impulse_n_s * arm);
            out.account.energy_share = (before.2 - energy_j - lost_j) / before.2;
            out.hands = hands
                .iter()
                .map(|it| Felt { impulse_n_s: it.impulse.length(), ..it.felt })
                .collect();
            return Ok(out);
        }
        if t_s > LONGEST_CONTACT_S || !angle.is_finite() {
            return Err(lost);
        }
        world.step();
    }
    Err(ImpactFault::Lost { at_s: LONGEST_CONTACT_S })
}
