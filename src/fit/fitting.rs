//! The whole search for one player.

use super::candidates::suitable;
pub use super::doubts::Moved;
use super::doubts::move_inputs;
pub use super::given::Given;
use super::given::{best_of, judge_given};
pub use super::order::{FitFault, Order, Progress};
use super::rule::{Worth, choose};
pub use super::search::Cell;
use super::search::{OneSize, cells, choose_finely, swing_range};
use super::setting::{Setting, Slow};
use super::surrogate::Surrogate;
use super::tolerance::{Tolerances, tolerances};
use crate::bat::Bat;
use crate::bat::makeable::MadeBat;
use crate::bat::pickup_weight::pickup_weight_kg;
use crate::innings::played::delivery;
use crate::player::grip::comfortable_diameter_m;
use crate::swing::batter::Batter;
use crate::swing::player_stroke::SwingFault;

/// The bat to ask for.
#[derive(Clone, Debug, PartialEq)]
pub struct Recommendation {
    /// Size.
    pub size: String,
    /// The bat and what it is worth, simulated.
    pub worth: Worth,
    /// Shape it was computed for.
    pub made: MadeBat,
    /// Weight of the size's reference bat with the same swing moment, kg.
    pub pickup_weight_kg: f64,
    /// How far each figure may move.
    pub tolerances: Tolerances,
    /// Sweet spot (centre of percussion for the pickup axis) from the toe, m.
    pub sweet_spot_from_toe_m: f64,
    /// Handle diameter for this hand, m.
    pub handle_diameter_m: f64,
}

/// The result of the search.
#[derive(Clone, Debug)]
pub struct Fitting {
    /// The player and what was asked.
    pub setting: Setting,
    /// The bat to ask for.
    pub recommendation: Recommendation,
    /// Next best by the rule that is a different bat, if there is one.
    pub runner_up: Option<Worth>,
    /// The map of the recommended size.
    pub map: Vec<Cell>,
    /// Weighed bats, in the order given.
    pub given: Vec<Given>,
    /// Index of the best of the weighed bats.
    pub best_given: Option<usize>,
    /// The advice with uncertain inputs moved.
    pub moved: Vec<Moved>,
    /// Largest error of the surrogate on bats it had not seen, as a share.
    pub surrogate_error: f64,
    /// The surrogate, for whoever wants to look further.
    pub surrogate: Surrogate,
}

/// The bat to ask for, without what could change the answer.
#[derive(Clone, Debug)]
pub struct Advice {
    /// The player and what was asked.
    pub setting: Setting,
    /// The bat to ask for.
    pub recommendation: Recommendation,
    /// Largest error of the surrogate on bats it had not seen, as a share.
    pub surrogate_error: f64,
}

/// Searches only.
pub fn advise(order: &Order<'_>, progress: Progress<'_>) -> Result<Advice, FitFault> {
    let (setting, one) = search(order, progress)?;
    let recommendation = recommend(order, &setting, &one)?;
    Ok(Advice { setting, recommendation, surrogate_error: one.surrogate.held_out_error })
}

/// Searches, and looks at what could change the answer.
pub fn fit(order: &Order<'_>, progress: Progress<'_>) -> Result<Fitting, FitFault> {
    let (setting, one) = search(order, progress)?;
    let given = judge_given(order, &setting, &one.surrogate)?;
    let best_given = best_of(&given, order.limits.tie_width);
    let recommendation = recommend(order, &setting, &one)?;
    let moved = move_inputs(order, &setting, &one, &recommendation, progress)?;
    let runner_up = runner_up(order, &one, &recommendation);
    Ok(Fitting {
        setting,
        recommendation,
        runner_up,
        map: one.cells,
        given,
        best_given,
        moved,
        surrogate_error: one.surrogate.held_out_error,
        surrogate: one.surrogate,
    })
}

/// All bats of the sizes that suit, and the rule's choice among them.
fn search(order: &Order<'_>, progress: Progress<'_>) -> Result<(Setting, OneSize), FitFault> {
    let sizes = suitable(order.sizes, order.limits, order.player.stature_m);
    let Some(first) = sizes.first() else {
        return Err(FitFault::NoSize { names: order.limits.sizes.clone() });
    };
    let reference = first.reference.bat("reference")?;
    let mut setting = setting(order, &reference)?;
    let count = sizes.len() as f64;
    let mut searched = Vec::with_capacity(sizes.len());
    for (i, size) in sizes.iter().enumerate() {
        let part = |share: f64| {
            progress("swinging the bats that can be made", 0.5 * (i as f64 + share) / count)
        };
        let (surrogate, range, grid) = swing_range(order, &setting, size, &part)?;
        if i == 0 {
            setting = setting.judged_by(&surrogate.at(&surrogate.domain.middle));
        }
        let cells = cells(&setting, &surrogate, &grid);
        let chosen = choose_finely(order, &setting, &surrogate, &range, &cells)
            .ok_or_else(|| FitFault::NothingToMake { size: size.name.clone() })?;
        searched.push(OneSize { range, surrogate, cells, chosen });
    }
    let worths: Vec<Worth> = searched.iter().map(|s| s.chosen.1.clone()).collect();
    let best = choose(&worths, order.limits.tie_width).unwrap_or(0);
    Ok((setting, searched.swap_remove(best)))
}

/// The player with the asked times of the reference bat.
pub fn setting(order: &Order<'_>, reference: &Bat) -> Result<Setting, SwingFault> {
    let handle_diameter_m = comfortable_diameter_m(order.player.hand_length_m.value);
    let batter = Batter::new(order.player, order.strokes, reference, handle_diameter_m)?;
    let asked_time_s = Setting::asked_times_s(&batter, reference, order.limits.asked_time_factor)?;
    Ok(Setting {
        batter,
        plan: order.plan.clone(),
        delivery: delivery(order.bowling),
        ball_kg: order.limits.ball_mass_kg,
        share_limit: order.limits.share_limit,
        goal: order.limits.goal,
        ball_at_bat_m_s: Vec::new(),
        asked_time_s,
        slow: Slow::Central,
    })
}

fn recommend(
    order: &Order<'_>,
    setting: &Setting,
    one: &OneSize,
) -> Result<Recommendation, FitFault> {
    let (made, by_surrogate) = &one.chosen;
    let strokes = setting.at_end(&made.bat, Some(&by_surrogate.strokes))?;
    let worth = Worth::new(setting, made.bat.clone(), strokes);
    let reference = one.range.size.reference.bat("reference")?;
    Ok(Recommendation {
        size: one.range.size.name.clone(),
        pickup_weight_kg: pickup_weight_kg(&reference, made.bat.swing_moment_kg_m2()),
        tolerances: tolerances(setting, &one.surrogate, by_surrogate, order.limits.tie_width),
        sweet_spot_from_toe_m: made.bat.length_m() - made.bat.percussion_m(),
        handle_diameter_m: setting.batter.handle_diameter_m,
        made: made.clone(),
        worth,
    })
}

/// The rule's choice among the cells that are another bat: swing moment outside the tolerance.
fn runner_up(order: &Order<'_>, one: &OneSize, it: &Recommendation) -> Option<Worth> {
    let [low, high] = it.tolerances.swing_moment_kg_m2;
    let others: Vec<Worth> = one
        .cells
        .iter()
        .map(|c| &c.worth)
        .filter(|w| {
            let swing = w.bat.swing_moment_kg_m2();
            swing < low || swing > high
        })
        .cloned()
        .collect();
    choose(&others, order.limits.tie_width).map(|i| others[i].clone())
}
