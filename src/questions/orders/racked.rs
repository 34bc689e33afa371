//! Which cleft of a rack for which order, and why the others are left over.

use super::Ordered;
use crate::questions::{Progress, Stop};
use crate::workshop::orders::assignment::assigned;
use crate::workshop::orders::rack::{Rack, RackCleft};
use crate::workshop::orders::suits::{Blades, Suits, Unfit};
use crate::workshop::orders::willow::Asked;

/// An order and the cleft for it.
#[derive(Clone, Debug, PartialEq)]
pub struct Served {
    /// Its place among the orders.
    pub order: usize,
    /// The cleft.
    pub cleft: RackCleft,
    /// How well the two suit.
    pub suits: Suits,
}

/// An order that no cleft is left for.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftOrder {
    /// Its place among the orders.
    pub order: usize,
    /// Why, in plain words.
    pub why: String,
}

/// A cleft that no order takes.
#[derive(Clone, Debug, PartialEq)]
pub struct LeftCleft {
    /// The cleft.
    pub cleft: RackCleft,
    /// Why, in plain words.
    pub why: String,
}

/// The rack, shared out.
#[derive(Clone, Debug, PartialEq)]
pub struct Racked {
    /// The clefts are made up.
    pub invented: bool,
    /// In the order of the orders.
    pub served: Vec<Served>,
    /// Orders left without.
    pub orders_left: Vec<LeftOrder>,
    /// Clefts left over, in the order of the rack.
    pub clefts_left: Vec<LeftCleft>,
}

/// What is said of a pair: how well they suit, why not, or that the order can be made of no willow.
type Judged = Option<Result<Suits, Unfit>>;

pub(super) fn racked(
    orders: &[Ordered],
    asked: &[Asked<'_>],
    rack: &Rack,
    progress: &dyn Progress,
) -> Result<Racked, Stop> {
    let mut judged: Vec<Vec<Judged>> = Vec::with_capacity(orders.len());
    for (n, (order, asked)) in orders.iter().zip(asked).enumerate() {
        let done = 0.5 + 0.5 * n as f64 / orders.len() as f64;
        progress.step("holding each cleft to each order", done)?;
        judged.push(match &order.willow {
            Ok(willow) => {
                let mut blades = Blades::of(*asked, willow);
                rack.clefts.iter().map(|it| Some(blades.judge(it))).collect()
            }
            Err(_) => vec![None; rack.clefts.len()],
        });
    }
    let suits = |it: &Judged| it.as_ref().and_then(|it| it.as_ref().ok().copied());
    let costs: Vec<Vec<Option<f64>>> = judged
        .iter()
        .map(|row| row.iter().map(|it| suits(it).map(|it| it.off_kg_m3)).collect())
        .collect();
    let chosen = assigned(&costs);
    let (mut served, mut orders_left) = (Vec::new(), Vec::new());
    for (order, (row, cleft)) in judged.iter().zip(&chosen).enumerate() {
        let found = cleft.and_then(|n| Some((rack.clefts.get(n)?, suits(row.get(n)?)?)));
        match found {
            Some((cleft, suits)) => served.push(Served { order, cleft: cleft.clone(), suits }),
            None => {
                let why = why_without(&orders[order], row, rack);
                orders_left.push(LeftOrder { order, why });
            }
        }
    }
    let left = |n: &usize| !chosen.contains(&Some(*n));
    let clefts_left = (0..rack.clefts.len()).filter(left).map(|n| {
        let column: Vec<&Judged> = judged.iter().filter_map(|row| row.get(n)).collect();
        LeftCleft { cleft: rack.clefts[n].clone(), why: why_over(&column, orders) }
    });
    let clefts_left = clefts_left.collect();
    Ok(Racked { invented: rack.invented, served, orders_left, clefts_left })
}

/// Why an order goes without.
fn why_without(order: &Ordered, row: &[Judged], rack: &Rack) -> String {
    if let Err(why) = &order.willow {
        return format!("no willow makes it: {why}");
    }
    let judged = rack.clefts.iter().map(|it| it.label.as_str()).zip(row);
    let would = |labels: &str| format!("{labels} would do, and went to another order");
    why(judged, would, "none would do").unwrap_or_else(|| "there is no cleft".to_owned())
}

/// Why a cleft is left over.
fn why_over(column: &[&Judged], orders: &[Ordered]) -> String {
    let judged = orders.iter().map(|it| it.name.as_str()).zip(column.iter().copied());
    let would = |names: &str| format!("would do for {names}, which others suit as well or better");
    why(judged, would, "does for none")
        .unwrap_or_else(|| "no order can be made of any willow".to_owned())
}

/// What would do, or that nothing would and what is nearest; none where nothing was judged.
fn why<'a>(
    judged: impl Iterator<Item = (&'a str, &'a Judged)> + Clone,
    would: impl Fn(&str) -> String,
    nothing: &str,
) -> Option<String> {
    let suiting: Vec<&str> =
        judged.clone().filter(|(_, it)| matches!(it, Some(Ok(_)))).map(|(name, _)| name).collect();
    if !suiting.is_empty() {
        return Some(would(&suiting.join(", ")));
    }
    let (name, unfit) = judged
        .filter_map(|(name, it)| Some((name, it.as_ref()?.as_ref().err()?)))
        .min_by(|a, b| miss(a.1).total_cmp(&miss(b.1)))?;
    Some(format!("{nothing}; nearest is {name}: {unfit}"))
}

/// How far a cleft is from suiting, to tell the nearest: one that is too small cannot be mended and comes last.
fn miss(unfit: &Unfit) -> f64 {
    match unfit {
        Unfit::Density { density_kg_m3, low_kg_m3, high_kg_m3 } => {
            let it = density_kg_m3.value;
            (low_kg_m3 - it).max(it - high_kg_m3)
        }
        Unfit::Small(_) => f64::MAX,
    }
}
