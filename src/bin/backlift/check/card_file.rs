//! The card from the disk, its faults in their place.

use std::io::Read;
use std::path::Path;

use backlift::card::Card;
use backlift::files::card::{self, CardFileFault};
use backlift::files::fault::{Fault, Source};

/// A larger file is no card.
const LARGEST_BYTES: u64 = 1 << 20;

/// Reads a card.
pub fn read(path: &Path) -> Result<Card, Fault> {
    let name = path.display().to_string();
    let refused = |why: &str| Fault::new(format!("{name} {why}")).help("name the card's .ron file");
    let mut bytes = Vec::new();
    match std::fs::metadata(path) {
        Ok(about) if about.is_dir() => return Err(refused("is a folder, not a card")),
        Ok(about) if !about.is_file() => return Err(refused("is not a file")),
        Ok(_) => {
            std::fs::File::open(path)
                .and_then(|file| file.take(LARGEST_BYTES + 1).read_to_end(&mut bytes))
                .map_err(|error| refused(&format!("cannot be read: {error}")))?;
        }
        Err(error) if error.kind() == std::io::ErrorKind::NotFound => {
            return Err(Fault::new(format!("there is no file {name}"))
                .help("`backlift fit` writes the card; name its .ron file"));
        }
        Err(error) => return Err(refused(&format!("cannot be read: {error}"))),
    }
    if bytes.len() as u64 > LARGEST_BYTES {
        return Err(refused("is larger than 1 MiB: that is no card"));
    }
    let text = String::from_utf8(bytes).map_err(|error| {
        let good = String::from_utf8_lossy(error.as_bytes()).into_owned();
        let at = error.utf8_error().valid_up_to();
        Fault::new(format!("{name} is not UTF-8"))
            .at(&Source::new(&name, &good), at..at)
            .help("save it as plain text in UTF-8")
    })?;
    let source = Source::new(&name, &text);
    if text.contains("backlift/scenario/") {
        return Err(Fault::new(format!("{name} is a scenario, not a card"))
            .at(&source, 0..0)
            .help("name the card first, the scenario after it"));
    }
    if text.trim().is_empty() {
        return Err(Fault::new("the file is empty")
            .at(&source, 0..0)
            .help("take the card as `backlift fit` wrote it"));
    }
    card::read(&text).map_err(|fault| placed(&source, &fault))
}

fn placed(source: &Source, fault: &CardFileFault) -> Fault {
    match fault {
        CardFileFault::Broken { line, column, what } => {
            let at = offset(source.text(), *line, *column);
            Fault::new(format!("this is not a whole card: {what}"))
                .at(source, at..at)
                .help("take the card as `backlift fit` wrote it")
        }
        other => Fault::new(other.to_string())
            .at(source, 0..0)
            .help("take the card as `backlift fit` wrote it"),
    }
}

/// The byte at a line and a column, both counted from 1.
fn offset(text: &str, line: usize, column: usize) -> usize {
    let mut start = 0;
    for (n, it) in text.split_inclusive('\n').enumerate() {
        if n + 1 == line {
            let within = it.char_indices().nth(column.saturating_sub(1));
            return start + within.map_or(it.trim_end().len(), |(at, _)| at);
        }
        start += it.len();
    }
    text.len()
}
