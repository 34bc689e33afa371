//! From the texts of a scenario to the core's types.

mod bats;
mod calibration;
mod innings;
mod player;
mod seen;
mod strokes;

use std::path::Path;

use super::super::document::values::{
    Values, choice, names, number, whole_number, within, yes_or_no,
};
use super::{BowlingV1, FitV1, OrderV1, ScenarioV1, Text, WishV1};
use crate::bat::handle::HandleShape;
use crate::card::CardFault;
use crate::card::order::{self, MOST_GRIPS, Order, Wish};
use crate::files::stroke::built_in_names;
use crate::measurement::person::Sex;
use crate::measurement::plan::{Bowling, FitLimits, Goal, Middle, Scenario};
use crate::stroke::Stroke;
use crate::units::Quantity::{Length, Mass, Speed, Time};

/// What a scenario's texts say.
pub struct Converted {
    pub scenario: Scenario,
    /// None where nothing is said of it.
    pub order: Option<Order>,
    /// The user's own strokes that it names.
    pub own_strokes: Vec<Stroke>,
}

/// Converts what could be read. Files that the scenario names are looked for in `folder`.
pub fn to_core(v1: &ScenarioV1, folder: &Path, values: &mut Values) -> Option<Converted> {
    let built_in = &built_in_names()[..];
    if v1.bats.len() > MOST_BATS {
        let message = format!("there are {} bats", v1.bats.len());
        values.fault("bats", &message, &format!("leave at most {MOST_BATS}"));
        return None;
    }
    values.short("title", &v1.title);
    let readings: Vec<_> =
        v1.bats.iter().enumerate().map(|(n, it)| bats::bat(values, n, it)).collect();
    if v1.bats.is_empty() {
        values.fault("bats", "there is no bat", "add bats: [(label: \"A\", mass: \"2 lb 9 oz\")]");
    }
    let labels: Vec<String> =
        v1.bats.iter().enumerate().map(|(n, it)| bats::label(n, it)).collect();
    bats::refuse_twins(values, &labels);
    let player = player::player(values, &v1.player, &labels, &readings);
    let calibration = calibration::calibration(values, &v1.calibration);
    let mut own_strokes = Vec::new();
    let chosen = strokes::chosen(values, &v1.strokes, folder, built_in, &mut own_strokes);
    // Without it there is a fault already; what is wrong besides is judged by all there are.
    let strokes = chosen.unwrap_or_else(|| built_in.iter().map(|it| (*it).to_owned()).collect());
    let swung: Vec<&str> = strokes.iter().map(String::as_str).collect();
    let plan = innings::innings(values, &v1.innings, &swung, built_in);
    // Defaults that depend on age and sex need both; without them there is a fault already.
    let (age_y, sex) = player.as_ref().map_or((18.0, Sex::Male), |it| (it.age_y, it.sex));
    let bowling = bowling(values, &v1.bowling, Bowling::usual_at(age_y));
    let fit = fit(values, &v1.fit, FitLimits::usual_for(age_y, sex));
    let uses = seen::uses(values, &v1.uses, &labels);
    let seen = seen::seen(values, &v1.seen, &labels, &swung, uses);
    let order = order(values, &v1.order);
    let invented = values.read("invented", &v1.invented, yes_or_no);
    let bats = readings.into_iter().collect::<Option<Vec<_>>>();
    let scenario = Scenario {
        title: written(&v1.title).unwrap_or_else(|| "A fitting".to_owned()),
        invented: invented.unwrap_or(false),
        note: written(&v1.note),
        player: player?,
        calibration,
        bats: bats?,
        strokes,
        innings: plan,
        bowling,
        uses,
        seen,
        fit,
    };
    Some(Converted { scenario, order, own_strokes })
}

fn written(text: &Option<Text>) -> Option<String> {
    text.as_ref().map(|it| it.0.trim().to_owned()).filter(|it| !it.is_empty())
}

/// Slowest and fastest ball out of a hand, m/s: assumption, wide on purpose.
const SPEED_M_S: [f64; 2] = [5.0, 50.0];
/// Shortest and longest pitch, stumps to stumps, m: assumption, wide on purpose.
const PITCH_M: [f64; 2] = [8.0, 25.0];
/// Shortest and longest time to read the ball, s: assumption, wide on purpose.
const REACTION_S: [f64; 2] = [0.05, 1.0];

/// Lightest and heaviest ball that is played with, from a soft one to a wet one, kg: assumption, wide on purpose.
const BALL_KG: [f64; 2] = [0.05, 0.25];
/// More bats than anybody weighs up.
const MOST_BATS: usize = 100;

