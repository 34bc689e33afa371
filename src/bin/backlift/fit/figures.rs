//! Every figure of an advice as JSON.

use backlift::card::Figure;
use backlift::card::order::Order;
use backlift::comparison::figure::StrokeFigure::{
    BatSpeed, FastestBall, GripShare, StrokeTime, TimeInHand, WristShare,
};
use backlift::fit::fitting::{Fitting, TodayAdvice};
use backlift::fit::middles::LimitedBy;
use backlift::fit::pays::Pays;
use backlift::innings::played::{AtScore, StrokeNow};
use backlift::questions::fitted::Fitted;
use backlift::questions::loaded::Loaded;
use backlift::stroke::PULL;
use backlift::worth::constants::constants;
use backlift::worth::expected::Worth;
use backlift::worth::possible::{DRAWS, SEED};
use backlift::worth::suits::suits_words;
use backlift::worth::today::Given;
use serde_json::{Value, json};

use crate::json::{joined, of_stroke};
use crate::ounce;

/// Today's advice alone.
pub fn today(loaded: &Loaded, now: &TodayAdvice, elapsed_s: f64) -> Value {
    joined([of_today(loaded, now), json!({ "elapsed_s": elapsed_s })])
}

/// All of it; only `elapsed_s` may differ from run to run.
pub fn of(it: &Fitted, elapsed_s: f64) -> Value {
    joined([
        of_today(&it.loaded, &it.fitting.now),
        of_order(it),
        ounce::figures(&it.ounces()),
        json!({ "elapsed_s": elapsed_s }),
    ])
}

fn names(now: &TodayAdvice) -> Vec<&str> {
    now.setting.batter.strokes.iter().map(|it| it.stroke.name.as_str()).collect()
}

fn of_today(loaded: &Loaded, now: &TodayAdvice) -> Value {
    let today = &now.today;
    let strokes = names(now);
    let label = |i: usize| today.given[i].label.as_str();
    let constants = constants(loaded.player.age_y);
    let constants = constants.iter().map(|it| {
        json!({
            "what": it.what,
            "unit": it.unit,
            "value": it.value,
            "range": it.range,
            "source": format!("{} ({})", it.work, it.status.words()),
        })
    });
    let use_today = today.use_today.as_ref().map(|it| {
        json!({
            "label": label(it.bat),
            "decided": it.decided,
            "as_good_as": it.as_good_as.iter().map(|i| label(*i)).collect::<Value>(),
        })
    });
    let settle = now.would_settle.iter().map(|it| json!({ "what": it.what, "chance": it.chance }));
    let left = today.better_left().into_iter().map(|k| strokes[k]);
    json!({
        "player": {
            "age_y": loaded.player.age_y,
            "stature_m": loaded.player.stature_m,
            "invented": loaded.scenario.invented,
        },
        "invented": loaded.scenario.invented,
        "draws": DRAWS,
        "seed": SEED,
        "constants": constants.collect::<Value>(),
        "in_time_assumed": today.in_time_assumed,
        "seen_contradicts": today.seen_contradicts,
        "given": today.given.iter().map(|it| given(it, &strokes)).collect::<Value>(),
        "use_today": use_today,
        "better_left": left.collect::<Value>(),
        "would_settle": settle.collect::<Value>(),
        "asked_time_s": now.setting.asked_time_s,
        "estimated": super::told::estimated(loaded),
        "cautions": super::told::cautions(loaded),
    })
}

fn given(it: &Given, strokes: &[&str]) -> Value {
    let worth = it.worth.as_ref();
    json!({
        "label": it.label,
        "suits": suits_words(it.suits).replace(' ', "_"),
        "worth_m_s": worth.map(Worth::mean_m_s),
        "worth_sd_m_s": worth.map(Worth::sd_m_s),
        "ball_m_s": worth.map(|it| it.ball_m_s),
        "chance_in_time": worth.map(|it| it.chance_in_time),
        "chance_near_best": it.chance_near_best,
        "strokes": worth.map(|it| by_stroke(it, strokes)),
    })
}

