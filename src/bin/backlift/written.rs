//! Puts a command's files in their place, and says where they are.

use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::units::Units;
use serde::Serialize;

use crate::given::ShowArgs;
use crate::json;
use crate::outcome::{Outcome, Stop};

/// Says what a command found, as words or as JSON, and writes its files if a folder was named.
pub fn said<F: Serialize, E: Into<Stop>>(
    command: &str,
    show: &ShowArgs,
    folder: Option<Folder>,
    figures: impl FnOnce() -> Result<F, Stop>,
    told: impl FnOnce(Units) -> String,
    add: impl FnOnce(&mut Folder, Units) -> Result<(), E>,
) -> Result<Outcome, Stop> {
    let units = show.units();
    let mut text = match show.json {
        true => json::document(command, &figures()?)?,
        false => told(units),
    };
    if let Some(mut folder) = folder {
        add(&mut folder, units).map_err(Into::into)?;
        text += &written(folder, show.json)?;
    }
    json::print(&text)?;
    Ok(Outcome::Done)
}

/// Commits a folder. A line a file, unless the output is for another program.
pub fn written(folder: Folder, json: bool) -> Result<String, Fault> {
    let files = folder.commit()?;
    let said = files.iter().map(|path| format!("Wrote {}\n", path.display()));
    Ok(if json { String::new() } else { said.collect() })
}
