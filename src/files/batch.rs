//! The batch: a folder in which every bat has its own file.

use std::path::Path;

use super::document::{paths_in, text_of_file};
use super::fault::{Fault, Faults};
use super::own_file::card_in;
use super::shape::{LoadedShape, load_text};
use super::stages::{LOG, read};
use crate::bat::sizes::Size;
use crate::workshop::stages::BenchLog;

/// More bats than a bench has at a time.
const MOST_BATS: usize = 1000;

/// The log of a bench: of one file, or of a folder in which every bat has its own.
///
/// # Errors
/// Everything that is wrong with it, and a folder or file without a bat that was weighed.
pub fn of_path(path: &Path, sizes: &[Size]) -> Result<BenchLog, Faults> {
    if path.is_dir() {
        return of_folder(path, sizes);
    }
    let source = text_of_file(path, &LOG)?;
    match card_in(&source) {
        Some(_) => of_bats(vec![load_text(source, &[], sizes)?]),
        None => read(source, sizes),
    }
}

/// All bats of a folder, by the names of their files; other files are left alone.
fn of_folder(folder: &Path, sizes: &[Size]) -> Result<BenchLog, Faults> {
    let mut paths = paths_in(folder)?;
    paths.retain(|it| it.extension().is_some_and(|it| it == "ron") && it.is_file());
    if paths.len() > MOST_BATS {
        let message = format!("{} has {} files", folder.display(), paths.len());
        return Err(Fault::new(message).help(format!("leave at most {MOST_BATS}")).into());
    }
    let (mut bats, mut faults) = (Vec::new(), Vec::new());
    for path in &paths {
        let source = text_of_file(path, &LOG)?;
        if card_in(&source).is_none() {
            continue;
        }
        match load_text(source, &[], sizes) {
            Ok(bat) => bats.push(bat),
            Err(Faults(all)) => faults.extend(all),
        }
    }
    if !faults.is_empty() {
        return Err(Faults(faults));
    }
    if bats.is_empty() {
        let fault = Fault::new(format!("no bat has its own file in {}", folder.display()));
        let help = "`backlift plane CARD.ron … --new FILE` begins one";
        return Err(fault.help(help).into());
    }
    of_bats(bats)
}

/// The log of these bats; of those that nobody weighed yet there is nothing to say.
fn of_bats(bats: Vec<LoadedShape>) -> Result<BenchLog, Faults> {
    let invented = bats.iter().any(|it| it.invented);
    let mut logs: Vec<_> = bats.into_iter().map(|it| it.log).collect();
    logs.retain(|it| !it.entries.is_empty());
    for (n, it) in logs.iter().enumerate() {
        if logs.iter().take(n).any(|other| other.label == it.label) {
            let fault = Fault::new(format!("two bats are called {:?}", it.label));
            return Err(fault.help("give each its own title").into());
        }
    }
    if logs.is_empty() {
        let fault = Fault::new("nothing was weighed yet");
        return Err(fault.help("add log: [(stage: \"cleft\", at: …, mass: …)]").into());
    }
    Ok(BenchLog { invented, bats: logs })
}
