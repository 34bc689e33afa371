//! `backlift innings`: the same bat through an innings, ball by ball.

mod told;

use std::path::PathBuf;

use backlift::comparison::figure::StrokeFigure::{
    BatSpeed, FastestBall, GripShare, StrokeTime, TimeInHand, WristShare,
};
use backlift::files::save::Folder;
use backlift::innings::played::StrokeNow;
use backlift::questions::innings::{Lead, Played, play};
use serde_json::{Map, Value, json};
pub use told::LIMITS;

use crate::beside::Beside;
use crate::figure::capital;
use crate::given::{BatArg, ScenarioArgs, ShowArgs, share};
use crate::innings_picture::Through;
use crate::json::{joined, joints, of_stroke};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::said;

/// Play an innings with a bat: what each stroke is still worth at fifty, and at the end
///
/// Ball by ball, with rests, backing up and the scenario's mix of strokes.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift innings --bat \"Hand-me-down\" --out innings")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    #[command(flatten)]
    bat: BatArg,

    /// Show only this stroke: drive, pull or hook
    #[arg(long, value_name = "NAME")]
    stroke: Option<String>,

    /// Every strength times this share, like 0.8 or "80 %", for study
    #[arg(long, value_name = "SHARE", default_value = "1", value_parser = share)]
    capacity: f64,

    /// Write the chart of the innings (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bat = args.bat.of(&loaded)?;
    let shown = args.stroke.as_deref().map(|it| loaded.stroke(it)).transpose()?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let played = play(&loaded, bat, shown, args.capacity, &Progress::start())?;
    let beside = Beside::scenario(&loaded);
    said(
        "innings",
        &args.show,
        folder,
        &beside,
        || figures(&played),
        |units| told::told(&played, units),
        |folder, units| {
            let words = told::sentence(&played, units).replace('\n', " ");
            let band = beside.sentence(&(words + "; the band: from none to twice what is drawn"));
            let name = |i: &usize| Some((*i, capital(&loaded.strokes.get(*i)?.name)));
            let strokes = played.shown.iter().filter_map(name);
            Through { bat: played.bat, label: &played.bat_label, points: &played.points }
                .add(folder, strokes, band, units)
        },
    )
}

fn figures(played: &Played<'_>) -> Value {
    let points = played.points.iter().map(|it| {
        json!({
            "runs": it.left.runs,
            "balls": it.left.balls_faced,
            "time_s": it.left.time_s,
            "strokes": by_name(played, &it.with_slow),
            "strokes_without_slow": by_name(played, &it.without_slow),
            "capacities": joints(&played.strength.times(&it.left.with_slow)),
            "capacities_without_slow": joints(&played.strength.times(&it.left.without_slow)),
        })
    });
    json!({
        "bat": played.bat_label,
        "capacity_share": played.capacity,
        "points": points.collect::<Value>(),
        "lead_stroke": told::lead(played),
        "pull_at_fifty": pull(&played.at_fifty),
        "pull_at_end": pull(&played.at_end),
        "limits": told::limits(played),
    })
}

/// The strokes shown, by name.
fn by_name(played: &Played<'_>, strokes: &[StrokeNow]) -> Map<String, Value> {
    let row = |i: &usize| {
        let it = strokes.get(*i)?;
        let figures = joined([
            of_stroke(it, &[BatSpeed, StrokeTime]),
            json!({ "asked_time_s": played.asked_time_s.get(*i)? }),
            of_stroke(it, &[WristShare, GripShare, TimeInHand, FastestBall]),
        ]);
        Some((played.loaded.strokes.get(*i)?.name.clone(), figures))
    };
    played.shown.iter().filter_map(row).collect()
}

/// The leading stroke at one score, with the slow fatigue state; what else may be believed of it beside that.
fn pull(it: &Lead) -> Value {
    let now = |now: &StrokeNow| {
        joined([
            json!({ "bat_speed_drop_share": it.drop_share(now) }),
            of_stroke(now, &[BatSpeed, WristShare, TimeInHand, FastestBall]),
        ])
    };
    let beside = json!({
        "without_slow": now(&it.without_slow),
        "with_slow_low": now(&it.with_slow_low),
        "with_slow_high": now(&it.with_slow_high),
    });
    joined([json!({ "runs": it.runs }), now(&it.with_slow), beside])
}
