//! A question without an answer says whose fault that is.

use super::{demo, junior, quietly, until};
use backlift::files::scenario::load;
use backlift::questions::Stop;
use backlift::questions::compared::chosen;
use backlift::questions::fitted::search;
use backlift::questions::loaded::built;
use backlift::questions::swung::swing;

fn wrong(stop: Stop) -> String {
    match stop {
        Stop::WrongInput(faults) => faults.0.iter().map(|it| it.message.clone()).collect(),
        other => panic!("{other:?}"),
    }
}

#[test]
fn every_fault_of_player_and_bats_comes_at_once() {
    let set = ["player.age=400", "bats.0.mass=9 kg", "bats.1.mass=9 kg"].map(str::to_owned);
    let Err(Stop::WrongInput(faults)) = built(load(None, &set).unwrap()) else {
        panic!("it was built")
    };
    assert_eq!(faults.0.len(), 3, "{faults:?}");
}

#[test]
fn a_bat_or_a_stroke_that_is_not_there_is_wrong_input() {
    let junior = junior();
    assert!(wrong(junior.bat(Some("Old faithfull")).unwrap_err()).contains("Old faithfull"));
    assert!(wrong(junior.stroke("sweep").unwrap_err()).contains("sweep"));
    assert!(wrong(chosen(junior, &["0".to_owned()]).unwrap_err()).contains("no comparison"));
}

#[test]
fn a_bat_beyond_all_strength_is_no_answer_and_no_wrong_input() {
    let weak = demo(&["player.grip_top=3 kg", "player.grip_bottom=3 kg"]);
    let stop = swing(&weak, 0, weak.lead(), 0.1, None, &quietly).unwrap_err();
    assert!(matches!(stop, Stop::NoAnswer(_)), "{stop:?}");
}

#[test]
fn work_that_is_asked_to_stop_stops() {
    let junior = junior();
    let early = until("finding the fastest controlled swing");
    let stop = swing(junior, 0, junior.lead(), 1.0, None, &early).unwrap_err();
    assert!(matches!(stop, Stop::Cancelled), "{stop:?}");
    let at_once = |_: &str, _: f64| std::ops::ControlFlow::Break(());
    let stop = search(junior, &at_once).unwrap_err();
    assert!(matches!(stop, Stop::Cancelled), "{stop:?}");
}
