//! Facts about the stage `questions`: what command line and window ask can be asked here, and is the same.

mod answers;
mod orders;
mod refusals;

use std::ops::ControlFlow;
use std::path::Path;
use std::sync::OnceLock;

use assert_cmd::Command;
use backlift::files::scenario::load;
use backlift::questions::Progress;
use backlift::questions::loaded::{Loaded, built};
use serde_json::Value;

/// The demo with values put over it.
fn demo(set: &[&str]) -> Loaded {
    let set: Vec<String> = set.iter().map(|it| (*it).to_owned()).collect();
    built(load(None, &set).unwrap()).unwrap().0
}

/// The demo as it is.
fn junior() -> &'static Loaded {
    static JUNIOR: OnceLock<Loaded> = OnceLock::new();
    JUNIOR.get_or_init(|| demo(&[]))
}

/// Hears nothing and lets the work go on.
fn quietly(_: &str, _: f64) -> ControlFlow<()> {
    ControlFlow::Continue(())
}

/// What the command line prints of the same question.
fn printed(arguments: &[&str]) -> Value {
    let mut command = Command::cargo_bin("backlift").unwrap();
    command.current_dir(Path::new(env!("CARGO_MANIFEST_DIR"))).args(arguments).arg("--json");
    serde_json::from_slice(&command.output().unwrap().stdout).unwrap()
}

/// Equal to as many digits as JSON has.
fn same(printed: &Value, asked: f64) {
    let printed = printed.as_f64().unwrap();
    assert!((printed - asked).abs() <= 1e-11 * asked.abs(), "{printed} printed, {asked} asked");
}

/// Stops the work as soon as it says that it does this.
fn until(doing: &'static str) -> impl Progress {
    move |now: &str, _: f64| match now == doing {
        true => ControlFlow::Break(()),
        false => ControlFlow::Continue(()),
    }
}
