//! What a coach could say of two bats in one stroke at one score.

use backlift::comparison::difference::REAL_BEYOND_SD;
use backlift::units::{Quantity, Units, spoken};

use crate::figure::{percent, plain};

/// A figure of the second bat less the first's.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Change {
    /// It.
    pub value: f64,
    /// One standard deviation of it; none while it is worked out.
    pub sd: Option<f64>,
}

impl Change {
    /// Whether it is more than its doubt.
    pub fn is_real(&self) -> bool {
        self.sd.is_some_and(|sd| self.value.abs() > REAL_BEYOND_SD * sd)
    }

    /// The bat with more of it first.
    fn ordered<'a>(&self, [first, second]: [&'a str; 2]) -> [&'a str; 2] {
        if self.value > 0.0 { [second, first] } else { [first, second] }
    }

    fn doubt(&self) -> &'static str {
        match (self.sd, self.is_real()) {
            (None, _) => "how sure that is, is being worked out",
            (_, true) => "more than the doubt",
            (_, false) => "within the doubt",
        }
    }
}

/// Each as fast as these hands can: which comes late, and which is faster at the ball. `when` is how such a sentence
/// begins: "At 50 runs the pull".
pub fn as_fast_as_they_can(
    when: &str,
    labels: [&str; 2],
    time_s: Change,
    speed_m_s: Change,
    units: Units,
) -> String {
    let [late, soon] = time_s.ordered(labels);
    let ms = plain(1e3 * time_s.value.abs(), 0, "ms");
    let first = match time_s.sd.is_none() || time_s.is_real() {
        true => {
            format!("{when} with {late} comes {ms} after that with {soon}: {}.", time_s.doubt())
        }
        false => format!("{when} comes as late with {late} as with {soon}, as far as can be told."),
    };
    let sd = speed_m_s.sd.unwrap_or(0.3);
    let gap = spoken(Quantity::Speed, speed_m_s.value.abs(), sd, units);
    let [fast, _] = speed_m_s.ordered(labels);
    let second = match speed_m_s.is_real() {
        true => format!("At the ball {fast} is {gap} faster: more than the doubt."),
        false if speed_m_s.sd.is_some() => {
            "At the ball the two are as fast, as far as can be told.".to_owned()
        }
        false => String::new(),
    };
    format!("{first} {second}").trim_end().to_owned()
}

/// Both in the same time: which takes more of the wrists.
pub fn in_the_same_time(when: &str, labels: [&str; 2], share: Change) -> String {
    let [more, less] = share.ordered(labels);
    let by = percent(share.value.abs(), 0);
    match share.sd.is_none() || share.is_real() {
        true => format!(
            "{when}, both in the same time: {more} takes {by} more of what the busier wrist has than {less}, {}.",
            share.doubt()
        ),
        false => format!(
            "{when}, both in the same time: {more} and {less} ask as much of the wrists, as far as can be told."
        ),
    }
}
