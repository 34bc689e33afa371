//! A table as text: its columns and rows, and where each value stands.

use std::ops::Range;

use super::fault::{Fault, Faults, MOST_FAULTS, Source, nearest_name};

/// What a kind of table may hold.
#[derive(Debug)]
pub struct Form {
    /// The columns there may be.
    pub columns: &'static [&'static str],
    /// Columns of which one must be there, and what to do when none is.
    pub needed: &'static [(&'static [&'static str], &'static str)],
    /// What its rows are, for a fault: "readings".
    pub rows: &'static str,
    /// More rows than this are refused.
    pub most_rows: usize,
    /// What to do about more.
    pub too_many: &'static str,
    /// What to do about an empty file.
    pub empty: &'static str,
}

/// Rows of a table with the places of their values.
#[derive(Clone, Debug)]
pub struct Table {
    /// The text.
    pub source: Source,
    /// Its first line.
    pub header: Range<usize>,
    form: &'static Form,
    /// Which column of the form stands where.
    columns: Vec<usize>,
    /// Values in the order of the header.
    pub rows: Vec<Row>,
}

/// One line.
#[derive(Clone, Debug)]
pub struct Row {
    values: Vec<String>,
    places: Vec<Range<usize>>,
    whole: Range<usize>,
}

impl Table {
    /// Reads the lines of a text. Lines that start with # are notes. Values are parted with commas,
    /// semicolons or tabs, whichever the first line has.
    pub fn of(source: Source, form: &'static Form) -> Result<Self, Faults> {
        let text = source.text().to_owned();
        let first = text
            .lines()
            .find(|it| !it.trim().is_empty() && !it.starts_with('#'))
            .ok_or_else(|| Fault::new("the file is empty").at(&source, 0..0).help(form.empty))?;
        let delimiter = [b',', b';', b'\t']
            .into_iter()
            .max_by_key(|d| first.bytes().filter(|it| it == d).count())
            .unwrap_or(b',');
        let mut reader = csv::ReaderBuilder::new()
            .delimiter(delimiter)
            .comment(Some(b'#'))
            .flexible(true)
            .has_headers(false)
            .trim(csv::Trim::All)
            .from_reader(text.as_bytes());
        let mut lines = Vec::new();
        for record in reader.records() {
            let record = record.map_err(|error| {
                Fault::new(format!("this is no table: {error}"))
                    .at(&source, 0..0)
                    .help("save it as CSV in UTF-8")
            })?;
            let at = record.position().map_or(0, |it| it.byte() as usize);
            let values: Vec<String> = record.iter().map(str::to_owned).collect();
            if values.iter().all(String::is_empty) {
                continue;
            }
            let (places, whole, open) = places(&text, at, delimiter);
            if let Some(open) = open {
                return Err(Fault::new("a quotation mark is opened here and never closed")
                    .at(&source, open..open + 1)
                    .help("close it; was the file saved only half?")
                    .into());
            }
            lines.push(Row { values, places, whole });
        }
        let mut lines = lines.into_iter();
        let Some(header) = lines.next() else {
            return Err(Fault::new("the file is empty").at(&source, 0..0).into());
        };
        let columns = columns(&source, form, &header)?;
        let rows: Vec<Row> = lines.collect();
        let mut faults: Vec<Fault> = Vec::new();
        for (n, row) in rows.iter().enumerate() {
            let (here, wanted) = (row.values.len(), columns.len());
            if here == wanted {
                continue;
            }
            if faults.len() == MOST_FAULTS {
                break;
            }
            let last = n + 1 == rows.len() && !text.ends_with('\n');
            let help = match (here < wanted, last) {
                (true, true) => "the file ends within this line: was it saved only half?",
                (true, false) => "leave a value empty, but keep its comma",
                (false, _) => "a value with a comma in it stands in quotation marks",
            };
            let message = format!("this line has {here} values, and the first line names {wanted}");
            faults.push(Fault::new(message).at(&source, row.whole.clone()).help(help));
        }
        if rows.len() > form.most_rows {
            faults.push(
                Fault::new(format!("there are {} {}", rows.len(), form.rows))
                    .at(&source, header.whole.clone())
                    .help(form.too_many),
            );
        }
        if !faults.is_empty() {
            return Err(Faults(faults));
        }
        Ok(Self { header: header.whole, form, columns, rows, source })
    }

