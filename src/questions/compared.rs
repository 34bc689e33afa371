//! Bats compared in one player's hands: every figure, every difference, and what each is worth.

use super::loaded::Loaded;
use super::placed::innings_stop;
use super::{Progress, Stop};
use crate::bat::figures::WeighedBat;
use crate::comparison::bats::{BatDifference, Comparison, ComparisonFault, compare};
use crate::comparison::difference::toe_words;
use crate::comparison::figure::{Figure, StrokeFigure, When};
use crate::comparison::swung::Asked;
use crate::files::fault::Fault;
use crate::fit::fitting::TodayAdvice;
use crate::innings::played::FIFTY;
use crate::uncertain::Uncertain;
use crate::worth::constants::BEYOND_DOUBT_SD;
use crate::worth::today::Given;

/// A comparison with the names of its bats and strokes.
#[derive(Clone, Debug)]
pub struct Shown {
    /// Figures and differences, by index.
    pub comparison: Comparison,
    /// The bats, in the order in which they are compared.
    pub bats: Vec<WeighedBat>,
    /// Names of the strokes.
    pub strokes: Vec<String>,
    /// Place among them of the one that leads.
    pub lead: usize,
    /// The player is a junior: nothing is said of a fastest ball.
    pub junior: bool,
    /// From release until the stroke can start, s: what a time in hand hangs on.
    pub reaction_time_s: f64,
}

impl Shown {
    /// A figure of the leading stroke at fifty.
    pub fn late(&self, figure: StrokeFigure) -> Figure {
        Figure::Stroke(self.lead, When::AtFifty, figure)
    }

    /// Label of a bat.
    pub fn label(&self, bat: usize) -> &str {
        self.comparison.bats.get(bat).map_or("", |it| it.label.as_str())
    }

    /// A bat's figure with its doubt.
    pub fn value(&self, bat: usize, figure: Figure) -> Uncertain {
        let place = self.comparison.figures.iter().position(|it| *it == figure);
        let found = place.and_then(|f| Some(self.comparison.bats.get(bat)?.value_sd(f)));
        let (value, sd) = found.unwrap_or((f64::NAN, 0.0));
        let measured = self.bats.get(bat).map(|it| match figure {
            Figure::Balance => it.balance_m.origin,
            Figure::SwingMoment => it.swing_moment_kg_m2.origin,
            Figure::HoldMoment => it.hold_moment_n_m.origin,
            Figure::PickupWeight => it.pickup_weight_kg.origin,
            _ => it.mass_kg.origin,
        });
        Uncertain { origin: measured.unwrap_or(Uncertain::computed(0.0, 0.0).origin), value, sd }
    }

    /// Second bat less first.
    pub fn difference(&self, pair: [usize; 2], figure: Figure) -> Option<&BatDifference> {
        self.comparison.differences.iter().find(|it| it.bats == pair && it.figure == figure)
    }

    /// Doubt of a stroke's figure with a bat at a score: as compared fresh and at fifty, evenly between.
    pub fn sd_at(&self, bat: usize, stroke: &str, figure: StrokeFigure, runs: f64) -> Option<f64> {
        self.at(stroke, runs, |stroke, when| {
            let wanted = Figure::Stroke(stroke, when, figure);
            let place = self.comparison.figures.iter().position(|it| *it == wanted)?;
            Some(self.comparison.bats.get(bat)?.value_sd(place).1)
        })
    }

    /// The same of the second bat's figure less the first's.
    pub fn difference_sd_at(&self, stroke: &str, figure: StrokeFigure, runs: f64) -> Option<f64> {
        self.at(stroke, runs, |stroke, when| {
            let figure = Figure::Stroke(stroke, when, figure);
            Some(self.difference([0, 1], figure)?.difference.sd)
        })
    }

    fn at(&self, stroke: &str, runs: f64, of: impl Fn(usize, When) -> Option<f64>) -> Option<f64> {
        let stroke = self.strokes.iter().position(|it| it == stroke)?;
        let [fresh, late] = [of(stroke, When::Fresh)?, of(stroke, When::AtFifty)?];
        Some(fresh + (runs / FIFTY).clamp(0.0, 1.0) * (late - fresh))
    }

    /// All pairs, in order.
    pub fn pairs(&self) -> Vec<[usize; 2]> {
        let count = self.comparison.bats.len();
        (0..count).flat_map(|i| (i + 1..count).map(move |j| [i, j])).collect()
    }

