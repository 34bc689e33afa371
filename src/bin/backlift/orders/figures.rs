//! The orders for other programs, SI.

use backlift::card::Figure;
use backlift::questions::orders::{Ordered, Orders, Racked};
use backlift::workshop::orders::rack::RackCleft;
use backlift::workshop::orders::willow::Willow;
use serde_json::{Value, json};

use crate::json::{doubted, joined};

/// The figures.
pub fn of(it: &Orders) -> Value {
    let orders = json!({ "orders": it.orders.iter().map(order).collect::<Value>() });
    joined([orders, it.racked.as_ref().map_or(Value::Null, |racked| rack(it, racked))])
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

fn rack(it: &Orders, racked: &Racked) -> Value {
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
