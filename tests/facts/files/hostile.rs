//! Texts that were made to hurt: small ones take little time and memory, and none speaks to the terminal.

use std::time::{Duration, Instant};

use backlift::files::document::{Kind, text_of_file};
use backlift::files::fault::{Fault, Faults, Source};
use backlift::files::outline::Outline;
use backlift::files::{card, readings};

use super::load_text;

/// Many times what a machine needs that has other work, and far below what a quadratic reader took.
const LONGEST: Duration = Duration::from_secs(5);

fn quickly<T>(what: &str, read: impl FnOnce() -> T) -> T {
    let started = Instant::now();
    let out = read();
    assert!(started.elapsed() < LONGEST, "{what}: {:?}", started.elapsed());
    out
}

/// What is shown of many faults: some of them, and how many there are besides.
fn shown_in_part(faults: &Faults) -> String {
    let shown = faults.drawn(80, false);
    assert!(shown.len() < 40_000, "{} bytes", shown.len());
    assert!(shown.contains("more faults: mend these first"), "{shown}");
    shown
}

#[test]
fn a_long_name_over_a_long_list_takes_no_more_room_than_their_text() {
    for name_bytes in [100, 51_000] {
        let text = format!("({}: [{}])", "a".repeat(name_bytes), "1,".repeat(50_000));
        let outline = quickly("outline", || Outline::of(&text));
        let bytes: usize = outline.entries.iter().map(|it| it.path.len()).sum();
        assert!(bytes < 100 * text.len(), "{bytes} bytes of paths");
        let faults = quickly("scenario", || load_text(text.as_bytes(), &[])).unwrap_err();
        assert!(faults.drawn(80, false).len() < 40_000);
    }
}

#[test]
fn a_text_of_more_values_than_anybody_writes_is_refused_as_a_whole() {
    let text = format!("(bats: [{}])", "(),".repeat(100_000));
    let faults = quickly("scenario", || load_text(text.as_bytes(), &[])).unwrap_err();
    assert!(faults.0[0].message.contains("more in it than in any scenario"), "{faults}");
    let text = format!("(bats: [{}])", "(),".repeat(10_000));
    let faults = quickly("bats", || load_text(text.as_bytes(), &[])).unwrap_err();
    assert!(faults.to_string().contains("there are 10000 bats"), "{faults}");
}

#[test]
fn a_key_written_many_times_is_refused_at_once() {
    let text = format!("({})", "note: 1,".repeat(12_500));
    let faults = quickly("scenario", || load_text(text.as_bytes(), &[])).unwrap_err();
    assert!(shown_in_part(&faults).contains("it is written twice"));
}

#[test]
fn a_table_of_many_bad_lines_or_columns_is_refused_at_once() {
    let lines = format!("bat,stroke,speed\n{}", "a\n".repeat(50_000));
    let columns = "a,".repeat(50_000) + "\n";
    for text in [lines, columns] {
        let read = || readings::read(Source::new("nets.csv", &text), &["A".to_owned()], &["pull"]);
        let faults = quickly("table", read).unwrap_err();
        shown_in_part(&faults);
    }
}

#[test]
fn a_fault_holds_nothing_that_a_terminal_obeys_and_no_page_of_words() {
    let fault = Fault::new("a\u{1b}[31mb\u{7}\u{9b}c").help("d\u{1b}]0;e");
    assert_eq!(fault.message, "a [31mb  c");
    assert_eq!(fault.help.as_deref(), Some("d ]0;e"));
    assert!(Fault::new("a".repeat(1 << 20)).message.len() < 2000);
}

#[test]
fn control_characters_are_refused_at_their_place_and_never_shown() {
    let text = "(\n    title: \"a\u{1b}[31mb\",\n)";
    let faults = load_text(text.as_bytes(), &[]).unwrap_err();
    assert_eq!(faults.0[0].whereabouts().unwrap().rsplit_once("kit.ron").unwrap().1, ":2:14");
    assert!(!faults.drawn(80, false).contains('\u{1b}'));
}

#[test]
fn control_characters_that_a_text_spells_out_do_not_come_through() {
    let scenario = include_str!("../../../scenarios/minimal.ron");
    let text = scenario.replacen('(', "(\n    title: \"a\\u{1b}[31mb\\x07\",", 1);
    let loaded = load_text(text.as_bytes(), &[]).unwrap();
    assert_eq!(loaded.scenario.title, "a [31mb");
    let text = include_str!("../../commands/card.ron").replace("Two separate", "\\u{1b}[2JTwo");
    assert!(card::read(&text).unwrap().how_sure.starts_with(" [2JTwo"));
}

const ANY: Kind = Kind { what: "a text", noun: "text", named: "a file", like: "", none: "" };

#[test]
fn a_byte_order_mark_is_no_part_of_a_text() {
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("marked.ron");
    std::fs::write(&file, "\u{feff}(a: 1)").unwrap();
    assert_eq!(text_of_file(&file, &ANY).unwrap().text(), "(a: 1)");
}

#[test]
fn what_is_no_file_is_refused_without_waiting_for_it() {
    for path in ["/dev/zero", "/dev/null", "."] {
        let read = || text_of_file(path.as_ref(), &ANY);
        assert!(quickly(path, read).is_err(), "{path}");
    }
}
