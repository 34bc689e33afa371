//! From the texts of a scenario to the core's types.

use super::super::fault::{Fault, nearest};
use super::places::Places;
use super::values::{Values, share};
use super::{BatV1, BowlingV1, FitV1, InningsV1, PendulumV1, PlayerV1, ScenarioV1, Text};
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::bench::{BatReading, PICKUP_AXIS_FROM_TOP_M, PendulumReading};
use crate::measurement::person::{Handed, PersonReading, Sex, WristHold};
use crate::measurement::plan::{Bowling, FitLimits, Goal, InningsPlan, Scenario};
use crate::units::Quantity::{Angle, Force, Length, Mass, Speed, Time};

/// Full swings of a pendulum test when none are stated: common practice, no source.
const USUAL_SWINGS: u32 = 10;
/// Half-swing of a pendulum test when none is stated, rad (5°): assumption.
const USUAL_AMPLITUDE_RAD: f64 = 5.0 * std::f64::consts::PI / 180.0;
/// A wrist hold test stops here, s.
const WRIST_HOLD_LIMIT_S: f64 = 30.0;

/// Converts; the scenario is there if what it needs could be read, the faults are all there are.
pub fn to_core(
    v1: &ScenarioV1,
    places: &Places,
    strokes: &[&str],
) -> (Option<Scenario>, Vec<Fault>) {
    let mut values = Values::new(places);
    let bats: Vec<_> = v1.bats.iter().enumerate().map(|(n, it)| bat(&mut values, n, it)).collect();
    if v1.bats.is_empty() {
        values.fault("bats", "there is no bat", "add bats: [(label: \"A\", mass: \"2 lb 9 oz\")]");
    }
    let labels: Vec<String> = v1.bats.iter().enumerate().map(|(n, it)| label(n, it)).collect();
    refuse_twins(&mut values, &labels);
    let player = player(&mut values, &v1.player, &labels, &bats);
    let innings = innings(&mut values, &v1.innings, strokes);
    let asked = asked_strokes(&mut values, &v1.strokes, strokes);
    // Defaults that depend on age and sex need both; without them there is a fault already.
    let (age_y, sex) = player.as_ref().map_or((18.0, Sex::Male), |it| (it.age_y, it.sex));
    let bowling = bowling(&mut values, &v1.bowling, Bowling::usual_at(age_y));
    let fit = fit(&mut values, &v1.fit, FitLimits::usual_for(age_y, sex));
    let invented = values.choice(
        "invented",
        &v1.invented,
        &[(&["yes", "true"], true), (&["no", "false"], false)],
    );
    let scenario =
        player.zip(bats.into_iter().collect::<Option<Vec<_>>>()).map(|(player, bats)| Scenario {
            title: written(&v1.title).unwrap_or_else(|| "A fitting".to_owned()),
            invented: invented.unwrap_or(false),
            note: written(&v1.note),
            player,
            bats,
            strokes: asked
                .unwrap_or_else(|| innings.mix.iter().map(|(it, _)| it.clone()).collect()),
            innings,
            bowling,
            fit,
        });
    (scenario, values.faults)
}

fn written(text: &Option<Text>) -> Option<String> {
    text.as_ref().map(|it| it.0.trim().to_owned()).filter(|it| !it.is_empty())
}

/// The bat's label, or its letter.
fn label(n: usize, bat: &BatV1) -> String {
    let letter = u8::try_from(n).ok().filter(|it| *it < 26).map(|it| char::from(b'A' + it));
    written(&bat.label)
        .unwrap_or_else(|| letter.map_or(format!("bat {}", n + 1), |it| format!("bat {it}")))
}

fn refuse_twins(values: &mut Values, labels: &[String]) {
    for (n, label) in labels.iter().enumerate() {
        let twin = |it: &&String| it.to_lowercase() == label.to_lowercase();
        if let Some(first) = labels.iter().take(n).position(|it| twin(&it)) {
            let message = format!("{label:?} is already the label of bats.{first}");
            values.fault(&format!("bats.{n}.label"), &message, "give each bat a label of its own");
        }
    }
}

