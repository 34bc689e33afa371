//! The rows for other programs.

use backlift::validation::{Row, Verdict};
use serde::Serialize;

use super::notation::accepted;
use backlift::questions::validated::Validated;

/// Everything, in the units of the rows.
#[derive(Serialize)]
pub struct Found {
    agrees: usize,
    by_construction: usize,
    disagrees: usize,
    no_data: usize,
    rows: Vec<Line>,
}

#[derive(Serialize)]
struct Line {
    group: &'static str,
    check: &'static str,
    what: String,
    source: String,
    unit: &'static str,
    expected: Option<f64>,
    sd: Option<f64>,
    ours: Option<f64>,
    difference: Option<f64>,
    verdict: &'static str,
    /// What it had to keep to, in words.
    accepted: Option<String>,
    note: String,
}

/// As JSON has it.
pub fn of(found: &Validated) -> Found {
    let line = |(check, row): (&'static str, &Row)| Line {
        group: row.group.words(),
        check,
        what: row.what.clone(),
        source: row.source.clone(),
        unit: row.unit,
        expected: row.expected,
        sd: row.sd,
        ours: row.ours,
        difference: row.difference(),
        verdict: match row.verdict {
            Verdict::Agrees => "agrees",
            Verdict::ByConstruction => "by_construction",
            Verdict::Disagrees => "disagrees",
            Verdict::NoData => "no_data",
        },
        accepted: accepted(row).map(|it| it.replace('\u{2009}', " ")),
        note: row.note.clone(),
    };
    Found {
        agrees: found.count(None, Verdict::Agrees),
        by_construction: found.count(None, Verdict::ByConstruction),
        disagrees: found.count(None, Verdict::Disagrees),
        no_data: found.count(None, Verdict::NoData),
        rows: found.rows(None).map(line).collect(),
    }
}
