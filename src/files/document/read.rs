//! From a text to the fields of a document, with every fault in its place.

use std::ops::Range;

use ron::error::Error as Ron;

use super::super::fault::{Fault, Faults, MOST_FAULTS, Source, nearest_name};
use super::overrides::set;
use super::places::Places;
use super::values::MISSING;
use super::{Document, Kind, Text, options};

/// What could be read of a text, and what could not.
#[derive(Clone, Debug)]
pub struct Fields<D> {
    /// The fields; none if the text is no such document at all.
    pub document: Option<D>,
    /// Where they stand.
    pub places: Places,
    /// Everything wrong so far.
    pub faults: Vec<Fault>,
}

/// Other texts of ours: what stands in them, what they are, and where they go.
const OTHERS: [(&str, &str, &str); 5] = [
    ("\"backlift/card/", "a maker's card", "a card goes to `backlift check` or `trial --like`"),
    ("\"backlift/stages/", "a log of the bench", "a log goes to `backlift stages`"),
    ("\"backlift/rack/", "a rack of clefts", "a rack goes to `backlift orders --rack`"),
    ("\"backlift/shape/", "a described bat", "a described bat goes to `backlift shape`"),
    ("\"backlift/scenario/", "a scenario", "a scenario goes to `backlift fit` and most others"),
];

/// Reads the fields of a document, and puts `--set` arguments over it in their order.
pub fn fields<D: Document>(source: Source, sets: &[String]) -> Fields<D> {
    let mut places = Places::of(source);
    let source = places.source();
    let named = ["version", "schema"].into_iter().find_map(|it| places.outline().find(it));
    let named = named.and_then(|it| source.text().get(it.value.clone()));
    for (schema, what, goes) in OTHERS {
        let own = format!("\"{}", D::VERSION).starts_with(schema);
        // A bat's own file has its card in it.
        if !own && named.unwrap_or(source.text()).contains(schema) {
            let fault = Fault::new(format!("this is {what}, not a {}", D::KIND.noun))
                .at(source, 0..0)
                .help(format!("{}; {goes}", D::MENDS.instead));
            return Fields { document: None, places, faults: vec![fault] };
        }
    }
    if places.outline().is_cut {
        let fault = Fault::new(format!("there is more in it than in any {}", D::KIND.noun))
            .at(places.source(), 0..0)
            .help(D::MENDS.compare);
        return Fields { document: None, places, faults: vec![fault] };
    }
    let (mut faults, text) = without_wrong_names::<D>(&places);
    let document = match deserialise::<D>(&text) {
        Ok(mut document) => {
            let version = document.at(&["version"]).and_then(|it| it.as_ref());
            faults.extend(version_fault("version", version, D::VERSION, &places));
            for argument in sets {
                faults.extend(set(&mut document, &mut places, argument).err());
            }
            Some(document)
        }
        Err((error, path, at)) => {
            faults.push(in_words::<D>(error, &path, at, &places));
            None
        }
    };
    Fields { document, places, faults }
}

/// The fields of a document without a fault in its names and brackets.
///
/// # Errors
/// Everything wrong with them.
pub fn fields_of<D: Document>(source: Source) -> Result<D, Faults> {
    let Fields { document, faults, .. } = fields(source, &[]);
    match document {
        Some(fields) if faults.is_empty() => Ok(fields),
        _ => Err(Faults(faults)),
    }
}

/// What is wrong where the version this program can read is asked for.
pub(in crate::files) fn version_fault(
    field: &str,
    written: Option<&Text>,
    wanted: &str,
    places: &Places,
) -> Option<Fault> {
    let message = match written {
        Some(Text(version)) if version == wanted => return None,
        Some(Text(version)) => format!("this program does not know {version:?}"),
        None => MISSING.to_owned(),
    };
    Some(places.fault(field, &message, &format!("write {field}: \"{wanted}\"")))
}

