//! The text of a file, from the disk, whatever it holds.

use std::io::Read;
use std::path::{Path, PathBuf};

use super::super::fault::{Fault, Source, nearest};
use super::super::save::{complete, folder_of};

/// A larger file is none of ours.
const LARGEST_BYTES: u64 = 1 << 20;

/// What kind of file is read, in the words of its faults.
pub struct Kind {
    /// "a scenario file".
    pub what: &'static str,
    /// "scenario".
    pub noun: &'static str,
    /// "a .ron file".
    pub named: &'static str,
    /// What it is like, and what to do about one that is too large.
    pub like: &'static str,
    /// What to do when there is none.
    pub none: &'static str,
}

/// Reads the text of one file.
pub fn text_of_file(path: &Path, kind: &Kind) -> Result<Source, Fault> {
    let name = path.display().to_string();
    complete(folder_of(path))?;
    let about = std::fs::metadata(path).map_err(|error| cannot_open(path, &name, &error, kind))?;
    if about.is_dir() {
        return Err(Fault::new(format!("{name} is a folder, not {}", kind.what))
            .help(format!("name {} in it", kind.named)));
    }
    if !about.is_file() {
        return Err(
            Fault::new(format!("{name} is not a file")).help(format!("name {}", kind.named))
        );
    }
    let mut bytes = Vec::new();
    std::fs::File::open(path)
        .and_then(|file| file.take(LARGEST_BYTES + 1).read_to_end(&mut bytes))
        .map_err(|error| cannot_open(path, &name, &error, kind))?;
    if bytes.len() as u64 > LARGEST_BYTES {
        return Err(Fault::new(format!("{name} is larger than 1 MiB: that is no {}", kind.noun))
            .help(kind.like));
    }
    decode(&name, bytes)
}

/// Whether a file still holds a text that was read from it or written into it.
///
/// # Errors
/// If the file cannot be read.
pub fn still_holds(path: &Path, kind: &Kind, text: &str) -> Result<bool, Fault> {
    Ok(text_of_file(path, kind)?.text() == text)
}

fn decode(name: &str, bytes: Vec<u8>) -> Result<Source, Fault> {
    const MEND: &str = "save it as plain text in UTF-8";
    if bytes.starts_with(&[0xff, 0xfe]) || bytes.starts_with(&[0xfe, 0xff]) {
        return Err(Fault::new(format!("{name} is written in UTF-16"))
            .at(&Source::new(name, &String::from_utf8_lossy(&bytes)), 0..0)
            .help(MEND));
    }
    match String::from_utf8(bytes) {
        Ok(text) => without_control(name, text.trim_start_matches('\u{feff}')),
        Err(error) => {
            let start = error.utf8_error().valid_up_to();
            let text = String::from_utf8_lossy(error.as_bytes()).into_owned();
            let length =
                text.get(start..).and_then(|it| it.chars().next()).map_or(0, char::len_utf8);
            Err(Fault::new(format!("{name} is not UTF-8 text"))
                .at(&Source::new(name, &text), start..start + length)
                .label("this byte belongs to no UTF-8 letter")
                .help(MEND))
        }
    }
}

/// A text without what a terminal would obey.
fn without_control(name: &str, text: &str) -> Result<Source, Fault> {
    let obeyed = |it: char| it.is_control() && !matches!(it, '\n' | '\r' | '\t');
    match text.find(obeyed) {
        None => Ok(Source::new(name, text)),
        Some(at) => Err(Fault::new(format!("{name} has a control character in it"))
            .at(&Source::new(name, &text.replace(obeyed, "�")), at..at + '�'.len_utf8())
            .help("take it out, or save it as plain text")),
    }
}

/// What is in a folder, by name.
pub(in crate::files) fn paths_in(folder: &Path) -> Result<Vec<PathBuf>, Fault> {
    let unread = |error: std::io::Error| cannot_read(&folder.display().to_string(), &error);
    let mut paths = Vec::new();
    for it in std::fs::read_dir(folder).map_err(unread)? {
        paths.push(it.map_err(unread)?.path());
    }
    paths.sort();
    Ok(paths)
}

fn cannot_read(name: &str, error: &std::io::Error) -> Fault {
    Fault::new(format!("{name} cannot be read: {error}")).help("check the path and who may read it")
}

fn cannot_open(path: &Path, name: &str, error: &std::io::Error, kind: &Kind) -> Fault {
    if error.kind() != std::io::ErrorKind::NotFound {
        return cannot_read(name, error);
    }
    let fault = Fault::new(format!("there is no file {name}"));
    let folder = folder_of(path);
    let names: Vec<String> = std::fs::read_dir(folder)
        .map(|it| it.flatten().map(|it| it.file_name().to_string_lossy().into_owned()).collect())
        .unwrap_or_default();
    let typed = path.file_name().map(|it| it.to_string_lossy().into_owned()).unwrap_or_default();
    match nearest(&typed, names.iter().map(String::as_str)) {
        Some(near) => fault.help(format!("did you mean {}?", path.with_file_name(near).display())),
        None if folder.is_dir() => fault.help(kind.none),
        None => fault.help(format!("there is no folder {} either", folder.display())),
    }
}
