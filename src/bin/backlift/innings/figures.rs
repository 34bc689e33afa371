//! The innings for other programs, SI.

use backlift::innings::played::StrokeNow;
use serde::Serialize;
use serde_json::{Map, Value};

use super::computed::{Lead, Played};
use super::told::{lead, limits};

#[derive(Serialize)]
pub struct Figures {
    bat: String,
    capacity_share: f64,
    points: Vec<Point>,
    /// Of which stroke the next two are: the pull, where it is swung.
    lead_stroke: String,
    pull_at_fifty: PullRow,
    pull_at_end: PullRow,
    limits: Vec<&'static str>,
}

/// One score; the strokes by name.
#[derive(Serialize)]
struct Point {
    runs: f64,
    balls: u32,
    time_s: f64,
    /// With the slow fatigue state.
    strokes: Map<String, Value>,
    strokes_without_slow: Map<String, Value>,
}

#[derive(Serialize)]
struct StrokeRow {
    bat_speed_m_s: f64,
    stroke_time_s: f64,
    asked_time_s: f64,
    wrist_share: f64,
    grip_share: f64,
    time_in_hand_s: f64,
    fastest_ball_m_s: f64,
}

/// The pull at one score, with the slow fatigue state; its two ends beside it.
#[derive(Serialize)]
struct PullRow {
    runs: f64,
    #[serde(flatten)]
    with_slow: PullNow,
    without_slow: PullNow,
    with_slow_low: PullNow,
    with_slow_high: PullNow,
}

#[derive(Serialize)]
struct PullNow {
    bat_speed_drop_share: f64,
    bat_speed_m_s: f64,
    wrist_share: f64,
    time_in_hand_s: f64,
    fastest_ball_m_s: f64,
}

/// All figures of an innings.
pub fn of(played: &Played) -> serde_json::Result<Figures> {
    let points = played
        .points
        .iter()
        .map(|it| {
            Ok(Point {
                runs: it.left.runs,
                balls: it.left.balls_faced,
                time_s: it.left.time_s,
                strokes: by_name(played, &it.with_slow)?,
                strokes_without_slow: by_name(played, &it.without_slow)?,
            })
        })
        .collect::<serde_json::Result<_>>()?;
    Ok(Figures {
        bat: played.bat_label.clone(),
        capacity_share: played.capacity,
        points,
        lead_stroke: lead(played).to_owned(),
        pull_at_fifty: pull(&played.at_fifty),
        pull_at_end: pull(&played.at_end),
        limits: limits(played),
    })
}

fn by_name(played: &Played, strokes: &[StrokeNow]) -> serde_json::Result<Map<String, Value>> {
    let shown = played.shown.iter();
    shown
        .filter_map(|i| {
            Some((played.strokes.get(*i)?, strokes.get(*i)?, played.asked_time_s.get(*i)?))
        })
        .map(|(name, it, asked_time_s)| {
            let row = StrokeRow {
                bat_speed_m_s: it.fastest.contact.bat_speed_m_s,
                stroke_time_s: it.fastest.stroke_time_s,
                asked_time_s: *asked_time_s,
                wrist_share: it.wrist_share,
                grip_share: it.grip_share,
                time_in_hand_s: it.time_in_hand_s,
                fastest_ball_m_s: it.fastest_ball_m_s,
            };
            Ok((name.clone(), serde_json::to_value(row)?))
        })
        .collect()
}

fn pull(it: &Lead) -> PullRow {
    let now = |now: &StrokeNow| PullNow {
        bat_speed_drop_share: it.drop_share(now),
        bat_speed_m_s: now.fastest.contact.bat_speed_m_s,
        wrist_share: now.wrist_share,
        time_in_hand_s: now.time_in_hand_s,
        fastest_ball_m_s: now.fastest_ball_m_s,
    };
    PullRow {
        runs: it.runs,
        with_slow: now(&it.with_slow),
        without_slow: now(&it.without_slow),
        with_slow_low: now(&it.with_slow_low),
        with_slow_high: now(&it.with_slow_high),
    }
}
