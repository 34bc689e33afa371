//! From the text of a scenario to [`ScenarioV1`], with every fault in its place.

use std::ops::Range;

use ron::error::Error as Ron;

use super::super::fault::{Fault, Source, nearest_or_all};
use super::places::Places;
use super::{ScenarioV1, VERSION};

/// What could be read of a text, and what could not.
#[derive(Clone, Debug)]
pub struct Fields {
    /// The fields; none if the text is no scenario at all.
    pub scenario: Option<ScenarioV1>,
    /// Where they stand.
    pub places: Places,
    /// Everything wrong so far.
    pub faults: Vec<Fault>,
}

/// Reads the fields of a scenario.
pub fn fields(source: Source) -> Fields {
    let others = [
        (
            "card",
            "this is a maker's card, not a scenario",
            "name the player's scenario; a card goes to `backlift check` or `trial --like`",
        ),
        (
            "stages",
            "this is a log of the bench, not a scenario",
            "name the player's scenario; a log goes to `backlift stages`",
        ),
    ];
    for (schema, message, help) in others {
        if source.text().contains(&format!("schema: \"backlift/{schema}/")) {
            let fault = Fault::new(message).at(&source, 0..0).help(help);
            return Fields { scenario: None, places: Places::of(source), faults: vec![fault] };
        }
    }
    let places = Places::of(source);
    let (mut faults, text) = without_wrong_names(&places);
    let scenario = match deserialise(&text) {
        Ok(scenario) => {
            faults.extend(version_fault(&scenario, &places));
            Some(scenario)
        }
        Err((error, path, at)) => {
            faults.push(in_words(error, &path, at, &places));
            None
        }
    };
    Fields { scenario, places, faults }
}

fn version_fault(scenario: &ScenarioV1, places: &Places) -> Option<Fault> {
    let message = match &scenario.version {
        Some(version) if version.0 == VERSION => return None,
        Some(version) => format!("this program does not know {:?}", version.0),
        None => "it is missing".to_owned(),
    };
    Some(places.fault("version", &message, &format!("write version: \"{VERSION}\"")))
}

/// Finds names that are unknown or written twice, and blanks them out so that the rest can be read;
/// every other letter keeps its place.
fn without_wrong_names(places: &Places) -> (Vec<Fault>, String) {
    let (source, entries) = (places.source(), &places.outline().entries);
    let mut faults = Vec::new();
    let mut wrong: Vec<Range<usize>> = Vec::new();
    for (n, entry) in entries.iter().enumerate() {
        let Some(name) = &entry.name else { continue };
        if wrong.iter().any(|it| it.contains(&name.start)) {
            continue;
        }
        let (part, step) = entry.path.rsplit_once('.').unwrap_or(("", &entry.path));
        let steps: Vec<&str> = part.split('.').filter(|it| !it.is_empty()).collect();
        let Some(names) = ScenarioV1::names_under(&steps) else { continue };
        if !names.contains(&step) {
            let fault = Fault::new(format!("{}: there is no field \"{step}\"", entry.path));
            faults.push(fault.at(source, name.clone()).help(nearest_or_all(step, names)));
        } else if entries.iter().take(n).any(|it| it.path == entry.path) {
            let fault = Fault::new(format!("{}: it is written twice", entry.path));
            faults.push(fault.at(source, name.clone()).help("leave out one of the two"));
        } else {
            continue;
        }
        wrong.push(with_comma(source.text(), entry.whole()));
    }
    let mut bytes = source.text().as_bytes().to_vec();
    for (at, byte) in bytes.iter_mut().enumerate() {
        if *byte != b'\n' && wrong.iter().any(|it| it.contains(&at)) {
            *byte = b' ';
        }
    }
    (faults, String::from_utf8_lossy(&bytes).into_owned())
}

/// The entry and the comma behind it.
fn with_comma(text: &str, entry: Range<usize>) -> Range<usize> {
    let after = text.get(entry.end..).unwrap_or_default();
    let comma = after.len() - after.trim_start().len();
    let end = if after.trim_start().starts_with(',') { entry.end + comma + 1 } else { entry.end };
    entry.start..end
}

type Unreadable = (Ron, String, ron::error::Position);

fn deserialise(text: &str) -> Result<ScenarioV1, Unreadable> {
    let options =
        ron::Options::default().with_default_extension(ron::extensions::Extensions::IMPLICIT_SOME);
    let mut reader = ron::Deserializer::from_str_with_options(text, &options)
        .map_err(|error| (error.code, String::new(), error.span.start))?;
    let scenario = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
        let path = error.path().to_string().replace('[', ".").replace(']', "");
        let error = reader.span_error(error.into_inner());
        (error.code, path, error.span.start)
    })?;
    reader.end().map_err(|error| {
        let error = reader.span_error(error);
        (error.code, String::new(), error.span.start)
    })?;
    Ok(scenario)
}

