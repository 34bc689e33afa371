//! `--set PATH=VALUE`: one field of a scenario from the command line.

use super::super::fault::{Fault, Source, nearest_or_all};
use super::places::Places;
use super::{BatV1, ScenarioV1, Text};

/// Puts one argument over the scenario; `places` learns where the field now stands.
pub fn set(scenario: &mut ScenarioV1, places: &mut Places, argument: &str) -> Result<(), Fault> {
    let source = Source::new("--set", argument);
    let whole = 0..argument.len();
    let Some((path, value)) = argument.split_once('=') else {
        return Err(Fault::new(format!("--set {argument}: there is no \"=\""))
            .at(&source, whole)
            .help("write it as PATH=VALUE, like --set player.age=13"));
    };
    let value_at = path.len() + 1;
    let path = path.trim();
    let value = value.trim().trim_matches('"').trim();
    let steps: Vec<&str> = path.split('.').collect();
    if let ["bats", n, ..] = *steps {
        place_for_bat(scenario, n)
            .map_err(|help| not_a_path(&source, argument, n, "bat").help(help))?;
    }
    if let Some(text) = scenario.at(&steps) {
        *text = Some(Text(value.to_owned()));
        places.set(path, source, value_at);
        return Ok(());
    }
    Err(unknown(&source, argument, &steps))
}

/// Makes room for one more bat, so that `bats.N` may be the first after the last.
fn place_for_bat(scenario: &mut ScenarioV1, n: &str) -> Result<(), String> {
    let bats = scenario.bats.len();
    match n.parse::<usize>() {
        Ok(n) if n < bats => Ok(()),
        Ok(n) if n == bats => {
            scenario.bats.push(BatV1::default());
            Ok(())
        }
        Ok(_) => Err(format!(
            "there are {bats} bats here, counted from 0; the next new one is bats.{bats}"
        )),
        Err(_) => {
            Err(format!("bats are counted from 0: bats.0 to bats.{}", bats.saturating_sub(1)))
        }
    }
}

fn not_a_path(source: &Source, argument: &str, step: &str, what: &str) -> Fault {
    let start = argument.find(step).unwrap_or(0);
    Fault::new(format!("--set {argument}: there is no {what} \"{step}\""))
        .at(source, start..start + step.len())
}

/// Finds the first step that leads nowhere, and the name nearest to it.
fn unknown(source: &Source, argument: &str, steps: &[&str]) -> Fault {
    for (n, step) in steps.iter().enumerate() {
        let before: Vec<&str> = steps.iter().copied().take(n).collect();
        let Some(names) = ScenarioV1::names_under(&before) else { continue };
        if !names.contains(step) {
            return not_a_path(source, argument, step, "field").help(nearest_or_all(step, names));
        }
    }
    let help = match ScenarioV1::names_under(steps) {
        Some(names) => format!("go on with one of {}", names.join(", ")),
        None if steps == ["bats"] => {
            "name one bat and one field of it, like bats.0.mass".to_owned()
        }
        None => "there is nothing below a single field; leave off what follows it".to_owned(),
    };
    Fault::new(format!("--set {argument}: this is not a single field"))
        .at(source, 0..argument.find('=').unwrap_or(argument.len()))
        .help(help)
}
