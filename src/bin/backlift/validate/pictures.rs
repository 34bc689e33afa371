//! Ours against theirs as pictures.

use backlift::drawing::against::svg;
use backlift::drawing::palette::{DARK, LIGHT};
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::questions::validated::Validated;
use backlift::validation::Group;

use crate::written::add_picture;

/// Size of a picture, px.
const PICTURE: [f64; 2] = [560.0, 380.0];

/// One curve.
pub struct Shown {
    /// What it is about.
    pub group: Group,
    /// What is plotted, for those who cannot see it.
    pub title: String,
    /// Name of its files, without the ending.
    pub file: String,
    /// By day.
    pub light: String,
    /// By night.
    pub dark: String,
}

/// Every curve, drawn.
pub fn of(found: &Validated) -> Vec<Shown> {
    let [width, height] = PICTURE;
    let drawn = |(n, (group, curve)): (usize, (Group, &_))| {
        let curve: &backlift::validation::Curve = curve;
        Shown {
            group,
            title: curve.title.clone(),
            file: format!("{:02}-{}", n + 1, file_name(&curve.title)),
            light: svg(curve, &LIGHT, width, height),
            dark: svg(curve, &DARK, width, height),
        }
    };
    found.curves().enumerate().map(drawn).collect()
}

/// Adds them to a folder.
pub fn add(folder: &mut Folder, pictures: &[Shown]) -> Result<(), Fault> {
    for it in pictures {
        add_picture(folder, &it.file, &it.light)?;
    }
    Ok(())
}

/// A title as part of a file's name: small letters, figures and hyphens, its first words.
fn file_name(title: &str) -> String {
    const WORDS: usize = 6;
    let plain: String = title
        .to_lowercase()
        .chars()
        .map(|c| if c.is_ascii_alphanumeric() { c } else { ' ' })
        .collect();
    plain.split_whitespace().take(WORDS).collect::<Vec<_>>().join("-")
}
