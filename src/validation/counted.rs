//! How the rows came out, counted: what the card quotes.

use super::{Group, Row, Verdict};
use crate::card::outside::{Held, Outside};

/// Counts the rows of all checks.
pub fn counted(rows: &[Row]) -> Outside {
    let held = |group: Group| {
        let count = |verdict: Verdict| {
            rows.iter().filter(|it| it.group == group && it.verdict == verdict).count()
        };
        Held {
            group: group.words(),
            agrees: count(Verdict::Agrees),
            by_construction: count(Verdict::ByConstruction),
            disagrees: count(Verdict::Disagrees),
            no_data: count(Verdict::NoData),
        }
    };
    let speed_or_time = |it: &&Row| it.group == Group::Dynamics && ["m/s", "s"].contains(&it.unit);
    let misses = rows.iter().filter(speed_or_time).filter_map(|it| {
        let expected = it.expected.filter(|it| *it != 0.0)?;
        Some((it.difference()? / expected).abs())
    });
    Outside {
        groups: Group::ALL.map(held),
        mechanics_within: (1000.0 * misses.fold(0.0, f64::max)).ceil() / 1000.0,
    }
}
