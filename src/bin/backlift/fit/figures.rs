//! Every figure of a fitting as JSON.

use backlift::fit::rule::Worth;
use backlift::innings::played::{AtScore, StrokeNow};
use serde::Serialize;
use serde_json::{Map, Value, json};

use backlift::units::Units;

use super::Fitted;
use crate::outcome::Stop;

#[derive(Serialize)]
struct Given<'a> {
    label: &'a str,
    reason: String,
}

/// The document; only `elapsed_s` may differ from run to run.
pub fn of(it: &Fitted, elapsed_s: f64) -> Result<Value, Stop> {
    let f = &it.fitting;
    let card = &it.card;
    let strokes: Vec<&str> =
        f.setting.batter.strokes.iter().map(|s| s.stroke.name.as_str()).collect();
    let best = f
        .best_given
        .map(|i| Given { label: &f.given[i].label, reason: super::told::given_reason(it, i) });
    let engine: Vec<Value> = it
        .headline
        .both_ways
        .iter()
        .map(|b| {
            json!({
                "stroke": strokes[b.stroke],
                "runs": b.runs,
                "bat_speed_m_s": b.bat_speed_m_s,
                "engine_bat_speed_m_s": b.engine_bat_speed_m_s,
                "difference_share": b.difference,
            })
        })
        .collect();
    let document = json!({
        "player": {
            "age_y": it.loaded.player.age_y,
            "stature_m": it.loaded.player.stature_m,
            "invented": it.loaded.scenario.invented,
        },
        "best_of_given": best,
        "recommendation": {
            "size": card.size,
            "length_m": card.length_m,
            "mass_kg": card.mass_kg,
            "mass_tolerance_kg": card.mass_tolerance_kg,
            "balance_m": card.balance_m,
            "balance_tolerance_m": card.balance_tolerance_m,
            "swing_moment_kg_m2": card.swing_moment_kg_m2,
            "swing_moment_tolerance_kg_m2": card.swing_moment_tolerance_kg_m2,
            "pickup_weight_kg": card.pickup_weight_kg,
            "sweet_spot_from_toe_m": card.sweet_spot_from_toe_m,
            "sweet_spot_tolerance_m": card.sweet_spot_tolerance_m,
            "handle_diameter_m": card.handle_diameter_m,
            "handle_tolerance_m": card.handle_tolerance_m,
            "pendulum_pivot_m": card.pendulum_pivot_m,
            "pendulum_swings": card.pendulum_swings,
            "pendulum_time_s": card.pendulum_time_s,
            "pendulum_time_tolerance_s": card.pendulum_time_tolerance_s,
            "at_end": worth(&f.recommendation.worth, &strokes),
            "meets_demand": f.recommendation.worth.passes(),
        },
        "rule": super::told::rule(it, Units::Si),
        "runner_up": f.runner_up.as_ref().map(|w| worth(w, &strokes)),
        "given": f.given.iter().map(|g| json!({
            "label": g.label,
            "meets_demand": g.worth.as_ref().is_some_and(Worth::passes),
            "at_end": g.worth.as_ref().map(|w| worth(w, &strokes)),
        })).collect::<Vec<_>>(),
        "pull_at_fifty": pull(it, it.headline.fifty),
        "pull_at_end": pull(it, it.headline.end),
        "innings": it.headline.points.iter().map(|p| point(p, &strokes)).collect::<Vec<_>>(),
        "both_dynamics": {
            "largest_difference_share": it.headline.largest_difference(),
            "swings": engine,
        },
        "surrogate_error_share": f.surrogate_error,
        "available_time_s": f.setting.available_time_s(),
        "asked_time_s": f.setting.asked_time_s,
        "map": f.map.iter().map(|c| json!({
            "mass_kg": c.worth.bat.mass_kg(),
            "balance_m": c.worth.bat.balance_m(),
            "swing_moment_kg_m2": c.worth.bat.swing_moment_kg_m2(),
            "swing_moment_range_kg_m2": c.swing_moment_range_kg_m2,
            "goal_m_s": c.worth.goal_m_s,
            "slack_share": c.worth.slack,
            "meets_demand": c.worth.passes(),
            "pull_m_s": f.setting.batter.stroke_index("pull").map(|i| c.worth.strokes[i].bat_speed_m_s),
        })).collect::<Vec<_>>(),
        "estimated": super::told::estimated(it),
        "sensitive_to": f.moved.iter().map(|m| json!({
            "what": m.what,
            "changes_advice": m.changes_advice,
            "still_does": !m.changes_advice,
            "would_choose": worth(&m.chosen, &strokes),
        })).collect::<Vec<_>>(),
        "cautions": card.cautions,
        "reason": card.reason,
        "how_sure": card.how_sure,
        "elapsed_s": elapsed_s,
    });
    Ok(document)
}

fn worth(w: &Worth, strokes: &[&str]) -> Value {
    let mut by_name = Map::new();
    for (name, s) in strokes.iter().zip(&w.strokes) {
        by_name.insert(
            (*name).to_owned(),
            json!({
                "stroke_time_s": s.time_s,
                "bat_speed_m_s": s.bat_speed_m_s,
                "held_back_stroke_time_s": s.held_back_time_s,
                "wrist_share": s.wrist_share,
            }),
        );
    }
    json!({
        "mass_kg": w.bat.mass_kg(),
        "balance_m": w.bat.balance_m(),
        "swing_moment_kg_m2": w.bat.swing_moment_kg_m2(),
        "goal_m_s": w.goal_m_s,
        "slack_share": w.slack,
        "strokes": by_name,
    })
}

fn stroke(now: &StrokeNow) -> Value {
    json!({
        "bat_speed_m_s": now.fastest.contact.bat_speed_m_s,
        "stroke_time_s": now.fastest.stroke_time_s,
        "wrist_share": now.wrist_share,
        "grip_share": now.grip_share,
        "time_in_hand_s": now.time_in_hand_s,
        "fastest_ball_m_s": now.fastest_ball_m_s,
    })
}

fn point(p: &AtScore, strokes: &[&str]) -> Value {
    let all = |now: &[StrokeNow]| {
        strokes.iter().zip(now).map(|(n, s)| ((*n).to_owned(), stroke(s))).collect::<Map<_, _>>()
    };
    json!({
        "runs": p.left.runs,
        "balls": p.left.balls_faced,
        "strokes": all(&p.with_slow),
        "strokes_without_slow": all(&p.without_slow),
    })
}

fn pull(it: &Fitted, at: usize) -> Option<Value> {
    let pull = it.fitting.setting.batter.stroke_index("pull")?;
    let (fresh, now) = (it.headline.points.first()?, it.headline.points.get(at)?);
    let drop = |now: &StrokeNow, fresh: &StrokeNow| {
        1.0 - now.fastest.contact.bat_speed_m_s / fresh.fastest.contact.bat_speed_m_s
    };
    let (slow, without) = (&now.with_slow[pull], &now.without_slow[pull]);
    Some(json!({
        "runs": now.left.runs,
        "bat_speed_drop_share": drop(slow, &fresh.with_slow[pull]),
        "bat_speed_drop_share_without_slow": drop(without, &fresh.without_slow[pull]),
        "with_slow": stroke(slow),
        "without_slow": stroke(without),
    }))
}
