//! `backlift matters`: which measurements matter for this player.

mod figures;
mod picture;
mod shown;
mod told;

use std::ops::ControlFlow;
use std::path::PathBuf;
use std::sync::atomic::{AtomicUsize, Ordering};

use backlift::bat::figures::WeighedBat;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::files::stroke_paths::built_in_paths;
use backlift::fit::fitting::what_decides;
use backlift::innings::played::delivery;
use backlift::sensitivity::choosing::{Choosing, ChoosingFault, choosing};
use backlift::sensitivity::spread::Known;
use backlift::sensitivity::study::{Asked, StudyFault, study};
use backlift::stroke::Stroke;

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::loaded::{Loaded, load};
use crate::outcome::{Outcome, Stop};
use crate::placed::{argument_fault, innings_stop};
use crate::progress::Progress;
use crate::questions::advice;
use crate::written::said;
use shown::Shown;

/// Find out which measurements matter for this player, and which need no more care
///
/// Every input is moved as far as its measurement or estimate may be off, all of them together, and the
/// pull is swung anew each time, fresh and at the end of the innings. The spread of each figure is then
/// divided among the inputs.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift matters --samples 4 --out matters")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// Bat to study, by its label or its number from 0; the first if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    /// Bat to set against it; if left out, the one that picks up most differently
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    against: Option<String>,

    /// Rows of draws, best a power of two: more is surer, and takes longer
    #[arg(long, value_name = "N", default_value_t = 32, value_parser = rows)]
    samples: usize,

    /// Move one term of the model after another too, and say what each does to which of the two bats is the better
    #[arg(long)]
    terms: bool,

    /// Swing both bats along many paths of each stroke too, and say what the player and what a bat gains by choosing
    #[arg(long)]
    paths: bool,

    /// Write a chart (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Studies.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = load(&args.given)?;
    let bat = loaded.bat(args.bat.as_deref())?;
    let other = other(&loaded, bat, args.against.as_deref())?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    let mut shown = studied(&loaded, bat, other, args.samples, &progress)?;
    if let (true, Some(other)) = (args.terms, other) {
        let told = |doing: &str, share: f64| progress.report(doing, share);
        let terms = what_decides(&loaded.order(), [bat, other], &told);
        shown.terms = Some(terms.map_err(|fault| advice::stop(&loaded, fault))?);
    }
    if let (true, Some(other)) = (args.paths, other) {
        shown.choosing = chosen(&loaded, [bat, other], &progress)?;
    }
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "matters",
        &args.show,
        folder,
        || Ok(beside.figures(figures::of(&shown))),
        |units| beside.told(&told::told(&shown, units)),
        |folder, units| picture::add(folder, &shown, &beside, units),
    )
}

/// Both bats along every path of each stroke that comes with paths.
fn chosen(loaded: &Loaded, bats: [usize; 2], progress: &Progress) -> Result<Vec<Choosing>, Stop> {
    let player = &loaded.player;
    let bats = bats.map(|n| loaded.bats.get(n).map(|it| &it.bat));
    let [Some(first), Some(second)] = bats else {
        return Err(Stop::OurMistake("there is no such bat".into()));
    };
    let mut out = Vec::new();
    for (n, stroke) in loaded.strokes.iter().enumerate() {
        let paths = built_in_paths(stroke).map_err(|it| Stop::OurMistake(it.to_string()))?;
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
        let it = choosing(player, stroke, &paths, [first, second], &step);
        out.push(it.map_err(|fault| match fault {
            ChoosingFault::Cancelled => Stop::Cancelled,
            ChoosingFault::Swing(fault) => fault.into(),
        })?);
    }
    Ok(out)
}

/// Reads the number of rows.
fn rows(written: &str) -> Result<usize, String> {
    let rows = written.trim().parse().ok().filter(|it| (2..=4096).contains(it));
    rows.ok_or_else(|| "write a whole number from 2 to 4096".to_owned())
}

/// The bat named, or the one whose swing moment is farthest away; none where there is only one bat.
fn other(loaded: &Loaded, bat: usize, named: Option<&str>) -> Result<Option<usize>, Stop> {
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

fn studied(
    loaded: &Loaded,
    bat: usize,
    other: Option<usize>,
    rows: usize,
    progress: &Progress,
) -> Result<Shown, Stop> {
    let scenario = &loaded.scenario;
    let of = |n: usize| -> Result<&WeighedBat, Stop> {
        loaded.bats.get(n).ok_or_else(|| Stop::OurMistake("there is no such bat".into()))
    };
    let (bat, other) = (of(bat)?, other.map(of).transpose()?);
    let batter = loaded.batter(bat, 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let asked = Asked {
        known: Known {
            reading: &scenario.player,
            player: &loaded.player,
            bat,
            other,
            handle_diameter_m: loaded.player.comfortable_handle_m(),
            reaction_time_s: scenario.bowling.reaction_time_s,
        },
        strokes: &loaded.strokes,
        pull: loaded.pull()?,
        plan: &scenario.innings,
        delivery: delivery(&scenario.bowling),
        asked_time_s: &asked_time_s,
        rows,
    };
    let report = |share| -> ControlFlow<()> {
        progress.report("swinging with everything a little off", share)
    };
    let study = study(&asked, &report).map_err(|it| match it {
        StudyFault::Innings(fault) => innings_stop(&loaded.places, fault),
        StudyFault::Stopped => Stop::Cancelled,
        StudyFault::TooManyFail { .. } => Stop::NoAnswer(
            Fault::new(it.to_string())
                .help("study a lighter bat with --bat, or measure the player's grip"),
        ),
        StudyFault::Drawn(_) | StudyFault::Rows { .. } => Stop::OurMistake(it.to_string()),
    })?;
    let label = |it: &WeighedBat| it.reading.label.clone();
    Ok(Shown {
        study,
        bat: label(bat),
        other: other.map(label),
        runs: scenario.innings.runs,
        junior: loaded.is_junior(),
        terms: None,
        choosing: Vec::new(),
    })
}
