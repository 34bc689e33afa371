//! A ball hit with a bat: the hit, its doubt, and the map of the face.

pub mod bat;

use super::loaded::Loaded;
use super::swung::swing_one;
use super::{Progress, Stop};
use crate::bat::shape::BatShape;
use crate::card::cautions::{refit_stature_m, standing};
use crate::comparison::collision::{SPEED_AT_BAT_SHARE, exit_speed_off_bat_m_s};
use crate::files::fault::Fault;
use crate::impact::ImpactFault;
use crate::impact::ball::Ball;
use crate::impact::doubt::{Doubted, Spread, closing_for_bend, doubted, stiffness_for_bend};
use crate::impact::face::{FaceMap, MapFault, face_map, half_width_m};
use crate::impact::hand::Hand;
use crate::impact::hit::Hit;
use crate::impact::parts::Parts;
use crate::impact::splice::{CANE_PA, Cane, Hinge};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::swing::chain::Grip;
use crate::uncertain::Uncertain;

/// What is asked.
#[derive(Clone, Debug)]
pub struct Asked<'a> {
    /// What to hit with.
    pub bat: bat::Asked<'a>,
    /// Where the ball meets the face, m from the toe.
    pub from_toe_m: f64,
    /// How far off the middle of the face, m.
    pub across_m: f64,
    /// Ball speed at the bat, m/s; none: the scenario's bowling.
    pub ball_m_s: Option<f64>,
    /// Bat speed where it meets the ball, m/s; none: the player's fastest pull.
    pub bat_m_s: Option<f64>,
    /// Whether the face is mapped.
    pub mapped: bool,
}

/// A bend that is told of a hard hit, rad: common practice, no source.
pub const PRACTICE_BEND_RAD: f64 = 16.0 * std::f64::consts::PI / 180.0;

/// A hit and what is told about it.
#[derive(Clone, Debug)]
pub struct Found {
    /// The bat.
    pub bat: bat::Given,
    /// The cautions that stand under every result of this player's.
    pub cautions: Vec<String>,
    /// Where the ball meets the face, m from the toe.
    pub from_toe_m: f64,
    /// The hit as it was put on the engine.
    pub hit: Hit,
    /// How far what went into it may be off.
    pub spread: Spread,
    /// Bat speed where it meets the ball, m/s.
    pub bat_m_s: Uncertain,
    /// It was given, and is not the player's own.
    pub bat_speed_was_given: bool,
    /// What came of it, with its doubt.
    pub doubted: Doubted,
    /// Off the same bat, rigid and free, by the closed form in the middle of its width, its face straight, m/s.
    pub rigid_exit_m_s: f64,
    /// Hinge, N m/rad, that would bend by the practice's figure.
    pub practice_hinge_n_m: Option<f64>,
    /// Closing speed, m/s, that would.
    pub practice_closing_m_s: Option<f64>,
    /// The map of the face, if it was asked for.
    pub map: Option<FaceMap>,
}

/// The face where the ball meets it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct FaceMet {
    /// How far it lies behind its chord, m.
    pub behind_chord_m: f64,
    /// How far its normal leans to the toe from that of the chord, rad.
    pub looks_to_toe_rad: f64,
}

impl Found {
    /// The face where the ball meets it: an arc, where the blade has a bow.
    pub fn face_met(&self) -> FaceMet {
        let (parts, bow) = (&self.hit.parts, self.hit.parts.bow());
        let share = parts.from_shoulder(self.hit.contact_from_top_m);
        let [sine, cosine] = bow.slope(share);
        FaceMet {
            behind_chord_m: bow.behind_chord_m(share),
            looks_to_toe_rad: libm::atan2(0.0 - sine, cosine),
        }
    }

    /// The pull is so near the limit of control that the doubt about the player takes all of it.
    pub fn is_at_the_limit(&self) -> bool {
        !self.bat_speed_was_given && self.bat_m_s.sd >= self.bat_m_s.value
    }
}

/// Hits.
///
/// # Errors
/// If there is no blade of the bat's size, the ball misses the face, or the work is cancelled.
pub fn hit(loaded: &Loaded, asked: &Asked<'_>, progress: &dyn Progress) -> Result<Found, Stop> {
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
            let swung = swing_one(loaded, &bat.swung, pull, 1.0, None, progress)?;
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
    let told = |share: f64| progress.report("mapping the face", share);
    let map = asked.mapped.then(|| face_map(&hit, &shape.blade, &told)).transpose();
    let map = map.map_err(|it| match it {
        MapFault::Hit(fault) => stop(fault, &parts),
        MapFault::Stopped => Stop::Cancelled,
    })?;
    Ok(Found {
        cautions: standing(player.age_y, refit_stature_m(player.age_y, player.stature_m)),
        from_toe_m: asked.from_toe_m,
        rigid_exit_m_s: exit_speed_off_bat_m_s(
            &bat.bat,
            [hit.contact_from_top_m, 0.0],
            hit.bat_m_s,
            hit.ball_m_s,
            hit.ball.mass_kg,
            hit.ball.restitution,
        ),
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

fn stop(fault: ImpactFault, parts: &Parts) -> Stop {
    let help = match fault {
        ImpactFault::OffTheFace { half_width_m, .. } => format!(
            "--at is counted from the toe, up to {:.3} m here; --across from the middle, up to {half_width_m:.3} m there",
            parts.toe_m - parts.shoulder_m,
        ),
        ImpactFault::NotClosing { .. } => "give --ball or --speed more than nought".to_owned(),
        ImpactFault::Lost { .. } => return Stop::our_mistake(fault),
    };
    Fault::new(fault).help(help).into()
}
