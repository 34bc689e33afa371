//! The player, bats and rig of our own earlier prototype in another language on another engine, so that only the
//! mechanics can differ: the same player, bat, path and law must give as fast a swing.

use super::figure;
use crate::bat::{Bat, BatFault};
use crate::dynamics::tree::TreeFault;
use crate::files::reference;
use crate::files::reference::law::{Prototype, PrototypeSearch};
use crate::frames::{DMat3, DVec3};
use crate::measurement::nets::Lasting;
use crate::measurement::person::{Handed, Sex};
use crate::player::joints::BOTTOM_ARM;
use crate::player::{Player, Segment, Segments, Strength};
use crate::stroke::joint_path::JointPath;
use crate::stroke::key_spline::KeySpline;
use crate::stroke::{Key, Tolerance};
use crate::swing::chain::{Chain, Grip};
use crate::swing::close_path::close_path;
use crate::swing::contact::Contact;
use crate::swing::fastest_controlled::fastest_controlled;
use crate::swing::reference::Reference;
use crate::swing::run::STEPS;
use crate::swing::swinger::Swinger;
use crate::uncertain::Uncertain;
use crate::validation::{CheckFault, Checked};

/// The prototype's player; `strength` multiplies its strongest torques.
pub fn pilot_player(stature_m: f64, mass_kg: f64, strength: f64) -> Player {
    let k = stature_m / 1.80;
    let segment = |share: f64, length_m: f64, com: f64, gyration: [f64; 3]| Segment {
        length_m,
        mass_kg: share * mass_kg,
        com_m: com * length_m,
        gyration_m: gyration.map(|r| r * length_m),
    };
    let (hip, shoulder) = (0.53 * stature_m, 0.815 * stature_m);
    let trunk_length = shoulder - hip;
    let hand_length = 0.0495 * stature_m;
    // Negative and positive torque, N m; zero-torque speed, rad/s: hips, trunk, then the joints of one arm.
    let rows: [(f64, f64, f64); 11] = [
        (170.0, 170.0, 12.0),
        (150.0, 150.0, 14.0),
        (220.0, 220.0, 20.0),
        (200.0, 200.0, 20.0),
        (110.0, 95.0, 25.0),
        (100.0, 90.0, 25.0),
        (55.0, 70.0, 28.0),
        (55.0, 70.0, 28.0),
        (15.0, 14.0, 30.0),
        (7.0, 12.0, 30.0),
        (10.0, 11.0, 30.0),
    ];
    let row = |j: usize| rows[if j < BOTTOM_ARM { j } else { j - 7 }];
    Player {
        age_y: 25.0,
        sex: Sex::Male,
        handed: Handed::Right,
        stature_m,
        mass_kg: Uncertain::measured(mass_kg, 0.0),
        segments: Segments {
            hip_height_m: hip,
            shoulder_height_m: shoulder,
            shoulder_half_breadth_m: 0.180 * k,
            hip_half_breadth_m: 0.090 * k,
            trunk: Segment {
                length_m: trunk_length,
                mass_kg: 0.50 * mass_kg,
                com_m: 0.45 * trunk_length,
                gyration_m: [0.19 * k, 0.18 * k, 0.108 * k],
            },
            pelvis: Segment {
                length_m: 0.5 * trunk_length,
                mass_kg: 0.11 * mass_kg,
                com_m: 0.11 * trunk_length,
                gyration_m: [0.090 * k, 0.080 * k, 0.085 * k],
            },
            legs_turning_kg_m2: 0.10 * (mass_kg / 78.0) * (k * k),
            upper_arm: segment(0.0271, 0.281 / 1.741 * stature_m, 0.577, [0.285, 0.269, 0.158]),
            forearm: segment(0.0162, 0.269 / 1.741 * stature_m, 0.457, [0.276, 0.265, 0.121]),
            hand: segment(0.0061, hand_length, 0.79, [0.628, 0.513, 0.401]),
            wrist_to_grip_m: 0.080 * k,
        },
        strength: Strength {
            negative_n_m: core::array::from_fn(|j| row(j).0 * strength),
            positive_n_m: core::array::from_fn(|j| row(j).1 * strength),
            max_rate_rad_s: core::array::from_fn(|j| row(j).2),
            relative_sd: [0.0; 7],
        },
        hand_length_m: Uncertain::measured(0.19, 0.0),
        grip_top_n: Uncertain::measured(480.0, 0.0),
        grip_bottom_n: Uncertain::measured(480.0, 0.0),
        lasting: Lasting::UNKNOWN,
        calibration: None,
        estimated: Vec::new(),
    }
}

/// The prototype's adult, or its twelve-year-old, by their names in the files.
pub(super) fn pilot_player_named(name: &str) -> Player {
    match name {
        "adult" => pilot_player(1.80, 78.0, 1.0),
        _ => pilot_player(1.50, 40.0, 0.50),
    }
}

/// The prototype's bat.
pub fn pilot_bat(mass_kg: f64, length_m: f64, balance_m: f64) -> Result<Bat, BatFault> {
    let as_long = length_m / 0.85;
    let i = 0.0665 * mass_kg * (as_long * as_long);
    Bat::new(
        "pilot",
        length_m,
        mass_kg,
        DVec3::new(balance_m, 0.0, 0.0),
        DMat3::from_diagonal(DVec3::new(0.0012 * mass_kg / 1.2, i + 0.0006, i)),
    )
}

