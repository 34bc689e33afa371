//! weigh, swing, innings and check, as a person and as another program use them.

use super::once::ran;
use super::{PULL_ALONE, backlift, refused};
use serde_json::Value;
use std::path::Path;

/// An invented card: what `fit` writes.
pub const CARD: &str = include_str!("card.ron");

/// Runs with `--json` and reads the result; the exit code must be `code`.
fn figures(arguments: &[&str], folder: &Path, code: i32) -> Value {
    let run = backlift().current_dir(folder).args(arguments).arg("--json").assert().code(code);
    serde_json::from_slice(&run.get_output().stdout).unwrap()
}

/// The numbers at these paths, each of which must be there and finite.
fn numbers(value: &Value, pointers: &[&str]) {
    for it in pointers {
        let number = value.pointer(it).and_then(Value::as_f64);
        assert!(number.is_some_and(f64::is_finite), "{it} in {value:#}");
    }
}

/// Every number of one within 1e-9 of the other's, everything else the same but `handed`.
fn same(one: &Value, other: &Value, place: &str) {
    match (one, other) {
        (Value::Object(a), Value::Object(b)) => {
            assert_eq!(a.len(), b.len(), "{place}");
            for (key, value) in a.iter().filter(|(key, _)| *key != "handed") {
                same(value, &b[key], &format!("{place}/{key}"));
            }
        }
        (Value::Array(a), Value::Array(b)) => {
            assert_eq!(a.len(), b.len(), "{place}");
            for (i, (a, b)) in a.iter().zip(b).enumerate() {
                same(a, b, &format!("{place}/{i}"));
            }
        }
        (Value::Number(a), Value::Number(b)) => {
            let (a, b) = (a.as_f64().unwrap(), b.as_f64().unwrap());
            assert!((a - b).abs() <= 1e-9 * a.abs().max(1.0), "{place}: {a} and {b}");
        }
        _ => assert_eq!(one, other, "{place}"),
    }
}

#[test]
fn weigh_gives_every_figure_of_every_bat_and_marks_what_was_estimated() {
    let folder = tempfile::tempdir().unwrap();
    let all = figures(&["weigh"], folder.path(), 0);
    assert_eq!(all["schema"], "backlift/weigh/1");
    let bats = all["bats"].as_array().unwrap();
    assert_eq!(bats.len(), 4);
    for bat in bats {
        numbers(
            bat,
            &[
                "/length_m",
                "/mass_kg",
                "/balance_m",
                "/swing_moment_kg_m2",
                "/swing_moment_sd_kg_m2",
                "/hold_moment_n_m",
                "/twist_moment_kg_m2",
                "/percussion_m",
                "/pickup_weight_kg",
            ],
        );
        assert!(
            bat["label"].is_string() && bat["edition"].is_string() && bat["breaches"].is_array()
        );
    }
    assert_eq!(bats[0]["swing_moment_is_estimated"], false);
    assert_eq!(bats[3]["swing_moment_is_estimated"], true);
    assert_eq!((&bats[0]["legal"], &bats[3]["legal"]), (&"yes".into(), &"not_measured".into()));
    let wide = figures(&["weigh", "--bat", "1", "--set", "bats.1.edge=42 mm"], folder.path(), 0);
    assert_eq!(wide["bats"][0]["legal"], "no");
    assert_eq!(wide["bats"][0]["breaches"][0]["dimension"], "edge");
}

