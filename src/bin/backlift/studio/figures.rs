//! The figures beside the swing, each with its doubt and its why.

use std::sync::Arc;

use backlift::comparison::figure::StrokeFigure;
use backlift::innings::played::StrokeNow;
use backlift::questions::any_score::Of;
use backlift::questions::compared::{Shown, compared};
use backlift::questions::loaded::Loaded;
use backlift::units::{Quantity, Units, spoken};

use super::answers::{Keyed, key};
use super::apart::Change;
use super::state::Studio;
use super::work::Question;
use crate::figure::{percent, plain};

/// One line of figures.
pub struct Row {
    pub name: &'static str,
    /// First and second bat: the figure, and its doubt; none while it is worked out.
    pub values: [Option<Told>; 2],
    /// Second less first, in words, and whether it is more than the doubt.
    pub difference: Option<(String, bool)>,
    /// Where it comes from.
    pub why: &'static str,
}

/// A figure as it is shown.
pub struct Told {
    /// With its unit.
    pub value: String,
    /// "± 0.4 km/h"; "± …" while it is worked out; empty for what has none.
    pub doubt: String,
}

struct Line {
    name: &'static str,
    of: Of,
    figure: StrokeFigure,
    quantity: Option<Quantity>,
    why: &'static str,
}

const LINES: [Line; 5] = [
    Line {
        name: "bat speed at the ball",
        of: StrokeNow::bat_speed_m_s,
        figure: StrokeFigure::BatSpeed,
        quantity: Some(Quantity::Speed),
        why: "Speed of the contact point in the fastest swing that stays under control, simulated with this player's strength. Its doubt: strength, bat, and what is not known of fatigue",
    },
    Line {
        name: "stroke time",
        of: |it| it.fastest.stroke_time_s,
        figure: StrokeFigure::StrokeTime,
        quantity: Some(Quantity::Time),
        why: "From the top of the backlift to the ball, in the fastest swing that stays under control",
    },
    Line {
        name: "time in hand",
        of: |it| it.time_in_hand_s,
        figure: StrokeFigure::TimeInHand,
        quantity: Some(Quantity::Time),
        why: "Left over between reading the ball and having to start, with the bowling and the reading time of the scenario. It serves to hold bats against each other; whether a ball is met in time is a chance",
    },
    Line {
        name: "wrist share",
        of: |it| it.wrist_share,
        figure: StrokeFigure::WristShare,
        quantity: None,
        why: "Mean share of what it has left that the busier wrist gives, at one stroke time for all bats and scores",
    },
    Line {
        name: "grip needed",
        of: |it| it.grip_share,
        figure: StrokeFigure::GripShare,
        quantity: None,
        why: "So that the handle neither slips nor twists, as a share of the grip there is; fresh grip, so a lower bound late on. Its doubt: the grip reading, the friction of glove on rubber (an assumption, ± 25 %), and the player's strength",
    },
];

/// The chance of being in time: its name, where it stands among the lines, and where it comes from.
const IN_TIME: &str = "short balls in time";
const IN_TIME_AT: usize = 2;
const IN_TIME_WHY: &str = "Over everybody this player may be, fresh and at the end of the innings; evenly between them. It rests on what was seen, or on what is assumed where nothing was";

impl Studio {
    /// Figures of the stroke shown, at the score shown.
    pub fn swing_rows(&self) -> Vec<Row> {
        let mut rows: Vec<Row> = LINES.iter().map(|line| self.row(line)).collect();
        rows.insert(IN_TIME_AT, self.in_time_row());
        rows.retain(|it| it.values.iter().any(Option::is_some) || it.name != IN_TIME);
        rows
    }

    /// Chance that the stroke shown meets a short ball in time, at the score shown.
    fn in_time_row(&self) -> Row {
        let values = std::array::from_fn(|slot| {
            let (_, now) = self.advice()?;
            let place = now.setting.batter.stroke_index(&self.playback.stroke)?;
            if !now.setting.batter.strokes.get(place)?.stroke.answers_short_ball {
                return None;
            }
            let bat = *self.playback.bats.get(slot)?;
            let it = *self.given(bat)?.worth.as_ref()?.strokes.get(place)?;
            let part = (f64::from(self.playback.runs) / now.setting.plan.runs).clamp(0.0, 1.0);
            let chance = it.in_time_fresh + part * (it.in_time_late - it.in_time_fresh);
            Some(Told { value: format!("{:.0} of 100", 100.0 * chance), doubt: String::new() })
        });
        Row { name: IN_TIME, values, difference: None, why: IN_TIME_WHY }
    }

