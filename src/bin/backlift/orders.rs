//! `backlift orders`: several cards as one sheet, what willow each asks for, and which cleft of the rack suits which.

mod page;
mod told;

use std::path::{Path, PathBuf};

use backlift::card::{Card, Figure};
use backlift::drawing::orders_page::svgs;
use backlift::drawing::pdf::pdf;
use backlift::files::fault::Fault;
use backlift::files::save::Folder;
use backlift::files::{card_file, rack};
use backlift::questions::orders::{Named, Ordered, Orders, Racked, orders};
use backlift::workshop::cautions::WORKSHOP;
use backlift::workshop::orders::rack::RackCleft;
use backlift::workshop::orders::willow::Willow;
use serde_json::{Value, json};

use crate::beside::Beside;
use crate::given::ShowArgs;
use crate::json::{doubted, joined};
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
    let answer = orders(cards, rack.as_ref(), &Progress::start())?;
    let cautions = beside.cautions.clone();
    let invented = answer.racked.as_ref().is_some_and(|it| it.invented);
    let whole = beside.invented_besides(invented, "The rack is invented").after(WORKSHOP);
    said(
        "orders",
        &args.show,
        folder,
        &whole,
        || figures(&answer),
        |units| told::told(&answer, units),
        |folder, units| {
            let pages = svgs(&page::page(&answer, cautions, units)).map_err(Fault::new)?;
            for (n, svg) in pages.iter().enumerate() {
                let name = if n == 0 { "orders".to_owned() } else { format!("orders-{}", n + 1) };
                add_picture(folder, &name, svg)?;
            }
            folder.add("orders.pdf", &pdf(&pages, "Orders for the bench").map_err(Fault::new)?)
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
    cards.iter().fold(Beside::default(), |all, it| all.and(of(it)))
}

fn figures(it: &Orders) -> Value {
    let orders = json!({ "orders": it.orders.iter().map(order).collect::<Value>() });
    joined([orders, it.racked.as_ref().map_or(Value::Null, |racked| of_rack(it, racked))])
}

fn order(it: &Ordered) -> Value {
    let card = &it.card;
    let weight = card.asked(Figure::DeadWeight);
    let willow = match &it.willow {
        Ok(willow) => of_willow(willow),
        Err(why) => json!({ "not_makeable": why }),
    };
    let asked = json!({
        "order": it.name,
        "size": card.size,
        "mass_kg": weight.target,
        "mass_tolerance_kg": weight.tolerance,
        "balance_m": card.balance_m(),
        "pendulum_swings": card.pendulum_swings,
        "pendulum_time_s": card.pendulum_time_s.target,
    });
    joined([asked, willow])
}

fn of_willow(it: &Willow) -> Value {
    let cleft = &it.usual_cleft;
    json!({
        "willow_kg_m3": it.best_kg_m3,
        "willow_limits_kg_m3": it.density_kg_m3,
        "no_lighter": it.beyond[0],
        "no_heavier": it.beyond[1],
        "cleft_length_m": cleft.length_m,
        "cleft_width_m": cleft.width_m,
        "cleft_depth_m": cleft.depth_m,
        "cleft_mass_kg": cleft.mass_kg,
        "cleft_limits_kg": it.cleft_kg(),
    })
}

fn of_rack(it: &Orders, racked: &Racked) -> Value {
    let name = |n: usize| it.orders.get(n).map_or("", |it| it.name.as_str());
    let served = racked.served.iter().map(|it| {
        let suits = json!({ "chance": it.suits.chance, "off_kg_m3": it.suits.off_kg_m3 });
        joined([json!({ "order": name(it.order) }), cleft(&it.cleft), suits])
    });
    let orders = racked.orders_left.iter();
    let orders = orders.map(|it| json!({ "order": name(it.order), "why": it.why }));
    let clefts = racked.clefts_left.iter();
    let clefts = clefts.map(|it| joined([cleft(&it.cleft), json!({ "why": it.why })]));
    json!({
        "served": served.collect::<Value>(),
        "orders_left": orders.collect::<Value>(),
        "clefts_left": clefts.collect::<Value>(),
    })
}

fn cleft(it: &RackCleft) -> Value {
    joined([
        json!({ "cleft": it.label }),
        doubted("density", "kg_m3", it.density_kg_m3()),
        json!({ "grains": it.grains, "note": it.note }),
    ])
}
