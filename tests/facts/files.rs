//! Facts about the edges `units` and `files`.

mod bad_input;
mod edit;
mod good_input;
mod hostile;
mod outline;
mod rack;
mod readings;
mod save;
mod shape_example;
mod shape_text;
mod solid;
mod stroke;
mod stroke_paths;
mod strokes_of_scenario;
mod text_file;
mod units;

use backlift::files::fault::Faults;
use backlift::files::scenario::{Loaded, load};
use std::path::PathBuf;

/// Loads a text through a file, as a user would, with `--set` arguments over it.
fn load_text(text: &[u8], sets: &[&str]) -> Result<Loaded, Faults> {
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("kit.ron");
    std::fs::write(&path, text).unwrap();
    load_file(Some(path), sets)
}

fn load_file(file: Option<PathBuf>, sets: &[&str]) -> Result<Loaded, Faults> {
    let sets: Vec<String> = sets.iter().map(|it| (*it).to_owned()).collect();
    load(file.as_deref(), &sets)
}
