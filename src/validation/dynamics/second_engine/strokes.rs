//! Players, strokes and bats on both.

use rayon::prelude::*;

use super::super::own_strokes::{all, on_paths};
use super::super::{miss, worse};
use super::SOURCE;
use crate::player::joints::FRESH;
use crate::swing::contact::Contact;
use crate::swing::engine::pair::{ContactDifference, EngineSwing, engine_swing};
use crate::swing::player_stroke::Held;
use crate::validation::{Accept, CheckFault, Checked, Row, Verdict};

/// A stroke swung by both.
struct Both {
    own: Contact,
    engine: EngineSwing,
}

fn both(held: &Held) -> Result<Both, CheckFault> {
    let fastest = held.fastest(&FRESH, None)?;
    let engine = engine_swing(&held.swinger(&FRESH), fastest.stroke_time_s)?;
    Ok(Both { own: fastest, engine })
}

/// The contact of every stroke.
pub fn check() -> Result<Checked, CheckFault> {
    let mut found = compared(&all()?, "adult and child, light and heavy bat")?;
    // The largest miss at a step over that at half of it stands last.
    if let Some(row) = found.rows.pop() {
        found.rows.push(if row.verdict == Verdict::Disagrees { row.noted(KINKS) } else { row });
    }
    Ok(found)
}

/// Why the engine's step does not converge as a first order in the strokes as stored.
const KINKS: &str = "the boy's sweep with the light bat, 0.23 and 0.13 %: joints at their limit make kinks that no power of the \
                     step describes. Without the sweep it is the boy's drive, 0.15 and 0.07 %, which agrees";

/// The same on the paths that come with the strokes.
pub fn check_paths() -> Result<Checked, CheckFault> {
    compared(&on_paths()?, "on the fastest of their many paths, adult and child")
}

fn compared(strokes: &[Held], which: &str) -> Result<Checked, CheckFault> {
    let swung = strokes.par_iter().map(both).collect::<Result<Vec<_>, _>>()?;
    let worst = |of: &dyn Fn(&ContactDifference) -> f64| {
        swung.iter().fold(0.0, |m, it| worse(m, of(&it.engine.difference(&it.own)).abs()))
    };
    let every = |what: &str| format!("{} strokes, {which}, difference: {what}", swung.len());
    let share = |what: &str, off: f64| miss(every(what), SOURCE, off, 1e-3);
    let length = |what: &str, unit: &'static str, off: f64, most: f64| {
        let accept = Accept::Within(most);
        Row::compared(every(what), SOURCE, unit, 0.0, off, accept)
    };
    let unextrapolated = swung.iter().fold(0.0, |m, it| {
        let d = ContactDifference::between(&it.engine.fine, &it.own);
        worse(m, worse(d.bat_speed.abs(), worse(d.toe_speed.abs(), d.normal_speed.abs())))
    });
    let mut rows = vec![
        share("bat speed", worst(&|d| d.bat_speed)),
        share("toe speed", worst(&|d| d.toe_speed)),
        share("speed along the face's normal", worst(&|d| d.normal_speed)),
        miss(every("speeds, not extrapolated"), SOURCE, unextrapolated, 5e-3),
        length("time of contact", "ms", 1e3 * worst(&|d| d.time_s), 0.1),
        length("place of contact", "mm", 1e3 * worst(&|d| d.position_m), 1.0),
        length(
            "face and line",
            "°",
            worst(&|d| d.face_rad.abs().max(d.line_rad.abs())).to_degrees(),
            0.1,
        ),
    ];
    // The largest errors: single ones nearly cancel.
    let largest = |of: &dyn Fn(&EngineSwing) -> Contact| {
        swung.iter().fold(0.0, |m, it| {
            worse(m, ContactDifference::between(&of(&it.engine), &it.own).toe_speed.abs())
        })
    };
    let what = every("largest miss of toe speed at a step over that at half of it");
    let source = "a rule of first order, any text on it";
    let halved = largest(&|it| it.coarse) / largest(&|it| it.fine);
    rows.push(Row::compared(what, source, "", 2.0, halved, Accept::Between(1.8, 2.3)));
    Ok(rows.into())
}
