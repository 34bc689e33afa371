//! What a coach could say of bats that were compared.

use backlift::comparison::figure::{Figure, StrokeFigure};
use backlift::comparison::noticeable::Felt;
use backlift::questions::compared::Shown;
use backlift::units::{Quantity, Units, spoken};

/// The fastest and the slowest late in the innings, and what the hand says.
pub fn sentence(shown: &Shown, units: Units) -> String {
    let speed = shown.late(StrokeFigure::BatSpeed);
    let at = |bat: usize| shown.value(bat, speed).value;
    let bats = || 0..shown.bats.len();
    let by_speed = |a: &usize, b: &usize| at(*a).total_cmp(&at(*b));
    let (Some(slow), Some(fast)) = (bats().min_by(by_speed), bats().max_by(by_speed)) else {
        return String::new();
    };
    let stroke = shown.strokes.get(shown.lead).map_or("stroke", String::as_str);
    let (a, b) = (shown.label(fast), shown.label(slow));
    let pair = [fast.min(slow), fast.max(slow)];
    let Some(it) = shown.difference(pair, speed) else {
        return format!("{a} and {b} are the same bat at the bench and in the {stroke}");
    };
    let gap = spoken(Quantity::Speed, it.difference.value.abs(), it.difference.sd, units);
    let felt = shown.difference(pair, Figure::SwingMoment).and_then(|it| it.felt);
    let picks = in_hand(shown, [fast, slow]);
    match (it.difference.real, felt) {
        (true, Some(Felt::No)) => format!(
            "At fifty runs the {stroke} with {a} is {gap} faster than with {b}: more than the doubt, though no hand would tell. {picks}"
        ),
        (true, _) => format!(
            "At fifty runs the {stroke} with {a} is {gap} faster than with {b}, and that is more than the doubt. {picks}"
        ),
        (false, _) => format!(
            "At fifty runs the {stroke} is too close to call between {b} and {a} ({gap} apart, within the doubt). {picks}"
        ),
    }
}

/// What the second bat of a pair is like in the hand beside the first, and whether it is felt.
pub fn in_hand(shown: &Shown, [first, second]: [usize; 2]) -> String {
    let hand = shown.in_hand([first, second]);
    let pair = [first.min(second), first.max(second)];
    let felt = shown.difference(pair, Figure::SwingMoment).and_then(|it| it.felt);
    let feel = match felt {
        Some(Felt::Yes) => ", which any hand feels",
        Some(Felt::Unsure) => ", which some hands may feel",
        Some(Felt::No) => ", too little to feel",
        None => "",
    };
    let (a, b) = (shown.label(first), shown.label(second));
    match hand.starts_with("as if") {
        true => format!("{b} swings {}{feel}", hand.replace("the toe", &format!("the toe of {a}"))),
        false => format!("{b} {hand}"),
    }
}
