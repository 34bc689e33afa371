//! What every command starts from: the scenario taken through the bench and the tape measure, with
//! each fault of the core put where it was written.

use backlift::bat::figures::{WeighFault, WeighedBat, weigh};
use backlift::bat::laws::Limits;
use backlift::bat::notes::Warning;
use backlift::bat::sizes::Size;
use backlift::files::assets::{AssetFault, limits, sizes};
use backlift::files::fault::{Fault, Faults, Source, nearest};
use backlift::files::scenario;
use backlift::files::scenario::Places;
use backlift::files::stroke::{StrokeFault, built_in};
use backlift::innings::played::InningsFault;
use backlift::innings::schedule::ScheduleFault;
use backlift::measurement::absurd::Absurd;
use backlift::measurement::person::{PersonFault, PersonReading};
use backlift::measurement::plan::Scenario;
use backlift::player::{Player, player, unusual};
use backlift::stroke::Stroke;
use backlift::swing::player_stroke::SwingFault;

use crate::given::ScenarioArgs;
use crate::outcome::{Stop, warn};

/// A scenario with its player built and its bats weighed.
pub struct Loaded {
    /// As it was given.
    pub scenario: Scenario,
    /// Trade sizes.
    pub sizes: Vec<Size>,
    /// Size limits of the Laws.
    pub laws: Limits,
    /// Every stroke there is: drive, pull, hook.
    pub strokes: Vec<Stroke>,
    /// The bats, in the scenario's order.
    pub bats: Vec<WeighedBat>,
    /// The player.
    pub player: Player,
    places: Places,
}

/// Loads what a command was given. All faults come together; what is merely odd is shown on standard
/// error, and the work goes on.
pub fn load(given: &ScenarioArgs) -> Result<Loaded, Stop> {
    let scenario::Loaded { scenario, places, .. } = given.load()?;
    let (sizes, laws) = (sizes()?, limits()?);
    let (mut faults, mut warnings) = (Vec::new(), Vec::new());
    match scenario.player.faults().as_slice() {
        [] => warnings.extend(player_warnings(&scenario.player, &places)),
        all => faults.extend(all.iter().map(|it| player_fault(&places, it))),
    }
    let mut bats = Vec::with_capacity(scenario.bats.len());
    for (n, reading) in scenario.bats.iter().enumerate() {
        match weigh(reading, &sizes, &laws) {
            Ok(bat) => {
                warnings.extend(bat.warnings.iter().map(|it| bat_warning(&places, n, it)));
                bats.push(bat);
            }
            Err(found) => faults.extend(found.iter().map(|it| bat_fault(&places, n, it))),
        }
    }
    if !faults.is_empty() {
        return Err(Stop::WrongInput(Faults(faults)));
    }
    let player = player(&scenario.player).map_err(|it| player_fault(&places, &it))?;
    warn(&warnings);
    Ok(Loaded { scenario, sizes, laws, strokes: built_in()?, bats, player, places })
}

impl Loaded {
    /// The bat that `--bat` names by its label or its number from 0; the first if none is named.
    pub fn bat(&self, named: Option<&str>) -> Result<usize, Stop> {
        let Some(name) = named else { return Ok(0) };
        let wanted = name.trim().to_lowercase();
        let labels = || self.bats.iter().map(|it| it.reading.label.as_str());
        let by_number = || wanted.parse::<usize>().ok().filter(|it| *it < self.bats.len());
        labels().position(|it| it.to_lowercase() == wanted).or_else(by_number).ok_or_else(|| {
            let help = match nearest(&wanted, labels()) {
                Some(near) => format!("did you mean {near:?}?"),
                None => {
                    let numbered: Vec<String> =
                        labels().enumerate().map(|(n, it)| format!("{n} {it:?}")).collect();
                    format!("the bats are {}", numbered.join(", "))
                }
            };
            argument_fault("--bat", name, &format!("no bat is called {name:?}"), &help)
        })
    }

    /// The stroke of that name.
    pub fn stroke(&self, named: &str) -> Result<usize, Stop> {
        let wanted = named.trim().to_lowercase();
        self.strokes.iter().position(|it| it.name.to_lowercase() == wanted).ok_or_else(|| {
            let names = || self.strokes.iter().map(|it| it.name.as_str());
            let help = match nearest(&wanted, names()) {
                Some(near) => format!("did you mean {near:?}?"),
                None => format!("the strokes are {}", names().collect::<Vec<_>>().join(", ")),
            };
            argument_fault("--stroke", named, &format!("there is no stroke {named:?}"), &help)
        })
    }

