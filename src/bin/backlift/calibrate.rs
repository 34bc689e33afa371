//! `backlift calibrate`: from readings in the nets to this player's own strength.

mod told;

use std::path::PathBuf;

use backlift::calibration::posterior::Spread;
use backlift::files::document::Document as _;
use backlift::files::fault::Fault;
use backlift::files::readings::{read, text_of, to_fill_in};
use backlift::files::save::{check_new_file, new_file};
use backlift::files::scenario::{over_unchanged, with_calibration};
use backlift::measurement::nets::{Asked, Read};
use backlift::questions::calibrated::{Found, calibrated};
use backlift::questions::loaded::Loaded;
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::json::{self, joined};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::{write_new, wrote};

/// Read a player's own strength off swings in the nets
///
/// Stroke times counted on a slow-motion film, or bat speeds by any device, fresh and tired. Says
/// how far the tables were off, how much surer the pull and the advice became, and which readings
/// it doubts. With --out or --keep the other commands use the new strength.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift calibrate --out calibrated.ron")]
pub struct Args {
    /// Table of readings (CSV), a swing a line; without one the demo's
    #[arg(value_name = "READINGS.csv")]
    readings: Option<PathBuf>,

    #[command(flatten)]
    given: ScenarioArgs,

    /// The bat that figures are told for, by its label or its number from 0; the first read if left out
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    /// Write the scenario with what was found to this new file
    #[arg(long, value_name = "FILE", conflicts_with = "keep")]
    out: Option<PathBuf>,

    /// Put what was found into the scenario file itself; all else in it stays as it is
    #[arg(long, requires = "scenario", conflicts_with = "set")]
    keep: bool,

    /// Write a table to fill in to this new file, for the bats of a scenario, and do nothing else
    #[arg(long, value_name = "FILE", conflicts_with_all = ["scenario", "out", "keep"])]
    new: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    if let Some(path) = &args.new {
        // The one file named beside it is the scenario.
        let given = ScenarioArgs { scenario: args.readings, set: args.given.set };
        return write_new(path, &to_fill_in(&given.load()?.scenario));
    }
    let loaded = args.given.load()?;
    if args.readings.is_none() && args.given.scenario.is_some() {
        let help = "name a table: backlift calibrate READINGS.csv SCENARIO.ron";
        return Err(Fault::new("there are no readings").help(help).into());
    }
    let labels: Vec<String> = loaded.scenario.bats.iter().map(|it| it.label.clone()).collect();
    let table = read(text_of(args.readings.as_deref())?, &labels, &loaded.stroke_names())?;
    loaded.pull()?;
    let bat = args.bat.as_deref().map(|it| loaded.bat(Some(it))).transpose()?;
    // A place that cannot be written is refused before the work begins.
    args.out.as_deref().map(check_new_file).transpose()?;
    let found = calibrated(&loaded, &table, bat, &Progress::start())?;
    let beside = Beside::scenario(&loaded);
    let text = match args.show.json {
        true => json::document("calibrate", beside.figures(figures(&found)))?,
        false => beside.told(&told::told(&found, args.show.units())),
    };
    let written = kept(&args, &loaded, &found)?;
    json::print(&(text + if args.show.json { "" } else { &written }))?;
    Ok(Outcome::Done)
}

/// Writes what was found, and says where; or says how to.
fn kept(args: &Args, loaded: &Loaded, found: &Found) -> Result<String, Stop> {
    let source = loaded.places.source().text();
    // With values put over it the text is written anew; without, it stays as it was, notes and all.
    let text = match args.given.set.is_empty() {
        true => source.to_owned(),
        false => args.given.read()?.fields.to_ron()?,
    };
    let text = with_calibration(&text, &found.kept)
        .ok_or_else(|| Stop::OurMistake("the scenario has no player".to_owned()))?;
    match (&args.out, &args.given.scenario) {
        (Some(new), _) => {
            new_file(new, text.as_bytes())?;
            Ok(wrote(new))
        }
        (None, Some(scenario)) if args.keep => {
            over_unchanged(scenario, source, &text)?;
            Ok(wrote(scenario))
        }
        _ => Ok("Nothing was written: keep it with --out FILE, or with --keep\n".to_owned()),
    }
}

fn spread(it: &Spread) -> Value {
    json!({ "mean": it.mean, "sd": it.sd, "low": it.low, "high": it.high })
}

fn both(before: Value, after: Value) -> Value {
    json!({ "by_tables": before, "with_readings": after })
}

fn figures(found: &Found) -> Value {
    let it = &found.calibrated;
    let strength = it.parts.iter().map(|part| {
        let band = |it: &Spread| {
            json!({
                "factor": libm::exp(it.mean),
                "log_sd": it.sd,
                "low": libm::exp(it.low),
                "high": libm::exp(it.high),
            })
        };
        json!({
            "part": part.part.words(),
            "by_tables": band(&part.before),
            "with_readings": band(&part.after),
        })
    });
    let figure = |value: [f64; 2], spreads: &[Spread; 2]| {
        let one = |value: f64, it: &Spread| joined([json!({ "value": value }), spread(it)]);
        both(one(value[0], &spreads[0]), one(value[1], &spreads[1]))
    };
    let [before, after] = found.pull_m_s;
    let lost = [before, after].map(|[fresh, late]| 1.0 - late / fresh);
    let in_time = found.labels.iter().zip(&found.in_time).map(|(label, [before, after])| {
        json!({ "bat": label, "by_tables": before, "with_readings": after })
    });
    let readings = found.readings.iter().zip(&it.judged).map(|((line, reading), judged)| {
        let (time_s, speed_m_s) = match reading.read {
            Read::Time { time_s, .. } => (Some(time_s), None),
            Read::Speed { speed_m_s } => (None, Some(speed_m_s)),
        };
        json!({
            "line": line,
            "bat": found.labels[reading.bat],
            "stroke": reading.stroke,
            "stroke_time_s": time_s,
            "bat_speed_m_s": speed_m_s,
            "runs": reading.runs,
            "asked": match reading.asked { Asked::Fastest => "fastest", Asked::OwnPace => "own pace" },
            "off_share": judged.off_share,
            "off_sd": judged.off_sd,
            "counted": judged.counted,
            "doubted": judged.is_doubted(),
        })
    });
    json!({
        "bat": found.labels[found.bat],
        "readings_fresh": it.counts[0],
        "readings_tired": it.counts[1],
        "scatter_share": it.scatter,
        "strength": strength.collect::<Value>(),
        "spread": it.calibration.ln_spread,
        "covariance": it.calibration.ln_covariance(),
        "lasting": both(spread(&it.lasting[0]), spread(&it.lasting[1])),
        "pull": {
            "fresh_m_s": figure([before[0], after[0]], &it.surer.fresh_pull_m_s),
            "at_end_m_s": figure([before[1], after[1]], &it.surer.late_pull_m_s),
            "lost_share": figure(lost, &it.surer.lost),
            "runs": found.runs,
        },
        "in_time": in_time.collect::<Value>(),
        "readings": readings.collect::<Value>(),
        "curve_error_share": found.curve_error,
        "limits": told::LIMITS,
    })
}
