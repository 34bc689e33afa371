//! The swing in words and tables.

use backlift::measurement::person::Handed;
use backlift::questions::swung::Swung;
use backlift::swing::contact::Contact;
use backlift::swing::observed::HandLoad;
use backlift::uncertain::Uncertain;
use backlift::units::{Quantity, Units, spoken};

use crate::figure::{if_read_in, measured_or_at_best, percent, plain};
use crate::paragraph::{each_set_in, paragraph, set_in};
use crate::table::{Row, side_by_side, table};

/// What the figures do not hold.
pub const LIMITS: [&str; 5] = [
    "the blow of the ball is not in the loads: they end as the bat meets it",
    "the top hand holds firmly, the bottom hand as firmly as its grip allows",
    "the body follows the stroke's plan as near as its strength allows: nobody's own technique",
    "strength of the trunk has no measured source, and it matters most in the pull",
    "one swing, well aimed: no nerves, no misjudged ball, no injury",
];

/// Everything, the sentence first.
pub fn told(swung: &Swung<'_>, units: Units) -> String {
    let mut out = paragraph(&sentence(swung, units)) + "\n\n";
    out += &speeds(swung, units);
    out += "\nLoads, the largest on the way to the ball:\n";
    out += &loads(swung, units);
    if let Some(words) = beyond_grip(swung) {
        out += &(paragraph(&words) + "\n");
    }
    out += "\nIn a hurry, with less time than the fastest controlled swing takes:\n";
    out += &hurry(swung, units);
    out += "\nHow sure the bat speed is:\n";
    out += &doubts(swung, units);
    out + "\nWhat the model does not know:\n" + &each_set_in(LIMITS)
}

/// A figure with its doubt, one standard deviation as a share.
fn doubted(swung: &Swung<'_>, quantity: Quantity, value: f64, share: f64, units: Units) -> String {
    let figure = Uncertain::computed(value, value * share);
    measured_or_at_best(swung.is_at_the_limit(), quantity, figure, units)
}

/// What a coach could say aloud.
pub fn sentence(swung: &Swung<'_>, units: Units) -> String {
    let (bat_label, stroke) = (&swung.bat_label, &swung.stroke.name);
    let time = spoken(Quantity::Time, swung.time_s, swung.time_sd_s(), units);
    if !swung.seen.contact.reached {
        return format!("In {time} the {stroke} with {bat_label} does not come to the ball at all");
    }
    let met_m_s = swung.seen.contact.bat_speed_m_s;
    let speed = doubted(swung, Quantity::Speed, met_m_s, swung.doubt.speed(), units);
    if !swung.is_controlled() {
        let fastest = spoken(Quantity::Time, swung.fastest_s, 0.0, units);
        return format!(
            "A {stroke} with {bat_label} in {time} is out of control: {} off the spot, the face {} off; under control it takes {fastest}",
            millimetres(swung.seen.contact.position_error_m),
            degrees(swung.seen.contact.face_error_rad)
        );
    }
    if swung.is_at_the_limit() {
        return format!(
            "The {stroke} with {bat_label} is not controlled: all strength that this player may have is needed for it, and with a little less there is no controlled swing at all; {speed} at the ball"
        );
    }
    let spent = swung
        .limited_by()
        .map_or("nothing runs out".to_owned(), |it| format!("{it} runs out first"));
    let kind = if swung.time_s == swung.fastest_s { "fastest controlled " } else { "" };
    format!(
        "The {kind}{stroke} with {bat_label} meets the ball at {speed}, {time} after the top of the backlift; {spent}"
    )
}

fn speeds(swung: &Swung<'_>, units: Units) -> String {
    let met = &swung.seen.contact;
    let speed = |value: f64| doubted(swung, Quantity::Speed, value, swung.doubt.speed(), units);
    let time_sd_s = swung.time_sd_s();
    let time = |value: f64| match time_sd_s > 0.0 {
        true => doubted(swung, Quantity::Time, value, time_sd_s / value, units),
        false => spoken(Quantity::Time, value, 0.0, units),
    };
    let bowled = spoken(Quantity::Speed, swung.loaded.scenario.bowling.speed_m_s, 0.3, units);
    let fastest_ball_m_s = swung.loaded.scenario.bowling.fastest_ball_m_s(swung.time_s);
    // It goes with one over reaction and stroke time together.
    let ball_sd = fastest_ball_m_s * time_sd_s
        / (swung.time_s + swung.loaded.scenario.bowling.reaction_time_s);
    let ball = match ball_sd > 0.0 {
        true => {
            doubted(swung, Quantity::Speed, fastest_ball_m_s, ball_sd / fastest_ball_m_s, units)
        }
        false => spoken(Quantity::Speed, fastest_ball_m_s, 0.1, units),
    };
    let row = |head: String, value: String| vec![head, value];
    let mut rows = vec![
        row("bat speed where it meets the ball".into(), speed(met.bat_speed_m_s)),
        row("toe speed".into(), speed(met.toe_speed_m_s)),
        row("stroke time, top of the backlift to ball".into(), time(swung.time_s)),
        row(
            format!("time in hand against {bowled}"),
            time(swung.loaded.scenario.bowling.time_in_hand_s(swung.time_s)),
        ),
    ];
    if !swung.loaded.is_junior() {
        rows.push(row("fastest ball that it meets".into(), ball));
    }
    rows.extend([
        row("off the planned spot".into(), millimetres(met.position_error_m)),
        row("face off its direction".into(), degrees(met.face_error_rad)),
        row("bat off its line".into(), degrees(met.line_error_rad)),
    ]);
    let head = format!("{}, {}-hander", swung.stroke.name, swung.loaded.player.handed.words());
    let read_in =
        format!("time in hand: {}", if_read_in(swung.loaded.scenario.bowling.reaction_time_s));
    table(&["", &head], &rows) + &set_in(&read_in) + "\n"
}

