//! What every card must say, and what a junior's must say besides.

use crate::units::{Units, spoken_stature};

/// Below this age a player is a junior here, years. Source: assumption; the age of majority in most places.
pub const JUNIOR_BELOW_Y: f64 = 18.0;

/// Statures at which the trade's size charts go to the next size, m: sizes 1 to 6, Harrow, short handle,
/// long handle. Source: common practice, no source; makers differ by about 0.05 m.
pub const SIZE_STEPS_M: [f64; 8] = [1.295, 1.37, 1.45, 1.50, 1.575, 1.675, 1.725, 1.88];

/// Stature at which to fit again, m, for a player who may still grow: half a size on.
///
/// Half the width of the band of statures that the player's size is sold for (the nearest bounded band at
/// either end), which comes to 25 to 50 mm for juniors. None from [`JUNIOR_BELOW_Y`] on. Source of the rule:
/// assumption; bands [`SIZE_STEPS_M`].
pub fn refit_stature_m(age_y: f64, stature_m: f64) -> Option<f64> {
    if age_y >= JUNIOR_BELOW_Y {
        return None;
    }
    // The last band (short handle) is grown men's and twice as wide: a tall junior takes Harrow's.
    let bands = SIZE_STEPS_M.windows(2).take(SIZE_STEPS_M.len() - 2);
    let mut half_band_m = 0.0;
    for (n, band) in bands.enumerate() {
        if let [from_m, to_m] = band
            && (n == 0 || stature_m >= *from_m)
        {
            half_band_m = 0.5 * (to_m - from_m);
        }
    }
    Some(stature_m + half_band_m)
}

/// The cautions that stand on every card, the junior's own among them.
///
/// `refit_stature_m` is that of the card; it is said only to a junior.
pub fn standing(age_y: f64, refit_stature_m: Option<f64>) -> Vec<String> {
    let is_junior = age_y < JUNIOR_BELOW_Y;
    let pain = match is_junior {
        true => "Pain ends the session: stop, rest, tell an adult you trust.",
        false => "Pain ends the session: stop and rest.",
    };
    let mut cautions = vec![
        "Not medical advice: a computed fit, from measurements and published averages.".to_owned(),
        pain.to_owned(),
    ];
    if is_junior {
        let at = refit_stature_m
            .map(|it| format!("at {}, or ", spoken_stature(it, Units::Trade)))
            .unwrap_or_default();
        cautions.push(format!("Growth changes the answer: fit again {at}after six months."));
        cautions
            .push("With a hard ball: a helmet, a warm-up before, and an adult there.".to_owned());
        cautions.push(
            "Ask the coach before buying, and a medical professional about any old injury."
                .to_owned(),
        );
    } else {
        cautions.push("Ask a coach, and a medical professional about any old injury.".to_owned());
    }
    cautions.push("Local playing conditions decide which bats may be used.".to_owned());
    cautions.push("The model does not know technique, confidence or injury.".to_owned());
    cautions
}
