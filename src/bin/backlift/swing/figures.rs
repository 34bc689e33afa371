//! The swing for other programs, SI.

use backlift::swing::contact::Contact;
use backlift::swing::observed::HandLoad;
use serde::Serialize;

use super::told::LIMITS;
use backlift::questions::swung::Swung;

#[derive(Serialize)]
pub struct Figures {
    stroke: String,
    bat: String,
    handed: &'static str,
    capacity_share: f64,
    controlled: bool,
    bat_speed_m_s: f64,
    bat_speed_sd_m_s: f64,
    toe_speed_m_s: f64,
    stroke_time_s: f64,
    fastest_time_s: f64,
    fastest_time_sd_s: f64,
    contact: ContactRow,
    hands: Hands,
    time_in_hand_s: f64,
    fastest_ball_m_s: f64,
    limited_by: Option<String>,
    doubt: DoubtRow,
    second_dynamics: Option<SecondDynamics>,
    hurried: Vec<Hurried>,
    limits: Vec<&'static str>,
}

#[derive(Serialize)]
struct ContactRow {
    position_error_m: f64,
    face_error_deg: f64,
    line_error_deg: f64,
    /// The three over their tolerances; 1 is the limit of control.
    error: f64,
}

#[derive(Serialize)]
struct Hands {
    top: Hand,
    bottom: Hand,
}

#[derive(Serialize)]
struct Hand {
    peak_force_n: f64,
    peak_couple_n_m: f64,
    wrist: Wrist,
    grip_needed_n: f64,
    grip_available_n: f64,
}

#[derive(Serialize)]
struct Wrist {
    flexion_extension_n_m: f64,
    radial_ulnar_n_m: f64,
    forearm_roll_n_m: f64,
    peak_share: f64,
}

/// Shares of the bat speed.
#[derive(Serialize)]
struct DoubtRow {
    strength_share: f64,
    bat_share: f64,
    dynamics_share: f64,
}

#[derive(Serialize)]
struct SecondDynamics {
    bat_speed_m_s: f64,
    toe_speed_m_s: f64,
    position_error_m: f64,
    face_error_deg: f64,
    line_error_deg: f64,
    bat_speed_difference_share: f64,
}

#[derive(Serialize)]
struct Hurried {
    time_share: f64,
    stroke_time_s: f64,
    bat_speed_m_s: f64,
    contact: ContactRow,
}

/// All figures of a swing.
pub fn of(swung: &Swung) -> Figures {
    let met = &swung.seen.contact;
    let second = swung.engine.as_ref().ok().map(|it| SecondDynamics {
        bat_speed_m_s: it.contact.bat_speed_m_s,
        toe_speed_m_s: it.contact.toe_speed_m_s,
        position_error_m: it.contact.position_error_m,
        face_error_deg: it.contact.face_error_rad.to_degrees(),
        line_error_deg: it.contact.line_error_rad.to_degrees(),
        bat_speed_difference_share: it.difference(met).bat_speed,
    });
    Figures {
        stroke: swung.stroke.clone(),
        bat: swung.bat_label.clone(),
        handed: swung.handed.words(),
        capacity_share: swung.capacity,
        controlled: swung.is_controlled(),
        bat_speed_m_s: met.bat_speed_m_s,
        bat_speed_sd_m_s: met.bat_speed_m_s * swung.doubt.speed(),
        toe_speed_m_s: met.toe_speed_m_s,
        stroke_time_s: swung.time_s,
        fastest_time_s: swung.fastest_s,
        fastest_time_sd_s: swung.fastest_s * swung.doubt.time(),
        contact: contact(met),
        hands: Hands {
            top: hand(&swung.seen.top, swung.grip_n[0]),
            bottom: hand(&swung.seen.bottom, swung.grip_n[1]),
        },
        time_in_hand_s: swung.delivery.time_in_hand_s(swung.time_s),
        fastest_ball_m_s: swung.delivery.fastest_ball_m_s(swung.time_s),
        limited_by: swung.limited_by(),
        doubt: DoubtRow {
            strength_share: swung.doubt.strength[0],
            bat_share: swung.doubt.bat[0],
            dynamics_share: swung.doubt.dynamics,
        },
        second_dynamics: second,
        hurried: swung
            .hurried
            .iter()
            .map(|(share, it)| Hurried {
                time_share: *share,
                stroke_time_s: it.stroke_time_s,
                bat_speed_m_s: it.bat_speed_m_s,
                contact: contact(it),
            })
            .collect(),
        limits: LIMITS.to_vec(),
    }
}

fn contact(it: &Contact) -> ContactRow {
    ContactRow {
        position_error_m: it.position_error_m,
        face_error_deg: it.face_error_rad.to_degrees(),
        line_error_deg: it.line_error_rad.to_degrees(),
        error: it.error,
    }
}

fn hand(it: &HandLoad, grip_available_n: f64) -> Hand {
    Hand {
        peak_force_n: it.peak_force_n,
        peak_couple_n_m: it.peak_couple_n_m,
        wrist: Wrist {
            flexion_extension_n_m: it.wrist.flexion_extension_n_m,
            radial_ulnar_n_m: it.wrist.radial_ulnar_n_m,
            forearm_roll_n_m: it.wrist.forearm_roll_n_m,
            peak_share: it.wrist.peak_share,
        },
        grip_needed_n: it.grip_needed_n,
        grip_available_n,
    }
}