    fn row(&self, line: &Line) -> Row {
        let runs = f64::from(self.playback.runs);
        let units = self.look.units;
        let values = std::array::from_fn(|slot| {
            let (value, sd) = (self.best(slot, line.of)?, self.sd(slot, line.figure, runs));
            let doubt = sd.map_or("…".to_owned(), |sd| told(line, sd, sd, units));
            let doubt = format!("± {doubt}");
            Some(Told { value: told(line, value, sd.unwrap_or(0.0), units), doubt })
        });
        let difference = self.less_first(line.of, line.figure).and_then(|it| {
            let sd = it.sd?;
            let sign = if it.value > 0.0 { "+" } else { "" };
            let [value, doubt] = [it.value, sd].map(|value| told(line, value, sd, units));
            Some((format!("{sign}{value} ± {doubt}"), it.is_real()))
        });
        Row { name: line.name, values, difference, why: line.why }
    }

    /// Doubt of a figure of the stroke shown.
    pub fn sd(&self, slot: usize, figure: StrokeFigure, runs: f64) -> Option<f64> {
        self.compared()?.sd_at(slot, &self.playback.stroke, figure, runs)
    }

    /// What the comparison of the two bats hangs on.
    fn pair_key(&self) -> Option<u64> {
        let [a, b] = self.playback.bats.map(|bat| self.derived.bat_keys.get(bat));
        Some(key(("pair", a?, b?)))
    }

    /// The comparison of the two bats shown; perhaps of an earlier text.
    pub fn compared(&self) -> Option<&Shown> {
        let now = self.pair_key().and_then(|key| self.answers.get(key));
        let before = || self.answers.last(Question::Compare(self.playback.bats));
        now.or_else(|| before().map(|it: Keyed<'_, Shown>| it.it))
    }

    /// Whether it is of the present text.
    pub fn is_compared(&self) -> bool {
        self.pair_key().is_some_and(|key| self.answers.get::<Shown>(key).is_some())
    }

    /// Asks for it if it is missing; whether it is waited for.
    pub(super) fn ask_for_pair(&mut self, loaded: &Arc<Loaded>) -> bool {
        let pair = self.playback.bats;
        let missing = self.pair_key().filter(|it| pair[0] != pair[1] && !self.answers.has(*it));
        let Some(key) = missing else { return false };
        let loaded = Arc::clone(loaded);
        self.work.start(Question::Compare(pair), key, move |progress, _| {
            let bats = pair.iter().filter_map(|it| loaded.bats.get(*it).cloned()).collect();
            compared(&loaded, bats, progress)
        });
        true
    }

    /// A figure of the stroke and at the score shown, as it is believed.
    fn best(&self, slot: usize, of: Of) -> Option<f64> {
        let innings = self.innings(slot)?.it;
        let stroke = innings.stroke(&self.playback.stroke)?;
        Some(innings.at(stroke, f64::from(self.playback.runs), of)?.best)
    }

    /// Second less first, of the stroke and at the score shown.
    pub fn less_first(&self, of: Of, figure: StrokeFigure) -> Option<Change> {
        let (stroke, runs) = (&self.playback.stroke, f64::from(self.playback.runs));
        let sd = self.compared().and_then(|it| it.difference_sd_at(stroke, figure, runs));
        Some(Change { value: self.best(1, of)? - self.best(0, of)?, sd })
    }

    /// What a coach could say aloud of the two bats.
    pub fn pair_sentence(&self) -> String {
        if !self.playback.second {
            let label = self.label(self.playback.bats[0]);
            return format!("{label} alone; choose a second bat to see the difference");
        }
        if self.playback.bats[0] == self.playback.bats[1] {
            return "The same bat twice: choose another one to see a difference".to_owned();
        }
        if self.derived.loaded.is_none() {
            return "There is nothing to swing yet: the bench says what is missing".to_owned();
        }
        self.apart_in_words()
            .unwrap_or_else(|| "What the two bats do in these hands is being worked out".to_owned())
    }

    pub fn label(&self, bat: usize) -> String {
        self.document.label(bat)
    }
}

fn told(line: &Line, value: f64, sd: f64, units: Units) -> String {
    match line.quantity {
        Some(quantity) => spoken(quantity, value, sd, units),
        None => percent(value, if sd > 0.0 && sd < 0.01 { 1 } else { 0 }),
    }
}

/// A swing moment, kg m².
pub fn swing_moment(it: backlift::uncertain::Uncertain) -> String {
    let digits = backlift::units::decimals(it.sd, 4);
    format!("{} ± {}", plain(it.value, digits, "kg m²"), plain(it.sd, digits, "kg m²"))
}