fn bat(values: &mut Values, n: usize, v1: &BatV1) -> Option<BatReading> {
    let at = |field: &str| format!("bats.{n}.{field}");
    let mass_kg = values.quantity(&at("mass"), &v1.mass, Mass);
    let mass_kg = values.needed(&at("mass"), &v1.mass, mass_kg, "\"2 lb 9 oz\"");
    values.name(&at("label"), &v1.label);
    let mut length = |field: &str, text: &Option<Text>| values.quantity(&at(field), text, Length);
    let (length_m, balance_m) = (length("length", &v1.length), length("balance", &v1.balance));
    let (width_m, edge_m) = (length("width", &v1.width), length("edge", &v1.edge));
    let (depth_m, handle_diameter_m) =
        (length("depth", &v1.depth), length("handle_diameter", &v1.handle_diameter));
    let size = values.name(&at("size"), &v1.size);
    let pendulum = pendulum(values, n, &v1.pendulum);
    Some(BatReading {
        label: label(n, v1),
        size,
        length_m,
        mass_kg: mass_kg?,
        balance_m,
        width_m,
        edge_m,
        depth_m,
        handle_diameter_m,
        pendulum,
    })
}

fn pendulum(values: &mut Values, n: usize, v1: &PendulumV1) -> Option<PendulumReading> {
    if *v1 == PendulumV1::default() {
        return None;
    }
    let at = |field: &str| format!("bats.{n}.pendulum.{field}");
    let whole = |it: f64| (1.0..=1000.0).contains(&it) && it.fract() == 0.0;
    let swings = values.number(&at("swings"), &v1.swings, whole, "a whole number of swings");
    let pivot = values.quantity(&at("pivot"), &v1.pivot, Length);
    let amplitude = values.quantity(&at("amplitude"), &v1.amplitude, Angle);
    let time = values.quantity(&at("time"), &v1.time, Time);
    let time_s = values.needed(&at("time"), &v1.time, time, "\"15.3 s\"")?;
    Some(PendulumReading {
        swings: swings.map_or(USUAL_SWINGS, |it| it as u32),
        time_s,
        pivot_from_top_m: pivot.unwrap_or(PICKUP_AXIS_FROM_TOP_M),
        amplitude_rad: amplitude.unwrap_or(USUAL_AMPLITUDE_RAD),
    })
}

fn player(
    values: &mut Values,
    v1: &PlayerV1,
    labels: &[String],
    bats: &[Option<BatReading>],
) -> Option<PersonReading> {
    let age_y = values.age("player.age", &v1.age);
    let age_y = values.needed("player.age", &v1.age, age_y, "\"13\"");
    let sexes: [(&[&str], Sex); 2] = [
        (&["female", "f", "girl", "woman"], Sex::Female),
        (&["male", "m", "boy", "man"], Sex::Male),
    ];
    let sex = values.choice("player.sex", &v1.sex, &sexes);
    let sex = values.needed("player.sex", &v1.sex, sex, "\"female\" or \"male\"");
    let stature_m = values.quantity("player.stature", &v1.stature, Length);
    let stature_m = values.needed("player.stature", &v1.stature, stature_m, "\"5 ft 3 in\"");
    let hands: [(&[&str], Handed); 2] = [
        (&["right", "r", "right-handed"], Handed::Right),
        (&["left", "l", "left-handed"], Handed::Left),
    ];
    let handed = values.choice("player.handed", &v1.handed, &hands).unwrap_or(Handed::Right);
    let mass_kg = values.quantity("player.mass", &v1.mass, Mass);
    let arm_length_m = values.quantity("player.arm_length", &v1.arm_length, Length);
    let hand_length_m = values.quantity("player.hand_length", &v1.hand_length, Length);
    let grip_top_n = values.quantity("player.grip_top", &v1.grip_top, Force);
    let grip_bottom_n = values.quantity("player.grip_bottom", &v1.grip_bottom, Force);
    let wrist_hold = wrist_hold(values, v1, labels, bats);
    Some(PersonReading {
        age_y: age_y?,
        sex: sex?,
        stature_m: stature_m?,
        handed,
        mass_kg,
        arm_length_m,
        hand_length_m,
        grip_top_n,
        grip_bottom_n,
        wrist_hold,
    })
}

