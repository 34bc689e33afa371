//! The hit in words.

mod bow;

use backlift::impact::strike::FELT_S;
use backlift::questions::hit::bat::Whose;
use backlift::questions::hit::{Found, PRACTICE_BEND_RAD};
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, spoken, spoken_ball};

use crate::figure::{listed, measured_or_at_best, number, percent, plain};
use crate::paragraph::paragraph;
use crate::table::table;

/// What one hand is called, in the order of the hit.
pub const HANDS: [&str; 2] = ["top hand", "bottom hand"];

/// All of it.
pub fn told(it: &Found, units: Units) -> String {
    let mut out = paragraph(&sentence(it, units)) + "\n\n";
    out += &(hands(it, units) + "\n");
    let parts = [Some(ball(it, units)), bow::told(it), Some(bend(it, units))];
    let parts = parts.into_iter().chain([Some(twist(it, units)), Some(limits(it))]);
    for part in parts.flatten() {
        out += &(paragraph(&part) + "\n\n");
    }
    out
}

/// Where, how fast, and what the hands feel.
pub fn sentence(it: &Found, units: Units) -> String {
    let speed = |m_s: f64, sd: f64| spoken(Quantity::Speed, m_s, sd, units);
    let side = match it.hit.across_m.abs() {
        across if across > 0.0 => {
            format!(" and {} off the middle", spoken(Quantity::Length, across, 1e-3, units))
        }
        _ => String::new(),
    };
    let felt: Vec<String> = it
        .doubted
        .hands
        .iter()
        .zip(HANDS)
        .map(|(felt, name)| {
            format!("the {name} {}", doubted(it, Quantity::Force, felt.peak_n, units))
        })
        .collect();
    let limit = match it.is_at_the_limit() {
        true => format!(
            ". The pull with {} is not controlled: with a little less strength than this player may have there is no controlled swing at all",
            it.bat.swung.label
        ),
        false => String::new(),
    };
    format!(
        "Hit {} from the toe{side} at {}, {} sends a ball of {} back at {}; {} at the most{limit}",
        spoken(Quantity::Length, it.from_toe_m, 1e-3, units),
        speed(it.bat_m_s.value, it.bat_m_s.sd.max(0.3)),
        it.bat.swung.label,
        spoken_ball(it.hit.ball_m_s, 0.3, units),
        off_the_bat(it, units),
        listed(&felt).replacen("the top hand", "the top hand feels", 1),
    )
}

/// "79 km/h ± 6 km/h (49 mph)".
fn off_the_bat(it: &Found, units: Units) -> String {
    let exit_m_s = it.doubted.exit_m_s;
    let with_doubt = doubted(it, Quantity::Speed, exit_m_s, units);
    let spoken = spoken_ball(exit_m_s.value, exit_m_s.sd, units);
    match spoken.split_once(" (") {
        Some((_, mph)) => format!("{with_doubt} ({mph}"),
        None => with_doubt,
    }
}

fn doubted(it: &Found, quantity: Quantity, figure: Uncertain, units: Units) -> String {
    measured_or_at_best(it.is_at_the_limit(), quantity, figure, units)
}

/// Whose swing the bat speed is of: "the fastest pull", or one with a bat speed that was given.
pub fn swing_words(it: &Found) -> &'static str {
    match it.bat_speed_was_given {
        true => "a swing of the speed given",
        false => "the player's fastest pull",
    }
}

fn hands(it: &Found, units: Units) -> String {
    let force = |n: f64, sd: f64| spoken(Quantity::Force, n, sd, units);
    let row = |head: &str, cell: &dyn Fn(usize) -> Option<String>| {
        let cells = (0..HANDS.len()).map(|n| cell(n).unwrap_or_default());
        std::iter::once(head.to_owned()).chain(cells).collect::<Vec<_>>()
    };
    let felt = |n: usize| it.doubted.hands.get(n);
    let with = |value: Uncertain, digits: usize| match it.is_at_the_limit() {
        true => format!("{} at best", number(value.value, digits)),
        false => format!("{} ± {}", number(value.value, digits), number(value.sd, digits)),
    };
    let rows = [
        row("greatest force", &|n| Some(doubted(it, Quantity::Force, felt(n)?.peak_n, units))),
        row("jar in all, N s", &|n| Some(with(felt(n)?.impulse_n_s, 1))),
        row("twist couple to hold, N m", &|n| Some(with(felt(n)?.couple_n_m, 1))),
        row("grip that holds it", &|n| {
            let couple = felt(n)?.couple_n_m;
            let hand = it.hit.hands.get(n)?;
            Some(force(hand.grip_needed_n(couple.value), hand.grip_needed_n(couple.sd)))
        }),
        row("grip there is", &|n| {
            let grip_n = it.hit.hands.get(n)?.grip_n;
            Some(force(grip_n, 0.05 * grip_n))
        }),
    ];
    table(&["", HANDS[0], HANDS[1]], &rows)
}

