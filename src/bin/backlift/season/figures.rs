//! The result for other programs, SI.

use backlift::card::Figure;
use backlift::questions::season::{Found, Given, Limits};
use backlift::workshop::pressing::PRACTICE;
use backlift::workshop::season::State;
use backlift::workshop::season::swelling::{RADIAL, TANGENTIAL, swelling};
use serde_json::{Value, json};

use crate::json::{doubted, joined};

fn state(it: &State) -> Value {
    json!({
        "mass_kg": it.mass_kg,
        "balance_m": it.balance_m,
        "swing_moment_kg_m2": it.swing_moment_kg_m2,
        "pickup_weight_kg": it.pickup_weight_kg,
    })
}

fn limits(it: &Limits) -> Value {
    let within = |figure| it.there.iter().any(|there| there.0 == figure && there.2);
    json!({
        "within_there": it.there.iter().all(|it| it.2),
        "mass_within_there": within(Figure::DeadWeight),
        "balance_within_there": within(Figure::Balance),
        "swing_moment_within_there": within(Figure::SwingMoment),
        "share_of_year_made_to_card": it.year_made_to_card,
        "share_of_year_made_to_aim": it.year_made_to_aim,
    })
}

/// The figures.
pub fn of(given: &Given, found: &Found) -> Value {
    let it = &found.seasoned;
    let swollen = |shrinkage| swelling(shrinkage, it.moisture_from, it.moisture_to);
    let [low_s, usual_s, high_s] = found.time_constants_s;
    let aim = json!({
        "mass_sd_kg": it.mass_change_kg.sd,
        "swing_moment_sd_kg_m2": it.swing_moment_change_kg_m2.sd,
        "ten_swings_s": found.aim_ten_swings_s,
    });
    let course = found.course.iter().map(|gone| {
        json!({
            "days": gone.days,
            "bare_share": gone.bare[1],
            "bare_share_low": gone.bare[0],
            "bare_share_high": gone.bare[2],
            "oiled_share": gone.oiled,
            "mass_kg": found.mass_after_kg(gone),
        })
    });
    let pressing = found.pressing.map(|(pressing, pressed)| {
        json!({
            "depth_m": pressing.depth_m,
            "denser": pressing.denser,
            "layer_m": pressed.layer_m,
            "face_kg_m3": pressed.face_kg_m3,
            "com_change_m": pressed.com_change_m,
            "swing_moment_change_kg_m2": pressed.swing_moment_change_kg_m2,
            "practice": PRACTICE,
        })
    });
    let wood = json!({
        "moisture_from": it.moisture_from,
        "moisture_to": it.moisture_to,
        "here": state(&it.here),
        "there": state(&it.there),
    });
    let rest = json!({
        "mass_for_5_percent_kg": it.mass_for_5_percent_kg,
        "willow_kg": it.willow_kg,
        "handle_kg": it.handle_kg,
        "width_swelling": swollen(RADIAL),
        "depth_swelling": swollen(TANGENTIAL),
        "aim_now": joined([state(&it.aim), aim]),
        "estimated": given.estimated(),
        "oiled": found.asked.oiled,
        "time_constant_s": usual_s,
        "time_constant_low_s": low_s,
        "time_constant_high_s": high_s,
        "course": course.collect::<Value>(),
        "card": found.limits.as_ref().map(limits),
        "pressing": pressing,
        "limits_of_the_model": super::told::LIMITS,
    });
    joined([
        wood,
        doubted("mass_change", "kg", it.mass_change_kg),
        doubted("balance_change", "m", it.balance_change_m),
        doubted("swing_moment_change", "kg_m2", it.swing_moment_change_kg_m2),
        doubted("pickup_weight_change", "kg", it.pickup_weight_change_kg),
        rest,
    ])
}
