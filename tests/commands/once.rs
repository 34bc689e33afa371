//! Runs that more than one fact looks at: each is made once.

use std::collections::BTreeMap;
use std::path::PathBuf;
use std::sync::{Arc, Mutex, OnceLock};

use serde_json::Value;

use super::{backlift, bats};

/// What a command said, and the folder in which it ran.
pub struct Ran {
    pub said: String,
    pub folder: PathBuf,
}

impl Ran {
    /// What it said with `--json`.
    pub fn figures(&self) -> Value {
        serde_json::from_str(&self.said).unwrap()
    }

    pub fn file(&self, name: &str) -> PathBuf {
        self.folder.join(name)
    }
}

/// Runs a command in a folder of its own, with nothing in it but a card at `fitting/card.ron`; the next fact that asks
/// for the same looks at what is there, and writes nothing into it.
pub fn ran(arguments: &[impl AsRef<str>]) -> Arc<Ran> {
    type Runs = Mutex<BTreeMap<Vec<String>, Arc<OnceLock<Arc<Ran>>>>>;
    static RUNS: Runs = Mutex::new(BTreeMap::new());
    let key: Vec<String> = arguments.iter().map(|it| it.as_ref().to_owned()).collect();
    let run = Arc::clone(RUNS.lock().unwrap().entry(key.clone()).or_default());
    Arc::clone(run.get_or_init(|| Arc::new(run_now(&key))))
}

fn run_now(arguments: &[String]) -> Ran {
    // Nobody knows which fact is the last to look at it: it goes with cargo's own folder for tests.
    let folder = tempfile::tempdir_in(env!("CARGO_TARGET_TMPDIR")).unwrap().keep();
    std::fs::create_dir(folder.join("fitting")).unwrap();
    std::fs::write(folder.join("fitting/card.ron"), bats::CARD).unwrap();
    let run = backlift().current_dir(&folder).args(arguments).assert().success();
    Ran { said: String::from_utf8(run.get_output().stdout.clone()).unwrap(), folder }
}
