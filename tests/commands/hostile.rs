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

fn starter() -> tempfile::TempDir {
    let folder = tempfile::tempdir().unwrap();
    backlift().current_dir(folder.path()).args(["new", "mine.ron"]).assert().success();
    folder
}
