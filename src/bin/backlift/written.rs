//! Puts a command's files in their place, and says where they are.

use backlift::drawing::png::png;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::units::Units;
use serde_json::Value;

use crate::beside::Beside;
use crate::given::ShowArgs;
use crate::json;
use crate::outcome::Stop;

/// Says what a command found and what stands beside it, as words or as JSON.
pub fn say(
    command: &str,
    show: &ShowArgs,
    beside: &Beside,
    figures: impl FnOnce() -> Value,
    told: impl FnOnce(Units) -> String,
) -> Result<(), Stop> {
    said(command, show, None, beside, figures, told, |_, _| Ok::<(), Stop>(()))
}

/// The same, and writes the command's files if a folder was named.
pub fn said<E: Into<Stop>>(
    command: &str,
    show: &ShowArgs,
    folder: Option<Folder>,
    beside: &Beside,
    figures: impl FnOnce() -> Value,
    told: impl FnOnce(Units) -> String,
    add: impl FnOnce(&mut Folder, Units) -> Result<(), E>,
) -> Result<(), Stop> {
    let units = show.units();
    let mut text = match show.json {
        true => json::document(command, beside.figures(figures()))?,
        false => beside.told(&told(units)),
    };
    if let Some(mut folder) = folder {
        add(&mut folder, units).map_err(Into::into)?;
        text += &written(folder, show.json)?;
    }
    json::print(&text)
}

/// Pixels of a picture to a px of it.
const PIXELS: f64 = 2.0;

/// Adds a picture to a folder, as SVG and as PNG.
pub fn add_picture(folder: &mut Folder, name: &str, svg: &str) -> Result<(), Fault> {
    folder.add(&format!("{name}.svg"), svg.as_bytes())?;
    let pixels = png(svg, PIXELS).map_err(|it| Fault::new(it.to_string()))?;
    folder.add(&format!("{name}.png"), &pixels)
}

/// Commits a folder. A line a file, unless the output is for another program.
pub fn written(folder: Folder, json: bool) -> Result<String, Fault> {
    let files = folder.commit()?;
    let said = files.iter().map(|path| format!("Wrote {}\n", path.display()));
    Ok(if json { String::new() } else { said.collect() })
}
