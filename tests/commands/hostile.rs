//! What was made to hurt, or says too much, is refused early and in words that help.

use super::bats::CARD;
use super::{backlift, refused};
use std::path::Path;
use std::time::Duration;

fn write(folder: &Path, name: &str, text: &str) {
    std::fs::write(folder.join(name), text).unwrap();
}

#[cfg(unix)]
#[test]
fn a_stroke_is_read_from_no_pipe_and_no_device() {
    let folder = tempfile::tempdir().unwrap();
    let made = std::process::Command::new("mkfifo").arg(folder.path().join("pipe")).status();
    assert!(made.unwrap().success());
    for path in ["pipe", "/dev/zero"] {
        let run = backlift()
            .current_dir(folder.path())
            .args(["stroke", path, "new.ron"])
            .timeout(Duration::from_secs(20))
            .assert()
            .code(2);
        let said = String::from_utf8_lossy(&run.get_output().stderr).into_owned();
        assert!(said.contains("is not a file"), "{path}: {said}");
    }
}

#[test]
fn a_card_may_start_with_a_byte_order_mark_and_never_speaks_to_the_terminal() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), "marked.ron", &format!("\u{feff}{CARD}"));
    write(folder.path(), "loud.ron", &CARD.replace("size: \"6\"", "size: \"\\u{1b}[31m6\""));
    let bat = ["--mass", "894 g", "--balance", "502 mm"];
    let check = |card: &str| {
        let mut check = backlift();
        check.current_dir(folder.path()).args(["check", card]).args(bat);
        check.output().unwrap()
    };
    let said = check("marked.ron");
    assert!(said.status.code().is_some_and(|it| it < 2), "{said:?}");
    let said = check("loud.ron");
    assert!(!said.stdout.contains(&0x1b) && !said.stderr.contains(&0x1b), "{said:?}");
}

#[test]
fn a_card_outside_what_any_card_has_is_refused_by_the_figure() {
    let folder = tempfile::tempdir().unwrap();
    for (was, is, said) in [
        ("(0.49, 0.507)", "(0.49, 1e308)", "the card's balance point 1"),
        ("grips: 1,", "grips: 1000000,", "the card's number of grips 1000000 is outside 0 to 4"),
        ("mass_kg: 0.894", "mass_kg: 0.894e3", "the card's dead weight 894"),
    ] {
        write(folder.path(), "card.ron", &CARD.replace(was, is));
        let plane = ["plane", "card.ron", "--mass", "900g", "--balance", "523mm"];
        let words = refused(&plane, folder.path());
        assert!(words.contains(said), "{is}: {words}");
    }
}

#[test]
fn what_a_card_says_wrongly_is_not_blamed_on_an_option() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), "card.ron", &CARD.replace("pivot_m: 0.1524", "pivot_m: 0.45"));
    let bat = ["--mass", "894 g", "--balance", "40 cm", "--time", "41.8 s"];
    let check =
        |more: &[&str]| refused(&[&["check", "card.ron"], &bat[..], more].concat(), folder.path());
    let words = check(&[]);
    assert!(words.contains("the card's pendulum pivot: ") && !words.contains("--pivot"), "{words}");
    assert!(check(&["--pivot", "45 cm"]).contains("--pivot: "));
}

#[test]
fn a_table_without_readings_and_a_place_that_cannot_be_written_are_refused_before_the_work() {
    let folder = tempfile::tempdir().unwrap();
    write(folder.path(), "nets.csv", "bat,stroke,frames,frame_rate\n");
    write(folder.path(), "junior.ron", include_str!("../../scenarios/junior.ron"));
    let stroke = include_str!("../../assets/strokes/pull.ron");
    write(folder.path(), "pull.ron", stroke);
    for (arguments, said) in [
        (&["calibrate", "nets.csv", "junior.ron"][..], "0 readings of the player fresh"),
        (&["calibrate", "--out", "no/mine.ron"][..], "its folder is not there"),
        (&["stroke", "pull.ron", "no/mine.ron"][..], "its folder is not there"),
    ] {
        let words = refused(arguments, folder.path());
        assert!(words.contains(said), "{arguments:?}: {words}");
        // Work of more than a second says how far it is.
        assert!(!words.contains(" %  "), "{arguments:?}: {words}");
    }
}

/// Arguments for a player of the starter's, so old, so tall and so strong.
fn player(age: &str, stature: &str, grip: &str) -> Vec<String> {
    let grip = ["grip_top", "grip_bottom"].map(|it| format!("player.{it}={grip}"));
    let [top, bottom] = grip;
    [format!("player.age={age}"), format!("player.stature={stature}"), top, bottom]
        .into_iter()
        .flat_map(|it| ["--set".to_owned(), it])
        .collect()
}

fn starter() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    backlift().current_dir(folder.path()).args(["new", "mine.ron"]).assert().success();
    folder
}

#[test]
fn a_player_too_weak_for_any_bat_is_told_so_and_sent_to_no_smaller_size_than_there_is() {
    let folder = starter();
    for (who, smaller) in
        [(player("5", "1.05 m", "4 kg"), false), (player("90", "1.60 m", "8 kg"), true)]
    {
        for command in [&["innings"][..], &["compare"], &["fit", "--today"]] {
            let run = backlift()
                .current_dir(folder.path())
                .args(command)
                .arg("mine.ron")
                .args(&who)
                .assert()
                .code(1);
            let said = String::from_utf8_lossy(&run.get_output().stderr).into_owned();
            assert!(
                said.contains("this player is not strong enough for the"),
                "{command:?}: {said}"
            );
            assert_eq!(said.contains("ask for a smaller size"), smaller, "{command:?}: {said}");
            assert_eq!(said.contains("there is no smaller size"), !smaller, "{command:?}: {said}");
        }
    }
}

/// A boy of eight who holds his bat only just: the doubt of its speed is as large as the speed.
fn is_not_called_controlled_by(command: &str) {
    let folder = starter();
    let run = backlift()
        .current_dir(folder.path())
        .args([command, "mine.ron", "--bat", "1"])
        .args(player("8", "1.25 m", "8 kg"))
        .assert()
        .success();
    let told = String::from_utf8_lossy(&run.get_output().stdout).replace('\n', " ");
    assert!(told.contains("The pull with Club spare is not controlled"), "{told}");
    assert!(told.contains("km/h at best") && !told.contains("km/h ±"), "{told}");
}

#[test]
fn a_swing_that_all_doubt_is_about_is_not_called_controlled() {
    is_not_called_controlled_by("swing");
}

#[test]
fn a_hit_by_a_swing_that_all_doubt_is_about_is_not_called_controlled() {
    is_not_called_controlled_by("hit");
}
