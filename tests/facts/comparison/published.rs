//! Ball on bat against worked cases.

use crate::outside::agrees;
use backlift::validation::checks;

#[test]
fn published_collisions_come_back_and_close_on_momentum_and_energy() {
    agrees(&checks(), "worked collisions");
}

#[test]
fn where_no_restitution_was_measured_the_table_says_so() {
    agrees(&checks(), "restitution");
}
