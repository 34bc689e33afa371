//! `backlift validate`: every outside check, one table.

mod notation;
mod report;
mod told;

use std::path::PathBuf;

use backlift::files::fault::{Fault, nearest_name};
use backlift::files::save::Folder;
use backlift::questions::validated::{Answer, Validated, validated};
use backlift::validation::{Check, Group, Row, Verdict, checks, is_quick};
use serde_json::{Value, json};

use crate::json;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::{add_picture, written};

/// Validate: hold the model against every outside figure there is
///
/// Published measurements, other programs, closed forms: what they say, what this program says, the
/// difference, and whether that is within what the check asks.
#[derive(clap::Args)]
#[command(after_help = "\
Exit codes: 0 when every row of the group dynamics agrees, 1 when one disagrees. \
A disagreement elsewhere is explained and leaves it at 0.

Example:
  backlift validate --only \"free motion\" --out validation")]
pub struct Args {
    /// Only this check, or the checks of this group, by name; may be repeated
    #[arg(long, value_name = "NAME|GROUP")]
    only: Vec<String>,

    /// Leave out the slow checks
    #[arg(long)]
    quick: bool,

    /// Write a report (HTML) and its plots (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    /// Print every row as JSON, in SI units, and nothing else
    #[arg(long)]
    json: bool,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let chosen = chosen(&args)?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    let found = validated(&chosen, &progress)?;
    let mut text = match args.json {
        true => json::document("validate", figures(&found))?,
        false => told::told(&found),
    };
    if let Some(mut folder) = folder {
        let pictures = report::pictures(&found);
        for it in &pictures {
            add_picture(&mut folder, &it.file, &it.light)?;
        }
        let part = (chosen.len() < checks().len()).then_some((chosen.len(), checks().len()));
        folder.add("report.html", report::page(&found, &pictures, part).as_bytes())?;
        text += &written(folder, args.json)?;
    }
    drop(progress);
    json::print(&text)?;
    match found.disagreements(Some(Group::Dynamics)).next() {
        None => Ok(Outcome::Done),
        Some(_) => Ok(Outcome::NotAccepted),
    }
}

/// The rows for other programs.
fn figures(found: &Validated) -> Value {
    let line = |(answer, row): (&Answer, &Row)| {
        json!({
            "group": answer.group.words(),
            "check": answer.check,
            "what": row.what,
            "source": row.source,
            "unit": row.unit,
            "expected": row.expected,
            "sd": row.sd,
            "ours": row.ours,
            "difference": row.difference(),
            "verdict": match row.verdict {
                Verdict::Agrees => "agrees",
                Verdict::ByConstruction => "by_construction",
                Verdict::Disagrees => "disagrees",
                Verdict::NoData => "no_data",
            },
            // What it had to keep to, in words.
            "accepted": notation::accepted(row).map(|it| it.replace('\u{2009}', " ")),
            "note": row.note,
        })
    };
    json!({
        "agrees": found.count(None, Verdict::Agrees),
        "by_construction": found.count(None, Verdict::ByConstruction),
        "disagrees": found.count(None, Verdict::Disagrees),
        "no_data": found.count(None, Verdict::NoData),
        "rows": found.rows(None).map(line).collect::<Value>(),
    })
}

/// The checks asked for, in their order.
fn chosen(args: &Args) -> Result<Vec<Check>, Stop> {
    let all = checks();
    let named = |check: &Check, name: &str| {
        let name = name.trim().to_lowercase();
        check.name.to_lowercase() == name || check.group.words() == name
    };
    if let Some(unknown) = args.only.iter().find(|it| !all.iter().any(|check| named(check, it))) {
        let mut names: Vec<&str> = all.iter().map(|it| it.group.words()).collect();
        names.dedup();
        names.extend(all.iter().map(|it| it.name));
        let fault = Fault::new(format!("there is no check or group called \"{unknown}\""));
        return Err(fault.help(nearest_name(unknown, &names)).into());
    }
    let wanted = |check: &Check| {
        (args.only.is_empty() || args.only.iter().any(|it| named(check, it)))
            && (!args.quick || is_quick(check))
    };
    let chosen: Vec<Check> = all.into_iter().filter(wanted).collect();
    match chosen.is_empty() {
        true => Err(Fault::new("nothing is left to check")
            .help("these checks are slow: leave --quick out")
            .into()),
        false => Ok(chosen),
    }
}
