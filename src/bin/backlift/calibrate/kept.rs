//! Where what was found is kept.

use std::path::PathBuf;

use backlift::files::document::Document as _;
use backlift::files::fault::Fault;
use backlift::files::save::{check_new_file, new_file};
use backlift::files::scenario::{over_unchanged, with_calibration};
use backlift::questions::calibrated::Found;
use backlift::questions::loaded::Loaded;

use crate::given::ScenarioArgs;
use crate::outcome::Stop;

/// A file to write, or none.
pub enum Place {
    Nowhere,
    New(PathBuf),
    Over(PathBuf),
}

impl Place {
    /// What the arguments ask for. A place that cannot be written is refused before the work begins.
    pub fn of(out: Option<PathBuf>, keep: bool, given: &ScenarioArgs) -> Result<Self, Fault> {
        match (out, &given.scenario) {
            (Some(out), _) => {
                check_new_file(&out)?;
                Ok(Self::New(out))
            }
            (None, Some(scenario)) if keep => Ok(Self::Over(scenario.clone())),
            _ => Ok(Self::Nowhere),
        }
    }
}

/// Writes, and says so; or says how to.
pub fn keep(
    place: Place,
    loaded: &Loaded,
    given: &ScenarioArgs,
    found: &Found,
) -> Result<String, Stop> {
    // With values put over it the text is written anew; without, it stays as it was, notes and all.
    let text = match given.set.is_empty() {
        true => loaded.places.source().text().to_owned(),
        false => given.read()?.fields.to_ron()?,
    };
    let text = with_calibration(&text, &found.kept)
        .ok_or_else(|| Stop::OurMistake("the scenario has no player".to_owned()))?;
    let path = match place {
        Place::Nowhere => {
            return Ok("Nothing was written: keep it with --out FILE, or with --keep\n".to_owned());
        }
        Place::New(path) => {
            new_file(&path, text.as_bytes())?;
            path
        }
        Place::Over(path) => {
            over_unchanged(&path, loaded.places.source().text(), &text)?;
            path
        }
    };
    Ok(format!("Wrote {}\n", path.display()))
}
