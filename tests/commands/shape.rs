//! `backlift shape`, as a person and as another program use it.

use super::bats::CARD;
use super::{backlift, refused};
use serde_json::Value;

fn figures(arguments: &[&str], folder: &std::path::Path, code: i32) -> Value {
    let run = backlift().current_dir(folder).args(arguments).arg("--json").assert().code(code);
    serde_json::from_slice(&run.get_output().stdout).unwrap()
}

#[test]
fn shape_writes_its_figures_templates_and_solid() {
    let folder = tempfile::tempdir().unwrap();
    let found = figures(&["shape", "--out", "bench"], folder.path(), 0);
    for key in [
        "/mass_kg",
        "/balance_m",
        "/swing_moment_kg_m2",
        "/inertia_com_B_kg_m2/2/2",
        "/volume_m3",
        "/percussion_m",
        "/bending_node_m",
        "/met/0/figure",
    ] {
        assert!(found.pointer(key).is_some_and(|it| !it.is_null()), "{key}");
    }
    assert_eq!(found["legal"], true);
    assert!(found["edition"].as_str().unwrap().contains("Law 5"));
    assert_eq!(found["middles"].as_array().unwrap().len(), 3);
    let read = |name: &str| std::fs::read(folder.path().join("bench").join(name)).unwrap();
    // 84 bytes of head, 50 a triangle; the count stands at byte 80.
    let stl = read("bat.stl");
    let count = u32::from_le_bytes(stl[80..84].try_into().unwrap()) as usize;
    assert_eq!(stl.len(), 84 + 50 * count);
    let glb = read("bat.glb");
    assert_eq!(&glb[..4], b"glTF");
    assert_eq!(u32::from_le_bytes(glb[8..12].try_into().unwrap()) as usize, glb.len());
    let text = u32::from_le_bytes(glb[12..16].try_into().unwrap()) as usize;
    let json: Value = serde_json::from_slice(&glb[20..20 + text]).unwrap();
    assert_eq!(json["meshes"].as_array().unwrap().len(), 2);
    assert!(read("sections.pdf").starts_with(b"%PDF"));
    assert!(read("profile.pdf").starts_with(b"%PDF"));
    // An adult blade lies on three pages, and its strips on three more.
    assert!(read("profile-6.svg").starts_with(b"<svg"));
    let page = String::from_utf8(read("sections-1.svg")).unwrap();
    // The bar of 150 mm runs from the margin of 10 mm, in CSS pixels of 1/96 in.
    assert!(page.contains("M37.8 100.8L604.72 100.8") || page.contains("L604.72"), "{page}");
}

#[test]
fn shape_to_a_card_meets_it_or_names_the_demand_that_breaks_it() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let found = figures(&["shape", "--to", "card.ron"], folder.path(), 0);
    assert_eq!(found["demands_broken"].as_array().unwrap().len(), 0);
    assert_eq!(found["met"].as_array().unwrap().len(), 5, "{:#}", found["met"]);
    assert!(found["answers"].as_array().unwrap().len() > 1);
    assert_eq!(found["chosen"], found["answers"][0]["name"]);
    let heavy = CARD.replace("swing_moment_kg_m2: 0.", "swing_moment_kg_m2: 0.9");
    std::fs::write(folder.path().join("odd.ron"), heavy).unwrap();
    backlift().current_dir(folder.path()).args(["shape", "--to", "odd.ron"]).assert().code(2);
}