#[test]
fn swing_gives_every_figure_and_a_left_hander_gets_the_right_handers() {
    let folder = tempfile::tempdir().unwrap();
    let right = figures(&["swing", "--stroke", "hook", "--bat", "big edges"], folder.path(), 0);
    assert_eq!(right["schema"], "backlift/swing/1");
    assert_eq!((&right["stroke"], &right["bat"]), (&"hook".into(), &"Big edges".into()));
    let hand = ["peak_force_n", "peak_couple_n_m", "grip_needed_n"].map(|it| format!("/{it}"));
    let wrist = ["flexion_extension_n_m", "radial_ulnar_n_m", "forearm_roll_n_m", "peak_share"]
        .map(|it| format!("/wrist/{it}"));
    for side in ["top", "bottom"] {
        for it in hand.iter().chain(&wrist) {
            numbers(&right, &[&format!("/hands/{side}{it}")]);
        }
    }
    numbers(
        &right,
        &[
            "/bat_speed_m_s",
            "/toe_speed_m_s",
            "/stroke_time_s",
            "/contact/position_error_m",
            "/contact/face_error_deg",
            "/contact/line_error_deg",
            "/time_in_hand_s",
            "/fastest_ball_m_s",
        ],
    );
    assert!(right["limited_by"].is_string());
    let left = ["swing", "--stroke", "hook", "--bat", "big edges", "--set", "player.handed=left"];
    let left = figures(&left, folder.path(), 0);
    assert_eq!((&right["handed"], &left["handed"]), (&"right".into(), &"left".into()));
    same(&right, &left, "");
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn swing_says_where_a_hand_needs_more_grip_than_it_has() {
    let folder = tempfile::tempdir().unwrap();
    for grip in ["20 kg", "60 kg"] {
        let (top, bottom) =
            (format!("player.grip_top={grip}"), format!("player.grip_bottom={grip}"));
        let arguments = ["swing", "--stroke", "hook", "--set", &top, "--set", &bottom];
        let value = figures(&arguments, folder.path(), 0);
        let short = ["top", "bottom"].into_iter().any(|hand| {
            let of = |it: &str| value["hands"][hand][it].as_f64().unwrap();
            of("grip_needed_n") > of("grip_available_n")
        });
        let run = backlift().current_dir(folder.path()).args(arguments).assert().success();
        let told = String::from_utf8(run.get_output().stdout.clone()).unwrap();
        assert_eq!(told.contains("more grip than there is"), short, "{grip}: {told}");
    }
}

#[test]
fn pickup_weights_of_several_sizes_are_told_apart_from_those_of_one() {
    let told = |bats: &[&str]| {
        let run = backlift().arg("weigh").args(bats).assert().success();
        String::from_utf8(run.get_output().stdout.clone()).unwrap()
    };
    let warned = |told: &str| told.contains("These are of several sizes");
    assert!(warned(&told(&[])), "the demo has a Harrow beside its sixes");
    assert!(!warned(&told(&["--bat", "0"])));
}

#[test]
fn innings_gives_every_stroke_at_every_ten_runs_and_the_pull_at_fifty() {
    let folder = tempfile::tempdir().unwrap();
    let set = ["--set", "innings.runs=25"];
    let right = figures(&[&["innings"], &set[..]].concat(), folder.path(), 0);
    assert_eq!(right["schema"], "backlift/innings/1");
    let runs: Vec<f64> =
        right["points"].as_array().unwrap().iter().map(|it| it["runs"].as_f64().unwrap()).collect();
    assert_eq!(runs, [0.0, 10.0, 20.0, 25.0, 30.0, 40.0, 50.0]);
    for state in ["strokes", "strokes_without_slow"] {
        for stroke in ["drive", "pull", "hook"] {
            for figure in ["bat_speed_m_s", "wrist_share", "time_in_hand_s", "fastest_ball_m_s"] {
                numbers(&right, &[&format!("/points/6/{state}/{stroke}/{figure}")]);
            }
        }
    }
    numbers(&right, &["/points/3/balls", "/pull_at_end/bat_speed_drop_share"]);
    let lost = |at: &str| right.pointer(at).unwrap().as_f64().unwrap();
    let at_fifty = lost("/pull_at_fifty/bat_speed_drop_share");
    assert!(at_fifty > lost("/pull_at_fifty/without_slow/bat_speed_drop_share"));
    assert!(at_fifty > lost("/pull_at_end/bat_speed_drop_share"));
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_left_handers_innings_is_the_right_handers() {
    let folder = tempfile::tempdir().unwrap();
    let of = |hand: &str| {
        let set = ["innings", "--bat", "0", "--set", "innings.runs=25", "--set", hand];
        figures(&set, folder.path(), 0)
    };
    same(&of("player.handed=right"), &of("player.handed=left"), "");
}

#[test]
fn check_takes_the_bat_as_ordered_and_sends_the_wrong_one_back_with_exit_code_one() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let ordered =
        ["check", "card.ron", "--mass", "894 g", "--balance", "502 mm", "--time", "41.8 s"];
    let good = figures(&ordered, folder.path(), 0);
    assert_eq!((&good["schema"], &good["accepted"]), (&"backlift/check/2".into(), &true.into()));
    for item in good["items"].as_array().unwrap() {
        numbers(item, &["/asked", "/tolerance/0", "/tolerance/1"]);
        assert!(item["figure"].is_string(), "{item}");
    }
    assert_eq!(good["items"][0]["figure"], "swing_moment_kg_m2");
    assert_eq!(good["items"][0]["within"], true);
    assert_eq!(good["pull_at_fifty"], Value::Null);
    std::fs::write(folder.path().join("mine.ron"), include_str!("../../scenarios/junior.ron"))
        .unwrap();
    let told = backlift().current_dir(folder.path()).args(ordered).assert().success();
    let told = String::from_utf8(told.get_output().stdout.clone()).unwrap();
    assert!(
        told.replace("\n", " ").contains("best guess:")
            && told.contains("in 100")
            && !told.contains("unsure"),
        "{told}"
    );
    let heavy = figures(&["check", "card.ron", "mine.ron", "--bat", "1"], folder.path(), 1);
    assert_eq!((&heavy["accepted"], &heavy["items"][0]["within"]), (&false.into(), &false.into()));
    let lost = heavy.pointer("/pull_at_fifty/difference_m_s").unwrap().as_f64().unwrap();
    assert!(lost < -0.1, "a bat with more swing moment is swung slower, not by {lost}");
}

#[test]
fn faults_of_player_and_bats_come_together_in_their_places() {
    let folder = tempfile::tempdir().unwrap();
    let good = include_str!("../../scenarios/junior.ron");
    let bad = good
        .replace("stature: \"5 ft 3 in\"", "stature: \"3 m\"")
        .replace("mass: \"2 lb 3 oz\"", "mass: \"4 kg\"")
        .replace("balance: \"20.1 in\"", "balance: \"201 in\"")
        .replace("time: \"14.13 s\"", "time: \"4.13 s\"")
        .replace(
            "size: \"Harrow\",\n            mass: \"2 lb 5 oz\"",
            "size: \"Harow\",\n            mass: \"2 lb 5 oz\"",
        );
    std::fs::write(folder.path().join("bad.ron"), bad).unwrap();
    let table = [
        ("[bad.ron:12:18]", "3 m is outside"),
        ("[bad.ron:23:19]", "no bat lies outside 0.2 to 3 kg"),
        ("[bad.ron:36:22]", "balance is 5.1054 m; no bat lies outside"),
        ("[bad.ron:51:42]", "faster than physics allows"),
        ("[bad.ron:55:19]", "did you mean \"Harrow\"?"),
    ];
    for command in ["weigh", "swing", "innings"] {
        let words = refused(&[command, "bad.ron", "--json"], folder.path());
        for (at, said) in table {
            assert!(words.contains(at) && words.contains(said), "{at} {said} in\n{words}");
        }
    }
}

#[test]
fn a_mistyped_bat_or_stroke_and_a_broken_card_are_pointed_at() {
    let folder = tempfile::tempdir().unwrap();
    let half = &CARD.as_bytes()[..CARD.len() / 2];
    std::fs::write(folder.path().join("half.ron"), half).unwrap();
    std::fs::write(folder.path().join("other.ron"), "(schema: \"backlift/scenario/1\")").unwrap();
    std::fs::write(folder.path().join("empty.ron"), "\n").unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let table: &[(&[&str], &[&str])] = &[
        (&["swing", "--bat", "Big edge"], &["[--bat:1:1]", "did you mean \"Big edges\"?"]),
        (&["innings", "--bat", "4"], &["[--bat:1:1]", "0 \"Old faithful\""]),
        (&["swing", "--stroke", "pul"], &["[--stroke:1:1]", "did you mean \"pull\"?"]),
        (&["swing", "--capacity", "none"], &["--capacity", "80 %"]),
        (&["check", "half.ron", "--mass", "1 kg"], &["[half.ron:", "not a whole card"]),
        (&["check", "other.ron", "--mass", "1 kg"], &["[other.ron:1:1]", "not a card"]),
        (&["check", "empty.ron", "--mass", "1 kg"], &["[empty.ron:1:1]", "the file is empty"]),
        (&["weigh", "card.ron"], &["[card.ron:1:1]", "a maker's card, not a scenario"]),
        (&["swing", "--bat", "-1"], &["[--bat:1:1]", "0 \"Old faithful\""]),
        (&["swing", "--set", "bowling.speed=900 km/h"], &["[--set:1:15]", "5 to 50 m/s"]),
        (&["swing", "--set", "bowling.pitch_length=2 m"], &["[--set:1:22]", "8 to 25 m"]),
        (&["swing", "--set", "bowling.reaction_time=5 s"], &["[--set:1:23]", "0.05 to 1 s"]),
        (&["weigh", "--set", "player.grip_top=300 kg"], &["2941.995 N is outside 20 to 1000 N"]),
        (&["weigh", "--set", "player.mass=12 kg"], &["a stature of 1.60 m, where 23.05"]),
        (&["check", "no.ron"], &["there is no file no.ron"]),
        (&["check", "half.ron", "--mass", "1021"], &["1021 has no unit", "1160 g"]),
    ];
    for (arguments, said) in table {
        let words = refused(arguments, folder.path());
        for it in *said {
            assert!(words.contains(it), "{arguments:?}: {it:?} is missing in\n{words}");
        }
    }
}

#[test]
fn a_folder_that_cannot_be_written_is_refused_and_nothing_is_left_behind() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("taken"), "mine").unwrap();
    for command in ["swing", "innings"] {
        let words = refused(&[command, "--out", "taken"], folder.path());
        assert!(words.contains("a file stands where a folder should be"), "{words}");
        refused(&[command, "--out", "new", "--bat", "9"], folder.path());
    }
    assert_eq!(std::fs::read(folder.path().join("taken")).unwrap(), b"mine");
    assert_eq!(std::fs::read_dir(folder.path()).unwrap().count(), 1);
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn the_same_swing_and_innings_give_the_same_bytes() {
    let folder = tempfile::tempdir().unwrap();
    let written = |out: &str, threads: &str| {
        let mut all = Vec::new();
        for command in ["swing", "innings"] {
            let run = backlift()
                .current_dir(folder.path())
                .env("RAYON_NUM_THREADS", threads)
                .args([command, "--bat", "2", "--json", "--out", out])
                .assert()
                .success();
            all.push(run.get_output().stdout.clone());
        }
        for name in ["swing-pull.csv", "swing-pull.svg", "swing-pull.png", "innings.svg"] {
            all.push(std::fs::read(folder.path().join(out).join(name)).unwrap());
        }
        all
    };
    assert!(written("one", "1") == written("two", "2"));
}

