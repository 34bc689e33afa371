//! A planing plan in sentences.

use backlift::units::{Quantity, Units, spoken};
use backlift::workshop::plane::{Pass, Plan, ThinEdge};

use crate::figure::{capital, listed, number, percent, plain, with_doubt};

/// Of a bat that was not balanced or timed.
pub const ESTIMATED: &str = "Balance or swing moment is estimated from the size: time ten swings, and the plan is surer and goes further";

/// What a maker could say of it.
pub fn sentence(plan: &Plan) -> String {
    let off_kg: f64 = plan.passes.iter().map(|it| it.off_kg).sum();
    let grams = number(1e3 * off_kg, 0);
    let meets = plan.meets.len() + usize::from(plan.handle_m.1);
    match (plan.passes.len(), meets) {
        (0, 4) => "Nothing needs to come off: finished, the bat meets the card".to_owned(),
        (0, _) => "No wood that a plane can take off brings this bat to its card".to_owned(),
        (n, 4) => {
            format!("Take {grams} g off in {} and the finished bat meets the card", passes(n))
        }
        (n, _) => format!(
            "{} take {grams} g off and bring the bat nearer, but not wholly to the card",
            capital(&passes(n))
        ),
    }
}

fn passes(n: usize) -> String {
    if n == 1 { "one pass".to_owned() } else { format!("{n} passes") }
}

/// How to work by it, with a plane that is off by such a share.
pub fn rules(planing_sd: f64, overshoot_limit: f64) -> String {
    format!(
        "Stop after each pass, weigh, balance and swing again, and ask anew: the plane takes off {} more or less than it should (one standard deviation, assumed), and no pass may leave the finished bat too light with more than 1 chance in {}. Wood cannot go back",
        percent(planing_sd, 0),
        number(1.0 / overshoot_limit, 0)
    )
}

/// What goes on after the plane; empty where nothing does.
pub fn to_come_words(plan: &Plan, units: Units) -> String {
    if plan.to_come.is_empty() {
        return String::new();
    }
    let each = plan.to_come.iter().map(|it| {
        let mass_kg = it.adds.mass_kg;
        let mass = with_doubt(Quantity::Mass, mass_kg, it.relative_sd * mass_kg, units);
        format!("{} {mass}", it.what)
    });
    format!("Still to go on, and counted: {}", listed(&each.collect::<Vec<_>>()))
}

/// The thinnest edge against what makers of the size leave, and from which pass on; of a blade so long.
pub fn thin_edges(
    of_passes: &[Option<ThinEdge>],
    size: &str,
    blade_m: f64,
    units: Units,
) -> Option<String> {
    let passes = of_passes.iter().enumerate();
    let thin: Vec<(usize, ThinEdge)> = passes.filter_map(|(n, it)| Some((n, (*it)?))).collect();
    let share = |it: &ThinEdge| it.edge_m / it.makers_m;
    let (first, (_, worst)) =
        (thin.first()?.0, thin.iter().min_by(|a, b| share(&a.1).total_cmp(&share(&b.1)))?);
    let from_toe_m = (1.0 - worst.from_shoulder) * blade_m;
    let mm = |it: f64| plain(1e3 * it, 0, "mm");
    Some(format!(
        "From pass {} on edges get thinner than makers of size {} leave them: down to {}, {} from the toe, where they leave {} (common practice, no source). Look before you cut: a lighter cleft needs no such edges",
        first + 1,
        size,
        mm(worst.edge_m),
        spoken(Quantity::Length, from_toe_m, 0.01, units),
        mm(worst.makers_m),
    ))
}

/// How deep the plane goes, and how much off which side.
pub fn how(pass: &Pass, units: Units) -> String {
    if let Some(handle_m) = pass.handle_m {
        let across = plain(1e3 * handle_m, 1, "mm");
        return format!("until it is {across} across at the bottom hand, over what is on it now");
    }
    let it = &pass.deepest;
    let from_toe_m = (1.0 - it.from_shoulder) * pass.shape.blade.length_m;
    let from_toe = spoken(Quantity::Length, from_toe_m, 0.01, units);
    let deep =
        format!("{} at the deepest, {from_toe} from the toe", plain(1e3 * it.deep_m, 1, "mm"));
    let grams = |kg: f64| plain(1e3 * kg, 1, "g");
    match pass.sides_kg {
        None => deep,
        Some([left_kg, right_kg]) if (left_kg - right_kg).abs() < 5e-5 => {
            format!("{} each side; {deep}", grams(left_kg))
        }
        Some([left_kg, right_kg]) => format!(
            "{} off the left side and {} off the right, seen from the face with the toe down; {deep}",
            grams(left_kg),
            grams(right_kg)
        ),
    }
}
