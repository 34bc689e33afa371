//! One value, part or bat changed in the text of a document; every note and every other letter stays.

use super::super::outline::{Entry, Outline};

/// The text with a value at a path like `bats.1.balance`: over the one that is there, or after the last
/// of its part, which is made if there is none. None if the text has no place for it.
pub fn put(text: &str, path: &str, value: &str) -> Option<String> {
    put_raw(text, path, &format!("{value:?}"))
}

/// The same with a part or a list, written as RON.
pub fn put_raw(text: &str, path: &str, raw: &str) -> Option<String> {
    let outline = Outline::of(text);
    if let Some(there) = outline.find(path) {
        let span = there.value.clone();
        return Some(format!("{}{raw}{}", text.get(..span.start)?, text.get(span.end..)?));
    }
    let (part, name) = path.rsplit_once('.').unwrap_or(("", path));
    let element = name.parse::<usize>().is_ok();
    let piece = if element { raw.to_owned() } else { format!("{name}: {raw}") };
    if outline.find(part).is_some() {
        return inserted(text, &outline, part, &piece);
    }
    put_raw(text, part, &if element { format!("[{piece}]") } else { format!("({piece})") })
}

/// What stands at a path, as it is written.
pub fn written<'t>(text: &'t str, path: &str) -> Option<&'t str> {
    text.get(Outline::of(text).find(path)?.value.clone())
}

/// The text without what stands at a path; as it was if nothing does.
pub fn take(text: &str, path: &str) -> Option<String> {
    let outline = Outline::of(text);
    let Some(entry) = outline.find(path) else { return Some(text.to_owned()) };
    let span = entry.with_comma(text);
    let before = text.get(..span.start)?;
    // A line that held nothing else goes with it.
    let line = before.trim_end_matches([' ', '\t']);
    let after = text.get(span.end..)?;
    let alone = line.ends_with('\n') && after.trim_start_matches(' ').starts_with('\n');
    let start = if alone { line.len() - 1 } else { span.start };
    Some(format!("{}{after}", text.get(..start)?))
}

/// Puts a piece behind the last entry of a part.
fn inserted(text: &str, outline: &Outline, part: &str, piece: &str) -> Option<String> {
    let depth = if part.is_empty() { 0 } else { part.matches('.').count() + 1 };
    let below = |it: &&Entry| {
        let within = part.is_empty() || it.path.starts_with(&format!("{part}."));
        within && !it.path.is_empty() && it.path.matches('.').count() == depth
    };
    let Some(last) = outline.entries.iter().rfind(below) else {
        let open = outline.find(part)?.value.clone();
        let bracket = open.start + text.get(open)?.find(['(', '['])? + 1;
        return Some(format!("{}{piece}{}", text.get(..bracket)?, text.get(bracket..)?));
    };
    let span = last.whole();
    let (before, after) = (text.get(..span.end)?, text.get(span.end..)?);
    let line_start = before.get(..span.start)?.rfind('\n').map_or(0, |it| it + 1);
    let indent = text.get(line_start..span.start)?;
    let gap = match line_start > 0 && indent.trim().is_empty() {
        true => format!("\n{indent}"),
        false => " ".to_owned(),
    };
    // The comma that may follow the last entry then follows the piece.
    Some(format!("{before},{gap}{piece}{after}"))
}
