//! A described bat as files: templates to print, the solid, and the figures.

pub mod figures;

use backlift::bat::mesh::shells;
use backlift::bat::shape::BatShape;
use backlift::drawing::pdf::pdf;
use backlift::drawing::{profile, templates};
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::files::solid;
use backlift::questions::shape::Worked;
use backlift::workshop::cautions::SHAPE;

use crate::beside::Beside;
use crate::json;
use crate::outcome::Stop;

/// Adds all of them to a folder.
pub fn add(folder: &mut Folder, worked: &Worked) -> Result<(), Stop> {
    let (bat, beside) = (worked.chosen(), beside(worked));
    let title = beside.sentence(&worked.title());
    let pages = templates::pages(&bat.shape.blade, &title);
    for (n, page) in pages.iter().enumerate() {
        folder.add(&format!("sections-{}.svg", n + 1), page.as_bytes())?;
    }
    let all: Vec<&str> = pages.iter().map(String::as_str).collect();
    folder.add("sections.pdf", &pdf(&all, "Sections at true size").map_err(refused)?)?;
    add_profile(folder, None, &bat.shape, &title)?;
    if let Some(text) = worked.written()? {
        folder.add("bat.ron", text.as_bytes())?;
    }
    let shells = shells(&bat.shape);
    folder.add("bat.stl", &solid::stl(&shells))?;
    folder.add("bat.glb", &solid::glb(&shells).map_err(refused)?)?;
    let figures = json::document("shape", beside.figures(figures::of(worked)))?;
    Ok(folder.add("shape.json", figures.as_bytes())?)
}

/// Adds the blade from the side and the strips to cut out; with `before`, what comes off.
pub fn add_profile(
    folder: &mut Folder,
    before: Option<&BatShape>,
    after: &BatShape,
    title: &str,
) -> Result<(), Fault> {
    let pages = profile::pages(before, after, title);
    for (n, page) in pages.iter().enumerate() {
        folder.add(&format!("profile-{}.svg", n + 1), page.as_bytes())?;
    }
    let all: Vec<&str> = pages.iter().map(String::as_str).collect();
    folder.add("profile.pdf", &pdf(&all, "Profile at true size").map_err(refused)?)
}

/// The cautions of the bench and of the card's player; what is invented.
pub fn beside(worked: &Worked) -> Beside {
    let card = worked.to.as_ref().map(|(card, _)| Beside::card(card)).unwrap_or_default();
    card.after(SHAPE).described(worked.loaded.invented)
}

/// Writes the files of a described bat into a folder; returns how many.
#[cfg(feature = "studio")]
pub fn write(
    folder: &std::path::Path,
    loaded: backlift::files::shape::LoadedShape,
    bat: backlift::bat::shaped::ShapedBat,
) -> Result<usize, Stop> {
    let mut into = Folder::open(folder)?;
    add(&mut into, &Worked { loaded, bat, middles: Vec::new(), to: None, own: true })?;
    Ok(into.commit()?.len())
}

/// A picture or a mesh that could not be made.
fn refused(error: impl std::fmt::Display) -> Fault {
    Fault::new(error.to_string())
}
