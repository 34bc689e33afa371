//! Stroke files.

use backlift::files::stroke::{built_in, read, write};

#[test]
fn a_stroke_written_and_read_again_is_the_same() {
    for stroke in built_in().unwrap() {
        assert_eq!(read(&write(&stroke)).unwrap(), stroke);
    }
}

#[test]
fn a_stroke_is_written_in_the_layout_of_those_that_come_with_the_program() {
    for stroke in built_in().unwrap() {
        let file = format!("assets/strokes/{}.ron", stroke.name);
        let there = std::fs::read_to_string(&file).unwrap();
        let written = write(&stroke);
        let from_keys = |text: &str| text[text.find("    keys: [").unwrap()..].to_owned();
        assert_eq!(from_keys(&written), from_keys(&there), "{file}");
    }
}
