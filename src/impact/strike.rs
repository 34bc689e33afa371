//! One hit, from first touch to the end of what the hands feel of it.

use super::ImpactFault;
use super::ball::{force_n, loss, stored_j};
use super::hit::Hit;
use super::world::{Body, World};
use crate::frames::DVec3;

/// Step, s.
pub const STEP_S: f64 = 5e-6;
/// For so long after first touch the hands are listened to, s.
pub const FELT_S: f64 = 0.010;
/// A contact that lasts longer than this is no hit, s.
const LONGEST_CONTACT_S: f64 = 0.020;

/// What one hand feels, over and above the load of the swing.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Felt {
    /// Greatest force, N.
    pub peak_n: f64,
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
    /// Force of the handle on each hand out of the face, N.
    pub hands_n: [f64; 2],
}

/// What is left open when everything before is compared with everything after.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
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
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Struck {
    /// Ball speed out of the face when it leaves, m/s: along the normal of its chord, whatever the bow.
    pub exit_m_s: f64,
    /// How far across it goes off the face's normal before the hit, rad.
    pub aside_rad: f64,
    /// How far along the bat it goes off the normal of the face's chord, rad: towards the toe above 0.
    pub along_rad: f64,
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

#[derive(Clone, Copy, Default)]
struct HandState {
    twist_rate_rad_s: f64,
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
    let mut world = World::new(hit, dt_s);
    let before = world.totals();
    let closing_m_s = hit.ball_m_s + hit.bat_m_s;
    let loss = loss(hit.ball.restitution);
    let mut hands = vec![HandState::default(); hit.hands.len()];
    let mut out = Struck { exit_m_s: f64::NAN, ..Struck::default() };
    let mut away = false;
    for step in 0.. {
        let t_s = f64::from(step) * dt_s;
        world.release();
        let mut stored_now_j = 0.0;

        if let Some((at, normal, pressed_m)) = world.touch().filter(|_| !away) {
            away = step > 1 && pressed_m <= 0.0;
            if !away {
                let parting = world.velocity(Body::Ball, at) - world.velocity(Body::Blade, at);
                let rate = -parting.dot(normal);
                let [spring, damper] = force_n(&hit.ball, loss, closing_m_s, pressed_m, rate);
                let contact_n = spring + damper;
                world.press(Body::Ball, Body::Blade, normal * contact_n, at);
                stored_now_j += stored_j(&hit.ball, pressed_m);
                out.account.ball_j += damper * rate * dt_s;
                out.impulse_n_s += contact_n * dt_s;
                out.contact_peak_n = out.contact_peak_n.max(contact_n);
            }
        }
        let long = world.pose(Body::Handle).rotation * DVec3::X;
        let turning_rad_s = world.motion(Body::Handle).omega.dot(long);
        if away && out.exit_m_s.is_nan() {
            let v = world.motion(Body::Ball).v;
            (out.exit_m_s, out.aside_rad) = (v.z, libm::atan2(v.y, v.z));
            out.along_rad = libm::atan2(v.x, v.z);
            out.contact_s = t_s;
            out.twist_rad_s = turning_rad_s;
        }
        let over = match until {
            Until::Away => away,
            Until::Felt => away && t_s >= FELT_S,
        };
        // Sums over time end with half a step.
        let span_s = if over { 0.5 * dt_s } else { dt_s };

        let [angle, rate] = world.hinge();
        let couple = -hit.hinge.stiffness_n_m * angle - hit.hinge.damping_n_m_s * rate;
        let axis = world.pose(Body::Handle).rotation * DVec3::Y;
        world.turn(Body::Blade, Body::Handle, axis * couple);
        stored_now_j += 0.5 * hit.hinge.stiffness_n_m * angle * angle;
        out.account.hinge_j += hit.hinge.damping_n_m_s * rate * rate * span_s;
        if angle.abs() > out.bend_rad.abs() {
            out.bend_rad = angle;
        }

        let mut hands_n = [0.0; 2];
        for ((n, state), hand) in hands.iter_mut().enumerate().zip(&hit.hands) {
            let held = Body::Hand(n);
            let on_handle = DVec3::X * hand.from_top_m - hit.parts.handle.com_B;
            let grasped = world.pose(Body::Handle).transform_point(on_handle);
            // At the hand's own point, where the force acts: what the damper takes is then all that is lost,
            // and the hand is not turned.
            let middle = world.pose(held).translation;
            let (apart, moves) = (grasped - middle, world.motion(held));
            let rate = world.velocity(Body::Handle, middle) - moves.v;
            let damping = hand.damping_n_s_m();
            let force = apart * hand.stiffness_n_m + rate * damping;
            world.press(held, Body::Handle, force, middle);
            let [skin, skin_damping] = hand.skin();
            let twist_rate = turning_rad_s - moves.omega.dot(long);
            if step > 0 {
                state.twist_rad += 0.5 * (twist_rate + state.twist_rate_rad_s) * dt_s;
            }
            state.twist_rate_rad_s = twist_rate;
            let couple = skin * state.twist_rad + skin_damping * twist_rate;
            world.turn(held, Body::Handle, long * couple);
            stored_now_j += 0.5 * hand.stiffness_n_m * apart.length_squared()
                + 0.5 * skin * state.twist_rad * state.twist_rad;
            out.account.hands_j +=
                (damping * rate.length_squared() + skin_damping * twist_rate * twist_rate) * span_s;
            state.impulse += force * span_s;
            state.felt.peak_n = state.felt.peak_n.max(force.length());
            state.felt.couple_n_m = state.felt.couple_n_m.max(couple.abs());
            if let Some(shown) = hands_n.get_mut(n) {
                *shown = force.z;
            }
        }
        out.twist_rad += turning_rad_s * span_s;
        if step % 10 == 0 {
            out.moments.push(Moment { t_s, hands_n });
        }
        if over {
            let after = world.totals();
            let lost_j = out.account.ball_j + out.account.hinge_j + out.account.hands_j;
            let arm = libm::hypot(hit.contact_from_top_m, hit.across_m);
            out.account.momentum_share = (after.0 - before.0).length() / out.impulse_n_s;
            out.account.moment_share = (after.1 - before.1).length() / (out.impulse_n_s * arm);
            out.account.energy_share = (before.2 - after.2 - stored_now_j - lost_j) / before.2;
            out.hands = hands
                .iter()
                .map(|it| Felt { impulse_n_s: it.impulse.length(), ..it.felt })
                .collect();
            return Ok(out);
        }
        if t_s > LONGEST_CONTACT_S || !angle.is_finite() {
            return Err(ImpactFault::Lost { at_s: t_s });
        }
        world.step();
    }
    Err(ImpactFault::Lost { at_s: LONGEST_CONTACT_S })
}