/// A fault of the `ron` crate in plain words, at the whole word or value it is about.
fn in_words(error: Ron, path: &str, at: ron::error::Position, places: &Places) -> Fault {
    let source = places.source();
    let (line, column) = (at.line, at.col);
    let word = word_at(source.text(), line, column);
    let here = |message: &str| Fault::new(message).at(source, word.clone());
    if source.text().trim().is_empty() {
        return here("the file is empty").help("write a new one with `backlift new FILE`");
    }
    let open = places.outline().unclosed.last();
    match error {
        Ron::Eof | Ron::ExpectedStringEnd | Ron::UnclosedBlockComment => {
            half_written(places, &word)
        }
        _ if open.is_some() && word.start >= source.text().trim_end().len() => {
            half_written(places, &word)
        }
        Ron::ExpectedComma | Ron::ExpectedStructLikeEnd | Ron::ExpectedArrayEnd => {
            here("a comma or a closing bracket is missing before this")
                .help("fields and bats are parted with commas; each \"(\" needs its \")\"")
        }
        Ron::ExpectedMapColon => {
            here("a colon is missing before this").help("a field is written as name: \"value\"")
        }
        Ron::TrailingCharacters => here("the scenario has ended before this")
            .help("leave it out, or move the bracket that closes the scenario"),
        Ron::ExpectedNamedStructLike(_) | Ron::ExpectedStructLike => typed(
            places,
            path,
            word,
            "a part in brackets is expected here",
            "write it as (name: \"value\", …)",
        ),
        Ron::ExpectedArray => typed(
            places,
            path,
            word,
            "a list is expected here",
            "write it as [(label: \"A\", …), (label: \"B\", …)]",
        ),
        Ron::InvalidValueForType { .. } | Ron::ExpectedString | Ron::Message(_) => typed(
            places,
            path,
            word,
            "text in quotation marks is expected here",
            "write one value in quotation marks, like \"1.16 kg\"",
        ),
        Ron::InvalidEscape(_) => here("a backslash here means something else in a scenario")
            .help("write \\\\ for one backslash"),
        Ron::ExpectedDifferentStructName { .. } => here("this is not the start of a scenario")
            .help("a scenario stands in one bracket: (version: \"backlift/scenario/1\", …)"),
        other => {
            let words = other.to_string();
            let mut letters = words.chars();
            let first = letters.next().map(|it| it.to_lowercase().to_string()).unwrap_or_default();
            here(&format!("this is not written as a scenario is: {first}{}", letters.as_str()))
                .help("compare with the file that `backlift new FILE` writes")
        }
    }
}

fn half_written(places: &Places, word: &Range<usize>) -> Fault {
    let fault = Fault::new("the text ends before the scenario does");
    let help = "close what is open; was the file saved only half, or cut off when it was copied?";
    match places.outline().unclosed.last() {
        Some(&open) => fault
            .at(places.source(), open..open + 1)
            .label("opened here and never closed")
            .help(help),
        None => fault.at(places.source(), word.clone()).help(help),
    }
}

/// A value of the wrong kind: at its whole value if the outline knows it.
fn typed(places: &Places, path: &str, word: Range<usize>, message: &str, help: &str) -> Fault {
    if places.outline().find(path).is_some() && path != "." {
        return places.fault(path, message, help);
    }
    Fault::new(message).at(places.source(), word).help(help)
}

/// The word at a line and column, both counted from 1.
pub(in crate::files) fn word_at(text: &str, line: usize, column: usize) -> Range<usize> {
    let line_start: usize =
        text.split_inclusive('\n').take(line.saturating_sub(1)).map(str::len).sum();
    let rest = text.get(line_start..).unwrap_or_default();
    let at = rest.char_indices().nth(column.saturating_sub(1)).map_or(rest.len(), |(at, _)| at);
    let gap = rest.get(at..).map_or(0, |it| it.len() - it.trim_start().len());
    let start = line_start + at + gap;
    let word = text.get(start..).unwrap_or_default();
    let length =
        word.find(|c: char| c.is_whitespace() || ",:()[]".contains(c)).unwrap_or(word.len());
    let first = word.chars().next().map_or(0, char::len_utf8);
    start..start + length.max(first)
}
