//! Tables of readings, however a spreadsheet writes them.

use super::load_file;
use backlift::files::readings::{DEMO, read, text_of};

#[test]
fn semicolons_and_the_mark_of_a_spreadsheet_are_read_as_well() {
    let bats = load_file(None, &[]).unwrap().scenario.bats;
    let labels: Vec<String> = bats.into_iter().map(|it| it.label).collect();
    let folder = tempfile::tempdir().unwrap();
    let path = folder.path().join("nets.csv");
    let text = DEMO.replace(',', ";").replace('\n', "\r\n");
    std::fs::write(&path, format!("\u{feff}{text}")).unwrap();
    let of =
        |path| read(text_of(path).unwrap(), &labels, &["drive", "pull", "hook"]).unwrap().readings;
    let (plain, spreadsheets) = (of(None), of(Some(path.as_path())));
    assert!(!plain.is_empty());
    assert_eq!(plain, spreadsheets);
}
