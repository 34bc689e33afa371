//! A bat taped so that it swings like another: the tape found, and the bats swung with and without it.

pub mod wanted;

use wanted::Wanted;

use super::loaded::Loaded;
use super::placed::innings_stop;
use super::{Progress, Stop};
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::fit::trial::{self, Pickup, Trial, places};
use crate::innings::played::{FIFTY, left_at};
use crate::ounce::swung::{bat_speeds_m_s, ounce_cost};

/// Bat speeds of one stroke with what fifty runs with the wanted bat leave, as swung.
#[derive(Clone, Debug)]
pub struct StrokeSpeeds {
    /// Its name.
    pub stroke: String,
    /// With the bat as it is, m/s.
    pub owned_m_s: f64,
    /// With the tape, m/s.
    pub reached_m_s: f64,
    /// With the wanted bat, m/s.
    pub wanted_m_s: f64,
}

impl StrokeSpeeds {
    /// Reached less wanted, as a share.
    pub fn off_share(&self) -> f64 {
        self.reached_m_s / self.wanted_m_s - 1.0
    }
}

/// A trial with every stroke swung.
#[derive(Clone, Debug)]
pub struct Taped {
    /// The tape, and how near it comes.
    pub trial: Trial,
    /// One a stroke.
    pub strokes: Vec<StrokeSpeeds>,
    /// Place of the stroke that is aimed at.
    pub aimed: usize,
}

/// Finds the tape for the stroke that matters, and swings all strokes.
///
/// # Errors
/// If the player cannot swing one of the bats, or the work is cancelled.
pub fn taped(
    loaded: &Loaded,
    owned: &WeighedBat,
    wanted: &Wanted,
    progress: &dyn Progress,
) -> Result<Taped, Stop> {
    progress.step("finding the player's strokes", 0.0)?;
    let batter = loaded.batter(owned, 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    progress.step("putting an ounce here and there", 0.3)?;
    let taken_up = batter.take_up(&wanted.bat)?;
    let left = left_at(&batter, &taken_up, &loaded.scenario.innings, &asked_time_s, FIFTY)
        .map_err(|it| innings_stop(&loaded.places, it))?;
    let capacity = left.with_slow;
    let costs = ounce_cost(&batter, &wanted.bat, &capacity)?;
    let aimed = loaded.lead();
    let Some(cost) = costs.get(aimed) else {
        return Err(Stop::our_mistake("the player has no stroke"));
    };
    progress.step("trying the tape", 0.7)?;
    let places = places(owned.family().reference());
    let trial = trial::trial(Pickup::of(&owned.bat), wanted.pickup, &places, cost);
    let taped = trial.weights.iter().try_fold(owned.bat.clone(), |bat: Bat, it| {
        bat.with_added_mass(it.mass_kg(), it.place.from_top_m)
    });
    let taped = taped.map_err(Stop::our_mistake)?;
    progress.step("swinging the bats at fifty", 0.8)?;
    let owned_m_s = bat_speeds_m_s(&batter, &owned.bat, &capacity)?;
    let reached_m_s = match trial.weights.is_empty() {
        true => owned_m_s.clone(),
        false => bat_speeds_m_s(&batter, &taped, &capacity)?,
    };
    let strokes = costs.iter().zip(owned_m_s).zip(reached_m_s);
    let strokes = strokes.map(|((cost, owned_m_s), reached_m_s)| StrokeSpeeds {
        stroke: cost.stroke.clone(),
        owned_m_s,
        reached_m_s,
        wanted_m_s: cost.bat_speed_m_s,
    });
    Ok(Taped { trial, strokes: strokes.collect(), aimed })
}
