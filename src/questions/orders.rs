//! Several cards as one sheet for the bench: what willow each asks for, and which cleft of the rack suits which.

mod racked;

use super::{Progress, Stop};
use crate::bat::laws::Limits;
use crate::bat::sizes::{Size, find};
use crate::card::Card;
use crate::files::assets::{limits, sizes};
use crate::files::fault::Fault;
use crate::workshop::orders::rack::Rack;
use crate::workshop::orders::willow::{Asked, Willow};

pub use racked::{LeftCleft, LeftOrder, Racked, Served};

/// More orders than one rack serves at a time.
pub const MOST_ORDERS: usize = 60;

/// A card under what it is called on the sheet.
#[derive(Clone, Debug, PartialEq)]
pub struct Named {
    /// The order's number, or the name of the card's file where it has none.
    pub name: String,
    /// The card.
    pub card: Card,
}

/// One order.
#[derive(Clone, Debug, PartialEq)]
pub struct Ordered {
    /// What it is called.
    pub name: String,
    /// Its card.
    pub card: Card,
    /// The willow that it can be made of, or what stands in the way of any.
    pub willow: Result<Willow, String>,
}

/// All orders, and the rack if there is one.
#[derive(Clone, Debug, PartialEq)]
pub struct Orders {
    /// In the order in which they were given.
    pub orders: Vec<Ordered>,
    /// Which cleft for which.
    pub racked: Option<Racked>,
}

/// What each order asks of the wood, and which cleft of a rack suits it.
///
/// # Errors
/// If there is no card or there are too many, two are called the same, a card's size is not known, or the work is
/// cancelled.
pub fn orders(
    cards: Vec<Named>,
    rack: Option<&Rack>,
    progress: &dyn Progress,
) -> Result<Orders, Stop> {
    refuse(&cards)?;
    let (sizes, limits) = (sizes()?, limits()?);
    let count = cards.len() as f64;
    let share = if rack.is_some() { 0.5 } else { 1.0 };
    let mut orders: Vec<Ordered> = Vec::with_capacity(cards.len());
    for Named { name, card } in cards {
        let done = share * orders.len() as f64 / count;
        progress.step("working out which willow makes each bat", done)?;
        let willow = asked(&name, &card, &sizes, &limits)?.willow();
        orders.push(Ordered { name, card, willow });
    }
    let racked = rack.map(|rack| {
        let asked = orders.iter().map(|it| asked(&it.name, &it.card, &sizes, &limits));
        let asked = asked.collect::<Result<Vec<_>, _>>()?;
        racked::racked(&orders, &asked, rack, progress)
    });
    Ok(Orders { racked: racked.transpose()?, orders })
}

fn refuse(cards: &[Named]) -> Result<(), Fault> {
    if cards.is_empty() {
        return Err(Fault::new("there is no card").help("name the cards that `backlift fit` wrote"));
    }
    if cards.len() > MOST_ORDERS {
        let fault = Fault::new(format!("there are {} cards", cards.len()));
        return Err(fault.help(format!("name at most {MOST_ORDERS} at a time")));
    }
    for (n, it) in cards.iter().enumerate() {
        if cards.iter().take(n).any(|other| other.name == it.name) {
            let fault = Fault::new(format!("there are two orders {:?}", it.name));
            return Err(fault.help("give each a number of its own, with `backlift fit --order`"));
        }
    }
    Ok(())
}

fn asked<'a>(
    name: &str,
    card: &'a Card,
    sizes: &'a [Size],
    limits: &'a Limits,
) -> Result<Asked<'a>, Fault> {
    let size = find(sizes, &card.size)
        .map_err(|it| Fault::new(format!("the card of order {name}: {it}")).help(it.mend()))?;
    Ok(Asked { card, size, limits })
}