    /// Why an innings could not be played, in its place.
    pub fn innings_stop(&self, fault: InningsFault) -> Stop {
        let words = fault.to_string();
        let (path, message) = match (&fault, words.split_once(": ")) {
            (InningsFault::Swing(swing), _) => return swing.clone().into(),
            (InningsFault::Schedule(ScheduleFault::OutOfRange { field, .. }), Some((_, said))) => {
                (scenario_path(field), said)
            }
            _ => ("innings.mix", words.as_str()),
        };
        self.places.fault(path, message, "write a value within these limits").into()
    }
}

/// The scenario's own name of a field of the schedule.
fn scenario_path(field: &str) -> &'static str {
    match field {
        "innings.runs" => "innings.runs",
        "innings.balls_per_run" => "innings.balls_per_run",
        "innings.strike" => "innings.faced_share",
        "innings.ball_interval" => "innings.between_balls",
        "innings.over_break" => "innings.between_overs",
        "innings.mix" => "innings.mix",
        _ => "innings",
    }
}

/// A fault of one argument of the command line, pointed at.
pub fn argument_fault(flag: &str, given: &str, message: &str, help: &str) -> Stop {
    let source = Source::new(flag, given);
    Fault::new(format!("{flag}: {message}")).help(help).at(&source, 0..given.len()).into()
}

fn player_fault(places: &Places, fault: &PersonFault) -> Fault {
    let (field, words) = (fault.field(), fault.to_string());
    let part = field.split('.').next().unwrap_or(field);
    let message =
        words.strip_prefix(field).map_or(words.as_str(), |it| it.trim_start_matches(": "));
    places.fault(&format!("player.{part}"), message, "check the number and its unit")
}

fn player_warnings(reading: &PersonReading, places: &Places) -> Vec<Fault> {
    unusual(reading)
        .into_iter()
        .map(|it| {
            let path = format!("player.{}", it.field);
            places.warning(&path, &it.words, "if it is right, nothing needs doing")
        })
        .collect()
}

fn bat_fault(places: &Places, n: usize, fault: &WeighFault) -> Fault {
    let help = match fault {
        WeighFault::UnknownSize { name, known } => {
            match nearest(name, known.iter().map(String::as_str)) {
                Some(near) => format!("did you mean {near:?}?"),
                None => "name one of these, or leave the size out".to_owned(),
            }
        }
        WeighFault::Absurd(absurd) => mend(absurd).to_owned(),
        WeighFault::NoSizes | WeighFault::Bat(_) => {
            "weigh, balance and measure it again".to_owned()
        }
    };
    places.fault(&bat_path(n, fault.field()), &fault.to_string(), &help)
}

fn mend(absurd: &Absurd) -> &'static str {
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

fn bat_warning(places: &Places, n: usize, warning: &Warning) -> Fault {
    let (field, help) = match warning {
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
    };
    places.warning(&bat_path(n, field), &warning.to_string(), help)
}

fn bat_path(n: usize, field: Option<&str>) -> String {
    field.map_or(format!("bats.{n}"), |it| format!("bats.{n}.{it}"))
}

impl From<AssetFault> for Stop {
    fn from(fault: AssetFault) -> Self {
        Self::OurMistake(fault.to_string())
    }
}

impl From<StrokeFault> for Stop {
    fn from(fault: StrokeFault) -> Self {
        Self::OurMistake(fault.to_string())
    }
}

/// A player who cannot swing the bat is an answer, not a mistake in what was given.
impl From<SwingFault> for Stop {
    fn from(fault: SwingFault) -> Self {
        let help = match fault {
            SwingFault::NoControlledSwing { .. } => "try a lighter bat",
            SwingFault::Path { .. } => {
                "the hands cannot stay on the handle: check stature, arm_length and hand_length"
            }
            SwingFault::Chain(_) => return Self::OurMistake(fault.to_string()),
        };
        Self::NoAnswer(Fault::new(fault.to_string()).help(help))
    }
}
