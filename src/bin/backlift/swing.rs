//! `backlift swing`: one player, one bat, one stroke.

mod files;
mod told;

use std::path::PathBuf;

use backlift::files::save::Folder;
use backlift::questions::swung::{self, Swung};
use backlift::swing::contact::Contact;
use backlift::swing::observed::HandLoad;
use serde_json::{Value, json};
pub use told::LIMITS;

use crate::beside::Beside;
use crate::given::{BatArg, ScenarioArgs, ShowArgs, share, time};
use crate::json::joints;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::said;

/// Swing a bat: speed, loads on hands and wrists, and what ran out first
///
/// The fastest swing that still meets the ball under control, or one that takes a given time.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift swing --stroke pull --bat \"Old faithful\" --out swing")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// The stroke: drive, pull, hook, or one of the scenario's own; the pull if left out
    #[arg(long, value_name = "NAME")]
    stroke: Option<String>,

    #[command(flatten)]
    bat: BatArg,

    /// Every strength times this share, like 0.8 or "80 %", for study
    #[arg(long, value_name = "SHARE", default_value = "1", value_parser = share)]
    capacity: f64,

    /// From the top of the backlift to the ball, like "0.45 s"; the fastest if left out
    #[arg(long, value_name = "TIME", value_parser = time)]
    time: Option<f64>,

    /// Write the series over time (CSV) and the arc (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bat = args.bat.of(&loaded)?;
    let stroke = args.stroke.as_deref().map_or(Ok(loaded.lead()), |it| loaded.stroke(it))?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let swung = swung::swing(&loaded, bat, stroke, args.capacity, args.time, &Progress::start())?;
    let beside = Beside::scenario(&loaded);
    said(
        "swing",
        &args.show,
        folder,
        &beside,
        || figures(&swung),
        |units| told::told(&swung, units),
        |folder, units| files::add(folder, &swung, &beside, units),
    )
}

fn figures(swung: &Swung<'_>) -> Value {
    let met = &swung.seen.contact;
    let second = swung.engine.as_ref().ok().map(|it| {
        json!({
            "bat_speed_m_s": it.contact.bat_speed_m_s,
            "toe_speed_m_s": it.contact.toe_speed_m_s,
            "position_error_m": it.contact.position_error_m,
            "face_error_deg": it.contact.face_error_rad.to_degrees(),
            "line_error_deg": it.contact.line_error_rad.to_degrees(),
            "bat_speed_difference_share": it.difference(met).bat_speed,
        })
    });
    let hurried = swung.hurried.iter().map(|(share, it)| {
        json!({
            "time_share": share,
            "stroke_time_s": it.stroke_time_s,
            "bat_speed_m_s": it.bat_speed_m_s,
            "contact": contact(it),
        })
    });
    json!({
        "stroke": swung.stroke.name,
        "bat": swung.bat_label,
        "handed": swung.loaded.player.handed.words(),
        "capacity_share": swung.capacity,
        "controlled": swung.is_controlled(),
        "bat_speed_m_s": met.bat_speed_m_s,
        "bat_speed_sd_m_s": met.bat_speed_m_s * swung.doubt.speed(),
        "toe_speed_m_s": met.toe_speed_m_s,
        "stroke_time_s": swung.time_s,
        "fastest_time_s": swung.fastest_s,
        "fastest_time_sd_s": swung.fastest_s * swung.doubt.time(),
        "contact": contact(met),
        "hands": {
            "top": hand(&swung.seen.top, swung.grip_n[0]),
            "bottom": hand(&swung.seen.bottom, swung.grip_n[1]),
        },
        "time_in_hand_s": swung.loaded.scenario.bowling.time_in_hand_s(swung.time_s),
        "fastest_ball_m_s": swung.loaded.scenario.bowling.fastest_ball_m_s(swung.time_s),
        "limited_by": swung.limited_by(),
        "capacities": joints(&swung.strength),
        "doubt": {
            "strength_share": swung.doubt.strength[0],
            "bat_share": swung.doubt.bat[0],
            "dynamics_share": swung.doubt.dynamics,
        },
        "second_dynamics": second,
        "hurried": hurried.collect::<Value>(),
        "limits": LIMITS,
    })
}

fn contact(it: &Contact) -> Value {
    json!({
        "position_error_m": it.position_error_m,
        "face_error_deg": it.face_error_rad.to_degrees(),
        "line_error_deg": it.line_error_rad.to_degrees(),
        // The three over their tolerances; 1 is the limit of control.
        "error": it.error,
    })
}

fn hand(it: &HandLoad, grip_available_n: f64) -> Value {
    json!({
        "peak_force_n": it.peak_force_n,
        "peak_couple_n_m": it.peak_couple_n_m,
        "wrist": {
            "flexion_extension_n_m": it.wrist.flexion_extension_n_m,
            "radial_ulnar_n_m": it.wrist.radial_ulnar_n_m,
            "forearm_roll_n_m": it.wrist.forearm_roll_n_m,
            "peak_share": it.wrist.peak_share,
        },
        "grip_needed_n": it.grip_needed_n,
        "grip_available_n": grip_available_n,
    })
}
