//! The swing, its doubt, the second dynamics, and what a hurry does to it.

use rayon::prelude::*;

use super::loaded::Loaded;
use super::{Progress, Stop};
use crate::bat::figures::WeighedBat;
use crate::bat::{Bat, BatFault};
use crate::comparison::carried::variance;
use crate::comparison::player_doubt::PlayerDoubt;
use crate::player::Strength;
use crate::player::joints::{GROUP_COUNT, JOINTS};
use crate::stroke::Stroke;
use crate::swing::batter::Batter;
use crate::swing::contact::Contact;
use crate::swing::engine::EngineFault;
use crate::swing::engine::pair::{EngineSwing, engine_swing};
use crate::swing::observed::{Observed, observe};
use crate::swing::player_stroke::{Held, SwingFault};
use crate::uncertain::independent_sd;

/// A swing and what is told about it.
#[derive(Clone, Debug)]
pub struct Swung<'a> {
    /// Whose swing it is.
    pub loaded: &'a Loaded,
    /// The stroke.
    pub stroke: &'a Stroke,
    /// Label of the bat.
    pub bat_label: String,
    /// Place of the bat in the scenario.
    pub bat: usize,
    /// Every strength was multiplied by it.
    pub capacity: f64,
    /// Shortest controlled stroke time, s.
    pub fastest_s: f64,
    /// Time swung, s.
    pub time_s: f64,
    /// What was seen of the swing.
    pub seen: Observed,
    /// What every joint could give in this swing.
    pub strength: Strength,
    /// Grip there is: top hand, bottom hand, N.
    pub grip_n: [f64; 2],
    /// The same swing by the second dynamics.
    pub engine: Result<EngineSwing, EngineFault>,
    /// The swing at shares of the fastest time.
    pub hurried: Vec<(f64, Contact)>,
    /// How far speed and time may be off.
    pub doubt: Doubt,
    /// Where the stroke plans to meet the ball, m from the top of the handle.
    pub contact_from_top_m: f64,
}

/// One standard deviation of the fastest swing's bat speed and stroke time, as shares, by its causes.
#[derive(Clone, Copy, Debug)]
pub struct Doubt {
    /// Strength and build of the player: speed, time.
    pub strength: [f64; 2],
    /// Swing moment of the bat: speed, time.
    pub bat: [f64; 2],
    /// Difference of the two dynamics: speed only.
    pub dynamics: f64,
}

impl Doubt {
    /// Of the bat speed.
    pub fn speed(&self) -> f64 {
        independent_sd(&[self.strength[0], self.bat[0], self.dynamics])
    }
    /// Of the shortest stroke time.
    pub fn time(&self) -> f64 {
        independent_sd(&[self.strength[1], self.bat[1]])
    }
}

/// Shares of the fastest time at which the hurried swing is looked at.
const HURRIED: [f64; 2] = [0.95, 0.90];

/// A bat to be swung.
#[derive(Clone, Debug)]
pub struct ToSwing {
    /// What it is called.
    pub label: String,
    /// The bat.
    pub bat: Bat,
    /// With one standard deviation more swing moment, if there can be such a bat.
    pub heavier: Option<Bat>,
    /// Its place in the scenario, or that of the bat it stands for.
    pub place: usize,
}

/// Swings a bat of the scenario, each strength times `capacity`, in a given time or as fast as can be controlled.
///
/// # Errors
/// If the player cannot control it in any time, or the work is cancelled.
pub fn swing<'a>(
    loaded: &'a Loaded,
    bat: usize,
    stroke: usize,
    capacity: f64,
    time_s: Option<f64>,
    progress: &dyn Progress,
) -> Result<Swung<'a>, Stop> {
    let weighed = &loaded.bats[bat];
    swing_one(loaded, &ToSwing::weighed(weighed, bat), stroke, capacity, time_s, progress)
}

impl ToSwing {
    /// A weighed bat by its place.
    pub(super) fn weighed(it: &WeighedBat, place: usize) -> Self {
        let (label, bat) = (it.reading.label.clone(), it.bat.clone());
        Self { label, bat, heavier: heavier(it).ok(), place }
    }
}

/// A bat with one standard deviation more swing moment.
///
/// # Errors
/// If there can be no such bat.
pub(super) fn heavier(it: &WeighedBat) -> Result<Bat, BatFault> {
    let moment = it.swing_moment_kg_m2;
    it.with(it.mass_kg.value, it.balance_m.value, moment.value + moment.sd)
}

