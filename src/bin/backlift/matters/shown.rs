//! What is shown of a study.

use backlift::sensitivity::advice::Weight;
use backlift::sensitivity::choosing::Choosing;
use backlift::sensitivity::figure::Figure;
use backlift::sensitivity::input::Input;
use backlift::sensitivity::spread::{Moved, Standing};
use backlift::sensitivity::study::{Studied, Study};
use backlift::sensitivity::terms::Terms;
use backlift::units::{Quantity, Units, decimals, spoken};

use crate::figure::{listed, number, percent};

/// Inputs out of reach that the sentence names.
const MOST_NAMED: usize = 3;

/// A study with the names of its bats.
pub struct Shown {
    pub study: Study,
    pub bat: String,
    pub other: Option<String>,
    /// Score at the end of the innings.
    pub runs: f64,
    /// The player is a junior: nothing is said of a fastest ball.
    pub junior: bool,
    /// What each term of the model does to which of the two bats is the better; none where it was not asked.
    pub terms: Option<Terms>,
    /// What is gained by choosing among many paths, by stroke; empty where it was not asked.
    pub choosing: Vec<Choosing>,
}

impl Shown {
    /// The figures that are told.
    pub fn figures(&self) -> impl Iterator<Item = &Studied> {
        let untold = |it: &&Studied| self.junior && it.figure == Figure::FastestBall;
        self.study.figures.iter().filter(move |it| !untold(it))
    }

    /// Places of the inputs of one standing, the most telling first.
    pub fn standing(&self, standing: Standing) -> Vec<usize> {
        let is = |it: &usize| self.input(*it).is_some_and(|it| it.standing == standing);
        self.study.by_weight().into_iter().filter(is).collect()
    }

    /// An input by its place.
    pub fn input(&self, place: usize) -> Option<&Moved> {
        self.study.inputs.get(place)
    }

    /// Names of the inputs of one standing that matter so much.
    pub fn names(&self, standing: Standing, weight: Weight) -> Vec<String> {
        let matters = |it: &usize| self.study.weight(*it) == weight;
        let places = self.standing(standing).into_iter().filter(matters);
        places.filter_map(|it| Some(name(self.input(it)?))).collect()
    }

    /// Share of the doubt of the difference between the bats that an input carries, %; none where it is not studied.
    pub fn share_of_bats(&self, input: Option<Input>) -> Option<String> {
        let place = self.study.inputs.iter().position(|it| Some(it.input) == input)?;
        let bats = self.study.figures.iter().find(|it| it.figure == Figure::LighterBat)?;
        let total = bats.divided.indices.get(place)?.total.value;
        Some(number(100.0 * total.clamp(0.0, 1.0), 0))
    }

    /// What a coach could say aloud.
    pub fn sentence(&self) -> String {
        let careful = self.names(Standing::Measured, Weight::Much);
        let missing = self.names(Standing::Measurable, Weight::Much);
        let beyond = self.names(Standing::OutOfReach, Weight::Much);
        let mut parts = Vec::new();
        if !missing.is_empty() {
            parts.push(format!("Find out first: {}", listed(&missing)));
        }
        if !careful.is_empty() {
            parts.push(format!("measure carefully: {}", listed(&careful)));
        }
        if parts.is_empty() {
            parts.push("Nothing that can be measured matters much any more".to_owned());
        }
        if !beyond.is_empty() {
            let most = &beyond[..beyond.len().min(MOST_NAMED)];
            parts.push(format!("the doubt that stays is mostly {}", listed(most)));
        }
        let mut sentence = parts.join("; ");
        if let Some(first) = sentence.get_mut(0..1) {
            first.make_ascii_uppercase();
        }
        sentence
    }
}

/// An input as it is called here: the swing moment of a bat that was not swung is no pendulum time.
pub fn name(it: &Moved) -> String {
    match (it.input, it.standing) {
        (Input::SwingMoment, Standing::Measurable) => "pendulum test".to_owned(),
        (input, _) => input.words().to_owned(),
    }
}

/// How far it was moved: one standard deviation.
pub fn spread(it: &Moved) -> String {
    if it.input == Input::LastingFatigue {
        return "any".to_owned();
    }
    let digits = if it.relative_sd < 0.0995 { 1 } else { 0 };
    format!("±\u{2009}{}", percent(it.relative_sd, digits))
}

/// A figure's best value and its doubt.
pub fn doubted(it: &Studied, units: Units) -> String {
    let (value, sd) = (it.best, it.divided.sd);
    // One digit more than the doubt allows, so that two doubts can be compared.
    let of = |quantity| {
        let doubt = spoken(quantity, sd, 0.3 * sd, units);
        let with = spoken(quantity, value, 0.3 * sd, units);
        let number = with.split('\u{2009}').next().unwrap_or_default().to_owned();
        format!("{number} ± {doubt}")
    };
    match it.figure {
        Figure::FreshSpeed | Figure::LateSpeed | Figure::FastestBall | Figure::LighterBat => {
            of(Quantity::Speed)
        }
        Figure::TimeInHand => of(Quantity::Time),
        Figure::WristShare | Figure::GripShare => {
            let digits = decimals(100.0 * sd, 0);
            format!("{} ± {}", number(100.0 * value, digits), percent(sd, digits))
        }
    }
}
