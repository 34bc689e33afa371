//! A free bat with a stiff splice against the closed form of a rigid bat and an instant contact.
//!
//! The closed form knows no time. In a contact of T ms at 57 rad/s the face turns under the ball, which slides
//! along it: at 0.35 m from the toe that gives 0.29 % T, in proportion to the height of the ball's middle over
//! the bat's axis; that the face turns away takes 0.17 % T² (found by the SciPy model of
//! `assets/reference/hit_scipy.py` with balls of other sizes and stiffnesses). Both fade with the contact.

use super::shape;
use crate::comparison::collision::exit_speed_off_bat_m_s;
use crate::impact::ball::Ball;
use crate::impact::hit::Hit;
use crate::impact::parts::Parts;
use crate::impact::splice::Hinge;
use crate::impact::strike::{STEP_S, Struck, Until, strike_in_steps};
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::measurement::plan::BALL_KG;
use crate::validation::{Accept, CheckFault, Checked, Row, worse};

const SOURCE: &str = "rigid free bat, instant contact, in closed form: the bat as a mass of 1/(1/M + b²/I) (Nathan 2003, Am J \
                      Phys 71:134; Cross & Nathan 2006, Am J Phys 74:896, from memory, high)";
/// Half a per cent, as asked of the hit.
const ASKED: Accept = Accept::Share(5e-3);
/// From the toe, m.
const FROM_TOE_M: [f64; 4] = [0.05, 0.15, 0.25, 0.35];
/// As good as rigid, N m/rad: the bat bends in a seventh of the contact.
const STIFF_N_M: f64 = 1e7;
/// So far away that the bat does not turn, m.
const FAR_M: f64 = -1e6;
const BALL_M_S: f64 = 25.0;
const BAT_M_S: f64 = 20.0;

pub(super) fn check() -> Result<Checked, CheckFault> {
    let shape = shape("short handle")?;
    let (bat, parts) = (shape.bat("reference")?, Parts::of(&shape));
    let hit = |turns_about_m: f64, from_toe_m: f64| Hit {
        parts,
        hinge: Hinge::of(STIFF_N_M, &parts),
        ball: Ball::of(BALL_KG),
        hands: vec![],
        contact_from_top_m: parts.toe_m - from_toe_m,
        across_m: 0.0,
        bat_m_s: BAT_M_S,
        turns_about_m,
        ball_m_s: BALL_M_S,
    };
    let theirs = |it: &Hit| {
        let e = it.ball.restitution;
        exit_speed_off_bat_m_s(&bat, [it.contact_from_top_m, 0.0], BAT_M_S, BALL_M_S, BALL_KG, e)
    };
    let mut rows = Vec::new();
    for (turns_about_m, words) in
        [(FAR_M, "not turning"), (PICKUP_AXIS_FROM_TOP_M, "turning about the pickup axis")]
    {
        for from_toe_m in FROM_TOE_M {
            let it = hit(turns_about_m, from_toe_m);
            let ours = strike_in_steps(&it, Until::Away, STEP_S)?.exit_m_s;
            let what =
                format!("stiff free bat, ball speed off it: {words}, {from_toe_m} m from the toe");
            rows.push(Row::compared(what, SOURCE, "m/s", theirs(&it), ours, ASKED));
        }
    }
    let mut worst = 0.0;
    for from_toe_m in FROM_TOE_M {
        let it = hit(PICKUP_AXIS_FROM_TOP_M, from_toe_m);
        worst = worse(worst, (shorter(&it)?.exit_m_s / theirs(&it) - 1.0).abs());
    }
    let what = "stiff free bat, ball speed off it: turning, the largest of the four misses in a contact a sixth as long";
    rows.push(
        Row::compared(what, SOURCE, "%", 0.0, 100.0 * worst, Accept::Within(0.1))
            .noted("the face turns under the ball while they touch; the closed form knows no time"),
    );
    Ok(rows.into())
}

/// The same with a ball a hundred times as stiff, and a splice that bends as much faster.
fn shorter(hit: &Hit) -> Result<Struck, CheckFault> {
    let times = 100.0;
    let mut it = hit.clone();
    it.ball.stiffness_n_m15 *= times;
    it.hinge = Hinge::of(times * STIFF_N_M, &hit.parts);
    Ok(strike_in_steps(&it, Until::Away, STEP_S / 25.0)?)
}