/// The bat held out asks the wrist for its static moment, which needs its balance point.
fn wrist_hold(
    values: &mut Values,
    v1: &PlayerV1,
    labels: &[String],
    bats: &[Option<BatReading>],
) -> Option<WristHold> {
    const BAT: &str = "player.wrist_hold_bat";
    let time_s = values.quantity("player.wrist_hold", &v1.wrist_hold, Time)?;
    let named = written(&v1.wrist_hold_bat);
    let n = match &named {
        None => Some(0),
        Some(name) => labels.iter().position(|it| it.to_lowercase() == name.to_lowercase()),
    };
    let Some(n) = n else {
        let name = named.unwrap_or_default();
        let help = match nearest(&name, labels.iter().map(String::as_str)) {
            Some(near) => format!("did you mean {near:?}?"),
            None => format!("the bats are {}", labels.join(", ")),
        };
        values.fault(BAT, &format!("no bat is called {name:?}"), &help);
        return None;
    };
    let bat = bats.get(n)?.as_ref()?;
    let Some(balance_m) = bat.balance_m else {
        values.fault(
            "player.wrist_hold",
            &format!("the bat held, {:?}, has no balance point", bat.label),
            &format!("measure it and add bats.{n}.balance, or leave the wrist hold test out"),
        );
        return None;
    };
    Some(WristHold {
        hold_moment_n_m: bat.mass_kg * STANDARD_GRAVITY_M_S2 * (balance_m - PICKUP_AXIS_FROM_TOP_M),
        time_s,
        stopped_at_limit: time_s >= WRIST_HOLD_LIMIT_S,
    })
}

fn innings(values: &mut Values, v1: &InningsV1, strokes: &[&str]) -> InningsPlan {
    let usual = InningsPlan::default();
    let runs = |it: f64| (1.0..=1000.0).contains(&it);
    let balls = |it: f64| it > 0.0 && it <= 100.0;
    InningsPlan {
        runs: values
            .number("innings.runs", &v1.runs, runs, "a number of runs from 1 to 1000")
            .unwrap_or(usual.runs),
        mix: mix(values, &v1.mix, strokes).unwrap_or(usual.mix),
        balls_per_run: values
            .number(
                "innings.balls_per_run",
                &v1.balls_per_run,
                balls,
                "a number of balls up to 100",
            )
            .unwrap_or(usual.balls_per_run),
        faced_share: values
            .share("innings.faced_share", &v1.faced_share)
            .unwrap_or(usual.faced_share),
        between_balls_s: values
            .quantity("innings.between_balls", &v1.between_balls, Time)
            .unwrap_or(usual.between_balls_s),
        between_overs_s: values
            .quantity("innings.between_overs", &v1.between_overs, Time)
            .unwrap_or(usual.between_overs_s),
        stance_s: values.quantity("innings.stance", &v1.stance, Time).unwrap_or(usual.stance_s),
    }
}

