//! What an ounce costs a player's strokes, by where it sits on one bat.

use super::loaded::Loaded;
use super::placed::innings_stop;
use super::{Progress, Stop};
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::innings::played::{FIFTY, left_at};
use crate::ounce::cost::StrokeOunce;
use crate::ounce::swung::ounce_cost;
use crate::swing::batter::Batter;

/// The costs, and what they were found for.
#[derive(Clone, Debug)]
pub struct Ounces {
    /// The bat they hold for.
    pub bat: Bat,
    /// Diameter of its handle, m.
    pub handle_diameter_m: f64,
    /// One a stroke.
    pub strokes: Vec<StrokeOunce>,
    /// Place among them of the one that leads.
    pub leading: usize,
    /// Runs at which it was asked.
    pub runs: f64,
}

impl Ounces {
    /// On a weighed bat at fifty runs, for the likeliest player.
    ///
    /// # Errors
    /// If the innings cannot be played, or the player cannot swing the bat.
    pub fn at_fifty(
        loaded: &Loaded,
        weighed: &WeighedBat,
        batter: &Batter,
        asked_time_s: &[f64],
    ) -> Result<Self, Stop> {
        let taken_up = batter.take_up(&weighed.bat)?;
        let left = left_at(batter, &taken_up, &loaded.scenario.innings, asked_time_s, FIFTY)
            .map_err(|it| innings_stop(&loaded.places, it))?;
        Ok(Self {
            bat: weighed.bat.clone(),
            handle_diameter_m: batter.handle_diameter_m,
            strokes: ounce_cost(batter, &weighed.bat, &left.with_slow)?,
            leading: loaded.lead(),
            runs: FIFTY,
        })
    }

    /// The same of a bat by its place; `asked_time_s` is in which time each stroke is asked for, s, where it is known.
    ///
    /// # Errors
    /// As above, if there is no such bat, or if the work is asked to stop.
    pub fn of(
        loaded: &Loaded,
        bat: usize,
        asked_time_s: Option<Vec<f64>>,
        progress: &dyn Progress,
    ) -> Result<Self, Stop> {
        const DOING: &str = "putting an ounce here and there";
        let Some(weighed) = loaded.bats.get(bat) else {
            return Err(Stop::OurMistake(format!("there is no bat {bat}")));
        };
        progress.step(DOING, 0.0)?;
        let batter = loaded.batter(weighed, 1.0)?;
        let asked_time_s = match asked_time_s {
            Some(known) => known,
            None => loaded.asked_times_s(&batter)?,
        };
        progress.step(DOING, 0.3)?;
        Self::at_fifty(loaded, weighed, &batter, &asked_time_s)
    }

    /// The leading stroke's cost along the bat.
    pub fn lead(&self) -> Option<&StrokeOunce> {
        self.strokes.get(self.leading)
    }
}
