//! A script is the actions a user does.

use super::pull_demo;
use crate::studio::action::{Action, View};
use crate::studio::script::{Next, Script};

const SCRIPT: &str = r#"[
    // A bat is weighed again, and the innings of both are played.
    Set("bats.0.mass", "2 lb 4 oz"),
    SecondBat(2),
    Score(50),
    Wait,
    View(Innings),
    Shot("late.png"),
    Undo,
]"#;

#[test]
fn a_script_does_what_a_user_does_and_stops_for_a_picture() {
    let mut it = pull_demo();
    let mut script = Script::of("script.ron", SCRIPT).unwrap();
    let mut waited = 0;
    let shot = loop {
        it.tick(0.0);
        match script.step(&mut it) {
            Next::Wait => waited += 1,
            other => break other,
        }
        std::thread::sleep(std::time::Duration::from_millis(20));
    };
    assert!(waited > 0);
    assert_eq!(shot, Next::Shot("late.png".to_owned()));
    assert_eq!((it.view, it.playback.runs, it.playback.bats), (View::Innings, 50, [0, 2]));
    assert!(it.compared().is_some());
    assert_eq!(script.step(&mut it), Next::Done);
    assert_eq!(it.document.at("bats.0.mass"), "2 lb 3 oz");
}

#[test]
fn what_is_no_action_is_said_with_its_place() {
    let fault = Script::of("script.ron", "[\n  View(Swing),\n  Jump(3),\n]").unwrap_err();
    assert_eq!(fault.whereabouts().unwrap(), "script.ron:3:3");
    assert!(fault.help.is_some());
}

#[test]
fn actions_are_written_and_read_back_the_same() {
    let actions = vec![
        Action::Set("bats.0.mass".into(), "2 lb 9 oz".into()),
        Action::View(View::Map),
        Action::Try(0.95, 0.501),
        Action::TextScale(1.5),
    ];
    let text = ron::to_string(&actions).unwrap();
    let read: Vec<Action> = ron::from_str(&text).unwrap();
    assert_eq!(read, actions);
}
