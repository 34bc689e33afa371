//! The bench: what tapping would make of the bat there, and a tried bat made one of the bats.

use backlift::bat::figures::{WeighedBat, weigh};
use backlift::files::fault::Fault;
use backlift::measurement::bench::{
    BatReading, PICKUP_AXIS_FROM_TOP_M, PendulumReading, USUAL_AMPLITUDE_RAD,
};
use backlift::uncertain::Uncertain;

use super::state::Studio;

/// Numbers of swings for which the doubt is told.
pub const SWINGS: [u32; 7] = [1, 2, 5, 10, 15, 20, 30];

/// Runs and short balls that are offered where it is said what was seen.
pub const SEEN_RUNS: [&str; 7] = ["0", "10", "20", "30", "50", "75", "100"];
pub const SEEN_BALLS: [&str; 6] = ["5", "10", "20", "30", "50", "100"];
/// Short balls where no number is said.
const USUAL_BALLS: &str = "20";

impl Studio {
    /// The bat that the player uses now.
    pub fn used_bat(&self) -> usize {
        let written = self.document.at("uses");
        let is_it = |bat: &usize| self.label(*bat).eq_ignore_ascii_case(written.trim());
        (0..self.document.bat_count()).find(is_it).unwrap_or(0)
    }

    /// Name of the stroke to the short ball that leads.
    pub fn lead_stroke(&self) -> String {
        let loaded = self.derived.loaded.as_ref();
        let lead = loaded.and_then(|it| it.strokes.get(it.lead()));
        lead.map_or_else(|| "pull".to_owned(), |it| it.name.clone())
    }

    /// Whether something was seen.
    pub fn is_seen(&self) -> bool {
        !self.document.fields().seen.is_empty()
    }

    /// How often short balls were seen to be met in time.
    pub(super) fn saw(&mut self, how_often: &str) -> Result<(), Fault> {
        if !self.is_seen() {
            let bat = self.label(self.used_bat());
            let stroke = self.lead_stroke();
            let usual = [("bat", bat.as_str()), ("stroke", &stroke), ("balls", USUAL_BALLS)];
            for (name, value) in usual {
                self.document.put(&format!("seen.0.{name}"), value)?;
            }
        }
        self.document.put("seen.0.in_time", how_often)
    }

    /// Puts a value over a field; whatever names a bat by its label follows the label.
    pub(super) fn put(&mut self, path: &str, value: &str) -> Result<(), Fault> {
        let naming = match renamed(path) {
            Some(bat) if bat < self.document.bat_count() => self.document.naming(&self.label(bat)),
            _ => Vec::new(),
        };
        self.document.put(path, value)?;
        let Some(bat) = renamed(path) else { return Ok(()) };
        let label = self.label(bat);
        naming.iter().try_for_each(|it| self.document.put(it, &label))
    }

    /// Takes a bat away, and what was said of it.
    pub(super) fn remove_bat(&mut self, bat: usize) -> Result<(), Fault> {
        let naming = match bat < self.document.bat_count() {
            true => self.document.naming(&self.label(bat)),
            false => Vec::new(),
        };
        self.document.remove_bat(bat)?;
        // From the last on, so that the places of the others stay.
        for path in naming.iter().rev() {
            match path.strip_prefix("seen.").and_then(|it| it.split('.').next()?.parse().ok()) {
                Some(n) => self.document.forget_seen(n)?,
                None => self.document.put(path, "")?,
            }
        }
        Ok(())
    }

    /// The bat at the bench, weighed up; of an earlier text where the present one is at fault.
    pub fn at_bench(&self) -> Option<&WeighedBat> {
        self.derived.loaded.as_ref()?.bats.get(self.bench_bat)
    }

    /// Its swing moment as the taps so far have it.
    pub fn tapped_swing_moment(&self) -> Option<Uncertain> {
        let bat = self.at_bench()?;
        let swings = u32::try_from(self.taps.swings()).ok().filter(|it| *it > 0)?;
        self.weighed_again(&bat.reading, Some(swings), self.taps.time_s())
    }

