//! Every kind of bad input gets its place and its mend, and all faults of a file come together.

use super::{load_file, load_text};
use backlift::files::fault::Fault;
use backlift::files::scenario::DEMO;

/// A scenario with a few of its lines left for the case: `{player}`, `{bat}`, `{more}`.
const GOOD: &str = r#"(
    version: "backlift/scenario/1",
    player: (
        age: 13,
        sex: "male",
        stature: "5 ft 2 in",
    ),
    bats: [
        (label: "A", mass: "2 lb 5 oz", length: "33 in", balance: "20.5 in"),
        (label: "B", mass: "1.1 kg", pendulum: (swings: 10, time: "14.5 s")),
    ],
    innings: (runs: 50, mix: "drive 50 %, pull 50 %"),
    bowling: (speed: "90 km/h"),
)
"#;

fn has(faults: &[Fault], at: &str, message: &str, help: &str) -> bool {
    faults.iter().any(|it| {
        it.whereabouts().is_some_and(|place| place.ends_with(at))
            && it.message.contains(message)
            && it.help.as_ref().is_some_and(|it| it.contains(help))
    })
}

#[test]
fn each_bad_field_is_refused_at_its_line_and_column_with_its_mend() {
    // What to replace in the good text, by what; then line:column, message, mend.
    let table: &[(&str, &str, &str, &str, &str)] = &[
        // Missing.
        ("        age: 13,\n", "", "3:5", "player.age: it is missing", "add age: \"13\""),
        ("        sex: \"male\",\n", "", "3:5", "player.sex: it is missing", "\"female\""),
        ("        stature: \"5 ft 2 in\",\n", "", "3:5", "player.stature: it is", "5 ft 1 in"),
        ("mass: \"2 lb 5 oz\", ", "", "9:9", "bats.0.mass: it is missing", "2 lb 9 oz"),
        (", time: \"14.5 s\"", "", "10:38", "bats.1.pendulum.time: it is missing", "15.3 s"),
        ("version: \"backlift/scenario/1\",", "", "1:1", "version: it is missing", "scenario/1"),
        // No unit, wrong unit.
        ("\"5 ft 2 in\"", "1.57", "6:18", "1.57 has no unit", "\"1.56 m\""),
        ("\"2 lb 5 oz\"", "1160", "9:28", "1160 has no unit", "\"1160 g\""),
        ("\"2 lb 5 oz\"", "\"54 cm\"", "9:28", "measures a length, not a weight", "1.16 kg"),
        ("\"90 km/h\"", "90", "13:22", "90 has no unit", "90 km/h"),
        ("\"90 km/h\"", "\"90 kmh/h\"", "13:22", "is not a unit of speed", "km/h"),
        ("\"14.5 s\"", "14.5", "10:67", "14.5 has no unit", "15.3 s"),
        // A child's body is told with a child's example, not with a bat's or a man's.
        (
            "        sex: \"male\",\n",
            "        sex: \"male\",\n        mass: 46,\n",
            "6:15",
            "46 has no unit",
            "\"45 kg\"",
        ),
        // Zero, negative, not a number.
        ("\"2 lb 5 oz\"", "\"0 kg\"", "9:28", "\"0 kg\" is not above zero", "a weight above zero"),
        ("\"2 lb 5 oz\"", "\"-2 lb\"", "9:28", "is not above zero", "a weight above zero"),
        ("\"2 lb 5 oz\"", "NaN", "9:28", "is not a number", "1.16 kg"),
        ("\"2 lb 5 oz\"", "inf", "9:28", "is not a number", "1.16 kg"),
        ("\"20.5 in\"", "\"nan in\"", "9:67", "is not a number", "54 cm"),
        ("13,", "-13,", "4:14", "\"-13\" is not an age", "13.5 years"),
        ("13,", "NaN,", "4:14", "is not an age", "13.5 years"),
        ("swings: 10", "swings: 0", "10:57", "not a whole number of swings", "without a unit"),
        ("swings: 10", "swings: 9.5", "10:57", "not a whole number of swings", "without a unit"),
        ("runs: 50", "runs: -50", "12:21", "is not a number of runs", "from 1 to 1000"),
        // Tenfold.
        (
            "bowling: (speed: \"90 km/h\"),",
            "bowling: (speed: \"90 km/h\"), fit: (ball_mass: \"1.56 kg\"),",
            "13:51",
            "fit.ball_mass: 1.56 kg is outside 0.05 to 0.25 kg",
            "check the number",
        ),
        // Of the order.
        (
            "bowling: (speed: \"90 km/h\"),",
            "order: (number: 17, wish: (grips: 9)),",
            "13:39",
            "order.wish.grips: \"9\" is not a whole number from 0 to 4",
            "without a unit",
        ),
        (
            "bowling: (speed: \"90 km/h\"),",
            "order: (number: \"a number, and by no means a name\"),",
            "13:21",
            "the card's order number has 32 letters, 24 at most",
            "fewer letters",
        ),
        // Mistyped names and words.
        ("stature:", "statrue:", "6:9", "there is no field \"statrue\"", "\"stature\"?"),
        ("balance:", "balanse:", "9:58", "there is no field \"balanse\"", "\"balance\"?"),
        ("bowling:", "bowlin:", "13:5", "there is no field \"bowlin\"", "\"bowling\"?"),
        ("bowling:", "weather:", "13:5", "no field \"weather\"", "names here are version"),
        ("\"male\"", "\"mael\"", "5:14", "\"mael\" is not known here", "did you mean \"male\"?"),
        ("pull 50", "pul 50", "12:30", "there is no stroke \"pul\"", "did you mean \"pull\"?"),
        ("pull 50 %", "pull 20 %", "12:30", "add up to 70.0 %", "drive 50 %"),
        ("pull 50 %", "pull", "12:30", "\"pull\" is not a stroke and its share", "drive 50 %"),
        ("backlift/scenario/1", "backlift/scenario/9", "2:14", "does not know", "scenario/1"),
        // Twice.
        (
            "label: \"B\"",
            "label: \"a\"",
            "10:17",
            "\"a\" is already the label of bats.0",
            "its own",
        ),
        ("sex:", "age: 14, sex:", "5:9", "player.age: it is written twice", "leave out one"),
        // Wrong kind.
        ("13,", "(13),", "4:14", "text in quotation marks is expected", "quotation marks"),
        ("\"male\"", "male", "5:14", "text in quotation marks is expected", "quotation marks"),
        ("(speed: \"90 km/h\")", "\"fast\"", "13:14", "a part in brackets", "(name: \"value\""),
        ("bats: [", "bats: (), beds: [", "8:11", "a list is expected", "[(label: \"A\""),
        // Not written as a scenario is.
        ("\"male\",", "\"male\"", "6:9", "a comma or a closing bracket is missing", "commas"),
        ("sex:", "sex", "5:13", "a colon is missing", "name: \"value\""),
        ("\"male\"", "\"ma\\le\"", "5:15", "a backslash", "write \\\\"),
    ];
    let mut wrong = Vec::new();
    for (n, (old, new, at, message, help)) in table.iter().enumerate() {
        assert!(GOOD.contains(old), "case {n}: {old}");
        let text = GOOD.replacen(old, new, 1);
        let faults = load_text(text.as_bytes(), &[]).map(|_| ()).expect_err(new).0;
        let place = format!("kit.ron:{at}");
        let drawn = faults.iter().map(|it| it.drawn(200, false)).collect::<String>();
        let shown = drawn.contains(&format!("{place}]"));
        if !shown || !has(&faults, &place, message, help) {
            wrong.push(format!(
                "case {n}, {old} → {new}: wanted {place} {message} ({help}), got\n{drawn}"
            ));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

#[test]
fn a_fault_of_a_field_carries_its_path() {
    for (old, new, path) in [
        ("        age: 13,\n", "", "player.age"),
        ("\"90 km/h\"", "90", "bowling.speed"),
        ("label: \"B\"", "label: \"a\"", "bats.1.label"),
        ("stature:", "statrue:", "player.statrue"),
        ("sex:", "age: 14, sex:", "player.age"),
    ] {
        let text = GOOD.replacen(old, new, 1);
        let faults = load_text(text.as_bytes(), &[]).map(|_| ()).expect_err(new).0;
        let of_it = faults.iter().find(|it| it.field.as_deref() == Some(path));
        let of_it = of_it.unwrap_or_else(|| panic!("{path}: {faults:?}"));
        assert!(of_it.message.starts_with(&format!("{path}: ")), "{}", of_it.message);
    }
    let unwritten = load_text(b"(", &[]).map(|_| ()).unwrap_err().0;
    assert!(unwritten.iter().any(|it| it.field.is_none()), "{unwritten:?}");
}

#[test]
fn the_good_text_is_good() {
    load_text(GOOD.as_bytes(), &[]).unwrap();
}

#[test]
fn all_faults_of_a_file_come_together_in_the_order_of_the_text() {
    let text = GOOD
        .replace("13,", "\"old\",")
        .replace("balance:", "balanse:")
        .replace("\"1.1 kg\"", "1.1")
        .replace("\"90 km/h\"", "\"quick\"");
    let faults = load_text(text.as_bytes(), &["player.sex=x", "nothing=1"]).unwrap_err().0;
    let lines: Vec<usize> =
        faults.iter().map(|it| it.place.as_ref().unwrap().line_column().0).collect();
    assert_eq!(lines, [4, 9, 10, 13, 1, 1], "the file first, then the command line");
}

#[test]
fn a_half_written_file_is_refused_at_the_bracket_that_stayed_open() {
    for end in (GOOD.find('(').unwrap() + 1)..GOOD.trim_end().len() {
        let faults = load_text(&GOOD.as_bytes()[..end], &[]).map(|_| ()).expect_err("half").0;
        let last = faults.last().unwrap();
        assert!(last.place.is_some() && last.help.is_some(), "{end}: {last}");
    }
    let half = GOOD.find("\"B\"").unwrap();
    let faults = load_text(&GOOD.as_bytes()[..half], &[]).unwrap_err().0;
    assert!(
        has(&faults, "kit.ron:10:9", "ends before the scenario does", "only half"),
        "{faults:?}"
    );
}

#[test]
fn files_that_are_no_text_are_refused() {
    let mut latin1 = GOOD.replace("\"A\"", "\"Andr\u{1}\"").into_bytes();
    let at = latin1.iter().position(|it| *it == 1).unwrap();
    latin1[at] = 0xe9;
    let faults = load_text(&latin1, &[]).unwrap_err().0;
    assert!(has(&faults, "kit.ron:9:22", "is not UTF-8", "UTF-8"), "{faults:?}");

    let utf16: Vec<u8> = "\u{feff}(age: 1)".encode_utf16().flat_map(u16::to_le_bytes).collect();
    let faults = load_text(&utf16, &[]).unwrap_err().0;
    assert!(has(&faults, "kit.ron:1:1", "UTF-16", "UTF-8"), "{faults:?}");

    let faults = load_text(b"", &[]).unwrap_err().0;
    assert!(has(&faults, "kit.ron:1:1", "the file is empty", "backlift new"), "{faults:?}");

    let huge = vec![b' '; (1 << 20) + 1];
    let faults = load_text(&huge, &[]).unwrap_err().0;
    assert!(faults[0].message.contains("larger than 1 MiB"), "{faults:?}");

    let with_mark = format!("\u{feff}{GOOD}");
    load_text(with_mark.as_bytes(), &[]).expect("a mark of UTF-8 is no fault");
    load_text(GOOD.replace('\n', "\r\n").as_bytes(), &[])
        .expect("nor are line ends of two letters");
}

#[test]
fn a_long_value_is_neither_read_nor_shown_whole() {
    let text = GOOD.replace("2 lb 5 oz", &"9".repeat(10_000));
    let faults = load_text(text.as_bytes(), &[]).unwrap_err();
    assert!(faults.0[0].message.contains("10000 characters long"));
    assert!(faults.drawn(80, false).len() < 2_000);
}

#[test]
fn a_mistyped_file_name_gets_the_nearest_one_and_a_folder_is_told_from_a_file() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("junior.ron"), DEMO).unwrap();
    let refused = |path: std::path::PathBuf| load_file(Some(path), &[]).unwrap_err().0.remove(0);
    let fault = refused(folder.path().join("junoir.ron"));
    assert!(fault.message.contains("there is no file"), "{fault}");
    assert!(fault.help.unwrap().contains("junior.ron?"));
    let fault = refused(folder.path().to_path_buf());
    assert!(fault.message.contains("is a folder"), "{fault}");
    let fault = refused(folder.path().join("nowhere/junior.ron"));
    assert!(fault.help.unwrap().contains("there is no folder"));
}

#[test]
fn a_bad_set_names_its_argument_its_column_and_the_nearest_name() {
    let table: &[(&str, &str, &str, &str)] = &[
        ("player.agee=13", "--set:1:8", "there is no field \"agee\"", "did you mean \"age\"?"),
        ("plyer.age=13", "--set:1:1", "there is no field \"plyer\"", "did you mean \"player\"?"),
        ("bats.0.pendulum.tmie=1 s", "--set:1:17", "no field \"tmie\"", "did you mean \"time\"?"),
        ("bats.0.mass=1180", "--set:1:13", "1180 has no unit", "\"1160 g\""),
        ("bats.0.mass= 1180 kgg", "--set:1:13", "\"kgg\" is not a unit", "did you mean \"kg\"?"),
        ("player.age=", "--set:1:12", "is not an age", "in years"),
        ("bats.7.mass=1 kg", "--set:1:6", "there is no bat \"7\"", "2 bats here, counted from 0"),
        ("bats.one.mass=1 kg", "--set:1:6", "there is no bat \"one\"", "bats.0 to bats.1"),
        ("bats.1.label=A", "--set:1:14", "already the label of bats.0", "label of its own"),
        ("player=13", "--set:1:1", "this is not a single field", "go on with one of age, sex"),
        ("player.age.years=13", "--set:1:1", "not a single field", "leave off what follows"),
        ("player.age", "--set:1:1", "there is no \"=\"", "PATH=VALUE"),
        ("=13", "--set:1:1", "there is no field", "the names here are"),
        ("", "--set:1:1", "there is no \"=\"", "PATH=VALUE"),
    ];
    for (argument, at, message, help) in table {
        let faults = load_text(GOOD.as_bytes(), &[argument]).map(|_| ()).expect_err(argument).0;
        assert!(has(&faults, at, message, help), "{argument}: {faults:?}");
    }
}
