//! The hit, its doubt, and the map of the face.

use backlift::bat::Bat;
use backlift::bat::shape::BatShape;
use backlift::card::cautions::{refit_stature_m, standing};
use backlift::comparison::collision::{SPEED_AT_BAT_SHARE, exit_speed_off_bat_m_s};
use backlift::files::fault::Fault;
use backlift::impact::ImpactFault;
use backlift::impact::ball::Ball;
use backlift::impact::doubt::{Doubted, Spread, closing_for_bend, doubted, stiffness_for_bend};
use backlift::impact::face::{FaceMap, MapFault, face_map, half_width_m};
use backlift::impact::hand::Hand;
use backlift::impact::parts::Parts;
use backlift::impact::splice::{CANE_PA, Cane, Hinge};
use backlift::impact::strike::Hit;
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::swing::chain::Grip;
use backlift::uncertain::Uncertain;

use super::bat;
use crate::loaded::Loaded;
use crate::outcome::Stop;
use crate::progress::Progress;
use crate::questions::swung::swing_one;

/// What is asked.
pub struct Asked<'a> {
    pub bat: bat::Asked<'a>,
    pub from_toe_m: f64,
    pub across_m: f64,
    /// None: the scenario's bowling.
    pub ball_m_s: Option<f64>,
    /// None: the player's fastest pull.
    pub bat_m_s: Option<f64>,
    /// Whether the face is mapped.
    pub mapped: bool,
}

/// A bend that is told of a hard hit, rad: common practice, no source.
pub const PRACTICE_BEND_RAD: f64 = 16.0 * std::f64::consts::PI / 180.0;

/// A hit and what is told about it.
pub struct Found {
    pub bat: bat::Given,
    pub age_y: f64,
    pub stature_m: f64,
    pub from_toe_m: f64,
    pub hit: Hit,
    pub spread: Spread,
    pub bat_m_s: Uncertain,
    pub bat_speed_was_given: bool,
    pub doubted: Doubted,
    /// Off the same bat, rigid and free, by the closed form in the middle of its width, m/s.
    pub rigid_exit_m_s: f64,
    /// Hinge, N m/rad, that would bend by the practice's figure.
    pub practice_hinge_n_m: Option<f64>,
    /// Closing speed, m/s, that would.
    pub practice_closing_m_s: Option<f64>,
    pub map: Option<FaceMap>,
}

impl Found {
    /// The cautions that stand under every result of this player's.
    pub fn cautions(&self) -> Vec<String> {
        standing(self.age_y, refit_stature_m(self.age_y, self.stature_m))
    }
}

