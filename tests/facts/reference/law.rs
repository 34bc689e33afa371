//! The stroke law: the prototype with its step, and the same law without a step.

use backlift::files::reference;

#[test]
fn the_prototype_tends_to_the_law_without_a_step_as_its_step_shrinks() {
    let prototype = reference::prototype().unwrap();
    for (stroke, law) in reference::continuous_law().unwrap().fixed_time {
        let steps = &prototype.rigs[&format!("{stroke} adult")].at_fixed_time;
        let off = |key: &str| (steps[key].speed_m_s / law.at_0_25_ms.speed_m_s - 1.0).abs();
        assert!(off("limit") < 2e-5, "{stroke}: {}", off("limit"));
        assert!(off("dt_0.000125_s") < 0.6 * off("dt_0.00025_s"), "{stroke}");
        assert!((steps["limit"].error - law.at_0_25_ms.error).abs() < 0.006, "{stroke}");
    }
}

#[test]
fn the_prototypes_fastest_time_tends_to_that_of_the_law_without_a_step() {
    let prototype = reference::prototype().unwrap();
    for search in reference::continuous_law().unwrap().searches_dt_0_5ms {
        let mut searches = prototype.searches.iter();
        let stepped = searches.find(|it| {
            (&it.stroke, &it.player, &it.bat) == (&search.stroke, &search.player, &search.bat)
        });
        let stepped = stepped.unwrap();
        let limit_s = 2.0 * stepped.at_0_25_ms.fastest_s - stepped.at_0_5_ms.fastest_s;
        // the two programs share the law, not the dynamics, the closure or the integrator
        assert!(
            (limit_s / search.fastest_s - 1.0).abs() < 2e-3,
            "{} {}",
            search.stroke,
            search.bat
        );
    }
}
