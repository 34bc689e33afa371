//! Facts about the stage `card`, its file and its pictures.

mod file;
mod orders_page;
mod pickup_page;
mod pictures;
mod profile;
mod returned_bat;
mod sample;
pub mod sheet;

use backlift::card::{Asked, CardFault, Figure, cautions};
use sample::card;

#[test]
fn rounding_for_the_bench_never_admits_a_bat_that_the_computed_limits_refuse() {
    for k in 0..200 {
        let part = f64::from(k) * 1.7e-5;
        let mut computed = card();
        let [swing, mass, ..] = &mut computed.figures;
        *mass = Asked::new(mass.target + part, [0.991 + part, 1.037 - part]);
        swing.tolerance = [0.1511 + part, 0.1620 - part];
        let rounded = computed.rounded_for_the_bench();
        for figure in [Figure::DeadWeight, Figure::SwingMoment] {
            let ([low, high], [least, most]) =
                (rounded.asked(figure).tolerance, computed.asked(figure).tolerance);
            assert!(low >= least - 1e-9 && high <= most + 1e-9, "{figure:?} {low} {high}");
        }
    }
}

#[test]
fn each_figure_of_a_card_stands_in_its_own_place() {
    for (place, figure) in Figure::ALL.into_iter().enumerate() {
        assert_eq!(figure as usize, place, "{}", figure.words());
    }
}

#[test]
fn rounding_twice_is_rounding_once() {
    assert_eq!(card().rounded_for_the_bench(), card());
}

#[test]
fn a_card_with_impossible_figures_is_refused_by_name() {
    let mut off = card();
    off.figures[Figure::Balance as usize] = Asked::new(0.9, [0.89, 0.91]);
    assert!(matches!(off.checked(), Err(CardFault::OffTheBat { what: "balance point", .. })));
    let mut turned = card();
    turned.figures[Figure::DeadWeight as usize].tolerance = [1.04, 1.0];
    assert!(matches!(
        turned.checked(),
        Err(CardFault::TargetOutsideTolerance { what: "dead weight", .. })
    ));
    let mut nothing = card();
    nothing.pendulum_time_s.target = f64::NAN;
    assert!(matches!(nothing.checked(), Err(CardFault::NotPositive { what: "pendulum time", .. })));
}

#[test]
fn a_juniors_card_says_all_that_a_junior_must_be_told() {
    let said = cautions::standing(13.0, cautions::refit_stature_m(13.0, 1.56)).join("\n");
    for words in [
        "Not medical advice",
        "Pain ends the session",
        "Growth changes the answer: fit again at 5\u{2009}ft 3\u{2009}in (160\u{2009}cm)",
        "With a hard ball: a helmet, a warm-up before, and an adult there",
        "coach",
        "medical professional",
        "Local playing conditions decide",
        "technique, confidence or injury",
    ] {
        assert!(said.contains(words), "{words} is missing:\n{said}");
    }
}

#[test]
fn a_grown_players_card_says_nothing_of_growth() {
    assert_eq!(cautions::refit_stature_m(18.0, 1.7), None);
    let said = cautions::standing(31.0, None).join("\n");
    assert!(!said.contains("Growth") && !said.contains("helmet"), "{said}");
    assert!(said.contains("Not medical advice"), "{said}");
}

/// The bands of stature in the trade's charts are 50 to 100 mm wide for juniors (common practice, no
/// source), so half a size is 25 to 50 mm, whatever the stature.
#[test]
fn a_junior_is_fitted_again_after_half_a_size_of_growth() {
    for centimetres in 100..200 {
        let stature_m = f64::from(centimetres) / 100.0;
        let more_m = cautions::refit_stature_m(12.0, stature_m).unwrap() - stature_m;
        assert!((0.025 - 1e-9..=0.05 + 1e-9).contains(&more_m), "{stature_m}: {more_m}");
    }
}
