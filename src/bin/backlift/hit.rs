//! `backlift hit`: what comes of ball on bat, and what the hands feel of it.

mod figures;
mod files;
mod told;

use std::path::PathBuf;

use backlift::files::save::Folder;
use backlift::files::shape;
use backlift::questions::hit::bat::{Asked as HitWith, Whose};
use backlift::questions::hit::{Asked, hit};
use backlift::questions::own::as_it_lies;

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

/// Hits.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let described = args.shape.as_deref().map(|it| shape::load(Some(it), &[], &loaded.sizes));
    let described = described.transpose()?.map(as_it_lies).transpose()?;
    let bat = match &described {
        Some(it) => HitWith::Described(it),
        None => HitWith::OfScenario(args.bat.of(&loaded)?),
    };
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    let asked = Asked {
        bat,
        from_toe_m: args.at,
        across_m: args.across,
        ball_m_s: args.ball,
        bat_m_s: args.speed,
        mapped: folder.is_some(),
    };
    let found = hit(&loaded, &asked, &progress)?;
    drop(progress);
    let invented = matches!(found.bat.whose, Whose::Described { invented: true });
    let beside = Beside::scenario(&loaded).after(found.cautions.clone()).described(invented);
    said(
        "hit",
        &args.show,
        folder,
        &beside,
        || figures::of(&found),
        |units| told::told(&found, units),
        |folder, units| files::add(folder, &found, &beside, units),
    )?;
    Ok(Outcome::Done)
}
