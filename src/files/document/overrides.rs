//! `--set PATH=VALUE`: one field from the command line.

use super::super::fault::{Fault, Source, nearest_name};
use super::places::Places;
use super::{Document, NoRoom, Text};

/// Puts one argument over the document; `places` learns where the field now stands.
pub(super) fn set<D: Document>(
    document: &mut D,
    places: &mut Places,
    argument: &str,
) -> Result<(), Fault> {
    let source = Source::new("--set", argument);
    let whole = 0..argument.len();
    let Some((path, value)) = argument.split_once('=') else {
        return Err(Fault::new(format!("--set {argument}: there is no \"=\""))
            .at(&source, whole)
            .help("write it as PATH=VALUE, like --set player.age=13"));
    };
    let value_at = path.len() + 1;
    let path = path.trim();
    let value = value.trim().trim_matches('"').trim();
    let steps: Vec<&str> = path.split('.').collect();
    document.make_room(&steps).map_err(|NoRoom { step, what, help }| {
        not_a_path(&source, argument, &step, what).help(help)
    })?;
    if let Some(text) = document.at(&steps) {
        *text = Some(Text(value.to_owned()));
        places.set(path, source, value_at);
        return Ok(());
    }
    Err(unknown::<D>(&source, argument, &steps))
}

/// The same with a value of any letters, where no argument was written.
///
/// # Errors
/// If there is no such field.
pub(super) fn put<D: Document>(document: &mut D, path: &str, value: &str) -> Result<(), Fault> {
    let mut places = Places::of(Source::new("", ""));
    set(document, &mut places, &format!("{path}={value}"))
}

fn not_a_path(source: &Source, argument: &str, step: &str, what: &str) -> Fault {
    let start = argument.find(step).unwrap_or(0);
    Fault::new(format!("--set {argument}: there is no {what} \"{step}\""))
        .at(source, start..start + step.len())
}

/// Finds the first step that leads nowhere, and the name nearest to it.
fn unknown<D: Document>(source: &Source, argument: &str, steps: &[&str]) -> Fault {
    for (n, step) in steps.iter().enumerate() {
        let before: Vec<&str> = steps.iter().copied().take(n).collect();
        let Some(names) = D::names_under(&before) else { continue };
        if !names.contains(step) {
            return not_a_path(source, argument, step, "field").help(nearest_name(step, names));
        }
    }
    let help = match D::names_under(steps) {
        Some(names) => format!("go on with one of {}", names.join(", ")),
        None if steps == ["bats"] => {
            "name one bat and one field of it, like bats.0.mass".to_owned()
        }
        None => "there is nothing below a single field; leave off what follows it".to_owned(),
    };
    Fault::new(format!("--set {argument}: this is not a single field"))
        .at(source, 0..argument.find('=').unwrap_or(argument.len()))
        .help(help)
}
