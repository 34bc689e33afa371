//! `backlift shape`: a bat as its maker describes it, and shapes that meet a card.

mod told;

use std::path::PathBuf;

use backlift::files::assets::sizes;
use backlift::files::card_file;
use backlift::files::save::Folder;
use backlift::files::shape::{DEMO, load};
use backlift::questions::own::as_it_lies;
use backlift::questions::shape::{ToMeet, held, worked};

use crate::given::ShowArgs;
use crate::outcome::{Outcome, Stop};
use crate::shape_files::{self, beside, figures};
use crate::written::{said, write_new};

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

pub fn run(args: Args) -> Result<Outcome, Stop> {
    if let Some(path) = &args.new {
        return write_new(path, DEMO);
    }
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let card = args.to.as_deref().map(card_file::read).transpose()?;
    let mut sets = args.set;
    // A card of another size, and no bat described: carved from the card's own size.
    if let (Some(card), None) = (&card, &args.shape) {
        sets.insert(0, format!("size={}", card.size));
    }
    let loaded = as_it_lies(load(args.shape.as_deref(), &sets, &sizes()?)?)?;
    let held = held(&args.hold)?;
    let to_meet = card.map(|card| ToMeet { card, held, own: args.shape.is_some() });
    let worked = worked(loaded, to_meet)?;
    let beside = beside(&worked);
    said(
        "shape",
        &args.show,
        folder,
        &beside,
        || figures(&worked),
        |units| told::told(&worked, units),
        |folder, _| shape_files::add(folder, &worked),
    )?;
    let unmet = worked.to.as_ref().is_some_and(|(_, it)| it.answers.is_empty());
    Ok(if unmet { Outcome::NotAccepted } else { Outcome::Done })
}