/// Rows by the names of their strokes.
fn named(strokes: &[&str], rows: impl Iterator<Item = Value>) -> Value {
    strokes.iter().map(|it| (*it).to_owned()).zip(rows).collect()
}

fn by_stroke(worth: &Worth, strokes: &[&str]) -> Value {
    let rows = worth.strokes.iter().map(|it| {
        json!({
            "chance_in_time_fresh": it.in_time_fresh,
            "chance_in_time": it.in_time_late,
            "ball_m_s": it.ball_m_s,
            "met_from_top_m": it.aim_m,
        })
    });
    named(strokes, rows)
}

fn simulated(at_end: &[StrokeNow], strokes: &[&str]) -> Value {
    let rows = at_end.iter().map(|it| {
        json!({
            "stroke_time_s": it.fastest.stroke_time_s,
            "bat_speed_m_s": it.bat_speed_m_s(),
            "wrist_share": it.wrist_share,
        })
    });
    named(strokes, rows)
}

fn of_order(it: &Fitted) -> Value {
    let f = &it.fitting;
    let card = &it.card;
    let strokes = names(&f.now);
    let order = json!({
        "pays": match f.order.pays {
            Pays::Yes => "yes",
            Pays::No => "no",
            Pays::Undecided => "undecided",
        },
        "gain_m_s": f.order.gain_m_s,
        "gain_sd_m_s": f.order.gain_sd_m_s,
    });
    let middles = f.middles.iter().map(|row| {
        let bat = &row.best.made.bat;
        json!({
            "middle": row.middle.words(),
            "mass_kg": bat.mass_kg(),
            "balance_m": bat.balance_m(),
            "swing_moment_kg_m2": bat.swing_moment_kg_m2(),
            "sweet_spot_from_toe_m": bat.length_m() - bat.percussion_m(),
            "swell_from_toe_m": row.best.made.shape.swell_from_toe_m(),
            "worth_m_s": row.best.worth.mean_m_s(),
            "limited_by": row.limited_by.map(LimitedBy::key),
            "beyond_gains_m_s": row.beyond_gains_m_s,
        })
    });
    let at_end = f.strokes.iter().zip(&f.now.today.given).map(|(it, given)| {
        let at_end = it.as_ref().map(|it| simulated(it, &strokes));
        json!({ "label": given.label, "strokes": at_end })
    });
    json!({
        "given_at_end": at_end.collect::<Value>(),
        "order": order,
        "middles": middles.collect::<Value>(),
        "recommendation": recommendation(it, &strokes),
        "pull_at_fifty": pull(f, it, it.headline.fifty),
        "pull_at_end": pull(f, it, it.headline.end),
        "innings": it.headline.points.iter().map(|p| point(p, &strokes)).collect::<Value>(),
        "both_dynamics": {
            "largest_difference_share": it.headline.largest_difference(),
            "swings": engine(it, &strokes),
        },
        "surrogate_error_share": f.surrogate_error(),
        "map": map(f),
        "reason": card.reason,
        "how_sure": card.how_sure,
    })
}

