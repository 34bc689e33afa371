//! The result for other programs, SI.

use backlift::card::Figure;
use backlift::uncertain::Uncertain;
use backlift::workshop::pressing::PRACTICE;
use backlift::workshop::season::State;
use backlift::workshop::season::swelling::{RADIAL, TANGENTIAL, swelling};
use serde::Serialize;

use backlift::questions::season::{Found, Given};

/// All figures of a season.
#[derive(Serialize)]
pub struct Figures {
    moisture_from: f64,
    moisture_to: f64,
    here: StateRow,
    there: StateRow,
    mass_change_kg: f64,
    mass_change_sd_kg: f64,
    balance_change_m: f64,
    balance_change_sd_m: f64,
    swing_moment_change_kg_m2: f64,
    swing_moment_change_sd_kg_m2: f64,
    pickup_weight_change_kg: f64,
    pickup_weight_change_sd_kg: f64,
    mass_for_5_percent_kg: f64,
    willow_kg: f64,
    handle_kg: f64,
    width_swelling: f64,
    depth_swelling: f64,
    aim_now: AimRow,
    estimated: Vec<&'static str>,
    oiled: bool,
    time_constant_s: f64,
    time_constant_low_s: f64,
    time_constant_high_s: f64,
    course: Vec<GoneRow>,
    card: Option<CardRow>,
    pressing: Option<PressingRow>,
    limits_of_the_model: [&'static str; 4],
}

#[derive(Serialize)]
struct StateRow {
    mass_kg: f64,
    balance_m: f64,
    swing_moment_kg_m2: f64,
    pickup_weight_kg: f64,
}

#[derive(Serialize)]
struct AimRow {
    #[serde(flatten)]
    state: StateRow,
    mass_sd_kg: f64,
    swing_moment_sd_kg_m2: f64,
    ten_swings_s: Option<f64>,
}

#[derive(Serialize)]
struct GoneRow {
    days: u32,
    bare_share: f64,
    bare_share_low: f64,
    bare_share_high: f64,
    oiled_share: f64,
    mass_kg: f64,
}

#[derive(Serialize)]
struct CardRow {
    within_there: bool,
    mass_within_there: bool,
    balance_within_there: bool,
    swing_moment_within_there: bool,
    share_of_year_made_to_card: f64,
    share_of_year_made_to_aim: f64,
}

#[derive(Serialize)]
struct PressingRow {
    depth_m: f64,
    denser: f64,
    layer_m: f64,
    face_kg_m3: f64,
    com_change_m: f64,
    swing_moment_change_kg_m2: f64,
    practice: &'static str,
}

fn state(it: &State) -> StateRow {
    StateRow {
        mass_kg: it.mass_kg,
        balance_m: it.balance_m,
        swing_moment_kg_m2: it.swing_moment_kg_m2,
        pickup_weight_kg: it.pickup_weight_kg,
    }
}

/// The figures.
pub fn of(given: &Given, found: &Found) -> Figures {
    let it = &found.seasoned;
    let swollen = |shrinkage| swelling(shrinkage, it.moisture_from, it.moisture_to);
    let Uncertain { value: mass_change_kg, sd: mass_change_sd_kg, .. } = it.mass_change_kg;
    let [low_s, usual_s, high_s] = found.time_constants_s;
    Figures {
        moisture_from: it.moisture_from,
        moisture_to: it.moisture_to,
        here: state(&it.here),
        there: state(&it.there),
        mass_change_kg,
        mass_change_sd_kg,
        balance_change_m: it.balance_change_m.value,
        balance_change_sd_m: it.balance_change_m.sd,
        swing_moment_change_kg_m2: it.swing_moment_change_kg_m2.value,
        swing_moment_change_sd_kg_m2: it.swing_moment_change_kg_m2.sd,
        pickup_weight_change_kg: it.pickup_weight_change_kg.value,
        pickup_weight_change_sd_kg: it.pickup_weight_change_kg.sd,
        mass_for_5_percent_kg: it.mass_for_5_percent_kg,
        willow_kg: it.willow_kg,
        handle_kg: it.handle_kg,
        width_swelling: swollen(RADIAL),
        depth_swelling: swollen(TANGENTIAL),
        aim_now: AimRow {
            state: state(&it.aim.now),
            mass_sd_kg: it.aim.mass_sd_kg,
            swing_moment_sd_kg_m2: it.aim.swing_moment_sd_kg_m2,
            ten_swings_s: found.aim_ten_swings_s,
        },
        estimated: given.estimated(),
        oiled: found.asked.oiled,
        time_constant_s: usual_s,
        time_constant_low_s: low_s,
        time_constant_high_s: high_s,
        course: found
            .course
            .iter()
            .map(|gone| GoneRow {
                days: gone.days,
                bare_share: gone.bare[1],
                bare_share_low: gone.bare[0],
                bare_share_high: gone.bare[2],
                oiled_share: gone.oiled,
                mass_kg: found.mass_after_kg(gone),
            })
            .collect(),
        card: found.limits.as_ref().map(|limits| {
            let within = |figure| limits.there.iter().any(|it| it.0 == figure && it.2);
            CardRow {
                within_there: limits.there.iter().all(|it| it.2),
                mass_within_there: within(Figure::DeadWeight),
                balance_within_there: within(Figure::Balance),
                swing_moment_within_there: within(Figure::SwingMoment),
                share_of_year_made_to_card: limits.year_made_to_card,
                share_of_year_made_to_aim: limits.year_made_to_aim,
            }
        }),
        pressing: found.pressing.map(|(pressing, pressed)| PressingRow {
            depth_m: pressing.depth_m,
            denser: pressing.denser,
            layer_m: pressed.layer_m,
            face_kg_m3: pressed.face_kg_m3,
            com_change_m: pressed.com_change_m,
            swing_moment_change_kg_m2: pressed.swing_moment_change_kg_m2,
            practice: PRACTICE,
        }),
        limits_of_the_model: super::told::LIMITS,
    }
}