/// Swings any bat.
///
/// # Errors
/// If the player cannot control it in any time, or the work is cancelled.
pub fn swing_one<'a>(
    loaded: &'a Loaded,
    it: &ToSwing,
    stroke: usize,
    capacity: f64,
    time_s: Option<f64>,
    progress: &dyn Progress,
) -> Result<Swung<'a>, Stop> {
    progress.step("finding the fastest controlled swing", 0.0)?;
    let strokes = &loaded.strokes[stroke..=stroke];
    let batter = Batter::new(&loaded.player, strokes, &it.bat)?;
    let player_stroke = &batter.strokes[0];
    let held = player_stroke.hold(&it.bat)?;
    let share = [capacity; GROUP_COUNT];
    let fastest = held.fastest(&share, None)?;
    let fastest_s = fastest.stroke_time_s;
    let time_s = time_s.unwrap_or(fastest_s);
    let seen = observe(&held, &share, time_s);

    progress.step("swinging once more by the second dynamics", 0.2)?;
    let swinger = held.swinger(&share);
    let engine = engine_swing(&swinger, time_s);
    progress.step("asking what the doubt in strength and bat does", 0.6)?;
    let start = Start { share, speed_m_s: fastest.bat_speed_m_s, fastest_s };
    let bat_doubt = match &it.heavier {
        Some(heavier) => start.moved(&player_stroke.hold(heavier)?, &share)?,
        None => [0.0; 2],
    };
    let dynamics = engine.as_ref().map_or(0.0, |it| it.difference(&seen.contact).bat_speed.abs());
    let doubt = Doubt { strength: start.player(&batter, &it.bat)?, bat: bat_doubt, dynamics };
    progress.step("hurrying", 0.95)?;
    let hurried = HURRIED.map(|it| (it, swinger.swing(it * fastest_s, None))).to_vec();
    Ok(Swung {
        loaded,
        stroke: &loaded.strokes[stroke],
        bat_label: it.label.clone(),
        bat: it.place,
        capacity,
        fastest_s,
        time_s,
        seen,
        strength: swinger.strength,
        grip_n: [loaded.player.grip_top_n.value, loaded.player.grip_bottom_n.value]
            .map(|it| it * capacity),
        engine,
        hurried,
        doubt,
        contact_from_top_m: held.reference.contact_m,
    })
}

/// The fastest swing, from which one thing at a time is moved.
struct Start {
    share: [f64; GROUP_COUNT],
    speed_m_s: f64,
    fastest_s: f64,
}

impl Start {
    /// Change of the fastest swing's speed and time, as shares.
    fn moved(&self, held: &Held, share: &[f64; GROUP_COUNT]) -> Result<[f64; 2], SwingFault> {
        let it = held.fastest(share, Some(self.fastest_s))?;
        Ok([
            (it.bat_speed_m_s / self.speed_m_s - 1.0).abs(),
            (it.stroke_time_s / self.fastest_s - 1.0).abs(),
        ])
    }

    /// What one standard deviation of each doubt about the player does, root of the sum of squares: the very
    /// doubts that `compare` carries, so that both say the same ± of the same pull.
    fn player(&self, batter: &Batter, bat: &Bat) -> Result<[f64; 2], SwingFault> {
        let one = |batter: &Batter| match self.moved(&batter.strokes[0].hold(bat)?, &self.share) {
            // So weak a player has no controlled swing at all: all of it is in doubt.
            Err(SwingFault::NoControlledSwing { .. }) => Ok([1.0, 1.0]),
            other => other,
        };
        let moved = PlayerDoubt::all(batter)
            .par_iter()
            .map(|doubt| Ok([one(&doubt.batters[0])?, one(&doubt.batters[1])?]))
            .collect::<Result<Vec<_>, SwingFault>>()?;
        let of = |k: usize| {
            let sum: f64 = moved.iter().map(|[a, b]| variance([a[k], b[k]])).sum();
            libm::sqrt(sum)
        };
        Ok([of(0), of(1)])
    }
}

impl Swung<'_> {
    /// Within the stroke's tolerances.
    pub fn is_controlled(&self) -> bool {
        self.seen.contact.reached && self.seen.contact.error <= 1.0 + 1e-6
    }

    /// So near the limit of control that the doubt about the player takes all of it.
    pub fn is_at_the_limit(&self) -> bool {
        self.doubt.speed() >= 1.0
    }

    /// Doubt of the time swung, s; none where the time was given.
    pub fn time_sd_s(&self) -> f64 {
        if self.time_s == self.fastest_s { self.time_s * self.doubt.time() } else { 0.0 }
    }

    /// The joint that was spent longest, in plain words: "trunk (turn to the bowler)".
    pub fn limited_by(&self) -> Option<String> {
        let j = self.seen.limited_by()?;
        let joint = JOINTS.get(j)?;
        let peak = self
            .seen
            .series
            .iter()
            .map(|it| it.share[j])
            .max_by(|a, b| a.abs().total_cmp(&b.abs()))?;
        let direction = if peak > 0.0 { joint.positive } else { joint.negative };
        Some(format!("{} ({direction})", joint.group.words()))
    }
}
