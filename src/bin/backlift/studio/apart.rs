//! What two bats are apart by in the stroke on the screen, at its score: the view's one figure and its sentence.

use backlift::comparison::figure::StrokeFigure;
use backlift::innings::played::StrokeNow;
use backlift::innings::score::runs_words;
use backlift::measurement::bench::bat_letter;
use backlift::questions::any_score::Tempo;

use super::state::Studio;
use super::told_apart::{self, Change};
use crate::figure::{capital, percent, plain};

/// One figure in large letters.
pub struct Large {
    /// It, with the letter of its bat.
    pub words: String,
    /// Its doubt, and what it is of.
    pub under: String,
    /// The bat of which it is told.
    pub bat: usize,
}

impl Studio {
    /// The figure in large letters: how late one bat is; in the same time, what it takes more of the wrists.
    pub fn apart_in_large(&self) -> Option<Large> {
        if self.slots() < 2 {
            return None;
        }
        let change = self.apart()?;
        let [a, b] = self.playback.bats;
        let (more, less) = if change.value > 0.0 { (b, a) } else { (a, b) };
        let told = |value: f64| match self.playback.tempo() {
            Tempo::Fastest => plain(1e3 * value.abs(), 0, "ms"),
            Tempo::Asked => percent(value.abs(), 0),
        };
        let [letter, other] = [more, less].map(bat_letter);
        let words = match self.playback.tempo() {
            Tempo::Fastest => format!("{letter} {} late", told(change.value)),
            Tempo::Asked => format!("{letter} {} more of the wrists", told(change.value)),
        };
        let doubt = match (change.sd, change.is_real()) {
            (None, _) => "± …".to_owned(),
            (Some(sd), true) => format!("± {}", told(sd)),
            (Some(sd), false) => format!("± {}: within the doubt", told(sd)),
        };
        let how = match self.playback.tempo() {
            Tempo::Fastest => "each as fast as these hands can",
            Tempo::Asked => "both in the same time",
        };
        let (stroke, when) = (&self.playback.stroke, self.when());
        let under = format!("{doubt}, beside {other}; the {stroke}, {when}, {how}");
        Some(Large { words, under, bat: more })
    }

    /// What a coach could say of it.
    pub(super) fn apart_in_words(&self) -> Option<String> {
        let [a, b] = self.playback.bats.map(|it| self.label(it));
        let labels = [a.as_str(), b.as_str()];
        let change = self.apart()?;
        let units = self.look.units;
        let comma = if self.playback.runs == 0 { "," } else { "" };
        let when = format!("{}{comma} the {}", capital(&self.when()), self.playback.stroke);
        let first = match self.playback.tempo() {
            Tempo::Fastest => {
                let speed = self.less_first(StrokeNow::bat_speed_m_s, StrokeFigure::BatSpeed)?;
                told_apart::as_fast_as_they_can(&when, labels, change, speed, units)
            }
            Tempo::Asked => told_apart::in_the_same_time(&when, labels, change),
        };
        let hand =
            self.compared().map(|it| format!(" {}", crate::sentences::pair::in_hand(it, [0, 1])));
        Some(first + &hand.unwrap_or_default())
    }

    /// How tired the player is: "fresh", "at 50 runs".
    pub fn when(&self) -> String {
        match self.playback.runs {
            0 => "fresh".to_owned(),
            runs => format!("at {}", runs_words(f64::from(runs))),
        }
    }

    /// Second less first: time of the stroke, s, or share of the busier wrist.
    fn apart(&self) -> Option<Change> {
        match self.playback.tempo() {
            Tempo::Fastest => {
                self.less_first(|it| it.fastest.stroke_time_s, StrokeFigure::StrokeTime)
            }
            Tempo::Asked => self.less_first(|it| it.wrist_share, StrokeFigure::WristShare),
        }
    }
}