/// "drive 50 %, pull 35 %, hook 15 %": shares in any unit, brought to a sum of one.
fn mix(values: &mut Values, text: &Option<Text>, strokes: &[&str]) -> Option<Vec<(String, f64)>> {
    const PATH: &str = "innings.mix";
    const LIKE: &str = "write it like \"drive 50 %, pull 35 %, hook 15 %\"";
    let written = values.short(PATH, text)?;
    let mut mix: Vec<(String, f64)> = Vec::new();
    for part in written.split(',').map(str::trim).filter(|it| !it.is_empty()) {
        let digits =
            part.find(|c: char| c.is_ascii_digit() || "-−.".contains(c)).unwrap_or(part.len());
        let (name, number) = part.split_at(digits);
        let name = name.trim().trim_end_matches([':', '=']).trim();
        let Some(it) = share(number).filter(|it| *it > 0.0) else {
            values.fault(PATH, &format!("{part:?} is not a stroke and its share"), LIKE);
            return None;
        };
        let name = known_stroke(values, PATH, name, strokes)?;
        if mix.iter().any(|(before, _)| *before == name) {
            values.fault(PATH, &format!("{name:?} stands in it twice"), "name each stroke once");
            return None;
        }
        mix.push((name, it));
    }
    let sum: f64 = mix.iter().map(|(_, it)| it).sum();
    let percent = written.contains('%');
    if mix.is_empty() || (percent && (sum - 1.0).abs() > 0.005 + 1e-9) {
        let message = match mix.is_empty() {
            true => "no stroke stands in it".to_owned(),
            false => format!("the shares add up to {:.1} %, not 100 %", 100.0 * sum),
        };
        values.fault(PATH, &message, LIKE);
        return None;
    }
    Some(mix.into_iter().map(|(name, it)| (name, it / sum)).collect())
}

fn known_stroke(values: &mut Values, path: &str, name: &str, strokes: &[&str]) -> Option<String> {
    let lower = name.to_lowercase();
    if strokes.contains(&lower.as_str()) {
        return Some(lower);
    }
    let help = match nearest(&lower, strokes.iter().copied()) {
        Some(near) => format!("did you mean {near:?}?"),
        None => format!("the strokes are {}", strokes.join(", ")),
    };
    values.fault(path, &format!("there is no stroke {name:?}"), &help);
    None
}

fn asked_strokes(
    values: &mut Values,
    text: &Option<Text>,
    strokes: &[&str],
) -> Option<Vec<String>> {
    let names = values.names("strokes", text)?;
    names.iter().map(|it| known_stroke(values, "strokes", it, strokes)).collect()
}

fn bowling(values: &mut Values, v1: &BowlingV1, usual: Bowling) -> Bowling {
    let speed = values.quantity("bowling.speed", &v1.speed, Speed);
    let pitch = values.quantity("bowling.pitch_length", &v1.pitch_length, Length);
    let reaction = values.quantity("bowling.reaction_time", &v1.reaction_time, Time);
    Bowling {
        speed_m_s: speed.unwrap_or(usual.speed_m_s),
        pitch_length_m: pitch.unwrap_or(usual.pitch_length_m),
        reaction_time_s: reaction.unwrap_or(usual.reaction_time_s),
    }
}

fn fit(values: &mut Values, v1: &FitV1, usual: FitLimits) -> FitLimits {
    let lightest_kg = values.quantity("fit.lightest", &v1.lightest, Mass);
    let heaviest_kg = values.quantity("fit.heaviest", &v1.heaviest, Mass);
    if let (Some(lightest), Some(heaviest)) = (lightest_kg, heaviest_kg)
        && lightest >= heaviest
    {
        values.fault(
            "fit.heaviest",
            "it is not above fit.lightest",
            "write the larger weight here",
        );
    }
    let goals: [(&[&str], Goal); 2] =
        [(&["ball speed"], Goal::BallSpeed), (&["bat speed"], Goal::BatSpeed)];
    let factor = |it: f64| (1.0..=3.0).contains(&it);
    FitLimits {
        sizes: values.names("fit.sizes", &v1.sizes).unwrap_or(usual.sizes),
        lightest_kg,
        heaviest_kg,
        goal: values.choice("fit.goal", &v1.goal, &goals).unwrap_or(usual.goal),
        share_limit: values.share("fit.share_limit", &v1.share_limit).unwrap_or(usual.share_limit),
        tie_width: values.share("fit.tie_width", &v1.tie_width).unwrap_or(usual.tie_width),
        asked_time_factor: values
            .number("fit.asked_time_factor", &v1.asked_time_factor, factor, "a number from 1 to 3")
            .unwrap_or(usual.asked_time_factor),
        ball_mass_kg: values
            .quantity("fit.ball_mass", &v1.ball_mass, Mass)
            .unwrap_or(usual.ball_mass_kg),
    }
}
