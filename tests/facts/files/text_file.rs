//! A text being worked on: what is put into it, and what becomes of its file.

use std::path::{Path, PathBuf};

use backlift::files::document::TextFile;
use backlift::files::scenario::ScenarioV1;

const TEXT: &str = "(version: \"backlift/scenario/1\", // mine
    player: (age: \"13\", sex: \"male\", stature: \"155 cm\"),
    bats: [(label: \"A\", size: \"5\"), (label: \"B\", size: \"5\")],
    uses: \"B\", seen: [(bat: \"B\", stroke: \"pull\", balls: 20, in_time: \"most\")])";

fn scenario() -> TextFile<ScenarioV1> {
    TextFile::of("mine", TEXT).unwrap()
}

fn in_a_file(folder: &Path) -> (PathBuf, TextFile<ScenarioV1>) {
    let path = folder.join("mine.ron");
    std::fs::write(&path, TEXT).unwrap();
    let file = TextFile::open(&path).unwrap();
    (path, file)
}

#[test]
fn what_names_a_bat_follows_its_label_and_goes_with_it() {
    let mut file = scenario();
    file.set("bats.1.label", "Old faithful").unwrap();
    assert_eq!(file.at("uses"), "Old faithful");
    assert_eq!(file.at("seen.0.bat"), "Old faithful");
    assert_eq!(file.used_bat(), 1);
    file.remove_bat(1).unwrap();
    assert_eq!((file.at("uses").as_str(), file.is_seen(), file.used_bat()), ("", false, 0));
    assert!(file.text().contains("// mine"), "{}", file.text());
    assert!(file.remove_bat(0).unwrap_err().to_string().contains("the last bat stays"));
}

#[test]
fn a_copied_bat_has_a_label_of_its_own() {
    let mut file = scenario();
    file.set("bats.0.label", "Net 2").unwrap();
    file.set("bats.1.label", "Net 3").unwrap();
    file.add_bat(Some(0)).unwrap();
    assert_eq!((file.label(2).as_str(), file.at("bats.2.size").as_str()), ("Net 4", "5"));
}

#[test]
fn a_field_that_there_is_not_changes_nothing() {
    let mut file = scenario();
    assert!(file.put("bats.0.colour", "red").is_err());
    assert_eq!(file, scenario());
}

#[test]
fn what_somebody_else_wrote_into_the_file_meanwhile_is_not_saved_over() {
    let folder = tempfile::tempdir().unwrap();
    let (path, mut file) = in_a_file(folder.path());
    file.put("player.age", "14").unwrap();
    std::fs::write(&path, TEXT.replace("155 cm", "158 cm")).unwrap();
    let fault = file.save().unwrap_err().to_string();
    assert!(fault.contains("was changed since it was opened here"), "{fault}");
    assert!(std::fs::read_to_string(&path).unwrap().contains("158 cm"));
    assert!(file.is_changed(), "what was not saved is still unsaved");
    file.save_as(&folder.path().join("other.ron")).unwrap();
    assert!(!file.is_changed());
}

#[test]
fn a_file_is_saved_again_and_again_and_anew_where_it_went_away() {
    let folder = tempfile::tempdir().unwrap();
    let (path, mut file) = in_a_file(folder.path());
    for age in ["14", "15"] {
        file.put("player.age", age).unwrap();
        file.save().unwrap();
        assert_eq!(std::fs::read_to_string(&path).unwrap(), file.text());
    }
    std::fs::remove_file(&path).unwrap();
    file.put("player.age", "16").unwrap();
    file.save().unwrap();
    assert_eq!(std::fs::read_to_string(&path).unwrap(), file.text());
}
