//! What a tired player loses.

use backlift::measurement::person::Handed;
use backlift::player::joints::GROUP_COUNT;
use backlift::swing::player_stroke::PlayerStroke;

use super::players::{FRESH, Search, adult, bat, boy_of_twelve, strokes};

/// Share of the bat speed lost, and of the stroke time added, with every group at `capacity` of its own.
fn loss(stroke: &PlayerStroke, bat: &backlift::bat::Bat, capacity: f64) -> (f64, f64) {
    let mut search = Search::new(stroke);
    let fresh = search.fastest(bat, &FRESH);
    let tired = search.fastest(bat, &[capacity; GROUP_COUNT]);
    (
        1.0 - tired.bat_speed_m_s / fresh.bat_speed_m_s,
        tired.stroke_time_s / fresh.stroke_time_s - 1.0,
    )
}

#[test]
fn every_stroke_is_slower_tired_and_the_heavier_pickup_loses_more_time_in_pull_and_hook() {
    let adult = strokes(&adult(Handed::Right));
    let boy = strokes(&boy_of_twelve(Handed::Right));
    let bats = [
        [bat(1.15, 0.85, 0.51), bat(1.30, 0.85, 0.55)],
        [bat(0.92, 0.80, 0.48), bat(1.08, 0.80, 0.515)],
    ];
    for (n, name) in ["drive", "pull", "hook"].into_iter().enumerate() {
        let capacity = 0.9;
        let [grown, young] = [(&adult, &bats[0]), (&boy, &bats[1])].map(|(strokes, bats)| {
            assert_eq!(strokes[n].stroke.name, name);
            [&bats[0], &bats[1]].map(|bat| loss(&strokes[n], bat, capacity))
        });
        println!(
            "tired {name} x{capacity}: adult light {:.4} heavy {:.4}, boy light {:.4} heavy {:.4} (speed lost)",
            grown[0].0, grown[1].0, young[0].0, young[1].0
        );
        for (speed, time) in grown.iter().chain(&young) {
            assert!(*speed > 0.01 && *time > 0.01, "{name}: {speed} {time}");
        }
        if name != "drive" {
            assert!(grown[1].1 > grown[0].1, "adult {name}: {grown:?}");
            assert!(young[1].1 > young[0].1, "boy {name}: {young:?}");
            assert!(grown[1].0 > grown[0].0, "adult {name}: {grown:?}");
            assert!(young[1].0 > young[0].0, "boy {name}: {young:?}");
            assert!(young[0].0 > grown[0].0 && young[1].0 > grown[1].0, "{name}");
        }
    }
}

/// The same bat in both hands: what the pull at fifty of a youngster hangs on. In the drive, which his
/// strength limits less, he does not lose more.
#[test]
fn a_boy_loses_more_than_a_man_with_the_same_bat_in_pull_and_hook() {
    let bat = bat(1.08, 0.80, 0.515);
    let adult = strokes(&adult(Handed::Right));
    let boy = strokes(&boy_of_twelve(Handed::Right));
    for (man, boy) in adult.iter().zip(&boy) {
        let name = &man.stroke.name;
        let [man_s, boy_s] = [man, boy].map(|it| loss(it, &bat, 0.9).0);
        println!("tired, same bat, {name}: man {man_s:.4}, boy {boy_s:.4}");
        assert!(boy_s > man_s || name == "drive", "{name}: {boy_s} {man_s}");
    }
}
