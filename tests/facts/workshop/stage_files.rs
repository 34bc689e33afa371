use super::stages::{entry, size};
use backlift::files::assets;
use backlift::files::fault::{Faults, Source};
use backlift::files::stages::{STARTER, read, to_ron, to_table};
use backlift::workshop::season::Air;
use backlift::workshop::stages::{BatLog, BenchLog, Moment, Stage, Target};
use proptest::prelude::*;

fn read_text(name: &str, text: &str) -> Result<BenchLog, Faults> {
    read(Source::new(name, text), &assets::sizes().unwrap())
}

/// What is said, with file, line and column.
fn refused(name: &str, text: &str) -> String {
    read_text(name, text).unwrap_err().to_string()
}

#[test]
fn the_invented_log_is_read_without_a_fault_and_goes_both_ways() {
    let log = read_text("bench-log.ron", STARTER).unwrap();
    assert!(log.invented && log.bats.len() == 3);
    let table = to_table(&log).unwrap();
    assert_eq!(read_text("log.csv", &table).unwrap(), log);
    assert_eq!(read_text("log.ron", &to_ron(&log).unwrap()).unwrap(), log);
}

proptest! {
    /// Any log that can be, whatever its bats are called.
    #[test]
    fn a_log_read_back_is_the_same_as_table_and_as_ron(
        labels in prop::collection::hash_set("[\"#',;a-z0-9é\n-]{1,12}", 1..4),
        grams in 800.0..1500.0_f64,
        celsius in 0.0..40.0_f64,
        percent in 5u32..95,
        wanted in prop::option::of(0.7..1.3_f64),
        balance in prop::option::of(0.47..0.53_f64),
    ) {
        let labels: Vec<String> = labels.into_iter().map(|it| it.trim().to_owned()).collect();
        prop_assume!(labels.iter().all(|it| !it.is_empty()));
        prop_assume!((1..labels.len()).all(|n| !labels[..n].contains(&labels[n])));
        let bat = |label: &String| {
            let at = |day| Moment::new(2026, 11, day, 8, 30).unwrap();
            let mut entries = vec![
                entry(Stage::Cleft, at(1), 1e-3 * grams),
                entry(Stage::Spliced, at(2), 1e-3 * grams),
            ];
            entries[0].air = Some(Air::new(celsius, f64::from(percent) / 100.0).unwrap());
            entries[0].meter = Some(f64::from(percent.min(30)) / 100.0);
            entries[1].balance_m = balance;
            let ten_swings_s = wanted.map(|it| 14.0 * it);
            let target = Target { mass_kg: wanted, balance_m: balance, ten_swings_s };
            BatLog { label: label.clone(), size: "6".into(), target, card: None, entries }
        };
        let log = BenchLog { invented: percent % 2 == 0, bats: labels.iter().map(bat).collect() };
        prop_assert_eq!(&read_text("log.csv", &to_table(&log).unwrap()).unwrap(), &log);
        prop_assert_eq!(&read_text("log.ron", &to_ron(&log).unwrap()).unwrap(), &log);
    }

    /// No text brings it down, and a cut log is never taken for a whole one.
    #[test]
    fn a_log_cut_anywhere_is_refused_or_read_whole(share in 0.0..1.0_f64) {
        let at = STARTER.floor_char_boundary((share * STARTER.len() as f64) as usize);
        let whole = STARTER.trim_end().len();
        prop_assert_eq!(read_text("cut.ron", &STARTER[..at]).is_ok(), at >= whole);
    }
}

#[test]
fn faults_of_a_log_stand_at_their_line_and_column_with_the_mend() {
    let line = |text: &str, what: &str| text.lines().position(|it| it.contains(what)).unwrap() + 1;
    for (old, new, at, said) in [
        ("mass: \"956 g\"", "mass: \"956\"", "\"956\"", "no unit"),
        ("mass: \"956 g\"", "mass: \"1.9 kg\"", "\"1.9 kg\"", "adds nothing"),
        ("(mass: \"894 g\"", "(mass: \"12 kg\"", "\"12 kg\"", "outside 0.2 to 3 kg"),
        ("ten_swings: \"13.94 s\"", "ten_swings: \"139.4 s\"", "139.4 s", "outside 5 to 40 s"),
        ("at: \"2026-11-17 10:05\"", "at: \"2026-10-17 10:05\"", "2026-10-17", "earlier than"),
        ("at: \"2026-11-17 10:05\"", "at: \"2026-11-31 10:05\"", "2026-11-31", "not a day"),
        (
            "stage: \"roughed\", at: \"2026-11-17",
            "stage: \"rouhged\", at: \"2026-11-17",
            "rouhged",
            "did you mean \"roughed\"",
        ),
        ("air: \"17 C, 58 %\"", "air: \"17 C, 108 %\"", "108 %", "outside 5 to 95 %"),
        ("meter: \"12 %\"", "meter: \"62 %\"", "62 %", "what a meter reads"),
        ("size: \"short handle\"", "size: \"shirt\"", "shirt", "no size is called"),
        ("bat: \"Board 3\"", "bat: \"Board 2\"", "(another)", "another bat"),
        ("backlift/stages/1", "backlift/stages/9", "stages/9", "does not know"),
        ("balance: \"", "balanse: \"", "balanse", "balanse"),
    ] {
        let text = STARTER.replacen(old, new, 1);
        assert_ne!(text, STARTER, "{old}");
        let words = refused("log.ron", &text);
        assert!(words.contains(said), "{said:?} is missing in\n{words}");
        if at != "(another)" {
            let place = format!("log.ron:{}:", line(&text, at));
            assert!(words.contains(&place), "{place} is missing in\n{words}");
        }
    }
}

#[test]
fn faults_of_a_table_stand_at_their_line_and_column() {
    let table = to_table(&read_text("bench-log.ron", STARTER).unwrap()).unwrap();
    // What is put in stands where the fault is said to be.
    for (old, new, said) in [
        ("956 g", "956", "no unit"),
        ("956 g", "9.56 kg", "adds nothing"),
        ("2026-11-17 10:05", "2026-11-07 10:05", "earlier than"),
        ("roughed", "carved", "no stage"),
        ("meter", "metre", "did you mean \"meter\""),
        ("stage,at", "stag,at", "did you mean \"stage\""),
    ] {
        let text = table.replacen(old, new, 1);
        assert_ne!(text, table, "{old}");
        let words = refused("log.csv", &text);
        let before = &text[..text.find(new).unwrap()];
        let column = before.chars().rev().take_while(|it| *it != '\n').count() + 1;
        let place = format!("log.csv:{}:{column}:", before.matches('\n').count() + 1);
        assert!(
            words.contains(said) && words.contains(&place),
            "{said:?} {place} missing in\n{words}"
        );
    }
    // Size and target of a bat may not change on the way.
    let (first, rest) = table.split_once("894 g").unwrap();
    let changed = format!("{first}894 g{}", rest.replacen("894 g", "895 g", 1));
    assert!(refused("log.csv", &changed).contains("first line"), "{changed}");
    for text in ["", "\n", "# only a note\n", "(", "()", "bat,size,stage,at,mass\n", "\u{0}"] {
        assert!(read_text("log", text).is_err(), "{text:?}");
    }
}

#[test]
fn every_size_of_the_log_is_known() {
    for bat in read_text("bench-log.ron", STARTER).unwrap().bats {
        assert!(size(&bat.size).length_m() > 0.5);
    }
}