/// Player and bat as a chain, held as the prototype does.
pub fn pilot_chain(player: &Player, bat: &Bat) -> Result<Chain, TreeFault> {
    Chain::new(
        player,
        bat,
        Grip::for_stature(player.stature_m, 62.0_f64.to_radians(), 60.0_f64.to_radians()),
    )
}

/// No stride, as in the prototype.
fn no_stride() -> KeySpline {
    let key = |p| Key {
        p,
        grip: DVec3::ZERO,
        toe: DVec3::X,
        face: DVec3::Z,
        trunk_rad: [0.0; 3],
        pelvis: DVec3::ZERO,
        pelvis_turn_rad: 0.0,
    };
    KeySpline::new(&[key(0.0), key(1.3)])
}

/// The prototype's player with a bat, about to play one of its strokes.
#[derive(Clone, Debug)]
pub struct PilotRig {
    /// Player and bat.
    pub chain: Chain,
    /// The plan.
    pub reference: Reference,
    strength: Strength,
}

impl PilotRig {
    /// On a given path, which must be closed for this player.
    pub fn on_path(
        player: &Player,
        bat: &Bat,
        path: &JointPath,
        steps: usize,
    ) -> Result<Self, TreeFault> {
        let chain = pilot_chain(player, bat)?;
        let contact_m = bat.length_m() - 0.15;
        let reference = Reference::new(&chain, path, &no_stride(), contact_m, 2 * steps);
        Ok(Self { chain, reference, strength: player.strength })
    }

    /// Of one of the prototype's searches, on the path stored for its player.
    pub(super) fn of_search(
        prototype: &Prototype,
        names: [&str; 3],
        steps: usize,
    ) -> Result<Self, CheckFault> {
        let it = search_of(prototype, names)?;
        let key = format!("{} {}", it.stroke, it.player);
        let rig = prototype.rigs.get(&key).ok_or_else(|| no_such_case(&key))?;
        let path = JointPath { control_rad: rig.control_points_rad };
        let bat = pilot_bat(it.bat_mass_kg, it.bat_length_m, it.balance_from_top_m)?;
        Ok(Self::on_path(&pilot_player_named(&it.player), &bat, &path, steps)?)
    }

    /// The swing set up, with the prototype's tolerance and free fall.
    pub fn swinger(&self) -> Swinger<'_> {
        let (face_rad, line_rad) = (4.0_f64.to_radians(), 5.0_f64.to_radians());
        let tolerance = Tolerance { position_m: 0.025, face_rad, line_rad };
        let mut swinger = Swinger::new(&self.chain, &self.reference, self.strength, tolerance);
        swinger.gravity_m_s2 = 9.81;
        swinger
    }
}

fn no_such_case(case: &str) -> String {
    format!("the reference files have no {case}")
}

/// One of the prototype's searches.
pub(super) fn search_of<'a>(
    prototype: &'a Prototype,
    [stroke, player, bat]: [&str; 3],
) -> Result<&'a PrototypeSearch, String> {
    let same = |it: &&PrototypeSearch| it.stroke == stroke && it.player == player && it.bat == bat;
    let found = prototype.searches.iter().find(same);
    found.ok_or_else(|| no_such_case(&format!("{stroke} {player} {bat}")))
}

const SOURCE: &str =
    "earlier prototype on MuJoCo 4.0.0, extrapolated to no step from 1, 0.5 and 0.25 ms";
/// How far the speed may be off: the prototype holds its torque over a step, reads contact between steps,
/// and was extrapolated.
const MOST: f64 = 1e-2;
/// Fastest speeds of the prototype's adult with its middle bat, m/s.
const SPEEDS: [(&str, f64); 3] = [("drive", 15.79), ("pull", 15.91), ("hook", 15.57)];

/// The fastest controlled swing of the prototype's adult with its middle bat, on a path closed anew.
pub fn fastest(stroke: &str, steps: usize) -> Result<Contact, CheckFault> {
    let (player, bat) = (pilot_player_named("adult"), pilot_bat(1.20, 0.85, 0.53)?);
    let stored = reference::stored_paths()?;
    let stored = stored.get(stroke).ok_or_else(|| no_such_case(stroke))?;
    let stored = JointPath { control_rad: stored.control_points_rad };
    let path = close_path(&pilot_chain(&player, &bat)?, &stored)?;
    let rig = PilotRig::on_path(&player, &bat, &path, steps)?;
    Ok(fastest_controlled(&rig.swinger(), 0.44, false)?)
}

pub(super) fn check() -> Result<Checked, CheckFault> {
    let mut out = Checked::default();
    for (stroke, theirs_m_s) in SPEEDS {
        let ours = fastest(stroke, STEPS)?.bat_speed_m_s;
        let what = format!("adult on a path closed anew, bat speed: {stroke}");
        out.rows.push(figure(what, SOURCE, "m/s", theirs_m_s, ours, MOST));
    }
    Ok(out)
}
