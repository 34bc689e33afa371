//! `backlift hit`: what comes of ball on bat, and what the hands feel of it.

mod files;
mod told;

use std::path::PathBuf;

use backlift::files::save::Folder;
use backlift::files::shape;
use backlift::impact::doubt::FeltSurely;
use backlift::impact::hand::Hand;
use backlift::questions::hit::bat::{Asked as HitWith, Whose};
use backlift::questions::hit::{Asked, Found, PRACTICE_BEND_RAD, hit};
use backlift::questions::own::as_it_lies;
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::given::{BatArg, ScenarioArgs, ShowArgs, length, speed};
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::said;

/// Hit a ball: how fast it leaves, jar at each hand, twist, and how far the splice bends
///
/// With the bat speed of the player's fastest pull, unless another is given.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift hit --bat \"Old faithful\" --at \"6 in\" --across \"1 cm\" --out hit")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    #[command(flatten)]
    bat: BatArg,

    /// A bat as its maker describes it (the file of `backlift shape`), in place of one of the scenario's
    #[arg(long, value_name = "FILE", conflicts_with = "bat")]
    shape: Option<PathBuf>,

    /// Where the ball meets the face, from the toe, like "6 in"
    #[arg(long, value_name = "LENGTH", default_value = "6 in", value_parser = length)]
    at: f64,

    /// How far off the middle of the face, like "1 cm"
    #[arg(
        long,
        value_name = "LENGTH",
        default_value = "0 mm",
        value_parser = length,
        allow_hyphen_values = true
    )]
    across: f64,

    /// Ball speed at the bat, like "60 km/h"; four fifths of the scenario's bowling if left out
    #[arg(long, value_name = "SPEED", value_parser = speed)]
    ball: Option<f64>,

    /// Bat speed where it meets the ball, like "15 m/s"; the player's fastest pull if left out
    #[arg(long, value_name = "SPEED", value_parser = speed)]
    speed: Option<f64>,

    /// Write the map of the face and the hands' force over time (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let described = args.shape.as_deref().map(|it| shape::load(Some(it), &[], &loaded.sizes));
    let described = described.transpose()?.map(as_it_lies).transpose()?;
    let bat = match &described {
        Some(it) => HitWith::Described(it),
        None => HitWith::OfScenario(args.bat.of(&loaded)?),
    };
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let asked = Asked {
        bat,
        from_toe_m: args.at,
        across_m: args.across,
        ball_m_s: args.ball,
        bat_m_s: args.speed,
        mapped: folder.is_some(),
    };
    let found = hit(&loaded, &asked, &Progress::start())?;
    let invented = matches!(found.bat.whose, Whose::Described { invented: true });
    let beside = Beside::scenario(&loaded).after(found.cautions.clone()).described(invented);
    said(
        "hit",
        &args.show,
        folder,
        &beside,
        || figures(&found),
        |units| told::told(&found, units),
        |folder, units| files::add(folder, &found, &beside, units),
    )
}

fn hand(hand: &Hand, felt: &FeltSurely) -> Value {
    let couple_n_m = felt.couple_n_m.value;
    json!({
        "from_top_m": hand.from_top_m,
        "peak_n": felt.peak_n.value,
        "peak_sd_n": felt.peak_n.sd,
        "impulse_n_s": felt.impulse_n_s.value,
        "impulse_sd_n_s": felt.impulse_n_s.sd,
        "couple_n_m": couple_n_m,
        "couple_sd_n_m": felt.couple_n_m.sd,
        "couple_limit_n_m": hand.couple_limit_n_m(),
        "grip_needed_n": hand.grip_needed_n(couple_n_m),
        "grip_n": hand.grip_n,
        "holds": couple_n_m <= hand.couple_limit_n_m(),
    })
}

fn figures(it: &Found) -> Value {
    let (struck, account) = (&it.doubted.struck, &it.doubted.struck.account);
    let face = it.face_met();
    let both = |n: usize| Some(hand(it.hit.hands.get(n)?, it.doubted.hands.get(n)?));
    let swing_moment_off_share = match it.bat.whose {
        Whose::OfItsSize { swing_moment_off } => Some(swing_moment_off),
        Whose::Described { .. } => None,
    };
    json!({
        "bat": it.bat.swung.label,
        "described": swing_moment_off_share.is_none(),
        "from_toe_m": it.from_toe_m,
        "across_m": it.hit.across_m,
        "bat_speed_m_s": it.bat_m_s.value,
        "bat_speed_sd_m_s": it.bat_m_s.sd,
        "bat_speed_was_given": it.bat_speed_was_given,
        "ball_speed_m_s": it.hit.ball_m_s,
        "exit_speed_m_s": it.doubted.exit_m_s.value,
        "exit_speed_sd_m_s": it.doubted.exit_m_s.sd,
        "rigid_exit_speed_m_s": it.rigid_exit_m_s,
        "exit_along_deg": struck.along_rad.to_degrees(),
        "face_behind_chord_m": face.behind_chord_m,
        "face_looks_to_toe_deg": face.looks_to_toe_rad.to_degrees(),
        "contact_s": struck.contact_s,
        "contact_peak_n": struck.contact_peak_n,
        "splice_bend_deg": it.doubted.bend_rad.value.to_degrees(),
        "splice_bend_sd_deg": it.doubted.bend_rad.sd.to_degrees(),
        "splice_bend_range_deg": it.doubted.bend_range_rad.map(f64::to_degrees),
        "splice_stiffness_n_m": it.hit.hinge.stiffness_n_m,
        "splice_stiffness_range_n_m": it.spread.hinge_n_m,
        "practice": {
            "bend_deg": PRACTICE_BEND_RAD.to_degrees(),
            "splice_stiffness_n_m": it.practice_hinge_n_m,
            "closing_speed_m_s": it.practice_closing_m_s,
        },
        "hands": { "top": both(0), "bottom": both(1) },
        "twist": {
            "rate_deg_s": struck.twist_rad_s.to_degrees(),
            "turned_deg": struck.twist_rad.to_degrees(),
        },
        "swing_moment_off_share": swing_moment_off_share,
        "account": {
            "momentum_open_share": account.momentum_share,
            "moment_of_momentum_open_share": account.moment_share,
            "energy_open_share": account.energy_share,
            "lost_in_ball_j": account.ball_j,
            "lost_in_splice_j": account.hinge_j,
            "lost_in_hands_j": account.hands_j,
        },
    })
}