    /// Its swing moment without any pendulum test.
    pub fn untimed_swing_moment(&self) -> Option<Uncertain> {
        self.weighed_again(&self.at_bench()?.reading, None, 0.0)
    }

    /// Doubt of its swing moment if so many swings were timed: swings, and one standard deviation as a
    /// share.
    pub fn doubt_by_swings(&self) -> Vec<(u32, f64)> {
        let Some(bat) = self.at_bench() else { return Vec::new() };
        let period_s = match (&bat.reading.pendulum, self.taps.swings()) {
            (_, swings @ 1..) => self.taps.time_s() / swings as f64,
            (Some(it), _) => it.time_s / f64::from(it.swings),
            (None, _) => return Vec::new(),
        };
        let doubt = |swings: u32| {
            let time_s = period_s * f64::from(swings);
            Some((swings, self.weighed_again(&bat.reading, Some(swings), time_s)?.relative_sd()))
        };
        SWINGS.into_iter().filter_map(doubt).collect()
    }

    fn weighed_again(
        &self,
        reading: &BatReading,
        swings: Option<u32>,
        time_s: f64,
    ) -> Option<Uncertain> {
        let loaded = self.derived.loaded.as_ref()?;
        let (pivot_from_top_m, amplitude_rad) =
            reading.pendulum.as_ref().map_or((PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD), |it| {
                (it.pivot_from_top_m, it.amplitude_rad)
            });
        let test = |swings| PendulumReading { swings, time_s, pivot_from_top_m, amplitude_rad };
        let reading = BatReading { pendulum: swings.map(test), ..reading.clone() };
        Some(weigh(&reading, &loaded.sizes, &loaded.laws).ok()?.swing_moment_kg_m2)
    }

    /// Puts swings and time of the taps into the bat's pendulum test.
    pub(super) fn use_taps(&mut self) -> Result<(), Fault> {
        let swings = self.taps.swings();
        if swings == 0 {
            return Err(Fault::new("no swing is timed yet")
                .help("tap each time the bat comes back to the same side"));
        }
        let (bat, time_s) = (self.bench_bat, self.taps.time_s());
        self.document.put(&format!("bats.{bat}.pendulum.swings"), &swings.to_string())?;
        self.document.put(&format!("bats.{bat}.pendulum.time"), &format!("{time_s:.2} s"))?;
        if self.document.at(&format!("bats.{bat}.pendulum.pivot")).is_empty() {
            self.document.put(&format!("bats.{bat}.pendulum.pivot"), "6 in")?;
        }
        self.taps.clear();
        Ok(())
    }

    /// The bat tried on the map becomes the last of the bats, and the second one swung.
    pub(super) fn add_tried(&mut self) -> Result<(), Fault> {
        let Some([mass_kg, balance_m]) = self.tried else {
            return Err(Fault::new("no bat is tried on the map").help("click the map first"));
        };
        let size = self.results.fitted.as_ref().map(|it| it.it.card.size.clone());
        let length_m = self.results.fitted.as_ref().map(|it| it.it.card.length_m);
        self.document.add_bat(None)?;
        let bat = self.document.bat_count() - 1;
        let label = format!("Tried {}", bat + 1);
        self.document.put(&format!("bats.{bat}.label"), &label)?;
        if let Some(size) = size {
            self.document.put(&format!("bats.{bat}.size"), &size)?;
        }
        if let Some(length_m) = length_m {
            self.document.put(&format!("bats.{bat}.length"), &format!("{length_m:.3} m"))?;
        }
        self.document.put(&format!("bats.{bat}.mass"), &format!("{mass_kg:.3} kg"))?;
        self.document.put(&format!("bats.{bat}.balance"), &format!("{balance_m:.4} m"))?;
        self.playback.bats[1] = bat;
        self.playback.second = true;
        self.tried = None;
        Ok(())
    }
}

/// The bat whose label stands at a path.
fn renamed(path: &str) -> Option<usize> {
    path.strip_prefix("bats.")?.strip_suffix(".label")?.parse().ok()
}
