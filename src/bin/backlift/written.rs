//! Puts a command's files in their place, and says where they are.

use std::path::Path;

use backlift::drawing::pdf::pdf;
use backlift::drawing::png::png;
use backlift::files::fault::Fault;
use backlift::files::save::{Folder, new_file};
use backlift::units::Units;
use serde_json::Value;

use crate::beside::Beside;
use crate::given::ShowArgs;
use crate::json;
use crate::outcome::{Outcome, Stop};

/// Says what a command found and what stands beside it, as words or as JSON: then it is done.
pub fn say(
    command: &str,
    show: &ShowArgs,
    beside: &Beside,
    figures: impl FnOnce() -> Value,
    told: impl FnOnce(Units) -> String,
) -> Result<Outcome, Stop> {
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
) -> Result<Outcome, Stop> {
    let units = show.units();
    let mut text = match show.json {
        true => json::document(command, beside.figures(figures()))?,
        false => beside.told(&told(units)),
    };
    if let Some(mut folder) = folder {
        add(&mut folder, units).map_err(Into::into)?;
        text += &written(folder, show.json)?;
    }
    json::print(&text)?;
    Ok(Outcome::Done)
}

/// Pixels of a picture to a px of it.
const PIXELS: f64 = 2.0;

/// Adds a picture to a folder, as SVG and as PNG.
pub fn add_picture(folder: &mut Folder, name: &str, svg: &str) -> Result<(), Fault> {
    folder.add(&format!("{name}.svg"), svg.as_bytes())?;
    folder.add(&format!("{name}.png"), &png(svg, PIXELS).map_err(Fault::new)?)
}

/// Adds pages to a folder, all of them as PDF and each as SVG.
pub fn add_pages(
    folder: &mut Folder,
    name: &str,
    pages: &[String],
    title: &str,
) -> Result<(), Fault> {
    for (n, page) in pages.iter().enumerate() {
        folder.add(&format!("{name}-{}.svg", n + 1), page.as_bytes())?;
    }
    folder.add(&format!("{name}.pdf"), &pdf(pages, title).map_err(Fault::new)?)
}

/// Writes a new file and says so: then all is done.
pub fn write_new(path: &Path, text: &str) -> Result<Outcome, Stop> {
    new_file(path, text.as_bytes())?;
    // The file is there; a closed standard output changes nothing about that.
    let _ = json::print(&wrote(path));
    Ok(Outcome::Done)
}

/// Where a file is now.
pub fn wrote(path: &Path) -> String {
    format!("Wrote {}\n", path.display())
}

/// Commits a folder. A line a file, unless the output is for another program.
pub fn written(folder: Folder, json: bool) -> Result<String, Fault> {
    let files = folder.commit()?;
    Ok(if json { String::new() } else { files.iter().map(|it| wrote(it)).collect() })
}
