//! The innings for other programs, SI.

use backlift::innings::played::StrokeNow;
use backlift::questions::innings::{Lead, Played};
use serde_json::{Map, Value, json};

use super::told::{lead, limits};

/// All figures of an innings.
pub fn of(played: &Played) -> Value {
    let points = played.points.iter().map(|it| {
        json!({
            "runs": it.left.runs,
            "balls": it.left.balls_faced,
            "time_s": it.left.time_s,
            "strokes": by_name(played, &it.with_slow),
            "strokes_without_slow": by_name(played, &it.without_slow),
        })
    });
    json!({
        "bat": played.bat_label,
        "capacity_share": played.capacity,
        "points": points.collect::<Vec<_>>(),
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
        let figures = json!({
            "bat_speed_m_s": it.fastest.contact.bat_speed_m_s,
            "stroke_time_s": it.fastest.stroke_time_s,
            "asked_time_s": played.asked_time_s.get(*i)?,
            "wrist_share": it.wrist_share,
            "grip_share": it.grip_share,
            "time_in_hand_s": it.time_in_hand_s,
            "fastest_ball_m_s": it.fastest_ball_m_s,
        });
        Some((played.strokes.get(*i)?.clone(), figures))
    };
    played.shown.iter().filter_map(row).collect()
}

/// The leading stroke at one score, with the slow fatigue state; what else may be believed of it beside that.
fn pull(it: &Lead) -> Value {
    let now = |now: &StrokeNow| {
        json!({
            "bat_speed_drop_share": it.drop_share(now),
            "bat_speed_m_s": now.fastest.contact.bat_speed_m_s,
            "wrist_share": now.wrist_share,
            "time_in_hand_s": now.time_in_hand_s,
            "fastest_ball_m_s": now.fastest_ball_m_s,
        })
    };
    let mut row = json!({"runs": it.runs});
    for (key, figure) in now(&it.with_slow).as_object().into_iter().flatten() {
        row[key] = figure.clone();
    }
    row["without_slow"] = now(&it.without_slow);
    row["with_slow_low"] = now(&it.with_slow_low);
    row["with_slow_high"] = now(&it.with_slow_high);
    row
}
