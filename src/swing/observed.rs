//! A swing looked at closely: loads of both hands and wrists, what ran out first, the series over time.

use super::contact::Contact;
use super::hand_wrench::{Hands, hands};
use super::player_stroke::Held;
use super::state::Instantaneous;
use crate::frames::DVec3;
use crate::player::Player;
use crate::player::grip::grip_needed_n;
use crate::player::joints::{BOTTOM_ARM, GROUP_COUNT, Group, JOINT_COUNT, JOINTS, TOP_ARM};
use crate::stroke::joint_path::END;

/// First of the three wrist axes (forearm roll, flexion, radial deviation) in an arm's order.
pub(super) const WRIST: usize = 4;
/// Share of the present capacity above which a joint counts as spent.
const SPENT: f64 = 0.9;
/// Phases into which a stroke's loads are averaged for fatigue.
const PHASES: usize = 6;

/// Load on one wrist in anatomical axes: peaks up to contact.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct WristLoad {
    /// About the flexion–extension axis, N m.
    pub flexion_extension_n_m: f64,
    /// About the radial–ulnar axis, N m.
    pub radial_ulnar_n_m: f64,
    /// About the forearm's long axis, N m.
    pub forearm_roll_n_m: f64,
    /// Largest share of the present capacity at the joint's speed, over the three axes.
    pub peak_share: f64,
}

/// Load of one hand: peaks up to contact; the blow of the ball is not in it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HandLoad {
    /// Force on the handle, N.
    pub peak_force_n: f64,
    /// Couple on the handle about the hand's centre, N m.
    pub peak_couple_n_m: f64,
    /// Grip force so that the handle neither slides nor turns, N.
    pub grip_needed_n: f64,
    /// Wrist.
    pub wrist: WristLoad,
}

/// The bat and the hands at one instant.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Moment {
    /// Time from the top of the backlift, s.
    pub t_s: f64,
    /// Joint angles, rad.
    pub q: [f64; JOINT_COUNT],
    /// Joint rates, rad/s.
    pub rate_rad_s: [f64; JOINT_COUNT],
    /// Pelvis displaced, m, W.
    pub pelvis_W: DVec3,
    /// Top of the handle, m, W (from the ground).
    pub handle_top_W: DVec3,
    /// Contact point on the bat, m, W.
    pub contact_W: DVec3,
    /// Toe, m, W.
    pub toe_W: DVec3,
    /// Out of the face, W.
    pub face_W: DVec3,
    /// Speed of the contact point, m/s.
    pub bat_speed_m_s: f64,
    /// Distance of the contact point from the plan at this instant, m.
    pub path_error_m: f64,
    /// Both hands on the bat: force, and couple about the hand's own point, in W.
    pub hands: Hands,
    /// Joint torques, N m.
    pub torque_n_m: [f64; JOINT_COUNT],
    /// Shares of each joint's present capacity at its speed, −1 to 1.
    pub share: [f64; JOINT_COUNT],
}

/// A steady load of the groups, such as their mean over a part of a stroke.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PhaseLoad {
    /// How long, s.
    pub duration_s: f64,
    /// Share of capacity given, by group, in the order of [`Group::ALL`]: of a stroke the largest of the group's joints,
    /// averaged over the phase.
    pub share: [f64; GROUP_COUNT],
}

/// A swing and all that was seen of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Observed {
    /// At the ball.
    pub contact: Contact,
    /// Top hand.
    pub top: HandLoad,
    /// Bottom hand.
    pub bottom: HandLoad,
    /// Share of the time to contact that each joint was spent (above 0.9 of its capacity).
    pub time_spent: [f64; JOINT_COUNT],
    /// Loads for the fatigue of the innings.
    pub phases: Vec<PhaseLoad>,
    /// The series over time.
    pub series: Vec<Moment>,
}

impl Observed {
    /// Joint that was spent longest, if any was.
    pub fn limited_by(&self) -> Option<usize> {
        (0..JOINT_COUNT)
            .filter(|&j| self.time_spent[j] > 0.0)
            .max_by(|&a, &b| self.time_spent[a].total_cmp(&self.time_spent[b]))
    }

    /// Share of its present capacity that the busier wrist gives, averaged over the stroke. (The peak
    /// says little: in a hurried stroke it is at its limit for every bat.)
    pub fn wrist_share(&self) -> f64 {
        let mean = |group: Group| {
            let shares = self.phases.iter().map(|p| p.share[group as usize] * p.duration_s);
            shares.sum::<f64>() / self.phases.iter().map(|p| p.duration_s).sum::<f64>()
        };
        mean(Group::TopWrist).max(mean(Group::BottomWrist))
    }

