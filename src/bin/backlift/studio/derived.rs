//! What follows from the document at once: the player built, the bats weighed, faults and doubts.

use std::sync::Arc;

use backlift::bat::figures::WeighedBat;
use backlift::files::fault::{Fault, Source};
use backlift::files::scenario::{ScenarioV1, load_text};
use backlift::questions::loaded::{Loaded, built};

use super::answers::{Whose, key_of, told};
use super::paper::{OnDesk, Paper};
use crate::outcome::Stop;

#[derive(Clone, Default)]
pub struct Derived {
    /// Player and bats, as of the last text without a fault.
    pub loaded: Option<Arc<Loaded>>,
    pub faults: Vec<Fault>,
    pub warnings: Vec<Fault>,
    pub whose: Whose,
    /// Whose hands and which bats the last text without a fault names; `whose` is of the text now.
    understood: Whose,
    /// For each bat, what all that is computed of it in this player's hands hangs on.
    pub bat_keys: Vec<u64>,
    /// For each bat, what hangs on its bench alone.
    pub bench_keys: Vec<u64>,
    /// What the times hang on in which strokes are asked for.
    pub player_key: u64,
    /// The same for the fitting.
    pub fit_key: u64,
}

impl Derived {
    /// Of a document; where it is at fault, what was there before stays on the screen, as long as it is of the same bats.
    pub fn of(document: &Paper<ScenarioV1>, before: &Self) -> Self {
        let source = Source::new(&document.name(), document.text());
        let read = load_text(source, &document.folder(), &[]).map_err(Stop::from).and_then(built);
        match read {
            Ok((loaded, warnings)) => {
                let scenario = &loaded.scenario;
                let swung = key_of(&loaded.strokes);
                let who = (&scenario.player, &scenario.calibration, &scenario.innings, swung);
                let asked = (&scenario.bowling, &scenario.fit);
                let known = (scenario.uses, &scenario.seen);
                let whose = Whose::of(document, Some(&loaded));
                Self {
                    bat_keys: scenario.bats.iter().map(|it| key_of(&(who, asked, it))).collect(),
                    bench_keys: loaded.bats.iter().map(bench_key).collect(),
                    player_key: key_of(&(who, asked)),
                    fit_key: key_of(&(who, asked, &scenario.bats, scenario.invented, known)),
                    whose: whose.clone(),
                    understood: whose,
                    loaded: Some(Arc::new(loaded)),
                    faults: Vec::new(),
                    warnings,
                }
            }
            Err(stop) => {
                let whose = Whose::of(document, before.loaded.as_deref());
                let before = Some(before.clone()).filter(|it| it.understood.may_stand_for(&whose));
                let (faults, warnings) = (told(stop), Vec::new());
                Self { faults, warnings, whose, ..before.unwrap_or_default() }
            }
        }
    }

    /// Whether what is shown is of an earlier text.
    pub fn is_stale(&self) -> bool {
        !self.faults.is_empty()
    }

    /// Faults and doubts about the field at a path.
    pub fn about<'a>(&'a self, path: &'a str) -> impl Iterator<Item = &'a Fault> {
        self.faults.iter().chain(&self.warnings).filter(move |it| it.field.as_deref() == Some(path))
    }
}

fn bench_key(it: &WeighedBat) -> u64 {
    key_of(&(it.mass_kg, it.balance_m, it.swing_moment_kg_m2, &it.size))
}

/// What a fault says, without the field's path.
pub fn words(fault: &Fault) -> &str {
    let said =
        fault.field.as_deref().and_then(|it| fault.message.strip_prefix(it)?.strip_prefix(": "));
    said.unwrap_or(&fault.message)
}
