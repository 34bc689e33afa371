//! What two bats are apart by in the stroke on the screen, at its score: the view's one figure, and the sentence that a
//! coach could say.

use backlift::comparison::difference::REAL_BEYOND_SD;
use backlift::comparison::figure::StrokeFigure;
use backlift::innings::played::StrokeNow;
use backlift::innings::score::runs_words;
use backlift::measurement::bench::bat_letter;
use backlift::questions::any_score::Tempo;
use backlift::units::{Quantity, Units, spoken};

use super::state::Studio;
use crate::figure::{capital, percent, plain};

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
        let [more, less] = change.ordered(self.playback.bats);
        let [letter, other] = [more, less].map(bat_letter);
        let told = |value: f64| match self.playback.tempo() {
            Tempo::Fastest => plain(1e3 * value.abs(), 0, "ms"),
            Tempo::Asked => percent(value.abs(), 0),
        };
        let (by_which, how) = match self.playback.tempo() {
            Tempo::Fastest => ("late", "each as fast as these hands can"),
            Tempo::Asked => ("more of the wrists", "both in the same time"),
        };
        let words = format!("{letter} {} {by_which}", told(change.value));
        let doubt = match (change.sd, change.is_real()) {
            (None, _) => "± …".to_owned(),
            (Some(sd), true) => format!("± {}", told(sd)),
            (Some(sd), false) => format!("± {}: within the doubt", told(sd)),
        };
        let (stroke, when) = (&self.playback.stroke, self.when());
        let under = format!("{doubt}, beside {other}; the {stroke}, {when}, {how}");
        Some(Large { words, under, bat: more })
    }

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
                as_fast_as_they_can(&when, labels, change, speed, units)
            }
            Tempo::Asked => in_the_same_time(&when, labels, change),
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

/// A figure of the second bat less the first's.
#[derive(Clone, Copy)]
pub struct Change {
    pub value: f64,
    /// One standard deviation of it; none while it is worked out.
    pub sd: Option<f64>,
}

impl Change {
    /// Whether it is more than its doubt.
    pub fn is_real(&self) -> bool {
        self.sd.is_some_and(|sd| self.value.abs() > REAL_BEYOND_SD * sd)
    }

    /// The bat with more of it first.
    fn ordered<T>(&self, [first, second]: [T; 2]) -> [T; 2] {
        if self.value > 0.0 { [second, first] } else { [first, second] }
    }

    fn doubt(&self) -> &'static str {
        match (self.sd, self.is_real()) {
            (None, _) => "how sure that is, is being worked out",
            (_, true) => "more than the doubt",
            (_, false) => "within the doubt",
        }
    }
}

/// Each as fast as these hands can: which comes late, and which is faster at the ball. `when` is how such a sentence
/// begins: "At 50 runs the pull".
fn as_fast_as_they_can(
    when: &str,
    labels: [&str; 2],
    time_s: Change,
    speed_m_s: Change,
    units: Units,
) -> String {
    let [late, soon] = time_s.ordered(labels);
    let ms = plain(1e3 * time_s.value.abs(), 0, "ms");
    let first = match time_s.sd.is_none() || time_s.is_real() {
        true => {
            format!("{when} with {late} comes {ms} after that with {soon}: {}.", time_s.doubt())
        }
        false => format!("{when} comes as late with {late} as with {soon}, as far as can be told."),
    };
    let sd = speed_m_s.sd.unwrap_or(0.3);
    let gap = spoken(Quantity::Speed, speed_m_s.value.abs(), sd, units);
    let [fast, _] = speed_m_s.ordered(labels);
    let second = match speed_m_s.is_real() {
        true => format!("At the ball {fast} is {gap} faster: more than the doubt."),
        false if speed_m_s.sd.is_some() => {
            "At the ball the two are as fast, as far as can be told.".to_owned()
        }
        false => String::new(),
    };
    format!("{first} {second}").trim_end().to_owned()
}

/// Both in the same time: which takes more of the wrists.
fn in_the_same_time(when: &str, labels: [&str; 2], share: Change) -> String {
    let [more, less] = share.ordered(labels);
    let by = percent(share.value.abs(), 0);
    match share.sd.is_none() || share.is_real() {
        true => format!(
            "{when}, both in the same time: {more} takes {by} more of what the busier wrist has than {less}, {}.",
            share.doubt()
        ),
        false => format!(
            "{when}, both in the same time: {more} and {less} ask as much of the wrists, as far as can be told."
        ),
    }
}
