//! orders, as a person and as another program use it.

use super::bats::CARD;
use super::{backlift, refused};
use serde_json::Value;
use std::path::Path;

const RACK: &str = include_str!("../../scenarios/rack.ron");

/// A card under an order of this number.
fn ordered(number: &str) -> String {
    let order =
        format!("    order: Some((number: Some({number:?}), note: Some(\"no stickers\"))),\n");
    CARD.replace("    reason:", &(order + "    reason:"))
}

/// A card that asks so much swing moment of its weight that no blade has it.
pub fn unmakeable() -> String {
    ordered("19")
        .replace("swing_moment_kg_m2: 0.1506", "swing_moment_kg_m2: 0.2")
        .replace("(0.1477, 0.1536)", "(0.199, 0.201)")
}

fn file(folder: &Path, name: &str, text: &str) {
    std::fs::write(folder.join(name), text).unwrap();
}

fn run(folder: &Path, arguments: &[&str], code: i32) -> String {
    let run = backlift().current_dir(folder).arg("orders").args(arguments).assert().code(code);
    String::from_utf8(run.get_output().stdout.clone()).unwrap()
}

#[test]
fn several_cards_are_told_together_and_written_only_where_somebody_says() {
    let folder = tempfile::tempdir().unwrap();
    std::fs::create_dir(folder.path().join("cards")).unwrap();
    file(folder.path(), "cards/b.ron", &ordered("18"));
    file(folder.path(), "cards/a.ron", &ordered("17"));
    file(folder.path(), "cards/rack.ron", RACK);
    let text = run(folder.path(), &["cards"], 0);
    assert!(text.lines().all(|it| it.chars().count() <= 80), "{text}");
    let plain = text.replace('\n', " ");
    for said in ["2 bats to make", "17", "18", "assumptions", "Growth", "a helmet", "invented"] {
        assert!(plain.contains(said), "{said:?} is missing in\n{text}");
    }
    assert_eq!(text.matches("Growth changes").count(), 1, "said once for both\n{text}");
    let names = |it: &Path| -> Vec<String> {
        let entries = std::fs::read_dir(it).unwrap().map(|it| it.unwrap().file_name());
        entries.map(|it| it.into_string().unwrap()).collect()
    };
    assert_eq!(names(folder.path()), ["cards"], "nothing is written");
    let rack = ["cards", "--rack", "cards/rack.ron", "--out", "bench"];
    let text = run(folder.path(), &rack, 0);
    for name in ["orders.svg", "orders.png", "orders.pdf"] {
        assert!(text.contains(name) && folder.path().join("bench").join(name).exists(), "{text}");
    }
}

#[test]
fn a_rack_serves_whom_it_can_and_names_what_is_left_with_why() {
    let folder = tempfile::tempdir().unwrap();
    file(folder.path(), "one.ron", &ordered("17"));
    file(folder.path(), "two.ron", &ordered("18"));
    file(folder.path(), "never.ron", &unmakeable());
    file(folder.path(), "rack.ron", RACK);
    let all = ["one.ron", "two.ron", "never.ron", "--rack", "rack.ron", "--json"];
    let value: Value = serde_json::from_str(&run(folder.path(), &all, 1)).unwrap();
    assert_eq!(value["schema"], "backlift/orders/1");
    let list = |key: &str| value[key].as_array().unwrap().clone();
    assert!(list("orders")[2]["not_makeable"].is_string(), "{value:#}");
    let served = list("served");
    assert_eq!(served.len(), 2, "{value:#}");
    assert_ne!(served[0]["cleft"], served[1]["cleft"]);
    for it in &served {
        let order = list("orders").into_iter().find(|of| of["order"] == it["order"]).unwrap();
        let limit = |n: usize| order["willow_limits_kg_m3"][n].as_f64().unwrap();
        let density = it["density_kg_m3"].as_f64().unwrap();
        assert!(limit(0) <= density && density <= limit(1), "{it}");
        assert!(it["chance"].as_f64().unwrap() >= 0.8, "{it}");
    }
    assert_eq!(list("orders_left").len(), 1);
    assert_eq!(list("orders_left")[0]["order"], "19");
    assert_eq!(served.len() + list("clefts_left").len(), 7, "every cleft is accounted for");
    for it in list("orders_left").iter().chain(&list("clefts_left")) {
        assert!(it["why"].as_str().unwrap().len() > 10, "{it}");
    }
}

#[test]
fn wrong_orders_and_racks_are_refused_with_the_mend() {
    let folder = tempfile::tempdir().unwrap();
    file(folder.path(), "a.ron", &ordered("17"));
    file(folder.path(), "b.ron", &ordered("17"));
    file(folder.path(), "rack.ron", &RACK.replace("\"2.16 kg\"", "\"0 kg\""));
    file(folder.path(), "strange.ron", &CARD.replace("size: \"6\"", "size: \"seven\""));
    std::fs::create_dir(folder.path().join("none")).unwrap();
    let table: [(&[&str], &str); 7] = [
        (&[], "CARD.ron"),
        (&["a.ron", "b.ron"], "there are two orders \"17\""),
        (&["none"], "there is no card in none"),
        (&["c.ron"], "there is no file c.ron"),
        (&["rack.ron"], "not a"),
        (&["strange.ron"], "no size is called"),
        (&["a.ron", "--rack", "rack.ron"], "[rack.ron:6:29]"),
    ];
    for (arguments, said) in table {
        let words = refused(&[&["orders"], arguments].concat(), folder.path());
        assert!(words.contains(said), "{arguments:?}: {words}");
    }
}
