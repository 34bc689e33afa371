//! The nearest to what was asked that can be made, by trying.

/// Steps from what can be made towards what was asked: a sixty-fourth is far inside any tolerance.
const HALVINGS: usize = 7;

/// Looks both ways from what was asked, farther and farther, then halves back to the limit.
pub(super) fn nearest_along(asked: f64, own: f64, can: impl Fn(f64) -> bool) -> Option<f64> {
    let reach = (own - asked).abs().max(0.15 * asked.abs()) * if own == asked { -1.0 } else { 1.0 };
    let toward = if own < asked { -reach.abs() } else { reach.abs() };
    let looks = (1..=32).flat_map(|n| {
        let far = f64::from(n) / 32.0;
        [asked + far * toward, asked - far * toward]
    });
    let (mut yes, mut no) = (looks.into_iter().find(|it| can(*it))?, asked);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (yes + no);
        *(if can(middle) { &mut yes } else { &mut no }) = middle;
    }
    Some(yes)
}

/// Steps from what was asked to what the start has, of the handle: each tries the card anew.
const HANDLE_STEPS: u32 = 8;

/// The first on the way from what was asked to the start's own that will do.
pub(super) fn nearest_between(asked: f64, own: f64, can: impl Fn(f64) -> bool) -> Option<f64> {
    let steps = (1..=HANDLE_STEPS).map(|n| f64::from(n) / f64::from(HANDLE_STEPS));
    steps.map(|share| asked + share * (own - asked)).find(|it| can(*it))
}
