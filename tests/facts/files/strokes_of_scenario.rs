//! Which strokes a scenario swings, the user's own among them.

use super::load_file;
use backlift::files::fault::Faults;
use backlift::files::scenario::Loaded;
use backlift::files::stroke::{built_in, built_in_names, read, write};
use backlift::files::stroke_paths::{built_in_paths, serving_paths};

/// A scenario beside a stroke of the user's own, with these fields besides.
fn beside(stroke_file: &str, fields: &str) -> Result<Loaded, Faults> {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("my-sweep.ron"), stroke_file).unwrap();
    let text = format!(
        "(version: \"backlift/scenario/1\", player: (age: 13, sex: \"male\", stature: \"1.55 m\"), \
         bats: [(label: \"A\", mass: \"2 lb 4 oz\")], {fields})"
    );
    let path = folder.path().join("kit.ron");
    std::fs::write(&path, text).unwrap();
    load_file(Some(path), &[])
}

/// The pull under another name.
fn sweep(name: &str) -> String {
    let mut stroke = built_in().unwrap().swap_remove(1);
    stroke.name = name.to_owned();
    write(&stroke)
}

fn refused(stroke_file: &str, fields: &str) -> String {
    beside(stroke_file, fields).map(|_| ()).expect_err(fields).to_string()
}

#[test]
fn without_a_word_about_strokes_those_of_the_usual_mix_are_swung() {
    let it = beside("", "").unwrap();
    assert_eq!(it.scenario.strokes, ["drive", "pull", "hook"]);
    assert!(it.own_strokes.is_empty());
}

#[test]
fn strokes_are_chosen_in_text_or_in_a_list_and_the_usual_mix_keeps_to_them() {
    for fields in ["strokes: \"drive, pull\"", "strokes: [\"drive\", \"pull\"]"] {
        let it = beside("", fields).unwrap().scenario;
        assert_eq!(it.strokes, ["drive", "pull"]);
        let [(a, drive), (b, pull)] = &it.innings.mix[..] else { panic!("{:?}", it.innings.mix) };
        assert_eq!((a.as_str(), b.as_str()), ("drive", "pull"));
        assert!((drive / pull - 50.0 / 35.0).abs() < 1e-12 && (drive + pull - 1.0).abs() < 1e-12);
    }
}

#[test]
fn a_users_own_stroke_is_read_beside_the_scenario_and_takes_its_share_of_the_mix() {
    let fields = "strokes: [\"drive\", \"my-sweep.ron\"], \
                  innings: (mix: \"drive 60 %, reverse-sweep 40 %\")";
    let it = beside(&sweep("reverse-sweep"), fields).unwrap();
    assert_eq!(it.scenario.strokes, ["drive", "reverse-sweep"]);
    assert_eq!(it.own_strokes, [read(&sweep("reverse-sweep")).unwrap()]);
    assert!((it.scenario.innings.mix_share("reverse-sweep") - 0.4).abs() < 1e-12);
}

#[test]
fn a_stroke_file_that_is_missing_or_broken_is_named_with_what_to_do() {
    let missing = refused("", "strokes: \"drive, my-swep.ron\"");
    assert!(missing.contains("strokes: ") && missing.contains("my-swep.ron"), "{missing}");
    let fields = "strokes: \"drive, my-sweep.ron\", innings: (mix: \"drive 100 %\")";
    let broken = sweep("sweep").replace("plan_time_s", "plan_tme_s");
    let said = refused(&broken, fields);
    assert!(said.contains("my-sweep.ron: line ") && said.contains("backlift stroke"), "{said}");
    let text = sweep("sweep");
    let keys_only = text[..text.find("    // Control points").unwrap()].to_owned() + ")";
    let said = refused(&keys_only, fields);
    assert!(said.contains("no joint path"), "{said}");
    let said = refused(&sweep("sweep 2"), fields);
    assert!(said.contains("cannot be named in a mix"), "{said}");
    let said = refused(&sweep("drive"), fields);
    assert!(said.contains("two of them are called \"drive\""), "{said}");
}

#[test]
fn a_mix_that_names_a_stroke_that_is_not_swung_is_refused() {
    let mix = "innings: (mix: \"drive 50 %, hook 50 %\")";
    let said = refused("", &format!("strokes: \"drive, pull\", {mix}"));
    assert!(said.contains("innings.mix: \"hook\" is not among the strokes"), "{said}");
    let said = refused(&sweep("sweep"), "strokes: \"drive, my-sweep.ron\"");
    assert!(said.contains("no usual mix has a share of \"sweep\""), "{said}");
}

#[test]
fn pull_and_hook_answer_the_short_ball_and_an_old_stroke_file_says_nothing_of_it() {
    let strokes = built_in().unwrap();
    let short: Vec<&str> =
        strokes.iter().filter(|it| it.answers_short_ball).map(|it| it.name.as_str()).collect();
    assert_eq!(short, ["pull", "hook"]);
    for path in serving_paths(&strokes).unwrap() {
        assert_eq!(path.answers_short_ball, path.name != "drive");
    }
    let pull = built_in().unwrap().swap_remove(1);
    let text = write(&pull);
    assert_eq!(read(&text).unwrap(), read(&write(&read(&text).unwrap())).unwrap());
    assert!(read(&text).unwrap().answers_short_ball);
    let old: String = text
        .lines()
        .filter(|it| !it.contains("answers_short_ball"))
        .map(|it| format!("{it}\n"))
        .collect();
    assert!(!read(&old).unwrap().answers_short_ball);
}

#[test]
fn an_own_stroke_of_the_same_name_is_not_lent_our_paths() {
    let mut pull = built_in().unwrap().swap_remove(1);
    assert_eq!(built_in_paths(&pull).unwrap().all.len(), 20);
    pull.keys[0].grip.z += 0.01;
    assert_eq!(built_in_paths(&pull).unwrap().all, []);
}

#[test]
fn a_stroke_that_comes_with_the_program_is_one_file_of_that_name_and_swung_where_it_is_named() {
    let names: Vec<String> = built_in().unwrap().into_iter().map(|it| it.name).collect();
    assert_eq!(names, built_in_names());
    assert_eq!(names, ["drive", "pull", "hook", "sweep"]);
    let fields =
        "strokes: \"drive, pull, sweep\", innings: (mix: \"drive 50 %, pull 30 %, sweep 20 %\")";
    let it = beside("", fields).unwrap();
    assert_eq!(it.scenario.strokes, ["drive", "pull", "sweep"]);
    assert!((it.scenario.innings.mix_share("sweep") - 0.2).abs() < 1e-12);
}
