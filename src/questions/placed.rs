//! Faults and doubts of the core, put where they were written, each with its mend.

use super::Stop;
use crate::bat::laws::Limits;
use crate::bat::notes::Warning;
use crate::bat::shape_fault::ShapeFault;
use crate::bat::shaped::{ShapedBat, shaped};
use crate::bat::weigh_fault::WeighFault;
use crate::files::fault::{Fault, Faults, Source, nearest_or};
use crate::files::scenario::Places;
use crate::files::scenario::examples::Examples;
use crate::files::shape::LoadedShape;
use crate::innings::played::InningsFault;
use crate::measurement::absurd::Absurd;
use crate::measurement::person::{PersonFault, PersonReading};
use crate::player::unusual;

/// Why an innings could not be played, in its place.
pub fn innings_stop(places: &Places, fault: InningsFault) -> Stop {
    let fault = match fault {
        InningsFault::Swing(fault) => return fault.into(),
        InningsFault::Schedule(fault) => fault,
    };
    places.fault(fault.field(), &fault.to_string(), "write a value within these limits").into()
}

/// A fault of one argument, called as on the command line, pointed at.
pub fn argument_fault(flag: &str, given: &str, message: &str, help: &str) -> Stop {
    let source = Source::new(flag, given);
    Fault::of(flag, message).help(help).at(&source, 0..given.len()).into()
}

/// A figure that no player has.
pub fn player_fault(places: &Places, reading: &PersonReading, fault: &PersonFault) -> Fault {
    let part = fault.field().split('.').next().unwrap_or_default();
    let like = Examples::beside(reading).of_field(part).map_or_else(String::new, |it| {
        format!("; most of {:.0} years are near {}", reading.age_y.floor(), it.trade)
    });
    places.fault(
        &format!("player.{part}"),
        &fault.to_string(),
        &format!("check the number and its unit{like}"),
    )
}

/// Figures that few players have.
pub fn player_warnings(reading: &PersonReading, places: &Places) -> Vec<Fault> {
    unusual(reading)
        .into_iter()
        .map(|it| {
            let path = format!("player.{}", it.field);
            places.warning(&path, &it.words, "if it is right, nothing needs doing")
        })
        .collect()
}

/// The bat that its maker describes.
///
/// # Errors
/// Why it is none, each fault at its field.
pub fn described_bat(own: &LoadedShape, limits: &Limits) -> Result<ShapedBat, Faults> {
    let mend = "change it, or leave it out to have it as in the standard bat of this size";
    let fault = |it: &ShapeFault| own.places.fault(it.field(), &it.to_string(), mend);
    shaped(&own.title, &own.described, &own.size, limits)
        .map_err(|faults| Faults(faults.iter().map(fault).collect()))
}

/// Why the bat of that number could not be weighed up.
pub fn bat_fault(places: &Places, n: usize, fault: &WeighFault) -> Fault {
    places.fault(&bat_path(n, fault.field()), &fault.to_string(), &mend(fault))
}

/// What to do about a bat that could not be weighed up.
pub fn mend(fault: &WeighFault) -> String {
    match fault {
        WeighFault::UnknownSize(it) => {
            let known = it.known.iter().map(String::as_str);
            nearest_or(&it.name, known, "name one of these, or leave the size out")
        }
        WeighFault::Absurd(absurd) => absurd_mend(absurd).to_owned(),
        WeighFault::NoSizes | WeighFault::Bat(_) => {
            "weigh, balance and measure it again".to_owned()
        }
    }
}

fn absurd_mend(absurd: &Absurd) -> &'static str {
    match absurd {
        Absurd::NotANumber { .. } | Absurd::NotPositive { .. } => "read it off again",
        Absurd::Impossible { .. } => "check the number and its unit",
        Absurd::BalanceBeyondToe { .. } => {
            "measure both from the top of the handle; check the unit"
        }
        Absurd::EdgeThickerThanDepth { .. } => {
            "depth is from the face to the highest point of the back; were the two swapped?"
        }
        Absurd::PivotBelowBalance { .. } => {
            "measure both from the top of the handle, with the rods bound to the handle"
        }
        Absurd::PendulumTooFast { .. } => {
            "count full swings, out and back; were more swings counted than made, or is the time that of fewer?"
        }
        Absurd::PendulumTooSlow { .. } => {
            "count full swings, out and back; were fewer swings counted than made?"
        }
    }
}

/// What looks wrong with the bat of that number.
pub fn bat_warning(places: &Places, n: usize, warning: &Warning) -> Fault {
    let (field, help) = asked(warning);
    places.warning(&bat_path(n, field), &warning.to_string(), help)
}

/// The field a doubt is about, as in a scenario, and what to do.
pub fn asked(warning: &Warning) -> (Option<&'static str>, &'static str) {
    match warning {
        Warning::Unusual(it) => (Some(it.field), "if it is right, nothing needs doing"),
        Warning::LengthUnlikeSize { .. } => (
            Some("length"),
            "the measured length is used; the size decides what it is compared with",
        ),
        Warning::SizeGuessedFromWeight { .. } => {
            (None, "measure the length, or name the size, and the figures get surer")
        }
        Warning::UnlikeItsSize { .. } => (None, "check weight, balance point and size"),
        Warning::PendulumUnlikeSize { .. } => (
            Some("pendulum.swings"),
            "time the same number of swings once more; the figure given is used meanwhile",
        ),
    }
}

fn bat_path(n: usize, field: Option<&str>) -> String {
    field.map_or(format!("bats.{n}"), |it| format!("bats.{n}.{it}"))
}
