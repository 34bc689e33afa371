//! `backlift keys`: what the keys of each command's JSON mean.

use clap::builder::PossibleValuesParser;

use crate::json;
use crate::outcome::{Outcome, Stop};
use crate::paragraph::{paragraph, set_in};

/// By command, a key a line: the key, a colon, what it is.
const KEYS: [(&str, &str); 16] = [
    ("weigh", include_str!("../../../assets/keys/weigh.txt")),
    ("swing", include_str!("../../../assets/keys/swing.txt")),
    ("hit", include_str!("../../../assets/keys/hit.txt")),
    ("innings", include_str!("../../../assets/keys/innings.txt")),
    ("compare", include_str!("../../../assets/keys/compare.txt")),
    ("fit", include_str!("../../../assets/keys/fit.txt")),
    ("trial", include_str!("../../../assets/keys/trial.txt")),
    ("check", include_str!("../../../assets/keys/check.txt")),
    ("season", include_str!("../../../assets/keys/season.txt")),
    ("stages", include_str!("../../../assets/keys/stages.txt")),
    ("calibrate", include_str!("../../../assets/keys/calibrate.txt")),
    ("matters", include_str!("../../../assets/keys/matters.txt")),
    ("shape", include_str!("../../../assets/keys/shape.txt")),
    ("plane", include_str!("../../../assets/keys/plane.txt")),
    ("pickup", include_str!("../../../assets/keys/pickup.txt")),
    ("validate", include_str!("../../../assets/keys/validate.txt")),
];

/// What every command's keys have in common, and how they are written here.
const COMMON: &str = "\
SI units, named at the end of a key: _kg, _m, _s, _m_s, _n, _n_m, _kg_m2; degrees where it says _deg. \
_share is a part of one, _sd_ one standard deviation. A figure that there is none of is null. \
Keys of a schema with the same number stay; more may be added.

[] stands for each of a list, {a,b} for a or b, STROKE for the name of a stroke.
";

/// Say what the keys of a command's JSON mean
///
/// Without a command the commands are listed, and what all their keys have in common.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift keys weigh")]
pub struct Args {
    /// The command whose keys are asked
    #[arg(value_parser = PossibleValuesParser::new(KEYS.map(|(command, _)| command)))]
    command: Option<String>,
}

/// Prints the keys of a command, or what is common to all.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let asked = KEYS.iter().find(|(command, _)| Some(*command) == args.command.as_deref());
    json::print(&asked.map_or_else(common, |(command, keys)| listed(command, keys)))?;
    Ok(Outcome::Done)
}

fn common() -> String {
    let common = COMMON.split('\n').map(paragraph).collect::<Vec<_>>().join("\n");
    let commands = KEYS.map(|(command, _)| command).join(", ");
    format!("{common}\n{}\n", paragraph(&format!("Commands with keys: {commands}")))
}

/// Each key on a line of its own, and under it what it is.
fn listed(command: &str, keys: &str) -> String {
    let schema = format!("schema: the first key, \"{}\"", json::schema(command));
    std::iter::once(schema.as_str())
        .chain(keys.lines())
        .filter_map(|line| line.split_once(": "))
        .map(|(key, meaning)| format!("{key}\n{}\n", set_in(meaning)))
        .collect()
}