    /// Grip needed over the fresh grip there is, the worse hand.
    pub fn grip_share(&self, player: &Player) -> f64 {
        let top = self.top.grip_needed_n / player.grip_top_n.value;
        top.max(self.bottom.grip_needed_n / player.grip_bottom_n.value)
    }
}

/// Swings at `stroke_time_s` and records everything.
pub fn observe(held: &Held, capacity: &[f64; GROUP_COUNT], stroke_time_s: f64) -> Observed {
    let swinger = held.swinger(capacity);
    let mut instants: Vec<Instantaneous> = Vec::with_capacity(256);
    let contact = swinger.swing(stroke_time_s, Some(&mut |at| instants.push(at)));
    let end_s = if contact.reached { contact.time_s } else { END * stroke_time_s };
    let chain = &held.chain;
    let ground = DVec3::new(0.0, 0.0, chain.hip_height_m);
    let mut k = chain.tree.kinematics();
    let mut out = Observed {
        contact,
        top: HandLoad::default(),
        bottom: HandLoad::default(),
        time_spent: [0.0; JOINT_COUNT],
        phases: vec![
            PhaseLoad { duration_s: end_s / PHASES as f64, share: [0.0; GROUP_COUNT] };
            PHASES
        ],
        series: Vec::with_capacity(instants.len()),
    };
    let radius_m = 0.5 * held.handle_diameter_m;
    let mut counts = [0usize; PHASES];
    // The last instant may lie just beyond contact; it is there for the pictures, not for the peaks.
    let before = instants.iter().filter(|at| at.t_s <= end_s).count().max(1);
    for (i, at) in instants.iter().enumerate() {
        chain.tree.forward_kinematics(&at.state.q, &at.state.v, at.a_base_W, &mut k);
        let loads = hands(chain, &k, at);
        let R = k.R[chain.link.bat];
        let local = chain.on_bat(&k, held.reference.contact_m);
        let planned = held.reference.samples.get(2 * i).map_or(local, |s| s.point);
        let along = |from_top_m: f64| chain.on_bat(&k, from_top_m) + at.pelvis_W + ground;
        out.series.push(Moment {
            t_s: at.t_s,
            q: at.state.q,
            rate_rad_s: at.state.v,
            pelvis_W: at.pelvis_W,
            handle_top_W: along(0.0),
            contact_W: along(held.reference.contact_m),
            toe_W: along(chain.bat_length_m),
            face_W: R.z_axis,
            bat_speed_m_s: (k.velocity(chain.link.bat, local) + at.pelvis_velocity_W).length(),
            path_error_m: (local - planned).length(),
            hands: loads,
            torque_n_m: at.torque_n_m,
            share: at.activation,
        });
        if i >= before {
            continue;
        }
        for (hand, load, arm) in
            [(&mut out.top, loads.top, TOP_ARM), (&mut out.bottom, loads.bottom, BOTTOM_ARM)]
        {
            let couple_B = R.transpose() * load.couple_W;
            let force_B = R.transpose() * load.force_W;
            raise(&mut hand.peak_force_n, load.force_W.length());
            raise(&mut hand.peak_couple_n_m, couple_B.length());
            raise(
                &mut hand.grip_needed_n,
                grip_needed_n(force_B.x, couple_B.x, radius_m, held.assumed.friction),
            );
            let [roll, flexion, radial] =
                core::array::from_fn(|a| at.torque_n_m[arm + WRIST + a].abs());
            raise(&mut hand.wrist.forearm_roll_n_m, roll);
            raise(&mut hand.wrist.flexion_extension_n_m, flexion);
            raise(&mut hand.wrist.radial_ulnar_n_m, radial);
            for a in 0..3 {
                raise(&mut hand.wrist.peak_share, at.activation[arm + WRIST + a].abs());
            }
        }
        let phase = ((at.t_s / end_s * PHASES as f64) as usize).min(PHASES - 1);
        counts[phase] += 1;
        let mut group = [0.0; GROUP_COUNT];
        for j in 0..JOINT_COUNT {
            let share = at.activation[j].abs();
            raise(&mut group[JOINTS[j].group as usize], share);
            if share > SPENT {
                out.time_spent[j] += 1.0 / before as f64;
            }
        }
        for (sum, share) in out.phases[phase].share.iter_mut().zip(&group) {
            *sum += share;
        }
    }
    for (phase, count) in out.phases.iter_mut().zip(counts) {
        for share in &mut phase.share {
            *share /= count.max(1) as f64;
        }
    }
    out
}

fn raise(peak: &mut f64, value: f64) {
    *peak = peak.max(value);
}
