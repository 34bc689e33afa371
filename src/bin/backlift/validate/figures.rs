//! The rows for other programs.

use backlift::questions::validated::{Answer, Validated};
use backlift::validation::{Row, Verdict};
use serde_json::{Value, json};

use super::notation::accepted;

/// As JSON has it.
pub fn of(found: &Validated) -> Value {
    let line = |(answer, row): (&Answer, &Row)| {
        json!({
            "group": answer.group.words(),
            "check": answer.check,
            "what": row.what,
            "source": row.source,
            "unit": row.unit,
            "expected": row.expected,
            "sd": row.sd,
            "ours": row.ours,
            "difference": row.difference(),
            "verdict": match row.verdict {
                Verdict::Agrees => "agrees",
                Verdict::ByConstruction => "by_construction",
                Verdict::Disagrees => "disagrees",
                Verdict::NoData => "no_data",
            },
            // What it had to keep to, in words.
            "accepted": accepted(row).map(|it| it.replace('\u{2009}', " ")),
            "note": row.note,
        })
    };
    json!({
        "agrees": found.count(None, Verdict::Agrees),
        "by_construction": found.count(None, Verdict::ByConstruction),
        "disagrees": found.count(None, Verdict::Disagrees),
        "no_data": found.count(None, Verdict::NoData),
        "rows": found.rows(None).map(line).collect::<Value>(),
    })
}
