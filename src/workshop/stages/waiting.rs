//! What must lie and wait before the next hand is laid on it. Common practice, no source.

use super::{BatLog, Moment, Stage};

const HOUR_MIN: i64 = 60;
/// A bat with a new splice is not played, min.
const UNPLAYED_MIN: i64 = 48 * HOUR_MIN;

/// Waiting after a stage, min, and why.
pub fn after(stage: Stage) -> Option<(i64, &'static str)> {
    match stage {
        Stage::Spliced => Some((24 * HOUR_MIN, "the splice stays clamped for 24 h")),
        Stage::Oiled => Some((24 * HOUR_MIN, "the oil sinks in for 24 h, the bat lying flat")),
        Stage::Bound => Some((12 * HOUR_MIN, "the glue under the twine dries for 12 h")),
        _ => None,
    }
}

/// What has to be waited for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Wait {
    /// Not before this.
    pub until: Moment,
    /// Why.
    pub why: &'static str,
}

/// What the next step of a bat waits for, if anything.
pub fn next(log: &BatLog) -> Option<Wait> {
    // Another reading in a stage begins no new wait.
    let waits = log.entries.iter().filter(|it| !it.again).filter_map(|entry| {
        let (minutes, why) = after(entry.stage)?;
        Some(Wait { until: entry.at.after_minutes(minutes), why })
    });
    waits.max_by_key(|it| it.until)
}

/// Earliest moment to play with it: two days after the handle went in. None before that.
pub fn playable(log: &BatLog) -> Option<Moment> {
    let spliced = log.entries.iter().find(|it| it.stage.has_handle())?;
    Some(spliced.at.after_minutes(UNPLAYED_MIN))
}
