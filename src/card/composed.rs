//! The card of a fitting.

use super::outside::OUTSIDE;
use super::{Asked, Card, CardFault, Condition, Figure, HandleShape, PlayerLine, cautions};
use crate::bat::pendulum::usual_swings_s;
use crate::fit::fitting::Fitting;
use crate::fit::headline::Headline;
use crate::fit::pays::{Gain, Pays};
use crate::fit::tolerance::TimeForMass;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::stroke::PULL;
use crate::units::{Units, spoken_ball};

/// Swings to time on the bench: thirty, since ten leave an error about as wide as the tolerance.
const SWINGS: u32 = 30;
/// Half-width of the handle's tolerance, m: assumption, no source.
const HANDLE_TOLERANCE_M: f64 = 0.001;
/// Edition of the model and its tables.
pub const MODEL: &str = "2026-11";

/// Fills the card, rounded for the bench.
pub fn compose(
    fitting: &Fitting,
    headline: &Headline,
    invented: bool,
    software: &str,
) -> Result<Card, CardFault> {
    let it = &fitting.recommendation;
    let bat = &it.made.bat;
    let player = &fitting.setting().batter.player;
    let t = &it.tolerances;
    let seconds = |swing_moment: f64| {
        usual_swings_s(bat.mass_kg(), bat.balance_m(), swing_moment, SWINGS).unwrap_or(f64::NAN)
    };
    let percussion_from_toe = |swing_moment: f64, balance: f64| {
        let d = balance - PICKUP_AXIS_FROM_TOP_M;
        bat.length_m() - PICKUP_AXIS_FROM_TOP_M - swing_moment / (bat.mass_kg() * d)
    };
    let [low, high] = t.swing_moment_kg_m2;
    // Where the sweet spot goes when the swing moment is at its limits, weight and balance as asked.
    let sweet =
        [percussion_from_toe(high, bat.balance_m()), percussion_from_toe(low, bat.balance_m())];
    // At the weight asked and any balance point within its limits; where none is sure, at the balance asked.
    let time = t.times_at(bat.mass_kg(), SWINGS).unwrap_or(TimeForMass {
        mass_kg: bat.mass_kg(),
        low_s: seconds(low),
        high_s: seconds(high),
    });
    let refit_stature_m = cautions::refit_stature_m(player.age_y, player.stature_m);
    Card {
        player: PlayerLine {
            age_y: player.age_y,
            stature_m: player.stature_m,
            handed: player.handed,
        },
        invented,
        size: it.size.clone(),
        length_m: bat.length_m(),
        figures: Figure::ALL.map(|figure| match figure {
            Figure::SwingMoment => Asked::new(bat.swing_moment_kg_m2(), t.swing_moment_kg_m2),
            Figure::DeadWeight => Asked::new(bat.mass_kg(), t.mass_kg),
            Figure::Balance => Asked::new(bat.balance_m(), t.balance_m),
            Figure::SweetSpot => Asked::new(bat.length_m() - bat.percussion_m(), sweet),
            Figure::HandleDiameter => {
                let wanted_m = fitting.setting().batter.handle_diameter_m;
                Asked::new(wanted_m, [wanted_m - HANDLE_TOLERANCE_M, wanted_m + HANDLE_TOLERANCE_M])
            }
        }),
        region: Some(it.region),
        pickup_weight_kg: it.pickup_weight_kg,
        pendulum_pivot_m: PICKUP_AXIS_FROM_TOP_M,
        pendulum_swings: SWINGS,
        pendulum_time_s: Asked::new(seconds(bat.swing_moment_kg_m2()), [time.low_s, time.high_s]),
        handle_shape: HandleShape::Oval,
        reason: format!("{} {}", reason(fitting), ounce(fitting, headline)),
        how_sure: how_sure(fitting, headline),
        cautions: cautions::standing(player.age_y, refit_stature_m),
        condition: Condition { grips: 1, toe_guard: true, oiled: false },
        refit_stature_m,
        order: None,
        software: software.to_owned(),
        model: MODEL.to_owned(),
    }
    .rounded_for_the_bench()
    .checked()
}

const KM_H_PER_M_S: f64 = 3.6;

/// Why this bat: what it is worth, against the best of today's.
fn reason(fitting: &Fitting) -> String {
    let Gain { pays, gain_m_s, gain_sd_m_s } = fitting.order;
    let gain = format!(
        "{:.1} ± {:.1} {} than today's best bat",
        KM_H_PER_M_S * gain_m_s.abs(),
        KM_H_PER_M_S * gain_sd_m_s,
        if gain_m_s < 0.0 { "less" } else { "more" },
    );
    let against = match pays {
        _ if fitting.now.today.use_today.is_none() => String::new(),
        Pays::Yes => format!(", {gain}"),
        Pays::No => format!(", {gain}: too little to order it for"),
        Pays::Undecided => format!(", {gain}: too close to call"),
    };
    let worth = spoken_ball(fitting.recommendation.worth.mean_m_s(), 0.03, Units::Trade);
    format!("Expected ball speed {worth}{against}.")
}

/// What an ounce costs the late pull at either end of the bat.
fn ounce(fitting: &Fitting, headline: &Headline) -> String {
    let pull = fitting.setting().batter.stroke_index(PULL);
    let Some(pull) = pull.and_then(|i| headline.ounces.get(i)) else { return String::new() };
    let takes = |x: f64| -KM_H_PER_M_S * pull.ounce_at_m_s(x);
    format!(
        "An ounce costs the late pull {:.1} km/h at the top, {:.1} at balance, {:.1} at toe.",
        takes(0.0),
        takes(fitting.recommendation.made.bat.balance_m()),
        takes(fitting.recommendation.made.bat.length_m()),
    )
}

/// How far to trust it: what the outside checks found, then what is this fitting's own.
fn how_sure(fitting: &Fitting, headline: &Headline) -> String {
    let in_time = fitting.recommendation.worth.chance_in_time;
    let rests = match fitting.now.today.in_time_assumed {
        Some([low, high]) => format!(
            ", if {:.0} to {:.0} are fresh with the bat now used (assumed)",
            100.0 * low,
            100.0 * high
        ),
        None => ", from what was seen".to_owned(),
    };
    format!(
        "In time late on: {:.0} of 100{rests}. By a second method within {:.2} %. {}",
        100.0 * in_time,
        100.0 * headline.largest_difference(),
        OUTSIDE.sentence(),
    )
}
