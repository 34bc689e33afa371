//! `backlift orders`: several cards as one sheet, what willow each asks for, and which cleft of the rack suits which.

mod figures;
mod page;
mod told;

use std::path::{Path, PathBuf};

use backlift::card::Card;
use backlift::drawing::DrawingFault;
use backlift::drawing::orders_page::svgs;
use backlift::drawing::pdf::pdf;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::files::{card_file, rack};
use backlift::questions::orders::{Named, Orders, orders};
use backlift::workshop::cautions::WORKSHOP;

use crate::beside::Beside;
use crate::given::ShowArgs;
use crate::outcome::{Outcome, Stop};
use crate::progress::Progress;
use crate::written::{add_picture, said};

/// Several cards on one sheet: what each cleft must give, and which of the rack suits which
///
/// Says of each card between which densities of willow its blade can be carved, and what the usual cleft of the size
/// then weighs. With a rack, clefts are shared out so that as many bats as can be are made, of willow that suits
/// them; what is left over is named with the reason.
#[derive(clap::Args)]
#[command(after_help = "\
Example:
  backlift orders fitting/card.ron --out bench")]
pub struct Args {
    /// Cards, or folders with cards in them
    #[arg(value_name = "CARD.ron", required = true)]
    cards: Vec<PathBuf>,

    /// The clefts there are: a file like scenarios/rack.ron
    #[arg(long, value_name = "RACK.ron")]
    rack: Option<PathBuf>,

    /// Write the sheet (SVG, PDF, PNG) into this folder
    #[arg(long, value_name = "FOLDER")]
    out: Option<PathBuf>,

    #[command(flatten)]
    show: ShowArgs,
}

/// Takes the orders together.
pub fn run(args: Args) -> Result<Outcome, Stop> {
    let mut cards = Vec::new();
    for path in &args.cards {
        for path in card_file::cards_at(path)? {
            cards.push(named(&path)?);
        }
    }
    let rack = args.rack.as_deref().map(rack::read).transpose()?;
    let folder = args.out.as_deref().map(Folder::open).transpose()?;
    let beside = beside(&cards);
    let progress = Progress::start();
    let answer = orders(cards, rack.as_ref(), &progress)?;
    drop(progress);
    let cautions = beside.cautions.clone();
    let whole = with_rack(beside, &answer).after(WORKSHOP);
    said(
        "orders",
        &args.show,
        folder,
        &whole,
        || figures::of(&answer),
        |units| told::told(&answer, units),
        |folder, units| {
            let refused = |it: DrawingFault| Fault::new(it.to_string());
            let pages = svgs(&page::page(&answer, cautions, units)).map_err(refused)?;
            for (n, svg) in pages.iter().enumerate() {
                let name = if n == 0 { "orders".to_owned() } else { format!("orders-{}", n + 1) };
                add_picture(folder, &name, svg)?;
            }
            let pages: Vec<&str> = pages.iter().map(String::as_str).collect();
            folder.add("orders.pdf", &pdf(&pages, "Orders for the bench").map_err(refused)?)
        },
    )?;
    let all_made = answer.orders.iter().all(|it| it.willow.is_ok())
        && answer.racked.as_ref().is_none_or(|it| it.orders_left.is_empty());
    Ok(if all_made { Outcome::Done } else { Outcome::NotAccepted })
}

/// A card under its order's number, or under its file's name.
fn named(path: &Path) -> Result<Named, Fault> {
    let card = card_file::read(path)?;
    let number = card.order.as_ref().and_then(|it| it.number.clone());
    Ok(Named { name: number.unwrap_or_else(|| card_file::called(path)), card })
}

/// What stands beside all cards, said once. Of several, the stature at which to fit again is on each one's own card.
fn beside(cards: &[Named]) -> Beside {
    let of = |it: &Named| match cards {
        [_] => Beside::card(&it.card),
        _ => Beside::card(&Card { refit_stature_m: None, ..it.card.clone() }),
    };
    cards.iter().fold(Beside::default(), |all, it| all.or(of(it)))
}

fn with_rack(beside: Beside, answer: &Orders) -> Beside {
    let is_invented = answer.racked.as_ref().is_some_and(|it| it.invented);
    beside.invented_besides(is_invented, "The rack is invented")
}
