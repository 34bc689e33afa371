//! Which strokes are swung: those that come with the program, by name, and the user's own, by file.

use std::path::Path;

use super::super::super::document::text_of_file;
use super::super::super::document::values::{Values, names};
use super::super::super::fault::nearest_or_all;
use super::super::super::stroke::read;
use super::super::{STROKE, Text};
use crate::measurement::plan::InningsPlan;
use crate::stroke::Stroke;

const PATH: &str = "strokes";

/// "drive, pull, my-sweep.ron": their names, in the order written; those of the usual mix where nothing is. A file is
/// looked for beside the scenario, in `folder`, and its stroke goes to the user's `own_strokes`.
pub fn chosen(
    values: &mut Values,
    text: &Option<Text>,
    folder: &Path,
    built_in: &[&str],
    own_strokes: &mut Vec<Stroke>,
) -> Option<Vec<String>> {
    if text.is_none() {
        return Some(InningsPlan::default().strokes().map(str::to_owned).collect());
    }
    let mut chosen: Vec<String> = Vec::new();
    for entry in values.read(PATH, text, names)? {
        let name = match entry.to_lowercase().ends_with(".ron") {
            true => {
                let stroke = own(values, &entry, folder)?;
                let name = stroke.name.clone();
                own_strokes.push(stroke);
                name
            }
            false => known_stroke(values, PATH, &entry, built_in)?,
        };
        if chosen.iter().any(|it| it.to_lowercase() == name.to_lowercase()) {
            let message = format!("two of them are called {name:?}");
            values.fault(PATH, &message, "leave one out, or give it another name in its file");
            return None;
        }
        chosen.push(name);
    }
    Some(chosen)
}

/// A stroke from a file that `backlift stroke` wrote.
fn own(values: &mut Values, entry: &str, folder: &Path) -> Option<Stroke> {
    let text = match text_of_file(&folder.join(entry), &STROKE) {
        Ok(source) => source,
        Err(fault) => {
            let help = fault.help.as_deref().unwrap_or(STROKE.none);
            values.fault(PATH, &fault.message, help);
            return None;
        }
    };
    match read(text.text()) {
        Ok(stroke) if is_a_name(&stroke.name) => Some(stroke),
        Ok(stroke) => {
            let message = format!("{entry}: {:?} cannot be named in a mix", stroke.name);
            values.fault(
                PATH,
                &message,
                "give it a name of letters alone in its file, like \"sweep\"",
            );
            None
        }
        Err(fault) => {
            let help = "make it with `backlift stroke KEYS.ron NEW.ron`";
            values.fault(PATH, &format!("{entry}: {fault}"), help);
            None
        }
    }
}

/// Letters, with single blanks or hyphens between them.
fn is_a_name(name: &str) -> bool {
    let part = |it: &str| !it.is_empty() && it.chars().all(char::is_alphabetic);
    name.split([' ', '-']).all(part)
}

/// The stroke of that name among these, as it is written there.
pub fn known_stroke(
    values: &mut Values,
    path: &str,
    name: &str,
    strokes: &[&str],
) -> Option<String> {
    let lower = name.to_lowercase();
    if let Some(known) = strokes.iter().find(|it| it.to_lowercase() == lower) {
        return Some((*known).to_owned());
    }
    let help = nearest_or_all(&lower, "the strokes", strokes);
    values.fault(path, &format!("there is no stroke {name:?}"), &help);
    None
}
