//! Today's advice asked a second time, after one bat was changed.

use super::demo::{today, today_after};

#[test]
fn an_advice_that_goes_on_from_another_says_what_one_from_nothing_says() {
    let lighter = ["bats.1.mass=2 lb 5 oz"];
    let before = today("junior", &[]);
    for set in [&lighter[..], &["innings.runs=40"]] {
        let (again, anew) = (today_after("junior", set, &before), today("junior", set));
        for (again, anew) in again.today.given.iter().zip(&anew.today.given) {
            assert_eq!(again, anew);
        }
        assert_eq!(again.today.use_today, anew.today.use_today);
    }
}