/// Finds names that are unknown or written twice, and blanks them out so that the rest can be read;
/// every other letter keeps its place.
fn without_wrong_names<D: Document>(places: &Places) -> (Vec<Fault>, String) {
    let (source, entries) = (places.source(), &places.outline().entries);
    let mut faults = Vec::new();
    let mut wrong: Vec<Range<usize>> = Vec::new();
    for entry in entries {
        let Some(name) = &entry.name else { continue };
        // In the order of the text: only the last can reach so far.
        if wrong.last().is_some_and(|it| it.contains(&name.start)) {
            continue;
        }
        if faults.len() == MOST_FAULTS {
            break;
        }
        let first = places.outline().find(&entry.path);
        let (part, step) = entry.path.rsplit_once('.').unwrap_or(("", &entry.path));
        let steps: Vec<&str> = part.split('.').filter(|it| !it.is_empty()).collect();
        let Some(names) = D::names_under(&steps) else { continue };
        if !names.contains(&step) {
            let fault = Fault::of(&entry.path, &format!("there is no field \"{step}\""));
            faults.push(fault.at(source, name.clone()).help(nearest_name(step, names)));
        } else if first.is_some_and(|it| it.value != entry.value) {
            let fault = Fault::of(&entry.path, "it is written twice");
            faults.push(fault.at(source, name.clone()).help("leave out one of the two"));
        } else {
            continue;
        }
        wrong.push(entry.with_comma(source.text()));
    }
    let mut bytes = source.text().as_bytes().to_vec();
    for it in wrong {
        let blanked = bytes.get_mut(it).unwrap_or_default();
        blanked.iter_mut().filter(|it| **it != b'\n').for_each(|it| *it = b' ');
    }
    (faults, String::from_utf8_lossy(&bytes).into_owned())
}

type Unreadable = (Ron, String, ron::error::Position);

fn deserialise<D: Document>(text: &str) -> Result<D, Unreadable> {
    let mut reader = ron::Deserializer::from_str_with_options(text, &options())
        .map_err(|error| (error.code, String::new(), error.span.start))?;
    let document = serde_path_to_error::deserialize(&mut reader).map_err(|error| {
        let path = error.path().to_string().replace('[', ".").replace(']', "");
        let error = reader.span_error(error.into_inner());
        (error.code, path, error.span.start)
    })?;
    reader.end().map_err(|error| {
        let error = reader.span_error(error);
        (error.code, String::new(), error.span.start)
    })?;
    Ok(document)
}

/// A fault of the `ron` crate in plain words, at the whole word or value it is about.
fn in_words<D: Document>(
    error: Ron,
    path: &str,
    at: ron::error::Position,
    places: &Places,
) -> Fault {
    let (kind, mends, version) = (&D::KIND, &D::MENDS, D::VERSION);
    let source = places.source();
    let (line, column) = (at.line, at.col);
    let word = word_at(source.text(), line, column);
    let here = |message: &str| Fault::new(message).at(source, word.clone());
    if source.text().trim().is_empty() {
        return here("the file is empty").help(mends.start);
    }
    let open = places.outline().unclosed.last();
    match error {
        Ron::Eof | Ron::ExpectedStringEnd | Ron::UnclosedBlockComment => {
            half_written(places, &word, kind)
        }
        _ if open.is_some() && word.start >= source.text().trim_end().len() => {
            half_written(places, &word, kind)
        }
        Ron::ExpectedComma | Ron::ExpectedStructLikeEnd | Ron::ExpectedArrayEnd => {
            here("a comma or a closing bracket is missing before this").help(mends.brackets)
        }
        Ron::ExpectedMapColon => {
            here("a colon is missing before this").help("a field is written as name: \"value\"")
        }
        Ron::TrailingCharacters => here(&format!("the {} has ended before this", kind.noun))
            .help(format!("leave it out, or move the bracket that closes the {}", kind.noun)),
        Ron::ExpectedNamedStructLike(_) | Ron::ExpectedStructLike => typed(
            places,
            path,
            word,
            "a part in brackets is expected here",
            "write it as (name: \"value\", …)",
        ),
        Ron::ExpectedArray => typed(places, path, word, "a list is expected here", mends.list),
        Ron::InvalidValueForType { .. } | Ron::ExpectedString | Ron::Message(_) => typed(
            places,
            path,
            word,
            "text in quotation marks is expected here",
            "write one value in quotation marks, like \"1.16 kg\"",
        ),
        Ron::InvalidEscape(_) => {
            here(&format!("a backslash here means something else in a {}", kind.noun))
                .help("write \\\\ for one backslash")
        }
        Ron::ExpectedDifferentStructName { .. } => {
            here(&format!("this is not the start of a {}", kind.noun))
                .help(format!("a {} stands in one bracket: (version: \"{version}\", …)", kind.noun))
        }
        other => {
            let words = other.to_string();
            let mut letters = words.chars();
            let first = letters.next().map(|it| it.to_lowercase().to_string()).unwrap_or_default();
            here(&format!("this is not written as a {} is: {first}{}", kind.noun, letters.as_str()))
                .help(mends.compare)
        }
    }
}

fn half_written(places: &Places, word: &Range<usize>, kind: &Kind) -> Fault {
    let fault = Fault::new(format!("the text ends before the {} does", kind.noun));
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
pub fn word_at(text: &str, line: usize, column: usize) -> Range<usize> {
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