    /// What the second bat is like in the hand against the first, as tape on the first one's toe.
    pub fn in_hand(&self, [first, second]: [usize; 2]) -> String {
        // Differences are kept of a later bat less an earlier one.
        let pair = [first.min(second), first.max(second)];
        let sign = if first < second { 1.0 } else { -1.0 };
        let change =
            self.difference(pair, Figure::SwingMoment).map_or(0.0, |it| it.difference.value);
        let length_m = self.bats.get(first).map_or(0.85, |it| it.length_m.value);
        toe_words(sign * change, length_m)
    }
}

/// Places of the bats asked for, each once, in the order asked; all of them if none is named.
///
/// # Errors
/// If one is not there, or fewer than two are left.
pub fn chosen(loaded: &Loaded, named: &[String]) -> Result<Vec<usize>, Stop> {
    let mut places = Vec::new();
    for name in named {
        let place = loaded.bat(Some(name))?;
        if !places.contains(&place) {
            places.push(place);
        }
    }
    let all = named.is_empty();
    if all {
        places = (0..loaded.bats.len()).collect();
    }
    if places.len() < 2 {
        let (what, help) = match all {
            true => ("the scenario has only one bat", "weigh another bat and add it to `bats`"),
            false => ("one bat is no comparison", "name another with --bat, or leave --bat out"),
        };
        return Err(Fault::new(what).help(help).into());
    }
    Ok(places)
}

/// Every figure of these bats in the player's hands, and every difference.
///
/// # Errors
/// If the player cannot swing one of them, or the work is cancelled.
pub fn compared(
    loaded: &Loaded,
    bats: Vec<WeighedBat>,
    progress: &dyn Progress,
) -> Result<Shown, Stop> {
    let scenario = &loaded.scenario;
    let first = bats.first().ok_or_else(|| Stop::OurMistake("there is no bat".into()))?;
    let batter = loaded.batter(first, 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let asked = Asked {
        batter: &batter,
        plan: &scenario.innings,
        delivery: loaded.scenario.bowling,
        asked_time_s: &asked_time_s,
        ball_kg: scenario.fit.ball_mass_kg,
    };
    let comparison = compare(&asked, &bats, &|doing, share| progress.report(doing, share))
        .map_err(|it| match it {
            ComparisonFault::Innings(fault) => innings_stop(&loaded.places, fault),
            ComparisonFault::Stopped => Stop::Cancelled,
            ComparisonFault::TooFew { .. } | ComparisonFault::Bat(_) => {
                Stop::OurMistake(it.to_string())
            }
        })?;
    let strokes = loaded.strokes.iter().map(|it| it.name.clone()).collect();
    Ok(Shown {
        comparison,
        bats,
        strokes,
        lead: loaded.lead(),
        junior: loaded.is_junior(),
        reaction_time_s: scenario.bowling.reaction_time_s,
    })
}

/// What the compared bats are worth, in the order in which they are compared.
#[derive(Clone, Debug)]
pub struct Worths {
    /// One a bat.
    pub given: Vec<Given>,
    /// Runs at which a late ball is met.
    pub runs: f64,
}

/// What the second bat is worth beyond the first.
#[derive(Clone, Copy, Debug)]
pub struct Gain {
    /// First and second bat, by their places among those compared.
    pub bats: [usize; 2],
    /// Expected ball speed of the second less that of the first, m/s.
    pub gain_m_s: f64,
    /// One standard deviation of it, m/s.
    pub sd_m_s: f64,
}

impl Gain {
    /// Whether it is beyond doubt.
    pub fn is_real(&self) -> bool {
        self.gain_m_s.abs() > BEYOND_DOUBT_SD.value * self.sd_m_s
    }
}

impl Worths {
    /// Of today's bats those with these numbers in the scenario.
    pub fn of(now: &TodayAdvice, bats: &[usize]) -> Self {
        let given = bats.iter().filter_map(|i| now.today.given.get(*i)).cloned().collect();
        Self { given, runs: now.setting.plan.runs }
    }

    /// Every pair that can be controlled, the second bat less the first, player by player.
    pub fn gains(&self) -> Vec<Gain> {
        let worth = |i: usize| self.given[i].worth.as_ref();
        let pair = |a: usize, b: usize| {
            let [gain_m_s, sd_m_s] = worth(a)?.to(worth(b)?);
            Some(Gain { bats: [a, b], gain_m_s, sd_m_s })
        };
        let count = self.given.len();
        (0..count).flat_map(|a| (a + 1..count).filter_map(move |b| pair(a, b))).collect()
    }

    /// Label of a bat.
    pub fn label(&self, bat: usize) -> &str {
        &self.given[bat].label
    }
}
