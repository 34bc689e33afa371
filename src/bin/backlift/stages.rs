//! `backlift stages`: the log of the bats on the bench.

mod figures;
mod told;

use std::path::{Path, PathBuf};

use backlift::files::assets::sizes;
use backlift::files::batch::of_path;
use backlift::files::fault::Fault;
use backlift::files::save::{new_file, new_files};
use backlift::files::stages::{STARTER, moment, to_ron, to_table};
use backlift::questions::bench_log::bench;
use backlift::workshop::stages::Moment;

use crate::given::ShowArgs;
use crate::json;
use crate::outcome::{Outcome, Stop};

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
    #[arg(long, value_name = "TIME", value_parser = now)]
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

fn now(written: &str) -> Result<Moment, String> {
    moment(written).map_err(|(message, help)| format!("{message}; {help}"))
}

/// Reads the log and says where it stands.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    if let Some(path) = &args.new {
        new_file(path, STARTER.as_bytes())?;
        let _ = json::print(&format!("Wrote {}\n", path.display())); // the file is there
        return Ok(Outcome::Done);
    }
    let sizes = sizes()?;
    let path = args.log.as_deref().ok_or_else(|| {
        Fault::new("no log was named")
            .help("name one, or write one with `backlift stages --new FILE`")
    })?;
    let log = of_path(path, &sizes)?;
    let bench = bench(&log, &sizes, args.now)?;
    let mut text = match args.show.json {
        true => json::document("stages", figures::of(&bench))?,
        false => told::told(&bench, args.show.units()),
    };
    let table = args.csv.as_deref().map(|it| to_table(&log).map(|text| (it, text))).transpose()?;
    let ron = args.ron.as_deref().map(|it| to_ron(&log).map(|text| (it, text))).transpose()?;
    let files: Vec<(&Path, String)> = [table, ron].into_iter().flatten().collect();
    let contents: Vec<_> = files.iter().map(|(path, text)| (*path, text.as_bytes())).collect();
    new_files(&contents)?;
    if !args.show.json {
        text.extend(files.iter().map(|(path, _)| format!("Wrote {}\n", path.display())));
    }
    json::print(&text)?;
    Ok(Outcome::Done)
}
