//! The table in words.

use backlift::questions::validated::Validated;
use backlift::validation::{Group, Row, Verdict};

use super::notation::{accepted, cells, off_by};
use crate::figure::capital;
use crate::paragraph::{each_set_in, paragraph};
use crate::table::table;

pub fn told(found: &Validated) -> String {
    let sources = sources(found);
    let mut out = paragraph(&sentence(found)) + "\n";
    for group in found.groups() {
        out += &format!("\n{}\n", heading(group));
        let rows: Vec<&Row> = found.rows(Some(group)).map(|it| it.1).collect();
        out += &table(&["", "expected", "ours", "difference", ""], folded(&rows, &sources));
    }
    out += &noted(found, Verdict::Disagrees, "\nWhat disagrees, by how much and why\n");
    out += &noted(found, Verdict::NoData, "\nWhat nothing is known about\n");
    let sources = sources.iter().enumerate();
    let sources = sources.map(|(n, source)| format!("{} {source}", mark(n)));
    out + "\nSources\n" + &each_set_in(sources) + WORDS
}

const WORDS: &str = "
What the words mean:
  expected      what the source says, ± one published standard deviation; nought
                where the row is the largest miss over many figures
  agrees        within what the check asks, which is written beside it and not
                moved: --json and the report of --out say it for each row
  built so      ours was taken from that very figure, so that it tests nothing;
                counted apart
  no data       nobody has published a figure, or none was seen
";

pub fn sentence(found: &Validated) -> String {
    let count = |verdict| found.count(None, verdict);
    let [agree, disagree, none] = [Verdict::Agrees, Verdict::Disagrees, Verdict::NoData].map(count);
    let all = agree + disagree;
    let mut out = match disagree {
        0 => format!("All {all} figures that can be compared agree with theirs"),
        1 => format!("{agree} of {all} figures agree with theirs; one disagrees"),
        _ => format!("{agree} of {all} figures agree with theirs; {disagree} disagree"),
    };
    match count(Verdict::ByConstruction) {
        0 => {}
        1 => out += "; one more agrees by construction",
        more => out += &format!("; {more} more agree by construction"),
    }
    if none > 0 {
        out += &format!("; for {none} there is nothing to compare with");
    }
    if disagree > 0 && found.groups().contains(&Group::Dynamics) {
        out += match found.count(Some(Group::Dynamics), Verdict::Disagrees) {
            0 => ". Every row of the mechanics agrees",
            _ => {
                ". A row of the mechanics disagrees: trust no simulated swing until that is mended"
            }
        };
    }
    out
}

/// "Bat inertia".
pub fn heading(group: Group) -> String {
    capital(group.words())
}

/// The sources, each once, in the order of the rows.
pub fn sources(found: &Validated) -> Vec<&str> {
    let mut sources: Vec<&str> = Vec::new();
    for (_, row) in found.rows(None) {
        if row.verdict != Verdict::NoData && !sources.contains(&row.source.as_str()) {
            sources.push(&row.source);
        }
    }
    sources
}

fn mark(n: usize) -> String {
    format!("[{}]", n + 1)
}

/// The lines of a table; what several rows on end have in common before their colon stands once above
/// them.
fn folded(rows: &[&Row], sources: &[&str]) -> Vec<Vec<String>> {
    let marked = |row: &Row| sources.iter().position(|it| *it == row.source).map(mark);
    let with = |what: &str, mark: Option<String>| match mark {
        Some(mark) => format!("{what} {mark}"),
        None => what.to_owned(),
    };
    let mut lines = Vec::new();
    for alike in rows.chunk_by(|a, b| subject(a).is_some() && subject(a) == subject(b)) {
        let [first, _, ..] = alike else {
            lines.extend(alike.iter().map(|row| line(row, with(&row.what, marked(row)))));
            continue;
        };
        let shared = subject(first).unwrap_or_default();
        // A source that they share as well is marked once.
        let one = alike.iter().all(|row| row.source == first.source);
        lines.push(vec![with(&format!("{shared}:"), marked(first).filter(|_| one))]);
        for row in alike {
            let rest = row.what.trim_start_matches(shared).trim_start_matches(": ");
            let rest = format!("{SET_IN}{rest}");
            lines.push(line(row, with(&rest, marked(row).filter(|_| !one))));
        }
    }
    lines
}

/// Blanks that no line is broken at.
const SET_IN: &str = "\u{a0}\u{a0}";

/// What a row is about, up to its first colon.
fn subject(row: &Row) -> Option<&str> {
    row.what.split_once(": ").map(|it| it.0)
}

fn line(row: &Row, what: String) -> Vec<String> {
    let it = cells(row);
    vec![what, it.expected, it.ours, it.difference, row.verdict.words().to_owned()]
}

/// Rows of one verdict with their words.
fn noted(found: &Validated, verdict: Verdict, heading: &str) -> String {
    let rows: Vec<&Row> =
        found.rows(None).map(|(_, row)| row).filter(|it| it.verdict == verdict).collect();
    if rows.is_empty() {
        return String::new();
    }
    heading.to_owned() + &each_set_in(rows.iter().map(|row| format!("{}: {}", row.what, why(row))))
}

/// The size of a disagreement, and the row's own words.
pub fn why(row: &Row) -> String {
    let mut words = Vec::new();
    if let (Verdict::Disagrees, Some(accepted)) = (row.verdict, accepted(row)) {
        words.push(format!("off by {}, accepted {accepted}", off_by(row)));
    }
    words.extend((!row.note.is_empty()).then(|| row.note.clone()));
    words.join("; ")
}
