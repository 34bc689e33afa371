//! How far a figure may move, the others held, before the advice would be another.
//!
//! A bat still serves while pull and hook keep their demand, with a hundredth of the time there is as
//! grace, and while neither the goal nor the late bat speed of pull and hook falls by more than the
//! width within which bats count as tied. That is where the maker's tolerances come from. They are
//! never narrower than a bench can tell.

use super::rule::Worth;
use super::setting::Setting;
use super::surrogate::Surrogate;
use crate::bat::Bat;
use crate::bat::expected::bat_with_swing_moment;

/// Time given as grace on the demand, as a share of the time there is.
const GRACE: f64 = 0.01;
/// Narrowest half-width that a bench can tell: scale, balance, thirty swings (about twice their errors).
pub const NARROWEST: [f64; 3] = [0.010, 0.004, 0.020];
/// Widest half-width: beyond it the bat is another bat whatever the figures say (assumption).
const WIDEST: [f64; 3] = [0.050, 0.012, 0.060];

/// Lowest and highest acceptable figures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tolerances {
    /// Dead weight, kg.
    pub mass_kg: [f64; 2],
    /// Balance point from the top, m.
    pub balance_m: [f64; 2],
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: [f64; 2],
}

/// Moves each figure alone, both ways.
pub fn tolerances(
    setting: &Setting,
    surrogate: &Surrogate,
    chosen: &Worth,
    tie_width: f64,
) -> Tolerances {
    let serves = |bat: &Bat| {
        let worth = Worth::new(setting, bat.clone(), surrogate.at(bat));
        worth.slack >= chosen.slack.min(0.0) - GRACE
            && worth.goal_m_s >= chosen.goal_m_s * (1.0 - tie_width)
            && setting.demanded().into_iter().all(|i| {
                worth.strokes[i].bat_speed_m_s
                    >= chosen.strokes[i].bat_speed_m_s * (1.0 - tie_width)
            })
    };
    let bat = &chosen.bat;
    let figures = [bat.mass_kg(), bat.balance_m(), bat.swing_moment_kg_m2()];
    let scale = [1.0, 1.0, figures[2]];
    let side = |axis: usize, sign: f64| {
        let moved = |share: f64| {
            let mut f = figures;
            f[axis] += sign * share * WIDEST[axis] * scale[axis];
            bat_with_swing_moment(&surrogate.domain.family, bat.label(), f[0], f[1], f[2])
                .is_ok_and(|bat| serves(&bat))
        };
        let (mut can, mut cannot) = (0.0, 1.0);
        if moved(1.0) {
            can = 1.0;
        } else {
            for _ in 0..30 {
                let share = 0.5 * (can + cannot);
                if moved(share) { can = share } else { cannot = share }
            }
        }
        (can * WIDEST[axis]).max(NARROWEST[axis]) * scale[axis]
    };
    let range = |axis: usize| [figures[axis] - side(axis, -1.0), figures[axis] + side(axis, 1.0)];
    Tolerances { mass_kg: range(0), balance_m: range(1), swing_moment_kg_m2: range(2) }
}
