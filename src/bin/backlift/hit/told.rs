//! The hit in words.

use backlift::impact::doubt::FeltSurely;
use backlift::impact::hand::Hand;
use backlift::impact::strike::FELT_S;
use backlift::questions::hit::bat::Whose;
use backlift::questions::hit::{Found, PRACTICE_BEND_RAD};
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, spoken, spoken_ball};

use crate::figure::{listed, measured_or_at_best, number, percent, plain};
use crate::paragraph::paragraph;
use crate::table::{Row, side_by_side};

/// What one hand is called, in the order of the hit.
pub const HANDS: [&str; 2] = ["top hand", "bottom hand"];

pub fn told(it: &Found, units: Units) -> String {
    let mut out = paragraph(&sentence(it, units)) + "\n\n";
    out += &(hands(it, units) + "\n");
    let parts = [ball(it, units), bow(it), bend(it, units), twist(it), limits(it)];
    for part in parts.iter().filter(|it| !it.is_empty()) {
        out += &(paragraph(part) + "\n\n");
    }
    out
}

/// Where, how fast, and what the hands feel.
pub fn sentence(it: &Found, units: Units) -> String {
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
        spoken(Quantity::Speed, it.bat_m_s.value, it.bat_m_s.sd.max(0.3), units),
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
    let with = |value: Uncertain, digits: usize| match it.is_at_the_limit() {
        true => format!("{} at best", number(value.value, digits)),
        false => format!("{} ± {}", number(value.value, digits), number(value.sd, digits)),
    };
    let rows: [Row<'_, (&Hand, &FeltSurely)>; 5] = [
        ("greatest force", &|(_, felt)| doubted(it, Quantity::Force, felt.peak_n, units)),
        ("jar in all, N s", &|(_, felt)| with(felt.impulse_n_s, 1)),
        ("twist couple to hold, N m", &|(_, felt)| with(felt.couple_n_m, 1)),
        ("grip that holds it", &|(hand, felt)| {
            let couple = felt.couple_n_m;
            force(hand.grip_needed_n(couple.value), hand.grip_needed_n(couple.sd))
        }),
        ("grip there is", &|(hand, _)| force(hand.grip_n, 0.05 * hand.grip_n)),
    ];
    let hands: Vec<_> = it.hit.hands.iter().zip(&it.doubted.hands).collect();
    let columns: Vec<_> = HANDS.into_iter().zip(&hands).collect();
    side_by_side(&columns, &rows)
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

fn degrees(rad: f64, decimals: usize) -> String {
    plain(rad.to_degrees(), decimals, "°").replace('\u{2009}', "")
}

/// Whether the face has a bow.
fn is_bowed(it: &Found) -> bool {
    it.hit.parts.bow_m > 0.0
}

/// Where the face lies at the place met, how it looks there, and where the ball goes; nothing of a straight face.
fn bow(it: &Found) -> String {
    if !is_bowed(it) {
        return String::new();
    }
    let toward = |towards_toe: f64| if towards_toe > 0.0 { "the toe" } else { "the handle" };
    let (face, along_rad) = (it.face_met(), it.doubted.struck.along_rad);
    format!(
        "The face is bowed: there it lies {} behind its chord and looks {} towards {}; the ball comes square to the chord and goes off {} towards {}",
        plain(1e3 * face.behind_chord_m, 1, "mm"),
        degrees(face.looks_to_toe_rad.abs(), 1),
        toward(face.looks_to_toe_rad),
        degrees(along_rad.abs(), 1),
        toward(along_rad),
    )
}

fn bend(it: &Found, units: Units) -> String {
    let [soft, stiff] = it.spread.hinge_n_m;
    let [most, least] = it.doubted.bend_range_rad;
    let practice = degrees(PRACTICE_BEND_RAD, 1).replace(".0", "");
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
        degrees(it.doubted.bend_rad.value, 1),
        plain(it.hit.hinge.stiffness_n_m, 0, "N m/rad"),
        degrees(least, 1),
        degrees(most, 1),
        plain(stiff, 0, "N m/rad"),
        plain(soft, 0, "N m/rad"),
        spoken(Quantity::Speed, it.hit.ball_m_s + it.hit.bat_m_s, 0.5, units),
    )
}

fn twist(it: &Found) -> String {
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
        degrees(it.doubted.struck.twist_rad_s.abs(), 0),
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
    let face = if is_bowed(it) { "face that is flat across" } else { "flat face" };
    format!(
        "What this leaves out: {blade}, with a {face}, and does not bend or ring; \
         the handle bends at the shoulder only. How soft and heavy the hands are, how hard the ball is, its \
         restitution and the cane's stiffness are assumed, and that is in the ±, as is the bat's own measuring error. \
         The hands' figures are over and above the swing's own load, in the first {} and without the arms. No spin, \
         no friction on the face",
        plain(1e3 * FELT_S, 0, "ms")
    )
}
