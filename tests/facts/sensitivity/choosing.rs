//! Choosing among many paths of a stroke.

use backlift::sensitivity::choosing::Choosing;

fn two_paths() -> Choosing {
    Choosing {
        stroke: "pull".into(),
        stored_m_s: [Some(15.0), Some(14.0)],
        by_path_m_s: vec![[Some(15.6), Some(14.0)], [Some(15.3), Some(14.7)], [Some(16.0), None]],
    }
}

#[test]
fn each_bat_takes_its_own_fastest_path() {
    let it = two_paths();
    assert_eq!([it.best_m_s(0), it.best_m_s(1)], [Some(16.0), Some(14.7)]);
    assert_eq!(it.chosen_ratio(), Some(14.7 / 16.0));
    assert_eq!(it.ratios(), [14.0 / 15.6, 14.7 / 15.3]);
}

#[test]
fn who_has_only_slower_paths_to_choose_from_stays_on_the_stored_one() {
    let it = Choosing { by_path_m_s: vec![[Some(14.0), Some(13.0)]], ..two_paths() };
    assert_eq!([it.player_gains(0), it.player_gains(1)], [Some(0.0), Some(0.0)]);
    assert_eq!(it.chosen_ratio(), it.stored_ratio());
}

#[test]
fn a_bat_beyond_control_on_every_path_has_no_ratio() {
    let it = Choosing { stored_m_s: [Some(15.0), None], by_path_m_s: Vec::new(), ..two_paths() };
    assert_eq!((it.chosen_ratio(), it.player_gains(1)), (None, None));
}
