//! The orders as a page.

use backlift::card::Figure;
use backlift::card::cautions::JUNIOR_BELOW_Y;
use backlift::drawing::orders_page::{Cell, OrderRow, OrdersPage};
use backlift::drawing::words;
use backlift::questions::orders::{Ordered, Orders};
use backlift::units::{INCH_M, POUND_KG, Quantity, THIN, Units, number, spoken};

use super::told;
use crate::figure::listed;

/// What is left over is said of so many; of the others how many they are.
const MOST_LEFT: usize = 12;
/// Letters of a line about what is left over.
const MOST_LETTERS: usize = 240;

pub fn page(it: &Orders, cautions: Vec<String>, units: Units) -> OrdersPage {
    let rows = it.orders.iter().enumerate().map(|(n, order)| row(it, n, order, units)).collect();
    let all = it.racked.as_ref().map_or_else(Vec::new, |racked| told::left(it, racked));
    let more = all.len().saturating_sub(MOST_LEFT);
    let mut left: Vec<String> = all.into_iter().take(MOST_LEFT).map(|it| cut(&it)).collect();
    if more > 0 {
        left.push(format!("And {more} more that are left over."));
    }
    let mut notes = vec![format!("{}.", told::RESTS_ON)];
    if it.racked.is_some() {
        notes.push(format!("{}.", told::RACK_RESTS_ON));
    }
    OrdersPage {
        title: match it.orders.len() {
            1 => "One bat to make".to_owned(),
            count => format!("{count} bats to make"),
        },
        about: about(it),
        rows,
        left,
        notes,
        cautions: for_juniors(it, cautions),
    }
}

fn cut(line: &str) -> String {
    match line.char_indices().nth(MOST_LETTERS) {
        Some((end, _)) => line[..end].to_owned() + " …",
        None => line.to_owned(),
    }
}

fn about(it: &Orders) -> String {
    let invented = it.orders.iter().filter(|it| it.card.invented).count();
    let players = match invented {
        0 => "",
        some if some == it.orders.len() => " Invented examples: no real players.",
        _ => " Some are invented examples: no real players.",
    };
    let rack = match &it.racked {
        Some(racked) if racked.invented => " The rack is invented.",
        _ => "",
    };
    format!("Each figure holds as the bat's own card says, which has the others.{players}{rack}")
}

/// The cautions, and for whom they are where that is not everybody.
fn for_juniors(it: &Orders, mut cautions: Vec<String>) -> Vec<String> {
    let is_junior = |it: &&Ordered| it.card.player.age_y < JUNIOR_BELOW_Y;
    let names: Vec<String> = it.orders.iter().filter(is_junior).map(|it| it.name.clone()).collect();
    if !names.is_empty() {
        cautions.insert(0, cut(&format!("For the juniors, of order {}:", listed(&names))));
    }
    cautions
}

fn row(all: &Orders, n: usize, it: &Ordered, units: Units) -> OrderRow {
    let card = &it.card;
    let weight = card.asked(Figure::DeadWeight);
    let balance = card.asked(Figure::Balance);
    let time = card.pendulum_time_s;
    let handle = card.asked(Figure::HandleDiameter);
    let between = |[low, high]: [f64; 2], size: f64, decimals: usize, unit: &str| {
        format!("{} to {}{THIN}{unit}", number(low / size, decimals), number(high / size, decimals))
    };
    let grams = |of: [f64; 2]| match units {
        Units::Trade => between(of, POUND_KG / 16.0, 1, "oz"),
        Units::Si => between(of, 1e-3, 0, "g"),
    };
    let lengths = |of: [f64; 2]| match units {
        Units::Trade => between(of, INCH_M, 2, "in"),
        Units::Si => between(of, 1e-3, 0, "mm"),
    };
    let said = |quantity, value: f64, sd: f64| spoken(quantity, value, sd, units);
    let cells = [
        (said(Quantity::Mass, weight.target, 0.003), grams(weight.tolerance)),
        (said(Quantity::Length, balance.target, 0.0005), lengths(balance.tolerance)),
        (
            format!("{} in {}{THIN}s", card.pendulum_swings, number(time.target, 1)),
            between(time.tolerance, 1.0, 1, "s"),
        ),
        (
            format!("{}{THIN}mm", number(1e3 * handle.target, 1)),
            format!(
                "{}, {}",
                words::handle_shape(card.handle_shape),
                words::grips(card.condition.grips)
            ),
        ),
    ];
    let served = all.racked.as_ref().and_then(|it| it.served.iter().find(|it| it.order == n));
    OrderRow {
        number: it.name.clone(),
        size: card.size.clone(),
        cells: cells.map(|(figure, limits)| Cell { figure, limits }),
        willow: willow(it, units),
        wood: served.map(|it| told::cleft(&it.cleft, it.suits.chance)).into_iter().collect(),
        wish: card.order.as_ref().map(|it| words::wish(&it.wish)).unwrap_or_default(),
    }
}

fn willow(it: &Ordered, units: Units) -> String {
    match &it.willow {
        Ok(willow) => format!(
            "Willow of {}{THIN}kg/m³, best {}; a cleft of {} weighs {}, best {}",
            told::span(willow.density_kg_m3),
            number(willow.best_kg_m3, 0),
            told::sizes(willow),
            told::weighs(willow.cleft_kg(), units),
            told::cleft_weight(willow.usual_cleft.mass_kg, units),
        ),
        Err(why) => format!("No willow makes it: {}", cut(why)),
    }
}
