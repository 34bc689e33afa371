//! The weighed bats judged by the rule: which to use today.

use super::order::{FitFault, Order};
use super::rule::{Worth, choose};
use super::setting::Setting;
use super::surrogate::{Surrogate, near_middle};
use crate::bat::laws::Verdict;
use crate::innings::played::InningsFault;
use crate::swing::player_stroke::SwingFault;
use rayon::prelude::*;

/// One weighed bat judged by the rule.
#[derive(Clone, Debug, PartialEq)]
pub struct Given {
    /// Label.
    pub label: String,
    /// What it is worth, simulated; none where no stroke time lets this player control it.
    pub worth: Option<Worth>,
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
    order
        .bats
        .par_iter()
        .map(|weighed| {
            let near = near_middle(&middle, &surrogate.domain.middle, &weighed.bat);
            let worth = match setting.at_end(&weighed.bat, Some(&near)) {
                Ok(strokes) => Some(Worth::new(setting, weighed.bat.clone(), strokes)),
                Err(InningsFault::Swing(SwingFault::NoControlledSwing { .. })) => None,
                Err(fault) => return Err(fault.into()),
            };
            Ok(Given { label: weighed.reading.label.clone(), worth, legal: weighed.law.verdict })
        })
        .collect()
}

/// The best of the weighed bats that the Laws do not forbid.
pub(super) fn best_of(given: &[Given], tie_width: f64) -> Option<usize> {
    let allowed: Vec<(usize, Worth)> = given
        .iter()
        .enumerate()
        .filter(|(_, it)| it.legal != Verdict::No)
        .filter_map(|(i, it)| it.worth.clone().map(|worth| (i, worth)))
        .collect();
    let worths: Vec<Worth> = allowed.iter().map(|(_, worth)| worth.clone()).collect();
    choose(&worths, tie_width).map(|i| allowed[i].0)
}
