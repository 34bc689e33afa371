//! Which measurements matter for a player: the pull of two bats swung with everything a little off.

use core::ops::ControlFlow;
use core::sync::atomic::{AtomicUsize, Ordering};

use super::loaded::Loaded;
use super::placed::{argument_fault, innings_stop};
use super::{Progress, Stop, advice};
use crate::bat::Bat;
use crate::bat::figures::WeighedBat;
use crate::files::stroke_paths::built_in_paths;
use crate::fit::fitting::what_decides;
use crate::sensitivity::advice::Weight;
use crate::sensitivity::choosing::{Choosing, ChoosingFault, choosing};
use crate::sensitivity::figure::Figure;
use crate::sensitivity::input::Input;
use crate::sensitivity::spread::{Known, Moved, Standing};
use crate::sensitivity::study::{self, Studied, Study, StudyFault, study};
use crate::sensitivity::terms::Terms;
use crate::stroke::Stroke;

/// What is asked.
#[derive(Clone, Copy, Debug)]
pub struct Asked {
    /// The bat studied, by its place.
    pub bat: usize,
    /// The bat set against it, if there is another.
    pub other: Option<usize>,
    /// Rows of draws.
    pub rows: usize,
    /// Whether one term of the model after another is moved too.
    pub terms: bool,
    /// Whether both bats are swung along many paths too.
    pub paths: bool,
}

/// A study with the names of its bats.
#[derive(Clone, Debug)]
pub struct Shown<'a> {
    /// Whose measurements they are.
    pub loaded: &'a Loaded,
    /// Who carries how much of whose doubt.
    pub study: Study,
    /// Label of the bat studied.
    pub bat: String,
    /// Label of the bat set against it.
    pub other: Option<String>,
    /// What each term of the model does to which of the two bats is the better; none where it was not asked.
    pub terms: Option<Terms>,
    /// What is gained by choosing among many paths, by stroke; empty where it was not asked.
    pub choosing: Vec<Choosing>,
}

impl Shown<'_> {
    /// The figures that are told.
    pub fn figures(&self) -> impl Iterator<Item = &Studied> {
        let untold = |it: &&Studied| self.loaded.is_junior() && it.figure == Figure::FastestBall;
        self.study.figures.iter().filter(move |it| !untold(it))
    }

    /// Places of the inputs of one standing, the most telling first.
    pub fn standing(&self, standing: Standing) -> Vec<usize> {
        let is = |it: &usize| self.input(*it).is_some_and(|it| it.standing == standing);
        self.study.by_weight().into_iter().filter(is).collect()
    }

    /// An input by its place.
    pub fn input(&self, place: usize) -> Option<&Moved> {
        self.study.inputs.get(place)
    }

    /// Names of the inputs of one standing that matter so much.
    pub fn names(&self, standing: Standing, weight: Weight) -> Vec<String> {
        let matters = |it: &usize| self.study.weight(*it) == weight;
        let places = self.standing(standing).into_iter().filter(matters);
        places.filter_map(|it| Some(self.input(it)?.words().to_owned())).collect()
    }

    /// Share of the doubt of the difference between the bats that an input carries; none where it is not studied.
    pub fn share_of_bats(&self, input: Option<Input>) -> Option<f64> {
        let place = self.study.inputs.iter().position(|it| Some(it.input) == input)?;
        let bats = self.study.figures.iter().find(|it| it.figure == Figure::LighterBat)?;
        Some(bats.divided.indices.get(place)?.total.value.clamp(0.0, 1.0))
    }
}

