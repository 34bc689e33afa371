//! A fault with its place in the text and its mend.

use std::fmt;
use std::ops::Range;
use std::sync::Arc;

use miette::{
    Diagnostic, GraphicalReportHandler, GraphicalTheme, LabeledSpan, MietteError, NamedSource,
    SourceCode, SourceSpan, SpanContents,
};

/// A text that faults can point into: a file, or one argument of the command line.
#[derive(Clone, Debug)]
pub struct Source(Arc<NamedSource<String>>);

impl Source {
    /// A text under the name it is shown by.
    pub fn new(name: &str, text: &str) -> Self {
        Self(Arc::new(NamedSource::new(name, text.to_owned())))
    }
    /// The name it is shown by.
    pub fn name(&self) -> &str {
        self.0.name()
    }
    /// The text itself.
    pub fn text(&self) -> &str {
        self.0.inner()
    }
}

/// Faults beyond these are not looked for: nobody mends so many at once.
pub const MOST_FAULTS: usize = 100;
/// Of these the first are shown, and the others counted.
const MOST_SHOWN: usize = 20;
/// A longer message is cut.
const LONGEST_MESSAGE_CHARS: usize = 600;
/// A longer word was not mistyped.
const LONGEST_TYPED_BYTES: usize = 100;

/// The text without what a terminal would obey: of the control characters only line breaks stay.
pub fn plain(text: &str) -> String {
    text.replace(|it: char| it.is_control() && it != '\n', " ")
}

/// The same, cut where it is longer than anybody reads.
fn short(text: impl Into<String>) -> String {
    let text = plain(&text.into());
    match text.char_indices().nth(LONGEST_MESSAGE_CHARS) {
        Some((end, _)) => text[..end].to_owned() + " …",
        None => text,
    }
}

/// A line longer than this is shown only where the fault is.
const LONGEST_LINE_BYTES: usize = 400;

/// A fault is shown within its whole line, and without the lines around it. The printer asks for the
/// bare span to learn line and column, and with lines around it to show it.
impl SourceCode for Source {
    fn read_span<'a>(
        &'a self,
        span: &SourceSpan,
        lines_before: usize,
        lines_after: usize,
    ) -> Result<Box<dyn SpanContents<'a> + 'a>, MietteError> {
        let (start, end) = (span.offset(), span.offset() + span.len());
        let before = self.text().get(..start).unwrap_or_default();
        let after = self.text().get(end..).unwrap_or_default();
        let line_start = before.rfind('\n').map_or(0, |it| it + 1);
        let line_end = end + after.find(['\n', '\r']).unwrap_or(after.len());
        let line: SourceSpan = (line_start, line_end - line_start).into();
        let bare = lines_before + lines_after == 0 || line.len() > LONGEST_LINE_BYTES;
        let shown = if bare { span } else { &line };
        self.0.read_span(shown, 0, 0)
    }
}

/// A stretch of a text.
#[derive(Clone, Debug)]
pub struct Place {
    /// The text.
    pub source: Source,
    /// The stretch, in bytes.
    pub span: Range<usize>,
}

impl Place {
    /// Line and column of its start, both counted from 1, the column in characters.
    pub fn line_column(&self) -> (usize, usize) {
        let before = self.source.text().get(..self.span.start).unwrap_or_default();
        let line_start = before.rfind('\n').map_or(0, |it| it + 1);
        (before.matches('\n').count() + 1, before[line_start..].chars().count() + 1)
    }
}

/// One thing wrong (or odd) with what was given: what, where, and the mend.
#[derive(Clone, Debug, thiserror::Error)]
#[error("{message}")]
pub struct Fault {
    /// What is wrong, one sentence without a full stop; of one field, it names that first.
    pub message: String,
    /// The field, as the text spells it, like `bats.1.balance`; none if it is of no one field.
    pub field: Option<Box<str>>,
    /// Where, if it has a place in a text.
    pub place: Option<Place>,
    /// Words that stand under the place.
    pub label: Option<String>,
    /// What to do about it.
    pub help: Option<String>,
    /// It is odd but possible, and the work goes on.
    pub is_warning: bool,
}

impl Fault {
    /// A fault without a place yet.
    pub fn new(message: impl fmt::Display) -> Self {
        Self {
            message: short(message.to_string()),
            field: None,
            place: None,
            label: None,
            help: None,
            is_warning: false,
        }
    }
    /// A fault of one field.
    pub fn of(field: &str, message: &str) -> Self {
        Self { field: Some(field.into()), ..Self::new(format!("{field}: {message}")) }
    }
    /// The same with its mend.
    pub fn help(mut self, help: impl Into<String>) -> Self {
        self.help = Some(short(help));
        self
    }
    /// The same with its place.
    pub fn at(mut self, source: &Source, span: Range<usize>) -> Self {
        self.place = Some(Place { source: source.clone(), span });
        self
    }
    /// The same with words under its place.
    pub fn label(mut self, label: impl Into<String>) -> Self {
        self.label = Some(short(label));
        self
    }
    /// The same as a warning.
    pub fn warning(mut self) -> Self {
        self.is_warning = true;
        self
    }
    /// `file:line:column`, if it has a place.
    pub fn whereabouts(&self) -> Option<String> {
        let place = self.place.as_ref()?;
        let (line, column) = place.line_column();
        Some(format!("{}:{line}:{column}", place.source.name()))
    }
    /// As it is shown in a terminal, `width` characters wide.
    pub fn drawn(&self, width: usize, colour: bool) -> String {
        let theme =
            if colour { GraphicalTheme::unicode() } else { GraphicalTheme::unicode_nocolor() };
        let mut out = String::new();
        let handler = GraphicalReportHandler::new_themed(theme)
            .with_width(width)
            .with_break_words(false)
            .with_primary_span_start();
        match handler.render_report(&mut out, self) {
            Ok(()) => out.trim_start_matches('\n').to_owned(),
            Err(_) => format!("{self}\n"),
        }
    }
}

