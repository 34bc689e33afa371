//! The card of a fitting.

use super::outside::OUTSIDE;
use super::{Card, CardFault, Condition, HandleShape, PlayerLine, cautions};
use crate::bat::pendulum::time_for_swings_s;
use crate::fit::fitting::Fitting;
use crate::fit::headline::Headline;
use crate::innings::score::runs_words;
use crate::measurement::bench::{PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD};

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
    let bat = &it.worth.bat;
    let player = &fitting.setting.batter.player;
    let t = &it.tolerances;
    let seconds = |swing_moment: f64| {
        time_for_swings_s(
            bat.mass_kg(),
            bat.balance_m(),
            swing_moment,
            SWINGS,
            PICKUP_AXIS_FROM_TOP_M,
            USUAL_AMPLITUDE_RAD,
        )
        .unwrap_or(f64::NAN)
    };
    let percussion_from_toe = |swing_moment: f64, balance: f64| {
        let d = balance - PICKUP_AXIS_FROM_TOP_M;
        bat.length_m() - PICKUP_AXIS_FROM_TOP_M - swing_moment / (bat.mass_kg() * d)
    };
    let [low, high] = t.swing_moment_kg_m2;
    // Where the sweet spot goes when the swing moment is at its limits, weight and balance as asked.
    let sweet =
        [percussion_from_toe(high, bat.balance_m()), percussion_from_toe(low, bat.balance_m())];
    let refit_stature_m = cautions::refit_stature_m(player.age_y, player.stature_m);
    let mut said = cautions::standing(player.age_y, refit_stature_m);
    said.extend(changes(fitting));
    Card {
        player: PlayerLine {
            age_y: player.age_y,
            stature_m: player.stature_m,
            handed: player.handed,
        },
        invented,
        size: it.size.clone(),
        length_m: bat.length_m(),
        mass_kg: bat.mass_kg(),
        mass_tolerance_kg: t.mass_kg,
        balance_m: bat.balance_m(),
        balance_tolerance_m: t.balance_m,
        swing_moment_kg_m2: bat.swing_moment_kg_m2(),
        swing_moment_tolerance_kg_m2: t.swing_moment_kg_m2,
        pickup_weight_kg: it.pickup_weight_kg,
        pendulum_pivot_m: PICKUP_AXIS_FROM_TOP_M,
        pendulum_swings: SWINGS,
        pendulum_time_s: seconds(bat.swing_moment_kg_m2()),
        pendulum_time_tolerance_s: [seconds(low), seconds(high)],
        sweet_spot_from_toe_m: it.sweet_spot_from_toe_m,
        sweet_spot_tolerance_m: sweet,
        handle_diameter_m: it.handle_diameter_m,
        handle_tolerance_m: [
            it.handle_diameter_m - HANDLE_TOLERANCE_M,
            it.handle_diameter_m + HANDLE_TOLERANCE_M,
        ],
        handle_shape: HandleShape::Oval,
        reason: reason(fitting, headline),
        how_sure: how_sure(fitting, headline),
        cautions: said,
        condition: Condition { grips: 1, toe_guard: true, oiled: false },
        refit_stature_m,
        software: software.to_owned(),
        model: MODEL.to_owned(),
    }
    .rounded_for_the_bench()
    .checked()
}

const KM_H_PER_M_S: f64 = 3.6;

/// Why this bat, in two sentences: what it leaves the player late on, and what a heavier pickup costs.
fn reason(fitting: &Fitting, headline: &Headline) -> String {
    let setting = &fitting.setting;
    let end = runs_words(setting.plan.runs);
    let passes = fitting.recommendation.worth.passes();
    let first = match (setting.batter.stroke_index("pull"), headline.points.get(headline.end)) {
        (Some(pull), Some(at)) if passes => format!(
            "At {end} this player can still pull a {:.0} km/h ball with it.",
            (at.with_slow[pull].fastest_ball_m_s * KM_H_PER_M_S).floor()
        ),
        _ if passes => format!("At {end} every stroke asked for still comes off in time with it."),
        // Without the reserve a pull may well be in time: what fails is the rule, and it is named.
        _ => format!(
            "No bat of this size leaves a pull and a hook in time at {end} against this bowling with the reserve that the rule asks; this one comes nearest."
        ),
    };
    format!("{first} {}", heavier(fitting))
}

/// What a pickup an eighth heavier at the same dead weight would cost the hook or pull at the end.
fn heavier(fitting: &Fitting) -> String {
    let worth = &fitting.recommendation.worth;
    let bat = &worth.bat;
    let domain = &fitting.surrogate.domain;
    let balance = bat.balance_m() + BALANCE_STEP_M;
    let Some(stroke) = worth.tightest else {
        return "The pickup decides more than the dead weight.".into();
    };
    let moved = domain.family.assumed(bat.mass_kg(), balance, 0.0).and_then(|m| {
        crate::bat::Bat::new("", bat.length_m(), bat.mass_kg(), m.com_B(), m.I_Com_B()).ok()
    });
    let Some(moved) = moved else {
        return "The pickup decides more than the dead weight.".into();
    };
    let then = fitting.surrogate.at(&moved);
    let loss = 1.0 - then[stroke].bat_speed_m_s / worth.strokes[stroke].bat_speed_m_s;
    let name = &fitting.setting.batter.strokes[stroke].stroke.name;
    format!(
        "The same dead weight balanced {:.0} mm nearer the toe would cost the late {name} {:.1} % of its bat speed.",
        1e3 * BALANCE_STEP_M,
        100.0 * loss
    )
}

/// Shift of the balance point in the example of the reason, m.
const BALANCE_STEP_M: f64 = 0.015;

/// How far to trust it: what the outside checks found, then what is this fitting's own.
fn how_sure(fitting: &Fitting, headline: &Headline) -> String {
    let moved = fitting.moved.iter().filter(|m| m.changes_advice).count();
    let of = fitting.moved.len();
    let advice = match moved {
        0 => format!("Being wrong in any of the {of} things known least would not change the bat."),
        _ => format!(
            "Being wrong in {moved} of the {of} things known least would change the bat (last caution)."
        ),
    };
    format!(
        "{} Two simulations agree within {:.2} %. {advice}",
        OUTSIDE.sentence(),
        100.0 * headline.largest_difference(),
    )
}

/// The moved inputs that change the advice, in one line, by the way they change it.
fn changes(fitting: &Fitting) -> Option<String> {
    let own = fitting.recommendation.worth.bat.swing_moment_kg_m2();
    let group = |lighter: bool| {
        let words: Vec<&str> = fitting
            .moved
            .iter()
            .filter(|m| m.changes_advice)
            .filter(|m| (m.chosen.bat.swing_moment_kg_m2() < own) == lighter)
            .map(|m| m.what)
            .collect();
        words.join(", or ")
    };
    let said: Vec<String> = [("lighter", group(true)), ("heavier", group(false))]
        .into_iter()
        .filter(|(_, words)| !words.is_empty())
        .map(|(way, words)| format!("A {way} pickup would be right if {words}."))
        .collect();
    (!said.is_empty()).then(|| said.join(" "))
}
