//! The orders in words: the sentence, a row an order, then the rack.

use backlift::card::Figure;
use backlift::questions::orders::{Ordered, Orders, Racked};
use backlift::units::{Quantity, THIN, Units, number, spoken};
use backlift::workshop::orders::rack::RackCleft;
use backlift::workshop::orders::willow::Willow;

use crate::figure::{listed, percent};
use crate::paragraph::{each_set_in, paragraph, set_in};
use crate::table::table;

/// Digits that a cleft is worth.
const DIGIT_KG: f64 = 0.03;
/// What the willow of the orders rests on.
pub const RESTS_ON: &str = "Willow at 12 % water. Lighter willow makes a thicker blade, until the Laws or the wood forbid it, heavier willow a thinner one; makers find 400 to 500 kg/m³ (from memory). The usual cleft is the size's standard blade with 150 mm of length and 10 mm of width and depth to spare. Both are assumptions; shrinkage and pressing are left out";
/// What sharing out a rack rests on.
pub const RACK_RESTS_ON: &str = "A cleft is in doubt by its volume (3 %) and its moisture (2 in the hundred by a meter, 4 unread), both assumptions; it is kept for an order if the blade comes out of it four times in five. Grains are noted and count nowhere: how they make a bat play is not known here";

/// Everything, the answer first.
pub fn told(it: &Orders, units: Units) -> String {
    let mut out = paragraph(&sentence(it)) + "\n\n";
    out += &(in_rows(it, units) + "\n");
    for order in &it.orders {
        if let Err(why) = &order.willow {
            out += &(set_in(&format!("{}: no willow makes it: {why}", order.name)) + "\n");
        }
    }
    out += &(paragraph(RESTS_ON) + "\n");
    if let Some(racked) = &it.racked {
        out += &format!("\n{}", rack(it, racked));
    }
    out
}

fn sentence(it: &Orders) -> String {
    let count = it.orders.len();
    let bats = if count == 1 { "bat" } else { "bats" };
    match &it.racked {
        Some(racked) => {
            let left: Vec<String> =
                racked.orders_left.iter().map(|left| it.orders[left.order].name.clone()).collect();
            let without = match left.as_slice() {
                [] => String::new(),
                all => format!("; order {} goes without", listed(all)),
            };
            match racked.served.len() {
                all if all == count && count > 1 => {
                    format!("The rack has a cleft for each of {count} bats")
                }
                served => format!("The rack has a cleft for {served} of {count} {bats}{without}"),
            }
        }
        None => {
            let makeable = it.orders.iter().filter(|it| it.willow.is_ok()).count();
            match makeable == count {
                true => format!("{count} {bats} to make, of willow that there is"),
                false => format!("{count} {bats} to make; there is willow for {makeable} of them"),
            }
        }
    }
}

fn in_rows(it: &Orders, units: Units) -> String {
    let heads = ["order", "weight", "willow, kg/m³", "best", "usual cleft weighs"];
    let mut out = table(&heads, it.orders.iter().map(|it| row(it, units)));
    let mut told: Vec<&str> = Vec::new();
    for order in &it.orders {
        let size = order.card.size.as_str();
        if let Some(willow) = order.willow.as_ref().ok().filter(|_| !told.contains(&size)) {
            told.push(size);
            out += &format!("  The usual cleft of size {size}: {}\n", sizes(willow));
        }
    }
    out
}

fn row(it: &Ordered, units: Units) -> [String; 5] {
    let weight = spoken(Quantity::Mass, it.card.asked(Figure::DeadWeight).target, 0.003, units);
    let [willow, best, cleft] = match &it.willow {
        Ok(willow) => [
            span(willow.density_kg_m3),
            number(willow.best_kg_m3, 0),
            weighs(willow.cleft_kg(), units),
        ],
        Err(_) => ["none", "", ""].map(str::to_owned),
    };
    [it.name.clone(), weight, willow, best, cleft]
}

/// "412 to 560".
pub fn span([low, high]: [f64; 2]) -> String {
    format!("{} to {}", number(low, 0), number(high, 0))
}

/// "710 × 118 × 73 mm".
pub fn sizes(willow: &Willow) -> String {
    let it = &willow.usual_cleft;
    let sizes = [it.length_m, it.width_m, it.depth_m].map(|it| number(1e3 * it, 0));
    format!("{}{THIN}mm", sizes.join(" × "))
}

/// "4 lb 3 oz to 7 lb 9 oz".
pub fn weighs([low, high]: [f64; 2], units: Units) -> String {
    format!("{} to {}", cleft_weight(low, units), cleft_weight(high, units))
}

/// A cleft's weight to the ounce.
pub fn cleft_weight(mass_kg: f64, units: Units) -> String {
    spoken(Quantity::Mass, mass_kg, DIGIT_KG, units)
}

fn rack(it: &Orders, racked: &Racked) -> String {
    let rows = racked.served.iter().map(|served| {
        [
            it.orders[served.order].name.clone(),
            served.cleft.label.clone(),
            density(&served.cleft),
            percent(served.suits.chance, 0),
            served.cleft.grains.map_or_else(|| "–".to_owned(), |it| it.to_string()),
        ]
    });
    let served = match racked.served.is_empty() {
        true => String::new(),
        false => table(&["order", "cleft", "willow, kg/m³", "will do", "grains"], rows) + "\n",
    };
    served + &each_set_in(left(it, racked)) + &paragraph(RACK_RESTS_ON) + "\n"
}

/// What is left over, and why, a line each: orders, then clefts.
pub fn left(it: &Orders, racked: &Racked) -> Vec<String> {
    let orders = racked.orders_left.iter();
    let orders = orders.map(|left| format!("Order {}: {}", it.orders[left.order].name, left.why));
    let clefts = racked.clefts_left.iter();
    let clefts = clefts.map(|it| format!("Cleft {} is left: {}", it.cleft.label, it.why));
    orders.chain(clefts).collect()
}

/// "452 ± 17".
fn density(it: &RackCleft) -> String {
    let density = it.density_kg_m3();
    format!("{} ± {}", number(density.value, 0), number(density.sd, 0))
}

/// A cleft for the sheet: "Cleft A3: 452 ± 17 kg/m³, will do 98 %, 8 grains, a pin knot".
pub fn cleft(it: &RackCleft, chance: f64) -> String {
    let grains = it.grains.map(|it| format!(", {it} grains")).unwrap_or_default();
    let note = it.note.as_ref().map(|it| format!(", {it}")).unwrap_or_default();
    let chance = percent(chance, 0);
    let density = density(it);
    format!("Cleft {}: {density}{THIN}kg/m³, will do {chance}{grains}{note}", it.label)
}
