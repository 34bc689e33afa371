//! What of a customer's wish for the middle the shapes have.

use backlift::bat::shaped::ShapedBat;
use backlift::fit::middle_of::middle_of;
use backlift::workshop::to_card::{Answer, WishedMiddle};
use backlift::worth::constants::USUAL_MIDDLE;

use crate::figure::plain;

/// How many have it, or which comes nearest.
pub fn sentence(it: &WishedMiddle, answers: &[Answer]) -> String {
    let (all, middle) = (answers.len(), it.middle.words());
    let of_all = match it.have_it {
        0 => none_has_it(it, answers),
        1 if all == 1 => "it has it".to_owned(),
        1 => format!("of {all} shapes 1 has it and stands first"),
        n if n == all => format!("all {n} have it"),
        n => format!("of {all} shapes {n} have it and stand first"),
    };
    format!("The customer wished a {middle} middle: {of_all}")
}

/// What a low and a high middle are.
pub fn rule() -> String {
    let usual = plain(1e3 * USUAL_MIDDLE.value, 0, "mm");
    format!(
        "a middle is usual within {usual} of the standard bat's, high further from the toe, low nearer: a rule of this program, no source"
    )
}

fn none_has_it(it: &WishedMiddle, answers: &[Answer]) -> String {
    let nearest = answers.first().map_or("", |it| it.name);
    let off = plain((1e3 * it.first_away_m).max(0.1), 1, "mm");
    format!(
        "none of {} that meet the card has it, and the card stands above the wish; the nearest is \"{nearest}\", whose swell lies {off} outside",
        answers.len()
    )
}

/// Which middle a shape has, where the standard bat's swell lies at `standard_m` over the toe, and whether it is the
/// wished one.
pub fn of_one(it: &ShapedBat, standard_m: f64, wished: &WishedMiddle) -> String {
    let middle = middle_of(it.shape.swell_from_toe_m(), standard_m);
    let as_wished = if middle == wished.middle { ", as wished" } else { "" };
    format!("{}{as_wished}", middle.words())
}
