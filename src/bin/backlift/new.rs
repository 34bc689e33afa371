//! `backlift new`: writes a scenario to start from.

use std::path::PathBuf;

use backlift::files::document::Document as _;
use backlift::files::scenario::STARTER;

use crate::given::ScenarioArgs;
use crate::outcome::{Outcome, Stop};
use crate::written::write_new;

/// Write a scenario file to start from
///
/// Without a scenario the new file has a note at every field. With one, or with --set, it is a copy
/// with those values, checked on the way.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift new my-player.ron --set player.age=14 --set \"bats.0.mass=2 lb 4 oz\"")]
pub struct Args {
    /// The file to write; one that is there already is left as it is
    file: PathBuf,

    #[command(flatten)]
    given: ScenarioArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let text = match (&args.given.scenario, args.given.set.as_slice()) {
        (None, []) => STARTER.to_owned(),
        _ => args.given.read()?.fields.to_ron()?,
    };
    write_new(&args.file, &text)
}
