//! Many paths of one stroke in one file.

use backlift::files::stroke::{built_in, usual};
use backlift::files::stroke_paths::{Paths, built_in_paths, read, write};
use backlift::player::joints::FRESH;
use backlift::swing::plan::paths::distance_rad;
use backlift::swing::plan::reference_adult::{reference_bat, reference_player};
use backlift::swing::player_stroke::PlayerStroke;

#[test]
fn twenty_paths_come_with_each_stroke_no_two_of_them_alike() {
    for stroke in usual().unwrap() {
        let paths = built_in_paths(&stroke).unwrap().all;
        assert_eq!(paths.len(), 20, "{}", stroke.name);
        for (i, a) in paths.iter().enumerate() {
            for b in &paths[i + 1..] {
                // Three degrees a joint, on average over the whole path.
                assert!(distance_rad(&a.stroke.joint_path, &b.stroke.joint_path) > 0.05);
            }
        }
    }
}

#[test]
fn paths_are_read_as_they_were_written() {
    for stroke in usual().unwrap() {
        let paths = built_in_paths(&stroke).unwrap();
        assert_eq!(read(&write(&stroke, &paths), &stroke).unwrap(), paths);
    }
}

#[test]
fn paths_of_another_stroke_or_of_a_later_version_are_refused_by_name() {
    let strokes = built_in().unwrap();
    let text = write(&strokes[0], &Paths::default());
    let fault = read(&text, &strokes[1]).unwrap_err().to_string();
    assert!(fault.contains("paths of the drive, not of the pull"), "{fault}");
    let fault = read(&text.replace("paths/1", "paths/9"), &strokes[0]).unwrap_err().to_string();
    assert!(fault.contains("stroke-paths/9"), "{fault}");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn on_every_path_the_reference_players_bat_is_as_fast_as_its_file_says() {
    let (player, bat) = (reference_player().unwrap(), reference_bat().unwrap());
    for stroke in usual().unwrap() {
        for path in built_in_paths(&stroke).unwrap().all {
            let own = PlayerStroke::new(&player, &path.stroke, &bat).unwrap();
            let fastest = own.hold(&bat).unwrap().fastest(&FRESH, None).unwrap();
            let off = fastest.bat_speed_m_s / path.bat_speed_m_s - 1.0;
            // Angles are kept to a ten thousandth of a radian.
            assert!(off.abs() < 2e-3, "{} {off}", stroke.name);
        }
    }
}