#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn no_line_is_wider_than_a_terminal_of_eighty() {
    let card = "fitting/card.ron";
    let check = ["check", card, "--mass", "894g", "--balance", "502mm", "--time", "41.8s"];
    let table: [&[&str]; 7] = [
        &["weigh"],
        &["pickup"],
        &["swing"],
        &["swing", "--time", "0.3 s"],
        &["innings"],
        &check,
        &["trial", "--bat", "Old faithful", "--like-bat", "Big edges"],
    ];
    for arguments in table {
        // The trade's units, then SI.
        for units in [&[][..], &["--units", "si"]] {
            for line in ran(&[arguments, units].concat()).said.lines() {
                assert!(line.chars().count() <= 80, "{arguments:?}: {line}");
            }
        }
    }
}

/// Nothing but the handle's diameter is another: every command that swings the bat says another figure.
#[test]
#[ignore = "slow: run by cargo test -- --ignored"]
fn a_measured_handle_counts_in_swing_innings_compare_and_hit() {
    let folder = tempfile::tempdir().unwrap();
    let two = ["compare", "--bat", "0", "--bat", "1"];
    let commands: [&[&str]; 4] = [&["swing"], &["innings", "--bat", "0"], &two, &["hit"]];
    for command in commands {
        let with = |diameter: &str| {
            let set = format!("bats.0.handle_diameter={diameter}");
            let arguments = [command, &["--set", &set], &PULL_ALONE].concat();
            figures(&arguments, folder.path(), 0)
        };
        let [thin, usual, thick] = ["28 mm", "45 mm", "66 mm"].map(with);
        assert!(thin != usual && usual != thick && thin != thick, "{command:?}");
    }
}

