//! The outside checks that `backlift validate` runs, asked here one by one.

use std::collections::BTreeMap;
use std::sync::{Arc, Mutex};

use backlift::validation::{Check, Checked, Verdict};

/// What one check found; kept for the next fact that asks. (Nobody waits for another who runs the same one: a thread
/// of the pool that waited could be the one whose work is waited for.)
pub fn found(check: &Check) -> Arc<Checked> {
    static ALL: Mutex<BTreeMap<&str, Arc<Checked>>> = Mutex::new(BTreeMap::new());
    if let Some(found) = ALL.lock().unwrap().get(check.name) {
        return Arc::clone(found);
    }
    let found = (check.run)().unwrap_or_else(|fault| panic!("{}: {fault}", check.name));
    let found = Arc::new(found);
    ALL.lock().unwrap().insert(check.name, Arc::clone(&found));
    found
}

/// Runs one check and asks that just these rows disagree, each named by how its line begins.
pub fn disagrees_only_in(checks: &[Check], name: &str, known: &[&str]) -> Arc<Checked> {
    let check = checks.iter().find(|it| it.name == name).expect(name);
    let found = found(check);
    assert!(!found.rows.is_empty(), "{name} compares nothing");
    for row in &found.rows {
        println!(
            "{name}: {} | {:?} sd {:?} | {:?} {} | {} | {}",
            row.what,
            row.expected,
            row.sd,
            row.ours,
            row.unit,
            row.verdict.words(),
            row.note
        );
    }
    let off: Vec<&str> = found
        .rows
        .iter()
        .filter(|row| row.verdict == Verdict::Disagrees)
        .map(|row| row.what.as_str())
        .collect();
    let unknown: Vec<_> =
        off.iter().filter(|it| !known.iter().any(|k| it.starts_with(k))).collect();
    assert!(unknown.is_empty(), "{name} disagrees in {unknown:#?}");
    for it in known {
        assert!(off.iter().any(|what| what.starts_with(it)), "{name} now agrees in {it}: say so");
    }
    let explained = found.rows.iter().filter(|row| row.verdict != Verdict::Agrees);
    for row in explained {
        assert!(!row.note.is_empty(), "{name}: {} is not explained", row.what);
    }
    found
}

/// Runs one check and asks that no row disagrees.
pub fn agrees(checks: &[Check], name: &str) {
    disagrees_only_in(checks, name, &[]);
}
