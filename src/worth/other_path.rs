//! The other paths of a stroke: what each bat gains on the one that suits player and bat best.
//!
//! A player finds the way that suits him or her, and may find another for another bat. Every bat is swung on each of
//! them by the likeliest player, and goes on the best of those and the stored one.

use super::constants::TIME_OVER_SPEED;
use crate::bat::Bat;
use crate::calibration::limit::{LN_TIME, LnSwing, Near, less, swing_at};
use crate::measurement::nets::PART_COUNT;
use crate::stroke::Stroke;
use crate::swing::player_stroke::{PlayerStroke, SwingFault};

/// What a swing counts to a stroke, on the logarithm: its speed, and where the ball is short its time.
pub fn merit(stroke: &Stroke, [ln_time, ln_speed, ..]: LnSwing) -> f64 {
    let time = if stroke.answers_short_ball { TIME_OVER_SPEED.value } else { 0.0 };
    ln_speed - time * ln_time
}

/// What the other paths of a stroke do to one bat.
#[derive(Clone, Debug, Default)]
pub struct OnPaths {
    /// Figures on the best path less those on the stored one; nothing where that is best.
    pub best: LnSwing,
    /// By path, the time over that on the stored path, on the logarithm: where to look with another bat, no result.
    pub longer: Vec<f64>,
}

/// One bat on every path; `like` is what they do to another bat of the same player.
pub fn on_paths(
    paths: &[PlayerStroke],
    bat: &Bat,
    here: &LnSwing,
    near: &dyn Fn(f64) -> Near,
    like: Option<&OnPaths>,
) -> Result<OnPaths, SwingFault> {
    let mut out = OnPaths::default();
    for (i, path) in paths.iter().enumerate() {
        let longer = like.and_then(|it| it.longer.get(i).copied()).unwrap_or(0.0);
        let near = near(here[LN_TIME] + longer);
        let swung = swing_at(&path.hold(bat)?, &[0.0; PART_COUNT], Some(near));
        let gain = swung.map(|it| less(&it.swing, here));
        out.longer.push(gain.map_or(longer, |[longer, ..]| longer));
        if let Some(gain) =
            gain.filter(|it| merit(&path.stroke, *it) > merit(&path.stroke, out.best))
        {
            out.best = gain;
        }
    }
    Ok(out)
}
