//! `--hold`: what the maker will not have changed.

use backlift::units::{Quantity, parse};
use backlift::workshop::carved::Held;

use crate::outcome::Stop;
use crate::placed::argument_fault;

const WHAT: &str =
    "hold edge, depth, swell or hollow, like --hold \"edge=38 mm\" or --hold \"hollow=40 %\"";

/// Reads all of them.
pub fn read(given: &[String]) -> Result<Held, Stop> {
    let mut held = Held::default();
    for argument in given {
        let fault = |message: &str| argument_fault("--hold", argument, message, WHAT);
        let (what, value) = argument.split_once('=').ok_or_else(|| fault("there is no \"=\""))?;
        let length = || {
            let read = parse(Quantity::Length, value.trim().trim_matches('"'));
            match read {
                Ok(it) if it > 0.0 => Ok(it),
                Ok(_) => Err(fault("it is not above zero")),
                Err(unit) => Err(argument_fault(
                    "--hold",
                    argument,
                    &unit.to_string(),
                    &unit.mend(Quantity::Length),
                )),
            }
        };
        match what.trim() {
            "edge" => held.edge_m = Some(length()?),
            "depth" | "spine" => held.depth_m = Some(length()?),
            "swell" => held.swell_from_toe_m = Some(length()?),
            "hollow" => {
                let share = backlift::units::share(value).filter(|it| (-1.0..=1.5).contains(it));
                held.hollow = Some(share.ok_or_else(|| fault("it is no hollowing"))?);
            }
            other => return Err(fault(&format!("{other:?} cannot be held"))),
        }
    }
    Ok(held)
}