/// Two bats a gram apart and one of half a pound more: only the last is told apart from both.
#[test]
fn weigh_names_no_easiest_of_bats_that_it_cannot_tell_apart() {
    let folder = tempfile::tempdir().unwrap();
    let bat = |label: &str, mass: &str, time: &str| {
        format!(
            "(label: \"{label}\", size: \"6\", mass: \"{mass}\", length: \"806 mm\", balance: \"497 mm\", pendulum: (swings: 10, time: \"{time}\")),"
        )
    };
    let said = |bats: &[String]| {
        let text = format!(
            "(version: \"backlift/scenario/1\", invented: true, player: (age: 13, sex: \"male\", stature: \"160 cm\"), bats: [{}])",
            bats.concat()
        );
        std::fs::write(folder.path().join("three.ron"), text).unwrap();
        let run = backlift().current_dir(folder.path()).args(["weigh", "three.ron"]).assert();
        let words = String::from_utf8(run.success().get_output().stdout.clone()).unwrap();
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let (light, same) = (bat("A", "960 g", "13.80 s"), bat("B", "961 g", "13.80 s"));
    let heavy = bat("C", "1200 g", "14.00 s");
    let two = said(&[light.clone(), same.clone()]);
    assert!(two.contains("Too close to call which is easier to get moving"), "{two}");
    let three = said(&[light.clone(), same.clone(), heavy.clone()]);
    assert!(
        three.contains("Too close to call which is the easiest to get moving, A or B"),
        "{three}"
    );
    assert!(three.contains("C is the hardest"), "{three}");
    assert!(!three.contains("A is the easiest"), "{three}");
    let apart = said(&[light, heavy]);
    assert!(apart.contains("A is the easiest to get moving, C the hardest"), "{apart}");
}

/// Two of them leave the size out on purpose and are told so.
#[test]
fn shipped_scenarios_warn_of_nothing_but_the_size_that_two_leave_out() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR"));
    for entry in std::fs::read_dir(root.join("scenarios")).unwrap().flatten() {
        let name = entry.file_name().into_string().unwrap();
        let command = match name.as_str() {
            "bench-log.ron" => "stages",
            "blade.ron" => "shape",
            // Clefts are shared out among cards: `orders` reads it beside some.
            "rack.ron" => continue,
            _ => "weigh",
        };
        let run = backlift().arg(command).arg(entry.path()).assert().success();
        let said = String::from_utf8(run.get_output().stderr.clone()).unwrap();
        let warnings = said.matches('⚠').count();
        let sizes = said.matches("neither size nor length given").count();
        let meant = ["minimal.ron", "measured-hardly.ron"].contains(&name.as_str());
        assert_eq!(warnings, sizes, "{name}: {said}");
        assert_eq!(warnings > 0, meant, "{name}: {said}");
    }
}