    /// Which value of a row stands in a column.
    fn place(&self, column: &str) -> Option<usize> {
        self.columns.iter().position(|it| self.form.columns[*it] == column)
    }

    /// The value in a column; empty if there is no such column.
    pub fn value(&self, row: usize, column: &str) -> &str {
        let value = self.place(column).and_then(|it| self.rows.get(row)?.values.get(it));
        value.map_or("", String::as_str)
    }

    /// Whether something is written there.
    pub fn has(&self, row: usize, column: &str) -> bool {
        !self.value(row, column).is_empty()
    }

    /// Line of a row, counted from 1.
    pub fn line(&self, row: usize) -> usize {
        let start = self.rows.get(row).map_or(0, |it| it.whole.start);
        self.source.text().get(..start).unwrap_or_default().matches('\n').count() + 1
    }

    /// A fault about a value; about the whole line where there is no such column, or nothing in it.
    pub fn fault(&self, row: usize, column: &str, message: &str, help: &str) -> Fault {
        let fault = Fault::of(column, message).help(help);
        let Some(line) = self.rows.get(row) else { return fault };
        let place =
            self.place(column).and_then(|it| line.places.get(it)).filter(|it| !it.is_empty());
        fault.at(&self.source, place.unwrap_or(&line.whole).clone())
    }
}

/// Which column is which.
fn columns(source: &Source, form: &Form, header: &Row) -> Result<Vec<usize>, Faults> {
    let mut columns: Vec<usize> = Vec::new();
    let mut faults = Vec::new();
    for (name, place) in header.values.iter().zip(&header.places) {
        if faults.len() == MOST_FAULTS {
            break;
        }
        let plain = name.to_lowercase().replace([' ', '-'], "_");
        match form.columns.iter().position(|it| *it == plain) {
            Some(it) if columns.contains(&it) => faults.push(
                Fault::new(format!("there are two columns {name:?}"))
                    .at(source, place.clone())
                    .help("leave out one of the two"),
            ),
            Some(it) => columns.push(it),
            None => faults.push(
                Fault::new(format!("there is no column {name:?}"))
                    .at(source, place.clone())
                    .help(nearest_name(&plain, form.columns)),
            ),
        }
    }
    let has = |name: &str| columns.iter().any(|it| form.columns[*it] == name);
    for (any, help) in form.needed {
        if !any.iter().any(|it| has(it)) && faults.is_empty() {
            let fault = Fault::new("a column is missing in the first line");
            faults.push(fault.at(source, header.whole.clone()).help(*help));
        }
    }
    if faults.is_empty() { Ok(columns) } else { Err(Faults(faults)) }
}

type Places = (Vec<Range<usize>>, Range<usize>, Option<usize>);

/// Where the values of a line stand, the whole line, and a quotation mark that stays open.
fn places(text: &str, from: usize, delimiter: u8) -> Places {
    let bytes = text.as_bytes();
    let mut at = from.min(bytes.len());
    // Notes and empty lines before the line belong to nobody.
    loop {
        let line = bytes[at..].iter().position(|it| *it == b'\n').map_or(bytes.len(), |it| at + it);
        let blank = bytes[at..line].iter().all(u8::is_ascii_whitespace);
        if line < bytes.len() && (blank || bytes[at] == b'#') {
            at = line + 1;
        } else {
            break;
        }
    }
    let start = at;
    let mut places = Vec::new();
    loop {
        let value = at;
        let opened = bytes.get(at) == Some(&b'"');
        if opened {
            at += 1;
            loop {
                match (bytes.get(at), bytes.get(at + 1)) {
                    (Some(b'"'), Some(b'"')) => at += 2,
                    (Some(b'"'), _) => break,
                    (Some(_), _) => at += 1,
                    (None, _) => return (places, start..at, Some(value)),
                }
            }
        }
        let ends = |it: &u8| *it == delimiter || matches!(*it, b'\n' | b'\r');
        at += bytes[at..].iter().position(ends).unwrap_or(bytes.len() - at);
        let written = text.get(value..at).unwrap_or_default();
        let lead = written.len() - written.trim_start().len();
        places.push(value + lead..value + lead + written.trim().len());
        if bytes.get(at) == Some(&delimiter) {
            at += 1;
        } else {
            return (places, start..at, None);
        }
    }
}