fn bowling(values: &mut Values, v1: &BowlingV1, usual: Bowling) -> Bowling {
    let speed = values.read("bowling.speed", &v1.speed, within(Speed, SPEED_M_S, "m/s"));
    let pitch = within(Length, PITCH_M, "m");
    let pitch = values.read("bowling.pitch_length", &v1.pitch_length, pitch);
    let reaction = within(Time, REACTION_S, "s");
    let reaction = values.read("bowling.reaction_time", &v1.reaction_time, reaction);
    let nine_in_ten_m_s = nine_in_ten(values, v1);
    let middle_m_s = nine_in_ten_m_s.map(|[slow, quick]| 0.5 * (slow + quick));
    Bowling {
        speed_m_s: speed.or(middle_m_s).unwrap_or(usual.speed_m_s),
        nine_in_ten_m_s,
        pitch_length_m: pitch.unwrap_or(usual.pitch_length_m),
        reaction_time_s: reaction.unwrap_or(usual.reaction_time_s),
    }
}

/// "85 to 105 km/h": the slowest and the quickest of nine balls in ten.
fn nine_in_ten(values: &mut Values, v1: &BowlingV1) -> Option<[f64; 2]> {
    const PATH: &str = "bowling.nine_in_ten";
    let written = values.short(PATH, &v1.nine_in_ten)?.to_owned();
    let like = "write it like \"85 to 105 km/h\"";
    let Some((slow, quick)) = written.split_once(" to ").or_else(|| written.split_once('–'))
    else {
        values.fault(PATH, &format!("{written:?} is not a range of speeds"), like);
        return None;
    };
    let unit = quick.trim_start_matches(|c: char| c.is_ascii_digit() || c == '.' || c == ' ');
    let bare = slow.trim().chars().all(|c| c.is_ascii_digit() || c == '.');
    let slow = if bare { format!("{} {unit}", slow.trim()) } else { slow.to_owned() };
    let mut speed = |text: &str| values.quantity(PATH, &Some(Text(text.trim().to_owned())), Speed);
    let (slow, quick) = (speed(&slow)?, speed(quick)?);
    let [low, high] = SPEED_M_S;
    if low <= slow && slow < quick && quick <= high {
        return Some([slow, quick]);
    }
    values.fault(PATH, "the slower speed must stand first, both between 5 and 50 m/s", like);
    None
}

/// Middles by name.
const MIDDLES: [(&[&str], Middle); 3] =
    [(&["high"], Middle::High), (&["usual"], Middle::Usual), (&["low"], Middle::Low)];

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
    let factor = number(|it| (1.0..=3.0).contains(&it), "a number from 1 to 3");
    FitLimits {
        sizes: values.read("fit.sizes", &v1.sizes, names).unwrap_or(usual.sizes),
        lightest_kg,
        heaviest_kg,
        goal: values.read("fit.goal", &v1.goal, choice(&goals)).unwrap_or(usual.goal),
        middle: values.read("fit.middle", &v1.middle, choice(&MIDDLES)),
        beyond_usual: values
            .read("fit.beyond_usual", &v1.beyond_usual, yes_or_no)
            .unwrap_or(usual.beyond_usual),
        asked_time_factor: values
            .read("fit.asked_time_factor", &v1.asked_time_factor, factor)
            .unwrap_or(usual.asked_time_factor),
        ball_mass_kg: values
            .read("fit.ball_mass", &v1.ball_mass, within(Mass, BALL_KG, "kg"))
            .unwrap_or(usual.ball_mass_kg),
    }
}

/// The order; none where nothing is said of it.
fn order(values: &mut Values, v1: &OrderV1) -> Option<Order> {
    let number =
        line(values, "order.number", &v1.number, order::number, "like \"17\", and no name");
    Order { number, wish: wish(values, &v1.wish) }.said()
}

fn wish(values: &mut Values, v1: &WishV1) -> Wish {
    let shapes: [(&[&str], HandleShape); 3] = [
        (&["oval"], HandleShape::Oval),
        (&["round"], HandleShape::Round),
        (&["semi-oval", "semi oval", "semioval"], HandleShape::SemiOval),
    ];
    let grips = whole_number([0, MOST_GRIPS], "a whole number from 0 to 4");
    let grips = values.read("order.wish.grips", &v1.grips, grips);
    Wish {
        middle: values.read("order.wish.middle", &v1.middle, choice(&MIDDLES)),
        handle_shape: values.read("order.wish.handle", &v1.handle, choice(&shapes)),
        grips,
        note: line(
            values,
            "order.wish.note",
            &v1.note,
            order::note,
            "and leave the rest for the bench",
        ),
    }
}

/// One line of text, or a fault with its mend.
fn line(
    values: &mut Values,
    path: &str,
    text: &Option<Text>,
    of: impl Fn(&str) -> Result<Option<String>, CardFault>,
    like: &str,
) -> Option<String> {
    match of(&text.as_ref()?.0) {
        Ok(line) => line,
        Err(fault) => {
            values.fault(path, &fault.to_string(), &format!("write fewer letters, {like}"));
            None
        }
    }
}
