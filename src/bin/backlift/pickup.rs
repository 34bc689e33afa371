//! `backlift pickup`: the pairs of bats that show what pickup is, with this player's late pull, and what an
//! ounce costs it, where.

mod told;

use std::path::PathBuf;

use backlift::bat::makeable::MadeBat;
use backlift::drawing::ounce_chart;
use backlift::drawing::palette::{LIGHT, PRINT};
use backlift::drawing::pdf::pdf;
use backlift::drawing::pickup_page::svg;
use backlift::drawing::png::png;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::innings::played::{self, FIFTY, StrokeNow, delivery};
use backlift::workshop::pickup_pair::{Pair, Pairs, pairs};

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::loaded::{Loaded, load};
use crate::ounce::{self, Ounces};
use crate::outcome::{Outcome, Stop};
use crate::placed::innings_stop;
use crate::progress::Progress;
use crate::written::said;

/// Show what pickup is: two bats alike on the scale and unlike in the hand, and the other way round
///
/// All four could be made in the size of the bat named, around its dead weight. Each is swung by this player
/// at fifty runs. Then what an ounce on the bat named costs each stroke, by where it sits.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift pickup --out pickup")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// The bat whose size and weight to start from, by its label or its number from 0
    #[arg(long, value_name = "LABEL|N", allow_negative_numbers = true)]
    bat: Option<String>,

    /// Write the page (SVG, PDF, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// A bat of a pair and the late pull with it.
struct Swung {
    made: MadeBat,
    /// Scale weight of the size's reference bat with the same swing moment, kg.
    pickup_weight_kg: f64,
    pull: StrokeNow,
}

/// Both pairs, swung.
struct Shown {
    title: String,
    size: String,
    /// From release until the stroke can start, s: what a time in hand hangs on.
    reaction_time_s: f64,
    same_scale: [Swung; 2],
    same_hand: [Swung; 2],
    /// On the bat named.
    ounces: Ounces,
}

/// Size of the chart, px.
const CHART: [f64; 2] = [1120.0, 640.0];

/// Shows.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = load(&args.given)?;
    let bat = loaded.bat(args.bat.as_deref())?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let progress = Progress::start();
    let shown = shown(&loaded, bat, &progress)?;
    drop(progress);
    let beside = Beside::scenario(&loaded);
    said(
        "pickup",
        &args.show,
        folder,
        || Ok(beside.figures(told::figures(&shown))),
        |units| beside.told(&told::told(&shown, units)),
        |folder, units| {
            let refused = |it: backlift::drawing::DrawingFault| Fault::new(it.to_string());
            let page = svg(&told::page(&shown, &beside, units)).map_err(refused)?;
            folder.add("pickup.svg", page.as_bytes())?;
            let mut chart = ounce::picture(&shown.ounces, units);
            chart.sentence = beside.sentence(&chart.sentence);
            let second = ounce_chart::page(&chart, &PRINT);
            let both = pdf(&[&page, &second], "What pickup is").map_err(refused)?;
            folder.add("pickup.pdf", &both)?;
            folder.add("pickup.png", &png(&page, 1.5).map_err(refused)?)?;
            let chart = ounce_chart::svg(&chart, &LIGHT, CHART[0], CHART[1]);
            folder.add("ounce.svg", chart.as_bytes())?;
            folder.add("ounce.png", &png(&chart, 2.0).map_err(refused)?)
        },
    )
}

fn shown(loaded: &Loaded, bat: usize, progress: &Progress) -> Result<Shown, Stop> {
    let weighed = &loaded.bats[bat];
    let mass_kg = weighed.mass_kg.value;
    let Pairs { same_scale, same_hand } = pairs(weighed.family(), &loaded.laws, mass_kg)
        .ok_or_else(|| {
            let words = format!("no bat of size {} weighs {mass_kg:.3} kg", weighed.size);
            Stop::NoAnswer(Fault::new(words).help("name another bat with --bat"))
        })?;
    let batter = loaded.batter(weighed, 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let pull = loaded.pull()?;
    let bowled = delivery(&loaded.scenario.bowling);
    let per_swing = weighed.pickup_weight_kg.value / weighed.swing_moment_kg_m2.value;
    let mut done = 0.0;
    let mut swing = |made: MadeBat| -> Result<Swung, Stop> {
        progress.step("swinging the four bats at fifty", done / 5.0)?;
        done += 1.0;
        let plan = &loaded.scenario.innings;
        let at = played::play(&batter, &made.bat, plan, bowled, &asked_time_s, &[FIFTY])
            .map_err(|it| innings_stop(&loaded.places, it))?;
        let pull = at.first().and_then(|it| it.with_slow.get(pull)).copied();
        let pull = pull.ok_or_else(|| Stop::OurMistake("fifty was not played".to_owned()))?;
        let pickup_weight_kg = per_swing * made.bat.swing_moment_kg_m2();
        Ok(Swung { made, pickup_weight_kg, pull })
    };
    let mut both = |Pair { bats: [a, b] }: Pair| Ok::<_, Stop>([swing(a)?, swing(b)?]);
    let (same_scale, same_hand) = (both(same_scale)?, both(same_hand)?);
    progress.step("putting an ounce here and there", 4.0 / 5.0)?;
    let ounces = Ounces::at_fifty(loaded, weighed, &batter, &asked_time_s)?;
    Ok(Shown {
        title: loaded.scenario.title.clone(),
        size: weighed.size.clone(),
        reaction_time_s: bowled.reaction_time_s,
        same_scale,
        same_hand,
        ounces,
    })
}