impl Diagnostic for Fault {
    fn severity(&self) -> Option<miette::Severity> {
        Some(if self.is_warning { miette::Severity::Warning } else { miette::Severity::Error })
    }
    fn help<'a>(&'a self) -> Option<Box<dyn fmt::Display + 'a>> {
        self.help.as_ref().map(|it| Box::new(it) as Box<dyn fmt::Display>)
    }
    fn source_code(&self) -> Option<&dyn SourceCode> {
        self.place.as_ref().map(|it| &it.source as &dyn SourceCode)
    }
    fn labels(&self) -> Option<Box<dyn Iterator<Item = LabeledSpan> + '_>> {
        let place = self.place.as_ref()?;
        let text = place.source.text();
        let most = text.floor_char_boundary(place.span.start + LONGEST_LINE_BYTES / 4);
        let shown = place.span.start..place.span.end.min(most);
        let span = LabeledSpan::new_primary_with_span(self.label.clone(), shown);
        Some(Box::new(std::iter::once(span)))
    }
}

/// Every fault found in what was given; at least one.
#[derive(Clone, Debug)]
pub struct Faults(pub Vec<Fault>);

impl Faults {
    /// As they are shown in a terminal, one under the other.
    pub fn drawn(&self, width: usize, colour: bool) -> String {
        let shown = self.0.iter().take(MOST_SHOWN).map(|it| it.drawn(width, colour));
        let more = self.more().map(|it| it + "\n");
        shown.chain(more).collect::<Vec<_>>().join("\n")
    }

    /// How many are not shown.
    fn more(&self) -> Option<String> {
        let more = self.0.len().checked_sub(MOST_SHOWN).filter(|it| *it > 0)?;
        Some(format!("… and {more} more faults: mend these first"))
    }
}

impl From<Fault> for Faults {
    fn from(fault: Fault) -> Self {
        Self(vec![fault])
    }
}

impl fmt::Display for Faults {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        for (n, fault) in self.0.iter().take(MOST_SHOWN).enumerate() {
            if n > 0 {
                f.write_str("\n")?;
            }
            if let Some(at) = fault.whereabouts() {
                write!(f, "{at}: ")?;
            }
            write!(f, "{fault}")?;
            if let Some(help) = &fault.help {
                write!(f, " ({help})")?;
            }
        }
        self.more().map_or(Ok(()), |it| write!(f, "\n{it}"))
    }
}

impl std::error::Error for Faults {}

/// The known name nearest to a mistyped one, if any is near.
pub fn nearest<'n>(typed: &str, known: impl IntoIterator<Item = &'n str>) -> Option<&'n str> {
    if typed.len() > LONGEST_TYPED_BYTES {
        return None;
    }
    let typed = typed.to_lowercase();
    known
        .into_iter()
        .map(|it| (strsim::damerau_levenshtein(&typed, &it.to_lowercase()), it))
        .filter(|(distance, it)| {
            *distance <= (it.chars().count() / 2).max(1)
                || (!typed.is_empty() && it.to_lowercase().starts_with(&typed))
        })
        .min_by_key(|(distance, _)| *distance)
        .map(|(_, it)| it)
}

/// `did you mean "balance"?`, or what else there is to say.
pub fn nearest_or<'n>(
    typed: &str,
    known: impl IntoIterator<Item = &'n str>,
    otherwise: impl Into<String>,
) -> String {
    nearest(typed, known).map_or_else(|| otherwise.into(), |near| format!("did you mean {near:?}?"))
}

/// The same, or all there are: `the strokes are drive, pull, hook`.
pub fn nearest_or_all<N: AsRef<str>>(typed: &str, what: &str, known: &[N]) -> String {
    nearest_or(typed, known.iter().map(N::as_ref), all_there_are(what, known))
}

/// The same, or all the names there are.
pub fn nearest_name<N: AsRef<str>>(typed: &str, known: &[N]) -> String {
    nearest_or_all(typed, "the names here", known)
}

/// `the strokes are drive, pull, hook`.
pub fn all_there_are<N: AsRef<str>>(what: &str, known: &[N]) -> String {
    let known: Vec<&str> = known.iter().map(N::as_ref).collect();
    format!("{what} are {}", known.join(", "))
}