#[test]
fn the_shape_that_meets_a_card_is_written_as_a_bat_that_has_its_figures() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let own = folder.path().join("own.ron");
    let described = "(version: \"backlift/shape/1\", title: \"Mine\", size: \"6\", \
        handle: (pieces: \"3\", strip: \"1.2 mm\", grips: 2), blade: (bow: \"6 mm\"))";
    std::fs::write(&own, described).unwrap();
    let mut titles = Vec::new();
    for bat in [None, Some("own.ron")] {
        let to: Vec<&str> = ["shape"].into_iter().chain(bat).collect();
        let to = [&to[..], &["--to", "card.ron", "--out", "bench"]].concat();
        let carved = figures(&to, folder.path(), 0);
        let read = figures(&["shape", "bench/bat.ron"], folder.path(), 0);
        for key in [
            "mass_kg",
            "balance_m",
            "swing_moment_kg_m2",
            "pickup_weight_kg",
            "percussion_m",
            "volume_m3",
            "length_m",
            "width_m",
            "edge_m",
            "depth_m",
            "hollow",
            "swell_from_toe_m",
            "density_kg_m3",
        ] {
            let (a, b) = (carved[key].as_f64().unwrap(), read[key].as_f64().unwrap());
            assert!((a - b).abs() <= 1e-6 * a.abs(), "{bat:?} {key}: {a} {b}");
        }
        for it in carved["met"].as_array().unwrap() {
            let key = match it["figure"].as_str().unwrap() {
                "dead weight" => "mass_kg",
                "balance point" => "balance_m",
                "swing moment" => "swing_moment_kg_m2",
                _ => continue,
            };
            let limit = |n: usize| it["tolerance"][n].as_f64().unwrap();
            let value = read[key].as_f64().unwrap();
            assert!((limit(0)..=limit(1)).contains(&value), "{key} {value}");
        }
        assert_eq!(carved["met"].as_array().unwrap().len(), 5);
        assert_eq!(read["invented"], true, "the card's player is invented");
        titles.push(read["title"].as_str().unwrap().to_owned());
    }
    assert!(titles[0].contains("the standard bat of size 6"), "{titles:?}");
    assert!(titles[1].contains("Mine"), "{titles:?}");
}

#[test]
fn a_blade_measured_at_three_heights_says_what_was_completed() {
    let text = include_str!("three-heights.ron");
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("b.ron"), text).unwrap();
    let found = figures(&["shape", "b.ron"], folder.path(), 0);
    assert_eq!(found["measured_from_toe_m"].as_array().unwrap().len(), 3);
    assert_eq!(found["completed"].as_array().unwrap().len(), 7);
    let known = text.replace("edge: \"23 mm\", depth: \"50 mm\"", "edge: \"23 mm\"");
    std::fs::write(folder.path().join("half.ron"), known).unwrap();
    let said = refused(&["shape", "half.ron"], folder.path());
    assert!(said.contains("add depth: \"60 mm\""), "{said}");
    let two = text.lines().filter(|it| !it.contains("\"9 in\"")).collect::<Vec<_>>().join("\n");
    std::fs::write(folder.path().join("two.ron"), two).unwrap();
    let said = refused(&["shape", "two.ron"], folder.path());
    assert!(said.contains("three heights or more"), "{said}");
    let said = refused(&["shape", "b.ron", "--set", "handle.pieces=3"], folder.path());
    assert!(said.contains("add strip"), "{said}");
}

#[test]
fn wrong_descriptions_are_pointed_at_with_their_mend() {
    let folder = tempfile::tempdir().unwrap();
    backlift().current_dir(folder.path()).args(["shape", "--new", "b.ron"]).assert().success();
    let said = refused(&["shape", "b.ron", "--set", "blade.edge=75mm"], folder.path());
    assert!(said.contains("--set:1:12") && said.contains("spine has to stand over"), "{said}");
    let said = refused(&["shape", "b.ron", "--set", "willow.densty=440 kg/m3"], folder.path());
    assert!(said.contains("did you mean \"density\"?"), "{said}");
    let said = refused(&["shape", "b.ron", "--set", "willow.cleft.mass=9 kg"], folder.path());
    assert!(said.contains("is no willow") && said.contains("nearest 650"), "{said}");
    let said = refused(&["shape", "b.ron", "--set", "handle.diameter=3 mm"], folder.path());
    assert!(said.contains("--set:1:17") && said.contains("no cane"), "{said}");
    let said = refused(&["shape", "b.ron", "--set", "size=9"], folder.path());
    assert!(said.contains("the sizes are 1, 2"), "{said}");
    let text = std::fs::read_to_string(folder.path().join("b.ron")).unwrap();
    std::fs::write(folder.path().join("half.ron"), &text[..text.len() / 2]).unwrap();
    let said = refused(&["shape", "half.ron"], folder.path());
    assert!(said.contains("the text ends before the described bat does"), "{said}");
    let said = refused(&["shape", "b.ron", "--to", "b.ron", "--hold", "edge"], folder.path());
    assert!(!said.is_empty());
}