/// The bat named, or the one whose swing moment is farthest away; none where there is only one bat.
///
/// # Errors
/// If there is no such bat, or it is the one studied.
pub fn other(loaded: &Loaded, bat: usize, named: Option<&str>) -> Result<Option<usize>, Stop> {
    if let Some(name) = named {
        let other = loaded.bat(Some(name))?;
        if other == bat {
            let help = "name another, or leave --against out";
            return Err(argument_fault("--against", name, "this is the bat studied", help));
        }
        return Ok(Some(other));
    }
    let swing = |n: usize| loaded.bats.get(n).map_or(0.0, |it| it.swing_moment_kg_m2.value);
    let away = |n: &usize| (swing(*n) - swing(bat)).abs();
    let others = (0..loaded.bats.len()).filter(|n| *n != bat);
    Ok(others.max_by(|a, b| away(a).total_cmp(&away(b))))
}

/// Studies.
///
/// # Errors
/// If too many players drawn cannot bring off the pull, or the work is cancelled.
pub fn matters<'a>(
    loaded: &'a Loaded,
    asked: Asked,
    progress: &dyn Progress,
) -> Result<Shown<'a>, Stop> {
    let scenario = &loaded.scenario;
    let of = |n: usize| -> Result<&WeighedBat, Stop> {
        loaded.bats.get(n).ok_or_else(|| Stop::our_mistake("there is no such bat"))
    };
    let (bat, other) = (of(asked.bat)?, asked.other.map(of).transpose()?);
    let batter = loaded.batter(bat, 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let of_study = study::Asked {
        known: Known {
            reading: &scenario.player,
            player: &loaded.player,
            bat,
            other,
            delivery: scenario.bowling,
        },
        strokes: &loaded.strokes,
        pull: loaded.pull()?,
        plan: &scenario.innings,
        asked_time_s: &asked_time_s,
        rows: asked.rows,
    };
    let report = |share| -> ControlFlow<()> {
        progress.report("swinging with everything a little off", share)
    };
    let study = study(&of_study, &report).map_err(|it| match it {
        StudyFault::Innings(fault) => innings_stop(&loaded.places, fault),
        StudyFault::Stopped => Stop::Cancelled,
        StudyFault::TooManyFail { .. } => {
            Stop::no_answer(it, "study a lighter bat with --bat, or measure the player's grip")
        }
        StudyFault::Drawn(_) | StudyFault::Rows { .. } => Stop::our_mistake(it),
    })?;
    let both = asked.other.map(|other| [asked.bat, other]);
    let terms = both.filter(|_| asked.terms).map(|bats| {
        let told = |doing: &str, share: f64| progress.report(doing, share);
        what_decides(&loaded.order(), bats, &told).map_err(|fault| advice::stop(loaded, fault))
    });
    let choosing =
        other.filter(|_| asked.paths).map(|other| chosen(loaded, [&bat.bat, &other.bat], progress));
    let label = |it: &WeighedBat| it.reading.label.clone();
    Ok(Shown {
        loaded,
        study,
        bat: label(bat),
        other: other.map(label),
        terms: terms.transpose()?,
        choosing: choosing.transpose()?.unwrap_or_default(),
    })
}

/// Both bats along every path of each stroke that comes with paths.
fn chosen(
    loaded: &Loaded,
    bats: [&Bat; 2],
    progress: &dyn Progress,
) -> Result<Vec<Choosing>, Stop> {
    let mut out = Vec::new();
    for (n, stroke) in loaded.strokes.iter().enumerate() {
        let paths = built_in_paths(stroke)?;
        let paths: Vec<Stroke> = paths.all.into_iter().map(|it| it.stroke).collect();
        if paths.is_empty() {
            continue;
        }
        let done = AtomicUsize::new(0);
        let step = || {
            let share = done.fetch_add(1, Ordering::Relaxed) as f64 / (paths.len() + 1) as f64;
            let all = loaded.strokes.len() as f64;
            progress.report("swinging along many paths", (n as f64 + share) / all)
        };
        let it = choosing(&loaded.player, stroke, &paths, bats, &step);
        out.push(it.map_err(|fault| match fault {
            ChoosingFault::Cancelled => Stop::Cancelled,
            ChoosingFault::Swing(fault) => fault.into(),
        })?);
    }
    Ok(out)
}
