//! A rack of clefts as a file.

use backlift::files::fault::Source;
use backlift::files::rack::{MOST_CLEFTS, read_text};

const RACK: &str = include_str!("../../../scenarios/rack.ron");

fn refused(text: &str) -> String {
    read_text(Source::new("rack.ron", text)).map(|_| ()).expect_err(text).to_string()
}

#[test]
fn the_invented_rack_is_read_without_a_fault() {
    let rack = read_text(Source::new("rack.ron", RACK)).unwrap();
    assert!(rack.invented && rack.clefts.len() == 7);
    assert!(rack.clefts.iter().any(|it| it.cleft.moisture.is_none() && it.grains.is_none()));
    assert_eq!(rack.clefts[3].note.as_deref(), Some("a pin knot near the toe"));
}

#[test]
fn faults_of_a_rack_stand_at_their_line_and_column_with_the_mend() {
    for (old, new, said) in [
        ("mass: \"2.16 kg\"", "mass: \"0 kg\"", "is not above zero"),
        ("mass: \"2.16 kg\"", "mass: \"2.16\"", "2.16 has no unit"),
        ("mass: \"2.16 kg\"", "mass: \"5.4 kg\"", "which is no willow: 280 to 650"),
        ("mass: \"2.16 kg\"", "mass: \"54 kg\"", "54 kg is outside 0.1 to 20 kg"),
        ("length: \"660 mm\"", "length: \"66 m\"", "66 m is outside 0.1 to 2 m"),
        ("moisture: \"12 %\"", "moisture: \"40 %\"", "what a meter reads in wood"),
        ("grains: 9", "grains: 9.5", "not a whole number from 1 to 60"),
        ("grains: 9", "grain: 9", "did you mean \"grains\"?"),
    ] {
        let text = RACK.replacen(old, new, 1);
        let words = refused(&text);
        let column = text.lines().nth(5).unwrap().find(new).unwrap();
        let after = words.split_once("rack.ron:6:").unwrap_or_else(|| panic!("{words}")).1;
        let at: usize = after.split_once(':').unwrap().0.parse().unwrap();
        assert!(words.contains(said) && (column..column + 20).contains(&at), "{new}: {words}");
    }
    for (text, said) in [
        (String::new(), "the file is empty"),
        ("(version: \"backlift/rack/1\")".to_owned(), "there is no cleft"),
        (RACK.replace("rack/1", "rack/9"), "does not know"),
        (RACK.replace("label: \"A2\"", "label: \"A1\""), "there is another cleft \"A1\""),
        (RACK.replace("label: \"A2\", ", ""), "clefts.1.label: it is missing"),
        (RACK[..RACK.len() / 2].to_owned(), "ends before"),
        (include_str!("../../../scenarios/minimal.ron").to_owned(), "a scenario, not a rack"),
    ] {
        assert!(refused(&text).contains(said), "{said}: {}", refused(&text));
    }
}

#[test]
fn more_clefts_than_a_rack_holds_are_refused_and_as_many_as_it_holds_are_read() {
    let rack = |count: usize| {
        let one = "mass: \"2.4 kg\", length: \"0.7 m\", width: \"118 mm\", depth: \"70 mm\"";
        let all: Vec<String> = (0..count).map(|n| format!("(label: \"{n}\", {one})")).collect();
        format!("(version: \"backlift/rack/1\", clefts: [{}])", all.join(","))
    };
    assert!(read_text(Source::new("rack.ron", &rack(MOST_CLEFTS))).is_ok());
    for count in [MOST_CLEFTS + 1, 5000] {
        let words = refused(&rack(count));
        assert!(words.contains("leave at most 500") || words.contains("more in it"), "{words}");
    }
}
