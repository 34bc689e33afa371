//! How often the middle of the bat comes to the ball: the muscles' noise, the timing and the eye together.

use super::typical::adult;
use crate::normal;
use crate::player::joints::FRESH;
use crate::validation::{Accept, CheckFault, Checked, Row};
use crate::worth::constants::{BALL_AT_BAT, JUDGED_PLACE, TIMING, TORQUE_NOISE};
use crate::worth::steadiness::Steadiness;

/// Source: Houghton, Dawson and Rubenson 2011, J Sports Sci 29:1097: club men of a high grade, whose good contacts of
/// an innings were counted (abstract read; what a good contact is was not seen).
const GOOD_SHARE: (f64, Option<f64>) = (0.70, Some(0.08));
const SOURCE: &str = "Houghton et al. 2011, good contacts of club men (abstract read)";
/// Within so much along and across the middle less than 6 % of the ball's speed is lost (Peploe and others 2018,
/// abstract read): what counts as good here.
const GOOD_M: [f64; 2] = [0.045, 0.020];
/// Order of magnitude: set before ours was seen, since the two do not count the same.
const ORDER: Accept = Accept::Between(0.40, 0.95);
/// Speed of the ball out of the hand, m/s: a bowling machine for club men, in round figures (assumption).
const BOWLED_M_S: f64 = 30.0;

pub(super) fn good() -> Result<Checked, CheckFault> {
    let man = adult()?;
    let taken_up = man.batter.take_up(&man.bat)?;
    let within = |z: f64| 2.0 * normal::below(z) - 1.0;
    let rows = taken_up
        .iter()
        .zip(&man.batter.strokes)
        .map(|(held, stroke)| {
            let time_s = held.fastest(&FRESH, None)?.stroke_time_s;
            let steadiness = Steadiness::of(held, time_s, BALL_AT_BAT.value * BOWLED_M_S)
                .ok_or("a swing that comes to the ball")?;
            let [along_m, across_m] =
                steadiness.scatter_m(TORQUE_NOISE.value, TIMING.value, JUDGED_PLACE.value);
            let share = within(GOOD_M[0] / along_m) * within(GOOD_M[1] / across_m);
            let who = format!("{}, {}", man.words, stroke.stroke.name);
            let what = format!("{who}: balls met within 45 × 20 mm of the middle");
            let row = Row::compared(what, SOURCE, "share", GOOD_SHARE, share, ORDER);
            Ok(row.noted(format!(
                "scatter along {:.0} and across {:.0} mm, of which the muscles' noise {:.0} and {:.0} mm and a \
                 timing of 7 ms {:.0} and {:.0} mm; a good contact is not defined alike",
                1e3 * along_m,
                1e3 * across_m,
                1e3 * TORQUE_NOISE.value * steadiness.by_noise_m[0],
                1e3 * TORQUE_NOISE.value * steadiness.by_noise_m[1],
                1e3 * TIMING.value * steadiness.by_timing_m_s[0],
                1e3 * TIMING.value * steadiness.by_timing_m_s[1],
            )))
        })
        .collect::<Result<Vec<Row>, CheckFault>>()?;
    Ok(rows.into())
}