/// The card's figures, and what the bat is worth.
fn recommendation(it: &Fitted, strokes: &[&str]) -> Value {
    let (card, found) = (&it.card, &it.fitting.recommendation);
    let times = card
        .pendulum_times()
        .into_iter()
        .map(|it| json!({ "mass_kg": it.mass_kg, "low_s": it.low_s, "high_s": it.high_s }));
    let asked = |it: Figure| {
        let ([key, limits_key], asked) = (it.about().keys, card.asked(it));
        json!({ key: asked.target, limits_key: asked.tolerance })
    };
    let rest = json!({
        "pendulum_pivot_m": card.pendulum_pivot_m,
        "pendulum_swings": card.pendulum_swings,
        "pendulum_time_s": card.pendulum_time_s.target,
        "pendulum_time_tolerance_s": card.pendulum_time_s.tolerance,
        "pendulum_time_s_by_mass": times.collect::<Value>(),
        "worth_m_s": found.worth.mean_m_s(),
        "worth_sd_m_s": found.worth.sd_m_s(),
        "ball_m_s": found.worth.ball_m_s,
        "chance_in_time": found.worth.chance_in_time,
        "strokes": by_stroke(&found.worth, strokes),
        "at_end": simulated(&found.strokes, strokes),
    });
    let figures = Figure::PRINTED.map(|it| match it {
        // The pickup weight says the same in other words.
        Figure::SwingMoment => {
            joined([asked(it), json!({ "pickup_weight_kg": card.pickup_weight_kg })])
        }
        _ => asked(it),
    });
    let order = card.order.as_ref().map_or(Value::Null, ordered);
    joined([json!({ "size": card.size, "length_m": card.length_m }), joined(figures), rest, order])
}

fn ordered(it: &Order) -> Value {
    let wish = &it.wish;
    let said = [
        ("order_number", it.number.as_ref().map(|it| json!(it))),
        ("wished_middle", wish.middle.map(|it| json!(it.words()))),
        ("wished_handle", wish.handle_shape.map(|it| json!(it.words()))),
        ("wished_grips", wish.grips.map(|it| json!(it))),
        ("wish", wish.note.as_ref().map(|it| json!(it))),
    ];
    let said = said.into_iter().filter_map(|(key, value)| Some((key.to_owned(), value?)));
    Value::Object(said.collect())
}

fn engine(it: &Fitted, strokes: &[&str]) -> Value {
    let rows = it.headline.both_ways.iter().map(|b| {
        json!({
            "stroke": strokes[b.stroke],
            "runs": b.runs,
            "bat_speed_m_s": b.bat_speed_m_s,
            "engine_bat_speed_m_s": b.engine_bat_speed_m_s,
            "difference_share": b.difference,
        })
    });
    rows.collect()
}

fn map(f: &Fitting) -> Value {
    let rows = f.map().iter().map(|c| {
        json!({
            "mass_kg": c.made.bat.mass_kg(),
            "balance_m": c.made.bat.balance_m(),
            "swing_moment_kg_m2": c.made.bat.swing_moment_kg_m2(),
            "swing_moment_range_kg_m2": c.made.swing_moment_range_kg_m2,
            "middle": c.middle.words(),
            "worth_m_s": c.worth.mean_m_s(),
            "ball_m_s": c.worth.ball_m_s,
            "chance_in_time": c.worth.chance_in_time,
        })
    });
    rows.collect()
}

fn stroke(now: &StrokeNow) -> Value {
    of_stroke(now, &[BatSpeed, StrokeTime, WristShare, GripShare, TimeInHand, FastestBall])
}

fn point(p: &AtScore, strokes: &[&str]) -> Value {
    let all = |now: &[StrokeNow]| named(strokes, now.iter().map(stroke));
    json!({
        "runs": p.left.runs,
        "balls": p.left.balls_faced,
        "strokes": all(&p.with_slow),
        "strokes_without_slow": all(&p.without_slow),
    })
}

fn pull(f: &Fitting, it: &Fitted, at: usize) -> Option<Value> {
    let pull = f.setting().batter.stroke_index(PULL)?;
    let (fresh, now) = (it.headline.points.first()?, it.headline.points.get(at)?);
    let drop =
        |now: &StrokeNow, fresh: &StrokeNow| 1.0 - now.bat_speed_m_s() / fresh.bat_speed_m_s();
    let (slow, without) = (&now.with_slow[pull], &now.without_slow[pull]);
    Some(json!({
        "runs": now.left.runs,
        "bat_speed_drop_share": drop(slow, &fresh.with_slow[pull]),
        "bat_speed_drop_share_without_slow": drop(without, &fresh.without_slow[pull]),
        "with_slow": stroke(slow),
        "without_slow": stroke(without),
    }))
}
