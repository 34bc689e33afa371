//! A text is changed where it must be and nowhere else.

use backlift::files::document::edit::{put, put_raw, take};

const TEXT: &str = "(\n    // who\n    player: (age: 13),\n    bats: [\n        (label: \"A\"), // old\n        (label: \"B\", mass: \"1 kg\"),\n    ],\n)\n";

#[test]
fn a_value_is_changed_and_every_note_stays() {
    let new = put(TEXT, "bats.1.mass", "2 lb 9 oz").unwrap();
    assert_eq!(new, TEXT.replace("1 kg", "2 lb 9 oz"));
}

#[test]
fn a_missing_value_comes_after_the_last_of_its_part() {
    let new = put(TEXT, "bats.0.pendulum.time", "13 s").unwrap();
    assert!(new.contains("(label: \"A\", pendulum: (time: \"13 s\")), // old"), "{new}");
    let new = put(TEXT, "innings.runs", "80").unwrap();
    assert!(new.contains("    ],\n    innings: (runs: \"80\"),\n)"), "{new}");
}

#[test]
fn a_bat_comes_and_goes() {
    let more = put_raw(TEXT, "bats.2", "(label: \"C\")").unwrap();
    assert!(more.contains("\"1 kg\"),\n        (label: \"C\"),\n    ]"), "{more}");
    assert_eq!(take(&more, "bats.2").unwrap(), TEXT);
    assert_eq!(take(TEXT, "bats.0.mass").unwrap(), TEXT);
}

#[test]
fn the_first_bat_of_an_empty_list_has_its_place() {
    let one = put_raw("(bats: [])", "bats.0", "(label: \"A\")").unwrap();
    assert_eq!(one, "(bats: [(label: \"A\")])");
    assert_eq!(put("()", "player.age", "13").unwrap(), "(player: (age: \"13\"))");
}