fn loads(swung: &Swung<'_>, units: Units) -> String {
    let hands = match swung.loaded.player.handed {
        Handed::Right => ["top hand (left)", "bottom hand (right)"],
        Handed::Left => ["top hand (right)", "bottom hand (left)"],
    };
    let force = |it: f64| spoken(Quantity::Force, it, 2.0, units);
    let torque = |it: f64| plain(it, 1, "N\u{2009}m");
    let rows: [Row<'_, (&HandLoad, f64)>; 8] = [
        ("force on the handle", &|(it, _)| force(it.peak_force_n)),
        ("couple on the handle", &|(it, _)| torque(it.peak_couple_n_m)),
        ("wrist, bending palm to back", &|(it, _)| torque(it.wrist.flexion_extension_n_m)),
        ("wrist, cocking up and down", &|(it, _)| torque(it.wrist.radial_ulnar_n_m)),
        ("forearm, rolling", &|(it, _)| torque(it.wrist.forearm_roll_n_m)),
        ("wrist, most of what it has", &|(it, _)| percent(it.wrist.peak_share, 0)),
        ("grip needed not to slip or twist", &|(it, _)| force(it.grip_needed_n)),
        ("grip there is", &|(_, grip_n)| force(*grip_n)),
    ];
    let (top, bottom) = ((&swung.seen.top, swung.grip_n[0]), (&swung.seen.bottom, swung.grip_n[1]));
    side_by_side(&[(hands[0], &top), (hands[1], &bottom)], &rows)
}

/// What is said where a hand would need more grip than it has.
fn beyond_grip(swung: &Swung<'_>) -> Option<String> {
    let needed = [&swung.seen.top, &swung.seen.bottom].map(|it| it.grip_needed_n);
    let short = |hand: usize| needed[hand] > swung.grip_n[hand];
    let which = match [short(0), short(1)] {
        [true, true] => "Both hands need",
        [true, false] => "The top hand needs",
        [false, true] => "The bottom hand needs",
        [false, false] => return None,
    };
    let most = (0..2).map(|hand| needed[hand] / swung.grip_n[hand] - 1.0).fold(0.0, f64::max);
    Some(format!(
        "{which} more grip than there is, for a moment {} more: there the handle would give in the fingers, and this swing is computed as if the top hand held. How rough grip and glove are is a guess, good within a quarter either way",
        percent(most, 0)
    ))
}

fn hurry(swung: &Swung<'_>, units: Units) -> String {
    let row = |(share, it): &(f64, Contact)| {
        let [speed, spot, face] = match it.reached {
            true => [
                spoken(Quantity::Speed, it.bat_speed_m_s, 0.1, units),
                millimetres(it.position_error_m),
                degrees(it.face_error_rad),
            ],
            false => ["misses", "", ""].map(str::to_owned),
        };
        let time = spoken(Quantity::Time, it.stroke_time_s, 0.0, units);
        [percent(*share, 0), time, speed, spot, face]
    };
    let heads = ["of the fastest time", "time", "bat speed", "off the spot", "face off"];
    table(&heads, swung.hurried.iter().map(row))
        + &format!(
            "  under control means: {}, face {} and line {} at most, taken together\n",
            millimetres(swung.stroke.tolerance.position_m),
            degrees(swung.stroke.tolerance.face_rad),
            degrees(swung.stroke.tolerance.line_rad)
        )
}

fn doubts(swung: &Swung<'_>, units: Units) -> String {
    let causes = format!(
        "  ± {} for strength and build, ± {} for the bat's swing moment\n",
        percent(swung.doubt.strength[0], 1),
        percent(swung.doubt.bat[0], 1)
    );
    let second = match &swung.engine {
        Ok(engine) => format!(
            "  by a second method {}, {} apart\n",
            spoken(Quantity::Speed, engine.contact.bat_speed_m_s, 0.01, units),
            percent(engine.difference(&swung.seen.contact).bat_speed.abs(), 2)
        ),
        Err(fault) => format!("  not computed by a second method: {fault}\n"),
    };
    causes + &second
}

fn millimetres(metres: f64) -> String {
    plain(1e3 * metres, 0, "mm")
}

fn degrees(radians: f64) -> String {
    plain(radians.to_degrees(), 1, "°")
}