/// Parallel axes: the swing moment is that about the centre of mass along y and the weight's own, 0.1524 m from the top.
#[test]
fn the_tensor_of_a_weighed_bat_gives_its_swing_moment() {
    let folder = tempfile::tempdir().unwrap();
    for bat in figures(&["weigh"], folder.path(), 0)["bats"].as_array().unwrap() {
        let of = |at: &str| bat.pointer(at).unwrap().as_f64().unwrap();
        let (x_m, z_m) = (of("/com_B_m/0") - 0.1524, of("/com_B_m/2"));
        let about_axis = of("/inertia_com_B_kg_m2/1/1") + of("/mass_kg") * (x_m * x_m + z_m * z_m);
        let swing = of("/swing_moment_kg_m2");
        assert!((about_axis / swing - 1.0).abs() < 1e-9, "{about_axis} {swing}");
        assert_eq!(of("/com_B_m/0"), of("/balance_m"));
        for (i, j) in [(0, 1), (0, 2), (1, 2)] {
            let at = |i, j| of(&format!("/inertia_com_B_kg_m2/{i}/{j}"));
            assert_eq!(at(i, j), at(j, i));
        }
    }
}

#[test]
fn the_series_of_a_swing_has_loads_as_vectors_rates_and_the_pelvis_to_nine_decimals() {
    let folder = tempfile::tempdir().unwrap();
    let found = figures(&["swing", "--out", "seen"], folder.path(), 0);
    assert_eq!(found["capacities"].as_array().unwrap().len(), 18);
    let text = std::fs::read_to_string(folder.path().join("seen/swing-pull.csv")).unwrap();
    let mut lines = text.lines();
    let heads: Vec<&str> = lines.next().unwrap().split(',').collect();
    let rows: Vec<Vec<&str>> = lines.map(|it| it.split(',').collect()).collect();
    assert!(rows.len() > 100 && rows.iter().all(|it| it.len() == heads.len()));
    assert!(rows.iter().flatten().all(|it| it.split_once('.').unwrap().1.len() == 9));
    let of = |row: &[&str], head: &str| -> f64 {
        row[heads.iter().position(|it| *it == head).expect(head)].parse().unwrap()
    };
    for row in &rows {
        let length = |what: &str, unit: &str| {
            let axis = |axis| of(row, &format!("{what}_{axis}_{unit}"));
            ["x", "y", "z"].map(axis).iter().map(|it| it * it).sum::<f64>().sqrt()
        };
        assert!((length("force_top", "n") - of(row, "force_top_n")).abs() < 1e-6);
        assert!((length("force_bottom", "n") - of(row, "force_bottom_n")).abs() < 1e-6);
        assert!((length("couple_top", "n_m") - of(row, "couple_top_n_m")).abs() < 1e-6);
        assert!(length("couple_bottom", "n_m").is_finite() && length("pelvis", "m") < 1.0);
        assert!(of(row, "hip_turn_rate_rad_s").is_finite());
    }
}
