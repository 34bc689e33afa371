//! `backlift pickup`: the pairs of bats that show what pickup is, with this player's late pull, and what an
//! ounce costs it, where.

mod told;

use std::path::PathBuf;

use backlift::bat::sizes::find;
use backlift::drawing::ounce_chart;
use backlift::drawing::palette::LIGHT;
use backlift::drawing::pdf::pdf;
use backlift::drawing::pickup_page::svg;
use backlift::drawing::png::png;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::files::shape_text::of_shape;
use backlift::questions::pairs::pairs;

use crate::beside::Beside;
use crate::given::{ScenarioArgs, ShowArgs};
use crate::ounce;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::{add_picture, said};

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

    /// Write the page (SVG, PDF, PNG) into this folder, and the two bats of one weight, for `shape` to make
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Size of the chart, px.
const CHART: [f64; 2] = [1120.0, 640.0];

pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = args.given.load()?;
    let bat = loaded.bat(args.bat.as_deref())?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let shown = pairs(&loaded, bat, &Progress::start())?;
    let beside = Beside::scenario(&loaded);
    said(
        "pickup",
        &args.show,
        folder,
        &beside,
        || told::figures(&shown),
        |units| told::told(&shown, units),
        |folder, units| {
            let page = svg(&told::page(&shown, &beside, units)).map_err(Fault::new)?;
            folder.add("pickup.svg", page.as_bytes())?;
            let mut chart = ounce::picture(&shown.ounces, units);
            chart.sentence = beside.sentence(&chart.sentence);
            let second = ounce_chart::page(&chart);
            let both = pdf(&[&page, &second], "What pickup is").map_err(Fault::new)?;
            folder.add("pickup.pdf", &both)?;
            let size = find(&loaded.sizes, &shown.size).map_err(Fault::new)?;
            for (name, title, shape) in told::to_make(&shown) {
                let text = of_shape(title, loaded.scenario.invented, size, shape)?;
                folder.add(name, text.as_bytes())?;
            }
            folder.add("pickup.png", &png(&page, 1.5).map_err(Fault::new)?)?;
            let chart = ounce_chart::svg(&chart, &LIGHT, CHART[0], CHART[1]);
            add_picture(folder, "ounce", &chart)
        },
    )
}
