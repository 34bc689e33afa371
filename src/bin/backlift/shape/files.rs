//! The shape as files: templates to print, the solid, and the figures.

use backlift::bat::mesh::shells;
use backlift::drawing::pdf::pdf;
use backlift::drawing::templates;
use backlift::files::save::Folder;
use backlift::files::solid;
use backlift::questions::shape::Worked;

use super::{beside, figures, refused};
use crate::json;
use crate::outcome::Stop;

/// Adds all of them to a folder.
pub fn add(folder: &mut Folder, worked: &Worked) -> Result<(), Stop> {
    let (bat, beside) = (worked.chosen(), beside(worked));
    let pages = templates::pages(&bat.shape.blade, &beside.sentence(&worked.loaded.title));
    for (n, page) in pages.iter().enumerate() {
        folder.add(&format!("sections-{}.svg", n + 1), page.as_bytes())?;
    }
    let all: Vec<&str> = pages.iter().map(String::as_str).collect();
    folder.add("sections.pdf", &pdf(&all, "Sections at true size").map_err(refused)?)?;
    let shells = shells(&bat.shape);
    folder.add("bat.stl", &solid::stl(&shells))?;
    folder.add("bat.glb", &solid::glb(&shells).map_err(refused)?)?;
    let figures = json::document("shape", beside.figures(figures::of(worked)))?;
    Ok(folder.add("shape.json", figures.as_bytes())?)
}
