//! The innings as a picture.

use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::questions::innings::Played;
use backlift::units::Units;

use super::told::sentence;
use crate::beside::Beside;
use crate::figure::capital;
use crate::innings_picture::{self, Through};

/// Adds it to a folder.
pub fn add(
    folder: &mut Folder,
    played: &Played,
    beside: &Beside,
    units: Units,
) -> Result<(), Fault> {
    let words = format!("{}; the band: from none to twice what is drawn", sentence(played, units));
    let name = |i: &usize| (*i, played.strokes.get(*i).map_or_else(String::new, |it| capital(it)));
    let through = Through { bat: played.bat, label: &played.bat_label, points: &played.points };
    let sentence = beside.sentence(&words.replace('\n', " "));
    innings_picture::add(folder, &through.picture(played.shown.iter().map(name), sentence, units))
}
