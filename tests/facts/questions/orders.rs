//! Cards taken together, and the rack.

use super::{printed, quietly, same, until};
use backlift::card::Card;
use backlift::files::card::read;
use backlift::files::fault::Source;
use backlift::files::rack::read_text;
use backlift::questions::Stop;
use backlift::questions::orders::{MOST_ORDERS, Named, orders};
use backlift::workshop::orders::rack::{Rack, RackCleft};

fn card() -> Card {
    read(include_str!("../../commands/card.ron")).unwrap()
}

fn named(count: usize) -> Vec<Named> {
    (0..count).map(|n| Named { name: n.to_string(), card: card() }).collect()
}

fn rack() -> Rack {
    read_text(Source::new("rack.ron", include_str!("../../../scenarios/rack.ron"))).unwrap()
}

#[test]
fn the_command_prints_what_the_question_answers() {
    let asked = orders(named(1), Some(&rack()), &quietly).unwrap();
    let printed = printed(&["orders", "tests/commands/card.ron", "--rack", "scenarios/rack.ron"]);
    let willow = asked.orders[0].willow.as_ref().unwrap();
    let order = &printed["orders"][0];
    for n in 0..2 {
        same(&order["willow_limits_kg_m3"][n], willow.density_kg_m3[n]);
        same(&order["cleft_limits_kg"][n], willow.cleft_kg()[n]);
    }
    let served = &asked.racked.unwrap().served[0];
    assert_eq!(printed["served"][0]["cleft"], served.cleft.label);
    same(&printed["served"][0]["chance"], served.suits.chance);
}

#[test]
fn of_one_order_the_cleft_nearest_to_its_willow_is_taken() {
    let answer = orders(named(1), Some(&rack()), &quietly).unwrap();
    let best = answer.orders[0].willow.as_ref().unwrap().best_kg_m3;
    let off = |it: &RackCleft| (it.density_kg_m3().value - best).abs();
    let racked = answer.racked.unwrap();
    let taken = &racked.served[0].cleft;
    // Those of the same doubt: the rest is weighed with it.
    for it in racked.clefts_left.iter().filter(|it| it.why.starts_with("would do")) {
        let alike = it.cleft.cleft.moisture.is_some();
        assert!(!alike || off(taken) <= off(&it.cleft) + 1.0, "{taken:?} {it:?}");
    }
}

#[test]
fn more_orders_than_clefts_leave_orders_and_more_clefts_leave_clefts() {
    let rack = rack();
    let few = Rack { clefts: rack.clefts[..2].to_vec(), ..rack.clone() };
    let racked = orders(named(3), Some(&few), &quietly).unwrap().racked.unwrap();
    assert_eq!((racked.served.len(), racked.orders_left.len()), (2, 1));
    assert!(racked.orders_left[0].why.contains("went to another order"), "{racked:?}");
    let racked = orders(named(3), Some(&rack), &quietly).unwrap().racked.unwrap();
    assert_eq!((racked.served.len(), racked.clefts_left.len()), (3, 4));
}

#[test]
fn too_many_cards_are_refused_and_the_work_can_be_stopped() {
    assert!(matches!(orders(named(MOST_ORDERS + 1), None, &quietly), Err(Stop::WrongInput(_))));
    assert!(matches!(orders(Vec::new(), None, &quietly), Err(Stop::WrongInput(_))));
    for doing in ["working out which willow makes each bat", "holding each cleft to each order"] {
        let stop = orders(named(1), Some(&rack()), &until(doing));
        assert!(matches!(stop, Err(Stop::Cancelled)), "{doing}");
    }
}
