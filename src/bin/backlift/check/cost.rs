//! What a miss does to the pull at fifty.

use backlift::bat::Bat;
use backlift::bat::figures::WeighedBat;
use backlift::card::Card;
use backlift::innings::played::{FIFTY, delivery, play};
use serde::Serialize;

use crate::loaded::Loaded;
use crate::outcome::Stop;
use crate::placed::innings_stop;
use crate::progress::Progress;

/// The pull at fifty with the bat as ordered and as delivered.
#[derive(Clone, Copy, Debug, Serialize)]
pub struct Cost {
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
pub fn of(
    loaded: &Loaded,
    card: &Card,
    weighed: &WeighedBat,
    progress: &Progress,
) -> Result<Cost, Stop> {
    let stroke = loaded.pull()?;
    let batter = loaded.batter(weighed, 1.0)?;
    let asked = loaded.asked_times_s(&batter)?;
    let not_a_bat = |it: backlift::bat::BatFault| Stop::OurMistake(it.to_string());
    let ordered =
        weighed.with(card.mass_kg, card.balance_m, card.swing_moment_kg_m2).map_err(not_a_bat)?;
    let moment = weighed.swing_moment_kg_m2;
    let doubted = weighed
        .with(weighed.mass_kg.value, weighed.balance_m.value, moment.value + moment.sd)
        .map_err(not_a_bat)?;
    let mut done = 0.0;
    let mut speed = |bat: &Bat| {
        progress.step("playing to fifty", done / 3.0)?;
        done += 1.0;
        let plan = &loaded.scenario.innings;
        let bowled = delivery(&loaded.scenario.bowling);
        let played = play(&batter, bat, plan, bowled, &asked, &[FIFTY])
            .map_err(|it| innings_stop(&loaded.places, it))?;
        let now = played.first().and_then(|it| it.with_slow.get(stroke));
        now.map(|it| it.fastest.contact.bat_speed_m_s)
            .ok_or_else(|| Stop::OurMistake("the innings has no pull at fifty".to_owned()))
    };
    let as_ordered_m_s = speed(&ordered)?;
    let as_delivered_m_s = speed(&weighed.bat)?;
    let difference_sd_m_s = (speed(&doubted)? - as_delivered_m_s).abs();
    Ok(Cost {
        as_ordered_m_s,
        as_delivered_m_s,
        difference_m_s: as_delivered_m_s - as_ordered_m_s,
        difference_sd_m_s,
    })
}
