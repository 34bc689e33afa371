//! `backlift stroke`: makes the joint path of a stroke from its keys.

use std::path::{Path, PathBuf};

use backlift::files::document::{Kind, text_of_file};
use backlift::files::fault::Fault;
use backlift::files::save::{check_new_file, new_file};
use backlift::files::stroke::{built_in, read_keys, write};
use backlift::files::stroke_paths::{self, Paths};
use backlift::player::joints::JOINTS;
use backlift::questions::Progress as _;
use backlift::stroke::Stroke;
use backlift::swing::plan::paths::{FoundPath, paths};
use backlift::swing::plan::reference_adult::{reference_bat, reference_player};
use backlift::swing::plan::report::Report;
use backlift::swing::plan::{Effort, PlanFault, plan};

use crate::json;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::wrote;

const STROKE: Kind = Kind {
    what: "a stroke file",
    noun: "stroke",
    named: "a stroke file",
    like: "a stroke is a page of text; name the .ron file that holds it",
    none: "give a stroke file, or the name of one that comes with the program, like drive",
};

/// Make the joint path of a stroke from its keys
///
/// Plans how the trunk and arms of the reference player, a man of 25 and 1.80 m with a bat of 1.20 kg,
/// pass through the keys within their strength in the stroke's plan_time_s. Takes some seconds.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift stroke drive my-drive.ron")]
pub struct Args {
    /// Stroke file with keys, or drive, pull, hook; a joint path that is there is made anew
    file: PathBuf,

    /// The file to write; one that is there already is left as it is
    new: PathBuf,

    /// Plan so many fast paths, their keys moved within what a coach would still call this stroke, and write them into
    /// one file: takes many minutes
    #[arg(long, value_name = "N", value_parser = clap::value_parser!(u16).range(1..=64))]
    paths: Option<u16>,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    check_new_file(&args.new)?;
    let mut stroke = read(&args.file)?;
    let player = reference_player().map_err(Fault::new)?;
    let bat = reference_bat().map_err(Fault::new)?;
    let progress = Progress::start();
    let (text, words) = match args.paths {
        Some(most) => {
            let step = |n: usize, all: usize| {
                progress.report("planning one path after another", n as f64 / all as f64)
            };
            let all = paths(&stroke, &player, &bat, most.into(), &step).map_err(stop)?;
            let words = fastest_words(&all);
            (stroke_paths::write(&stroke, &Paths { all, ..Paths::default() }), words)
        }
        None => {
            let planned = plan(&Effort::default(), &stroke, &player, &bat, &|at| {
                progress.report("planning the joint path", at.done as f64 / at.of as f64)
            })
            .map_err(stop)?;
            stroke.joint_path = planned.path;
            stroke.bottom_hand_holds = true;
            (write(&stroke), words(&planned.report))
        }
    };
    drop(progress);
    new_file(&args.new, text.as_bytes())?;
    // The file is there; a closed standard output changes nothing about that.
    let _ = json::print(&(words + &wrote(&args.new)));
    Ok(Outcome::Done)
}

fn stop(fault: PlanFault) -> Stop {
    match fault {
        PlanFault::Stopped => Stop::Cancelled,
        fault => Stop::NoAnswer(Fault::new(fault)),
    }
}

fn fastest_words(found: &[FoundPath]) -> String {
    let speeds = || found.iter().map(|it| it.bat_speed_m_s);
    format!(
        "{} paths; the reference player's bat at {:.1} to {:.1} m/s on them\n",
        found.len(),
        speeds().fold(f64::INFINITY, f64::min),
        speeds().fold(0.0, f64::max),
    )
}

fn read(path: &Path) -> Result<Stroke, Fault> {
    let named = |what: String| Fault::new(format!("{}: {what}", path.display()));
    if !path.exists() {
        let ours = built_in().map_err(|it| named(it.to_string()))?;
        if let Some(stroke) = ours.into_iter().find(|it| path.as_os_str() == it.name.as_str()) {
            return Ok(stroke);
        }
    }
    let text = text_of_file(path, &STROKE)?;
    read_keys(text.text()).map_err(|it| named(it.to_string()))
}

fn words(r: &Report) -> String {
    format!(
        "\
At contact the hands are {:.0} mm and the bat {:.1}° off the key; on the way up to {:.0} mm and {:.0}°
Gap at the bottom hand up to {:.1} mm; joints out of range up to {:.1}° ({})
Most asked: {} with {:.0} % of what it can give, in {:.2} s to contact
",
        1e3 * r.contact_grip_m,
        r.contact_attitude_rad.to_degrees(),
        1e3 * r.grip_m,
        r.attitude_rad.to_degrees(),
        1e3 * r.gap_m,
        r.range_excess_rad.to_degrees(),
        JOINTS[r.range_joint].name,
        JOINTS[r.demand_joint].name,
        100.0 * r.demand_share,
        r.stroke_time_s,
    )
}
