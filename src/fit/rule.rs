//! The rule: a pull and a hook late in the innings, then the most ball speed, then the lighter pickup.

use super::setting::{Setting, StrokeAtEnd};
use crate::bat::Bat;

/// What one bat is worth at the end of the innings.
#[derive(Clone, Debug, PartialEq)]
pub struct Worth {
    /// Bat.
    pub bat: Bat,
    /// Strokes, in the order of the batter's.
    pub strokes: Vec<StrokeAtEnd>,
    /// The goal over the mix, m/s.
    pub goal_m_s: f64,
    /// Slack of the demand, as a share of the time there is; negative where it fails.
    pub slack: f64,
    /// The stroke with the least slack.
    pub tightest: Option<usize>,
}

impl Worth {
    /// Judges a bat from its strokes at the end.
    pub fn new(setting: &Setting, bat: Bat, strokes: Vec<StrokeAtEnd>) -> Self {
        let goal_m_s = setting.goal_m_s(&bat, &strokes);
        let (slack, tightest) = setting.slack(&strokes);
        Self { bat, strokes, goal_m_s, slack, tightest }
    }

    /// Whether pull and hook still come off.
    pub fn passes(&self) -> bool {
        self.slack >= 0.0
    }
}

/// Slack within which two failing bats count as equally near, as a share of the time there is.
const NEAR_SLACK: f64 = 0.001;

/// The choice among bats by the rule: index of the best, if there is any bat.
///
/// Among those that pass, all within `tie_width` of the highest goal are tied and the lightest pickup
/// wins; if none passes, the one that comes nearest.
pub fn choose(worths: &[Worth], tie_width: f64) -> Option<usize> {
    if !worths.iter().any(Worth::passes) {
        let nearest = worths.iter().map(|w| w.slack).fold(f64::NEG_INFINITY, f64::max);
        return lightest(worths, |w| w.slack >= nearest - NEAR_SLACK);
    }
    lightest_tied(worths, highest_goal_m_s(worths), tie_width)
}

/// Highest goal of the bats that pass, m/s; 0 if none does.
pub fn highest_goal_m_s<'a>(worths: impl IntoIterator<Item = &'a Worth>) -> f64 {
    let passing = worths.into_iter().filter(|w| w.passes());
    passing.map(|w| w.goal_m_s).fold(0.0, f64::max)
}

/// The lightest pickup among the bats that pass and are tied with a highest goal.
pub fn lightest_tied(worths: &[Worth], highest_m_s: f64, tie_width: f64) -> Option<usize> {
    let tied = |w: &Worth| w.passes() && w.goal_m_s >= highest_m_s * (1.0 - tie_width);
    lightest(worths, tied)
}

fn lightest(worths: &[Worth], eligible: impl Fn(&Worth) -> bool) -> Option<usize> {
    let pickup = |i: &usize| worths[*i].bat.swing_moment_kg_m2();
    (0..worths.len())
        .filter(|i| eligible(&worths[*i]))
        .min_by(|a, b| pickup(a).total_cmp(&pickup(b)))
}
