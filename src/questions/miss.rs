//! What a miss of the maker's does to the pull at fifty.

use super::loaded::Loaded;
use super::swung::heavier;
use super::{Progress, Stop};
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::card::Card;

/// The pull at fifty with the bat as ordered and as delivered.
#[derive(Clone, Copy, Debug)]
pub struct Miss {
    /// Bat speed with the card's figures, m/s.
    pub as_ordered_m_s: f64,
    /// Bat speed with the delivered bat, m/s.
    pub as_delivered_m_s: f64,
    /// Delivered less ordered, m/s.
    pub difference_m_s: f64,
    /// One standard deviation of it, from the delivered bat's swing moment, m/s. What the player's
    /// strength leaves open is the same for both bats.
    pub difference_sd_m_s: f64,
}

/// Plays the innings with both.
///
/// # Errors
/// If the scenario leaves the pull out, the player cannot swing either bat, or the work is cancelled.
pub fn miss(
    loaded: &Loaded,
    card: &Card,
    weighed: &WeighedBat,
    progress: &dyn Progress,
) -> Result<Miss, Stop> {
    let stroke = loaded.pull()?;
    let batter = loaded.batter(weighed, 1.0)?;
    let asked = loaded.asked_times_s(&batter)?;
    let ordered = weighed
        .with(card.mass_kg(), card.balance_m(), card.swing_moment_kg_m2())
        .map_err(Stop::our_mistake)?;
    let doubted = heavier(weighed).map_err(Stop::our_mistake)?;
    let mut done = 0.0;
    let mut speed = |bat: &Bat| {
        progress.step("playing to fifty", done / 3.0)?;
        done += 1.0;
        let now = loaded.at_fifty(&batter, bat, &asked)?.with_slow[stroke];
        Ok::<_, Stop>(now.bat_speed_m_s())
    };
    let as_ordered_m_s = speed(&ordered)?;
    let as_delivered_m_s = speed(&weighed.bat)?;
    let difference_sd_m_s = (speed(&doubted)? - as_delivered_m_s).abs();
    Ok(Miss {
        as_ordered_m_s,
        as_delivered_m_s,
        difference_m_s: as_delivered_m_s - as_ordered_m_s,
        difference_sd_m_s,
    })
}
