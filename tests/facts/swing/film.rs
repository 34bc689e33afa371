//! A stroke kept as pictures: how far its contact point has gone, and how far one stroke is behind another.

use backlift::files::stroke::built_in;
use backlift::measurement::person::Handed;
use backlift::swing::batter::Batter;
use backlift::swing::film::{Film, Way};
use backlift::swing::observed::observe;

use super::players::{FRESH, boy_of_twelve, boys_bat};

/// What the way gone may be off the length of the path, as a share.
const NEAR: f64 = 0.01;

#[test]
fn the_way_gone_is_the_length_of_the_contact_points_path() {
    let bat = boys_bat();
    let batter = Batter::new(&boy_of_twelve(Handed::Right), &built_in().unwrap(), &bat).unwrap();
    for stroke in &batter.strokes {
        let held = stroke.hold(&bat).unwrap();
        let time_s = held.fastest(&FRESH, None).unwrap().stroke_time_s;
        let seen = observe(&held, &FRESH, time_s);
        let film = Film::of(&seen);
        let mut path_m = 0.0;
        for pair in seen.series.windows(2).filter(|it| it[1].t_s <= film.contact_s) {
            path_m += (pair[1].contact_W - pair[0].contact_W).length();
            let gone_m = film.at(pair[1].t_s).unwrap().gone_m;
            assert!((gone_m - path_m).abs() < NEAR * path_m + 1e-3, "{gone_m} of {path_m} m");
        }
        assert!(path_m > 1.0, "{path_m} m");
    }
}

#[test]
fn a_stroke_is_behind_by_its_own_way_and_ahead_by_less_than_nothing() {
    let way = |gone_m, whole_m| Way { gone_m, whole_m };
    assert_eq!(way(0.0, 2.0).behind_m(way(0.0, 3.0)), 0.0);
    assert_eq!(way(1.0, 2.0).behind_m(way(3.0, 4.0)), 0.5);
    assert_eq!(way(3.0, 4.0).behind_m(way(1.0, 2.0)), -1.0);
    assert_eq!(way(2.0, 2.0).behind_m(way(4.0, 4.0)), 0.0);
}
