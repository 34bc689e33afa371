//! `backlift keys`: what the keys of each command's JSON mean.

use clap::builder::PossibleValuesParser;
use include_dir::{Dir, include_dir};

use crate::COMMANDS;
use crate::json;
use crate::outcome::{Outcome, Stop};
use crate::paragraph::{paragraph, set_in};

/// A file a command, a key a line: the key, a colon, what it is.
static KEYS: Dir<'_> = include_dir!("$CARGO_MANIFEST_DIR/assets/keys");

/// The keys of a command; none if it has no JSON.
fn keys(command: &str) -> Option<&'static str> {
    KEYS.get_file(format!("{command}.txt"))?.contents_utf8()
}

/// Commands with keys, in the order of the help.
fn commands() -> impl Iterator<Item = &'static str> {
    COMMANDS.iter().copied().filter(|it| keys(it).is_some())
}

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
    #[arg(value_parser = PossibleValuesParser::new(commands()))]
    command: Option<String>,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let asked = args.command.and_then(|it| keys(&it).map(|keys| listed(&it, keys)));
    json::print(&asked.unwrap_or_else(common))?;
    Ok(Outcome::Done)
}

fn common() -> String {
    let common = COMMON.split('\n').map(paragraph).collect::<Vec<_>>().join("\n");
    let commands = commands().collect::<Vec<_>>().join(", ");
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