/// Hits.
pub fn hit(loaded: &Loaded, asked: &Asked<'_>, progress: &Progress) -> Result<Found, Stop> {
    let bat = bat::given(loaded, &asked.bat)?;
    let shape = &bat.shape;
    let parts = Parts::of(shape);
    let contact_from_top_m = parts.toe_m - asked.from_toe_m;
    on_the_face(shape, contact_from_top_m, asked.across_m).map_err(|it| stop(it, &parts))?;
    let arm_m = contact_from_top_m - PICKUP_AXIS_FROM_TOP_M;
    let bat_m_s = match asked.bat_m_s {
        Some(given) => Uncertain::measured(given, 0.0),
        None => {
            let pull = loaded.pull()?;
            let swung = swing_one(loaded, &bat.to_swing(), pull, 1.0, None, progress)?;
            let there = arm_m / (swung.contact_from_top_m - PICKUP_AXIS_FROM_TOP_M);
            let speed_m_s = there * swung.seen.contact.bat_speed_m_s;
            Uncertain::computed(speed_m_s, speed_m_s * swung.doubt.speed())
        }
    };
    progress.step("hitting", 0.0)?;
    let hinge = |modulus_pa: f64| Cane::of(modulus_pa).hinge_n_m(&shape.handle);
    let [soft, middle, stiff] = CANE_PA.map(hinge);
    let player = &loaded.player;
    let grip = Grip::for_stature(player.stature_m, 0.0, 0.0);
    let hand = |from_top_m: f64, grip_n: f64| {
        let of_shape_m = || shape.handle.diameter_over_grip_m(from_top_m);
        let diameter_m = bat.handle_diameter_m.unwrap_or_else(of_shape_m);
        Hand::of(player.segments.hand.mass_kg, from_top_m, grip_n, diameter_m)
    };
    let hit = Hit {
        parts,
        hinge: Hinge::of(middle, &parts),
        ball: Ball::of(loaded.scenario.fit.ball_mass_kg),
        hands: vec![
            hand(grip.top_hand_m, player.grip_top_n.value),
            hand(grip.bottom_hand_m, player.grip_bottom_n.value),
        ],
        contact_from_top_m,
        across_m: asked.across_m,
        bat_m_s: bat_m_s.value,
        turns_about_m: PICKUP_AXIS_FROM_TOP_M,
        ball_m_s: asked.ball_m_s.unwrap_or(SPEED_AT_BAT_SHARE * loaded.scenario.bowling.speed_m_s),
    };
    let spread = Spread { hinge_n_m: [soft, stiff], bat_m_s: bat_m_s.sd, bat: bat.errors.clone() };
    let doubted = doubted(&hit, &spread).map_err(|it| stop(it, &parts))?;
    progress.step("asking what bends it further", 0.1)?;
    let (practice_hinge_n_m, practice_closing_m_s) = rayon::join(
        || stiffness_for_bend(&hit, PRACTICE_BEND_RAD),
        || closing_for_bend(&hit, PRACTICE_BEND_RAD),
    );
    let map = match asked.mapped {
        true => {
            let told = |share: f64| progress.report("mapping the face", share);
            Some(face_map(&hit, &shape.blade, &told).map_err(|it| match it {
                MapFault::Hit(fault) => stop(fault, &parts),
                MapFault::Stopped => Stop::Cancelled,
            })?)
        }
        false => None,
    };
    Ok(Found {
        age_y: player.age_y,
        stature_m: player.stature_m,
        from_toe_m: asked.from_toe_m,
        rigid_exit_m_s: rigid(&bat.bat, &hit),
        practice_hinge_n_m: practice_hinge_n_m.map_err(|it| stop(it, &parts))?,
        practice_closing_m_s: practice_closing_m_s.map_err(|it| stop(it, &parts))?,
        spread,
        bat_speed_was_given: asked.bat_m_s.is_some(),
        bat_m_s,
        doubted,
        hit,
        bat,
        map,
    })
}

/// Whether the face is so wide where it is struck; along it the hit itself asks.
fn on_the_face(shape: &BatShape, from_top_m: f64, across_m: f64) -> Result<(), ImpactFault> {
    let (shoulder_m, toe_m) = (shape.handle.length_m, shape.length_m());
    let half_width_m = half_width_m(&shape.blade, (from_top_m - shoulder_m) / (toe_m - shoulder_m));
    match across_m.abs() <= half_width_m {
        true => Ok(()),
        false => {
            Err(ImpactFault::OffTheFace { from_top_m, across_m, shoulder_m, toe_m, half_width_m })
        }
    }
}

fn rigid(bat: &Bat, hit: &Hit) -> f64 {
    exit_speed_off_bat_m_s(
        bat,
        [hit.contact_from_top_m, 0.0],
        hit.bat_m_s,
        hit.ball_m_s,
        hit.ball.mass_kg,
        hit.ball.restitution,
    )
}

fn our_mistake(fault: impl std::fmt::Display) -> Stop {
    Stop::OurMistake(fault.to_string())
}

fn stop(fault: ImpactFault, parts: &Parts) -> Stop {
    let help = match fault {
        ImpactFault::OffTheFace { half_width_m, .. } => format!(
            "--at is counted from the toe, up to {:.3} m here; --across from the middle, up to {half_width_m:.3} m there",
            parts.toe_m - parts.shoulder_m,
        ),
        ImpactFault::NotClosing { .. } => "give --ball or --speed more than nought".to_owned(),
        ImpactFault::Lost { .. } => return our_mistake(fault),
    };
    Fault::new(fault.to_string()).help(help).into()
}
