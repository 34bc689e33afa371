//! Our own earlier prototype in another language on another engine (MuJoCo 4.0.0, semi-implicit,
//! extrapolated to dt → 0): the same player, bat, path and law must give the same fastest swing.

use backlift::bat::Bat;
use backlift::frames::{DMat3, DVec3};
use backlift::measurement::nets::Lasting;
use backlift::measurement::person::{Handed, Sex};
use backlift::player::joints::JOINT_COUNT;
use backlift::player::{Player, Segment, Segments, Strength};
use backlift::stroke::joint_path::{CONTROL_COUNT, JointPath};
use backlift::stroke::key_spline::KeySpline;
use backlift::stroke::{Key, Tolerance};
use backlift::swing::chain::{Chain, Grip};
use backlift::swing::close_path::close_path;
use backlift::swing::fastest_controlled::{Fastest, fastest_controlled};
use backlift::swing::reference::Reference;
use backlift::swing::run::{STEPS, Swinger};
use backlift::uncertain::Uncertain;

/// The prototype's player.
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
    let rows: [(f64, f64, f64); 10] = [
        (150.0, 150.0, 20.0),
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
    let row = |j: usize| rows[if j < 10 { j } else { j - 7 }];
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
            trunk: Segment {
                length_m: trunk_length,
                mass_kg: 0.50 * mass_kg,
                com_m: 0.45 * trunk_length,
                gyration_m: [0.19 * k, 0.18 * k, 0.108 * k],
            },
            upper_arm: segment(0.0271, 0.281 / 1.741 * stature_m, 0.577, [0.285, 0.269, 0.158]),
            forearm: segment(0.0162, 0.269 / 1.741 * stature_m, 0.457, [0.276, 0.265, 0.121]),
            hand: segment(0.0061, hand_length, 0.79, [0.628, 0.513, 0.401]),
            wrist_to_grip_m: 0.080 * k,
        },
        strength: Strength {
            negative_n_m: std::array::from_fn(|j| row(j).0 * strength),
            positive_n_m: std::array::from_fn(|j| row(j).1 * strength),
            max_rate_rad_s: std::array::from_fn(|j| row(j).2),
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

/// The prototype's bat.
pub fn pilot_bat(mass_kg: f64, length_m: f64, balance_m: f64) -> Bat {
    let i = 0.0665 * mass_kg * (length_m / 0.85_f64).powi(2);
    Bat::new(
        "pilot",
        length_m,
        mass_kg,
        DVec3::new(balance_m, 0.0, 0.0),
        DMat3::from_diagonal(DVec3::new(0.0012 * mass_kg / 1.2, i + 0.0006, i)),
    )
    .unwrap()
}

/// The prototype's stored joint path of a stroke.
pub fn pilot_path(stroke: &str) -> JointPath {
    let text = std::fs::read_to_string("tests/reference/swing_pilot_paths.json").unwrap();
    let json: serde_json::Value = serde_json::from_str(&text).unwrap();
    let rows = json[stroke]["control_points_rad"].as_array().unwrap();
    assert_eq!(rows.len(), CONTROL_COUNT);
    let mut control_rad = [[0.0; JOINT_COUNT]; CONTROL_COUNT];
    for (out, row) in control_rad.iter_mut().zip(rows) {
        for (o, v) in out.iter_mut().zip(row.as_array().unwrap()) {
            *o = v.as_f64().unwrap();
        }
    }
    JointPath { control_rad }
}

/// Hips fixed, as in the prototype.
fn fixed_hips() -> KeySpline {
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
pub struct PilotRig {
    pub chain: Chain,
    pub reference: Reference,
    strength: Strength,
}

impl PilotRig {
    /// On the player's own path, closed from the stored one.
    pub fn new(player: &Player, bat: &Bat, stroke: &str, steps: usize) -> Self {
        let chain = pilot_chain(player, bat);
        let path = close_path(&chain, &pilot_path(stroke)).unwrap();
        Self::on_path(player, bat, &path, steps)
    }

    /// On a given path.
    pub fn on_path(player: &Player, bat: &Bat, path: &JointPath, steps: usize) -> Self {
        let chain = pilot_chain(player, bat);
        let contact_m = bat.length_m() - 0.15;
        let reference = Reference::new(&chain, path, &fixed_hips(), contact_m, 2 * steps);
        Self { chain, reference, strength: player.strength }
    }

    pub fn swinger(&self) -> Swinger<'_> {
        let d2r = std::f64::consts::PI / 180.0;
        let tolerance = Tolerance { position_m: 0.025, face_rad: 4.0 * d2r, line_rad: 5.0 * d2r };
        let mut swinger = Swinger::new(&self.chain, &self.reference, self.strength, tolerance);
        swinger.gravity_m_s2 = 9.81;
        swinger
    }
}

pub fn pilot_chain(player: &Player, bat: &Bat) -> Chain {
    let d2r = std::f64::consts::PI / 180.0;
    Chain::new(player, bat, Grip::for_stature(player.stature_m, 62.0 * d2r, 60.0 * d2r)).unwrap()
}

fn fastest(player: &Player, bat: &Bat, stroke: &str, steps: usize) -> Fastest {
    let rig = PilotRig::new(player, bat, stroke, steps);
    fastest_controlled(&rig.swinger(), 0.44, false).unwrap()
}

/// Prototype: T* by E = 1, speeds at dt 1, 0.5, 0.25 ms extrapolated to zero by its own study. The
/// band is 1 %: the prototype holds its torque over a step and reads contact between steps.
#[test]
fn reference_the_prototype_swings_as_fast() {
    let adult = pilot_player(1.80, 78.0, 1.0);
    for (stroke, v) in [("drive", 15.79), ("pull", 15.20), ("hook", 15.14)] {
        let ours = fastest(&adult, &pilot_bat(1.20, 0.85, 0.53), stroke, STEPS);
        let ours = ours.contact.bat_speed_m_s;
        assert!((ours / v - 1.0).abs() < 0.01, "{stroke}: {ours:.3} m/s, prototype {v}");
    }
}

#[test]
fn bat_speed_at_the_product_step_is_converged_to_two_hundredths_of_a_percent() {
    let adult = pilot_player(1.80, 78.0, 1.0);
    for stroke in ["drive", "pull", "hook"] {
        let v = |steps| {
            fastest(&adult, &pilot_bat(1.20, 0.85, 0.53), stroke, steps).contact.bat_speed_m_s
        };
        let (coarse, fine) = (v(STEPS), v(4 * STEPS));
        assert!((coarse / fine - 1.0).abs() < 2e-4, "{stroke}: {coarse} against {fine}");
    }
}