fn ball(it: &Found, units: Units) -> String {
    let struck = &it.doubted.struck;
    let rigid = spoken_ball(it.rigid_exit_m_s, it.doubted.exit_m_s.sd, units);
    let whence = match it.bat_speed_was_given {
        true => "given",
        false => "of the player's fastest pull, turning about the pickup axis",
    };
    let middle = match it.hit.across_m.abs() > 0.0 {
        true => " met in the middle of its width",
        false => "",
    };
    format!(
        "Ball and bat touch for {}. A bat that is rigid and free{middle} would give {rigid}. The bat speed is the one {whence}",
        plain(1e3 * struck.contact_s, 2, "ms"),
    )
}

fn bend(it: &Found, units: Units) -> String {
    let degrees = |rad: f64| plain(rad.to_degrees(), 1, "°").replace('\u{2009}', "");
    let [soft, stiff] = it.spread.hinge_n_m;
    let [most, least] = it.doubted.bend_range_rad;
    let practice = degrees(PRACTICE_BEND_RAD).replace(".0", "");
    let hinge = it.practice_hinge_n_m.map_or_else(
        || "no stiffness within a hundredfold".to_owned(),
        |k| format!("a splice of {}", plain(k, 0, "N m/rad")),
    );
    let closing = it.practice_closing_m_s.map_or_else(
        || "no speed up to ten times this".to_owned(),
        |m_s| format!("a closing speed of {}", spoken(Quantity::Speed, m_s, 0.5, units)),
    );
    format!(
        "The splice bends by {} with {}: {} to {} from stiff cane to soft ({} to {}). \
         The {practice} told of a hard hit (common practice, no source) would take {hinge} at this speed, \
         or {closing} at this stiffness; this hit closes at {}",
        degrees(it.doubted.bend_rad.value),
        plain(it.hit.hinge.stiffness_n_m, 0, "N m/rad"),
        degrees(least),
        degrees(most),
        plain(stiff, 0, "N m/rad"),
        plain(soft, 0, "N m/rad"),
        spoken(Quantity::Speed, it.hit.ball_m_s + it.hit.bat_m_s, 0.5, units),
    )
}

fn twist(it: &Found, _: Units) -> String {
    let struck = &it.doubted.struck;
    if it.hit.across_m == 0.0 {
        return "Met in the middle of its width the bat does not twist".to_owned();
    }
    let slips: Vec<String> = it
        .hit
        .hands
        .iter()
        .zip(&it.doubted.hands)
        .zip(HANDS)
        .filter(|((hand, felt), _)| felt.couple_n_m.value > hand.couple_limit_n_m())
        .map(|(_, name)| format!("the {name}"))
        .collect();
    let held = match slips.as_slice() {
        [] => "both hands can hold that without the handle turning in them".to_owned(),
        _ => format!("the handle turns in {}: full grip does not hold it", listed(&slips)),
    };
    format!(
        "When the ball leaves, the face turns at {} a second; {held}",
        plain(struck.twist_rad_s.abs().to_degrees(), 0, "°").replace('\u{2009}', ""),
    )
}

fn limits(it: &Found) -> String {
    let blade = match it.bat.whose {
        Whose::Described { .. } => "the blade is as described".to_owned(),
        Whose::OfItsSize { swing_moment_off } => {
            let moment = match swing_moment_off.abs() {
                off if off > 0.01 => format!(
                    " (its swing moment {} {} the bat's own)",
                    percent(off, 0),
                    if swing_moment_off > 0.0 { "above" } else { "below" }
                ),
                _ => String::new(),
            };
            format!("the blade is one of the bat's size at its weight and balance{moment}")
        }
    };
    let face = if bow::is_bowed(it) { "face that is flat across" } else { "flat face" };
    format!(
        "What this leaves out: {blade}, with a {face}, and does not bend or ring; \
         the handle bends at the shoulder only. How soft and heavy the hands are, how hard the ball is, its \
         restitution and the cane's stiffness are assumed, and that is in the ±, as is the bat's own measuring error. \
         The hands' figures are over and above the swing's own load, in the first {} and without the arms. No spin, \
         no friction on the face",
        plain(1e3 * FELT_S, 0, "ms")
    )
}
