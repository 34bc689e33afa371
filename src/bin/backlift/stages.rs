//! `backlift stages`: the log of the bats on the bench.

mod told;

use std::path::{Path, PathBuf};

use backlift::files::assets::sizes;
use backlift::files::batch::of_path;
use backlift::files::fault::Fault;
use backlift::files::save::new_files;
use backlift::files::stages::{STARTER, moment, to_ron, to_table};
use backlift::questions::bench_log::{Bench, Standing, bench};
use backlift::workshop::cautions::WORKSHOP;
use backlift::workshop::plane::Place;
use backlift::workshop::stages::Moment;
use serde_json::{Value, json};

use crate::bat_figure::{BALANCE, DEAD_WEIGHT, PICKUP_WEIGHT, SWING_MOMENT};
use crate::given::{ShowArgs, in_log};
use crate::json::{self, joined};
use crate::outcome::{Outcome, Stop};
use crate::written::{write_new, wrote};

/// The log of the bats on the bench: where each stands, what comes next, what it will come to
///
/// From cleft to grip, each stage weighed and timed. Says what has to wait, and what each bat will weigh and
/// how it will pick up, the surer the further it has come.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift stages --new bench-log.ron")]
pub struct Args {
    /// The folder in which every bat has its own file, one such file, or a log of several bats, as RON or as a table
    /// (CSV)
    #[arg(value_name = "LOG", required_unless_present = "new")]
    log: Option<PathBuf>,

    /// Write an invented log to start from; a file that is there already is left as it is
    #[arg(long, value_name = "FILE", conflicts_with_all = ["log", "csv", "ron", "now"])]
    new: Option<PathBuf>,

    /// The time, like "2026-11-26 14:00"; that of the last weighing if left out
    #[arg(long, value_name = "TIME", value_parser = in_log(moment))]
    now: Option<Moment>,

    /// Also write the same log as a table; a file that is there already is left as it is
    #[arg(long, value_name = "FILE")]
    csv: Option<PathBuf>,

    /// Also write the same log as RON; a file that is there already is left as it is
    #[arg(long, value_name = "FILE")]
    ron: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    if let Some(path) = &args.new {
        return write_new(path, STARTER);
    }
    let sizes = sizes()?;
    let path = args.log.as_deref().ok_or_else(|| {
        Fault::new("no log was named")
            .help("name one, or write one with `backlift stages --new FILE`")
    })?;
    let log = of_path(path, &sizes)?;
    let bench = bench(&log, &sizes, args.now)?;
    let mut text = match args.show.json {
        true => json::document("stages", figures(&bench))?,
        false => told::told(&bench, args.show.units()),
    };
    let table = args.csv.as_deref().map(|it| to_table(&log).map(|text| (it, text))).transpose()?;
    let ron = args.ron.as_deref().map(|it| to_ron(&log).map(|text| (it, text))).transpose()?;
    let files: Vec<(&Path, String)> = [table, ron].into_iter().flatten().collect();
    let contents: Vec<_> = files.iter().map(|(path, text)| (*path, text.as_bytes())).collect();
    new_files(&contents)?;
    if !args.show.json {
        text.extend(files.iter().map(|(path, _)| wrote(path)));
    }
    json::print(&text)?;
    Ok(Outcome::Done)
}

fn figures(bench: &Bench<'_>) -> Value {
    json!({
        "invented": bench.invented,
        "now": bench.now.to_string(),
        "bats": bench.bats.iter().map(|it| row(bench, it)).collect::<Value>(),
        "cautions": WORKSHOP,
    })
}

fn row(bench: &Bench<'_>, it: &Standing<'_>) -> Value {
    let stages = it.log.entries.iter().map(|entry| {
        json!({
            "stage": entry.stage.name(),
            "at": entry.at.to_string(),
            "mass_kg": entry.mass_kg,
            "balance_m": entry.balance_m,
            "ten_swings_s": entry.pendulum.filter(|it| it.swings == 10).map(|it| it.time_s),
            "swings": entry.pendulum.map(|it| it.swings),
            "swings_s": entry.pendulum.map(|it| it.time_s),
            "planed": entry.planed.map(Place::words),
            "handle_m": entry.handle_m,
            "left_m": entry.left_m,
            "grains": entry.grains,
            "note": entry.note,
            "meter": entry.meter,
            "air_celsius": entry.air.map(|it| it.celsius()),
            "air_relative_humidity": entry.air.map(|it| it.relative_humidity()),
        })
    });
    let now = json!({
        "bat": it.log.label,
        "size": it.log.size,
        "stage": it.last.stage.name(),
        "at": it.last.at.to_string(),
        "mass_now_kg": it.last.mass_kg,
        "next": it.next.map(|it| it.name()),
        // Seconds from now until the next step may be taken; 0 if it may be.
        "wait_s": it.wait.map_or(0, |wait| 60 * wait.until.minutes_since(bench.now)),
        "next_not_before": it.wait.map(|it| it.until.to_string()),
        "waits_for": it.wait.map(|it| it.why),
        "not_played_before": it.playable.map(|it| it.to_string()),
    });
    let still = json!({
        "ten_swings_s": it.ten_swings_s,
        "plane_first_kg": it.plane_first_kg.map(|it| it.value),
        "doubts": it.doubts,
        "to_take_off_kg": it.forecast.to_take_off_kg.map(|it| it.value),
        "to_take_off_sd_kg": it.forecast.to_take_off_kg.map(|it| it.sd),
        "target_mass_kg": it.log.target.mass_kg,
        "target_balance_m": it.log.target.balance_m,
        "target_ten_swings_s": it.log.target.ten_swings_s,
        "stages": stages.collect::<Value>(),
    });
    joined([
        now,
        DEAD_WEIGHT.json(it.forecast.mass_kg),
        BALANCE.json(it.forecast.balance_m),
        SWING_MOMENT.json(it.forecast.swing_moment_kg_m2),
        PICKUP_WEIGHT.json(it.pickup_weight_kg),
        still,
    ])
}
