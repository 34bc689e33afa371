//! `backlift matters`: which measurements matter for this player.

mod figures;

use std::path::PathBuf;

use backlift::innings::played::delivery;
use backlift::player::grip::comfortable_diameter_m;
use backlift::sensitivity::input::Known;
use backlift::sensitivity::study::{Asked, StudyFault, study};

use crate::given::{ScenarioArgs, ShowArgs};
use crate::json;
use crate::loaded::{Loaded, load};
use crate::outcome::{Outcome, Stop};
use crate::placed::innings_stop;
use crate::progress::Progress;

/// Which measurements matter for this player, and which need no more care
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift matters --samples 4 --out matters")]
pub struct Args {
    #[command(flatten)]
    given: ScenarioArgs,

    /// Rows of draws; more is surer and takes longer; best a power of two
    #[arg(long, value_name = "N", default_value_t = 32)]
    samples: usize,

    /// Write a chart (SVG, PNG) into this folder
    #[arg(long, value_name = "DIR")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Studies.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let loaded = load(&args.given)?;
    let progress = Progress::start();
    let batter = loaded.batter(&loaded.bats[0], 1.0)?;
    let asked_time_s = loaded.asked_times_s(&batter)?;
    let known = Known {
        reading: &loaded.scenario.player,
        player: &loaded.player,
        bat: &loaded.bats[0],
        other: loaded.bats.get(1),
        handle_diameter_m: comfortable_diameter_m(loaded.player.hand_length_m.value),
        reaction_time_s: loaded.scenario.bowling.reaction_time_s,
    };
    let asked = Asked {
        known,
        strokes: &loaded.strokes,
        pull: loaded.stroke("pull")?,
        plan: &loaded.scenario.innings,
        delivery: delivery(&loaded.scenario.bowling),
        asked_time_s: &asked_time_s,
        rows: args.samples,
    };
    let it = study(&asked, &|share| progress.report("swinging", share)).unwrap();
    println!("{} rows, {} left out, {} draws", it.rows, it.left_out, it.draws);
    for f in &it.figures {
        println!(
            "{}: best {:.4} mean {:.4} sd {:.4}",
            f.figure.key(),
            f.best,
            f.divided.mean,
            f.divided.sd
        );
        for (m, i) in it.inputs.iter().zip(&f.divided.indices) {
            println!(
                "   {:24} ±{:5.1}%  first {:6.3} [{:6.3} {:6.3}]  total {:6.3} [{:6.3} {:6.3}]",
                m.input.key(),
                100.0 * m.relative_sd,
                i.first.value,
                i.first.interval[0],
                i.first.interval[1],
                i.total.value,
                i.total.interval[0],
                i.total.interval[1]
            );
        }
    }
    Ok(Outcome::Done)
}
