//! `backlift shape`: a bat as its maker describes it, and shapes that meet a card.

mod figures;
mod files;
mod held;
mod told;

use std::path::PathBuf;

use backlift::bat::shaped::{ShapedBat, shaped};
use backlift::card::Card;
use backlift::files::assets;
use backlift::files::fault::Fault;
use backlift::files::save::{Folder, new_file};
use backlift::files::shape::{DEMO, LoadedShape, load};
use backlift::workshop::cautions::SHAPE;
use backlift::workshop::middles::middles;
use backlift::workshop::to_card::{Start, ToCard, to_card};

use crate::beside::Beside;
use crate::given::ShowArgs;
use crate::json;
use crate::outcome::{Outcome, Stop};
use crate::placed::shape_faults;
use crate::questions::card_file;
use crate::written::said;

/// A blade from its measurements: weight, pickup, sections; or shapes that meet a card
///
/// The bat is described in a file, with units as people write them; without one the built-in example is
/// used. With --to the maker's card, the blade is carved until it meets it, or the demand that breaks it is
/// named with the nearest that can be made.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift shape --to fitting/card.ron --hold \"edge=31 mm\" --out bench")]
pub struct Args {
    /// File of the described bat; without one the built-in example is used
    shape: Option<PathBuf>,

    /// Put a value over one field, like blade.edge=38mm; may be repeated
    #[arg(long = "set", value_name = "PATH=VALUE")]
    set: Vec<String>,

    /// Write a file to start from, and nothing else
    #[arg(long, value_name = "FILE", conflicts_with_all = ["shape", "to", "out"])]
    new: Option<PathBuf>,

    /// Carve the blade until it meets this card
    #[arg(long, value_name = "CARD.ron")]
    to: Option<PathBuf>,

    /// Keep one figure as it is: edge, depth, swell or hollow, like "edge=38 mm"; may be repeated
    #[arg(long, value_name = "WHAT=VALUE", requires = "to")]
    hold: Vec<String>,

    /// Folder for the templates, the solid and the figures
    #[arg(long, value_name = "FOLDER")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// A described bat, worked out.
struct Worked {
    loaded: LoadedShape,
    bat: ShapedBat,
    middles: Vec<(&'static str, ShapedBat)>,
    to: Option<(Card, ToCard)>,
}

impl Worked {
    /// The cautions of the bench and of the card's player; what is invented.
    fn beside(&self) -> Beside {
        let card = self.to.as_ref().map(|(card, _)| Beside::card(card)).unwrap_or_default();
        card.after(SHAPE).described(self.loaded.invented)
    }

    /// The bat to be drawn and exported: the best answer to the card, else the nearest to it, else as
    /// described.
    fn chosen(&self) -> &ShapedBat {
        let answer =
            self.to.as_ref().and_then(|(_, it)| it.answers.first().or(it.nearest.as_ref()));
        answer.map_or(&self.bat, |it| &it.bat)
    }
}

/// Shapes.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    if let Some(path) = &args.new {
        new_file(path, DEMO.as_bytes())?;
        let _ = json::print(&format!("Wrote {}\n", path.display()));
        return Ok(Outcome::Done);
    }
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let worked = worked(&args)?;
    let beside = worked.beside();
    said(
        "shape",
        &args.show,
        folder,
        || Ok(beside.figures(figures::of(&worked))),
        |units| beside.told(&told::told(&worked, units)),
        |folder, _| files::add(folder, &worked),
    )?;
    let unmet = worked.to.as_ref().is_some_and(|(_, it)| it.answers.is_empty());
    Ok(if unmet { Outcome::NotAccepted } else { Outcome::Done })
}

fn worked(args: &Args) -> Result<Worked, Stop> {
    let (sizes, limits) = (assets::sizes()?, assets::limits()?);
    let card = args.to.as_deref().map(card_file::read).transpose()?;
    let mut sets = args.set.clone();
    // A card of another size, and no bat described: carved from the card's own size.
    if let (Some(card), None) = (&card, &args.shape) {
        sets.insert(0, format!("size={}", card.size));
    }
    let loaded = load(args.shape.as_deref(), &sets, &sizes)?;
    let held = held::read(&args.hold)?;
    let bat = shaped(&loaded.title, &loaded.described, &loaded.size, &limits)
        .map_err(|it| shape_faults(&loaded.places, &it))?;
    let density_kg_m3 = loaded.described.density_kg_m3();
    let to = card.map(|card| {
        let described = &loaded.described;
        // The built-in bat stands for nothing but its size.
        let own = args.shape.is_some();
        let start = Start {
            shape: if own { bat.shape.clone() } else { loaded.size.reference.clone() },
            density_kg_m3,
            willow_given: own && (described.cleft.is_some() || described.willow_kg_m3.is_some()),
            cleft: described.cleft.filter(|_| own),
            size: &loaded.size,
            limits: &limits,
            held,
        };
        let answer = to_card(&start, &card, &|| false);
        (card, answer)
    });
    let middles = match to {
        None => middles(&bat.shape, density_kg_m3, &loaded.size, &limits),
        Some(_) => Vec::new(),
    };
    Ok(Worked { loaded, bat, middles, to })
}

/// Writes the files of a described bat into a folder; returns how many.
#[cfg(feature = "studio")]
pub fn write(folder: &std::path::Path, loaded: LoadedShape, bat: ShapedBat) -> Result<usize, Stop> {
    let mut into = Folder::open(folder)?;
    files::add(&mut into, &Worked { loaded, bat, middles: Vec::new(), to: None })?;
    Ok(into.commit()?.len())
}

/// A picture or a mesh that could not be made.
fn refused(error: impl std::fmt::Display) -> Fault {
    Fault::new(error.to_string())
}
