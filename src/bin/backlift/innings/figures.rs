//! The innings for other programs, SI.

use backlift::comparison::figure::StrokeFigure::{
    BatSpeed, FastestBall, GripShare, StrokeTime, TimeInHand, WristShare,
};
use backlift::innings::played::StrokeNow;
use backlift::questions::innings::{Lead, Played};
use serde_json::{Map, Value, json};

use super::told::{lead, limits};
use crate::json::{joined, joints, of_stroke};

/// All figures of an innings.
pub fn of(played: &Played) -> Value {
    let points = played.points.iter().map(|it| {
        json!({
            "runs": it.left.runs,
            "balls": it.left.balls_faced,
            "time_s": it.left.time_s,
            "strokes": by_name(played, &it.with_slow),
            "strokes_without_slow": by_name(played, &it.without_slow),
            "capacities": joints(&played.strength.times(&it.left.with_slow)),
            "capacities_without_slow": joints(&played.strength.times(&it.left.without_slow)),
        })
    });
    json!({
        "bat": played.bat_label,
        "capacity_share": played.capacity,
        "points": points.collect::<Value>(),
        "lead_stroke": lead(played),
        "pull_at_fifty": pull(&played.at_fifty),
        "pull_at_end": pull(&played.at_end),
        "limits": limits(played),
    })
}

/// The strokes shown, by name.
fn by_name(played: &Played, strokes: &[StrokeNow]) -> Map<String, Value> {
    let row = |i: &usize| {
        let it = strokes.get(*i)?;
        let figures = joined([
            of_stroke(it, &[BatSpeed, StrokeTime]),
            json!({ "asked_time_s": played.asked_time_s.get(*i)? }),
            of_stroke(it, &[WristShare, GripShare, TimeInHand, FastestBall]),
        ]);
        Some((played.strokes.get(*i)?.clone(), figures))
    };
    played.shown.iter().filter_map(row).collect()
}

/// The leading stroke at one score, with the slow fatigue state; what else may be believed of it beside that.
fn pull(it: &Lead) -> Value {
    let now = |now: &StrokeNow| {
        joined([
            json!({ "bat_speed_drop_share": it.drop_share(now) }),
            of_stroke(now, &[BatSpeed, WristShare, TimeInHand, FastestBall]),
        ])
    };
    let beside = json!({
        "without_slow": now(&it.without_slow),
        "with_slow_low": now(&it.with_slow_low),
        "with_slow_high": now(&it.with_slow_high),
    });
    joined([json!({ "runs": it.runs }), now(&it.with_slow), beside])
}
