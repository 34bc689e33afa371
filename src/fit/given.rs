//! The weighed bats judged by the rule: which to use today.

use super::order::{FitFault, Order};
use super::rule::{Worth, choose};
use super::setting::Setting;
use super::surrogate::{Surrogate, near_times_s};
use crate::bat::laws::Verdict;
use rayon::prelude::*;

/// One weighed bat judged by the rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Label.
    pub label: String,
    /// What it is worth, simulated.
    pub worth: Worth,
    /// Whether the Laws allow it.
    pub legal: Verdict,
}

/// Swings each weighed bat at the end of the innings.
pub(super) fn judge_given(
    order: &Order<'_>,
    setting: &Setting,
    surrogate: &Surrogate,
) -> Result<Vec<Given>, FitFault> {
    let middle = surrogate.at(&surrogate.domain.middle);
    let times: Vec<f64> = middle.iter().map(|s| s.time_s).collect();
    order
        .bats
        .par_iter()
        .map(|weighed| {
            let near = near_times_s(&times, &surrogate.domain.middle, &weighed.bat);
            let strokes = setting.at_end(&weighed.bat, Some(&near))?;
            Ok(Given {
                label: weighed.reading.label.clone(),
                worth: Worth::new(setting, weighed.bat.clone(), strokes),
                legal: weighed.law.verdict,
            })
        })
        .collect()
}

/// The best of the weighed bats that the Laws do not forbid.
pub(super) fn best_of(given: &[Given], tie_width: f64) -> Option<usize> {
    let allowed: Vec<usize> = (0..given.len()).filter(|&i| given[i].legal != Verdict::No).collect();
    let worths: Vec<Worth> = allowed.iter().map(|&i| given[i].worth.clone()).collect();
    choose(&worths, tie_width).map(|i| allowed[i])
}