#[test]
fn more_rubber_in_the_handle_than_the_laws_allow_is_told_and_stays_in_every_bat_carved_of_it() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    let none = figures(&["shape"], folder.path(), 0);
    assert!(none["rubber_share"].is_null() && none["rubber_share_allowed"] == true);
    let over = ["shape", "--set", "handle.rubber_share=20 %"];
    let said = backlift().current_dir(folder.path()).args(over).assert().success();
    let said = String::from_utf8(said.get_output().stdout.clone()).unwrap();
    assert!(said.contains("of the handle is rubber, more than is allowed"), "{said}");
    let all = figures(&over, folder.path(), 0);
    assert_eq!(all["legal"], false);
    assert!(all["middles"].as_array().unwrap().iter().all(|it| it["legal"] == false), "{all:#}");
}

#[test]
fn the_customers_wish_for_the_middle_chooses_among_shapes_that_meet_the_card() {
    let folder = tempfile::tempdir().unwrap();
    let order = "    order: Some((number: Some(\"17\"), middle: Some(Usual))),\n    reason:";
    let wished = CARD.replace("    reason:", order);
    assert_ne!(wished, CARD);
    std::fs::write(folder.path().join("card.ron"), wished).unwrap();
    std::fs::write(folder.path().join("plain.ron"), CARD).unwrap();
    let found = figures(&["shape", "--to", "card.ron", "--out", "bench"], folder.path(), 0);
    let plain = figures(&["shape", "--to", "plain.ron"], folder.path(), 0);
    assert!(plain["wished_middle"].is_null() && plain["answers"][0]["as_wished"].is_null());
    assert_eq!(found["wished_middle"], "usual");
    assert_eq!(found["answers"][0]["middle"], "usual");
    assert_eq!(found["chosen"], found["answers"][0]["name"]);
    let answers = found["answers"].as_array().unwrap();
    let have_it = answers.iter().filter(|it| it["as_wished"] == true).count();
    assert!(have_it > 0 && answers[..have_it].iter().all(|it| it["as_wished"] == true));
    let made = figures(&["shape", "bench/bat.ron"], folder.path(), 0);
    let swell = |it: &Value| it["swell_from_toe_m"].as_f64().unwrap();
    assert!((swell(&made) - swell(&answers[0])).abs() < 1e-6, "the first is written");
    let said = |to: &[&str]| {
        let to = [&["shape", "--to", "card.ron"], to].concat();
        let run = backlift().current_dir(folder.path()).args(to).assert().success();
        let said = String::from_utf8(run.get_output().stdout.clone()).unwrap();
        let shapes = said.split("Size check").next().unwrap();
        assert!(shapes.lines().all(|it| it.chars().count() <= 80), "{shapes}");
        said.split_whitespace().collect::<Vec<_>>().join(" ")
    };
    let text = said(&[]);
    let count = format!("wished a usual middle: of {} shapes {have_it} ha", answers.len());
    for words in [count.as_str(), "usual, as wished", "no source", "of those with the wished"] {
        assert!(text.contains(words), "{words:?} is missing in {text}");
    }
    let text = said(&["--hold", "swell=150 mm"]);
    assert!(text.contains("meet the card has it, and the card stands above"), "{text}");
}

#[test]
fn a_bat_of_a_type_that_may_have_more_rubber_says_so_and_keeps_its_type() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::write(folder.path().join("card.ron"), CARD).unwrap();
    backlift().current_dir(folder.path()).args(["shape", "--new", "b.ron"]).assert().success();
    let rubber = ["--set", "handle.rubber_share=15 %"];
    let of = |more: &[&str]| {
        figures(&[&["shape", "b.ron"][..], &rubber, more].concat(), folder.path(), 0)
    };
    let (none, junior) = (of(&[]), of(&["--set", "law_type=d"]));
    assert!(none["law_type"].is_null() && none["rubber_share_allowed"] == false);
    assert_eq!(none["rubber_share_limit"], 0.1);
    assert_eq!(junior["law_type"], "D");
    assert_eq!(junior["rubber_share_limit"], 0.2);
    assert_eq!(junior["rubber_share_allowed"], true);
    let said = refused(&["shape", "b.ron", "--set", "law_type=E"], folder.path());
    assert!(said.contains("law_type"), "{said}");
}
