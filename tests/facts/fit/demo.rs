use backlift::bat::figures::weigh;
use backlift::files::{assets, scenario, stroke};
use backlift::fit::fitting::{Order, fit};
use backlift::measurement::plan::STROKES;
use std::ops::ControlFlow;

#[test]
fn explore_fit() {
    for file in ["junior", "club", "girl15"] {
        let loaded = scenario::load(
            &scenario::Given::File(format!("scenarios/{file}.ron").into()),
            &[],
            &STROKES,
        )
        .unwrap();
        let s = loaded.scenario;
        let sizes = assets::sizes().unwrap();
        let laws = assets::limits().unwrap();
        let player = backlift::player::player(&s.player).unwrap();
        let bats: Vec<_> = s.bats.iter().map(|b| weigh(b, &sizes, &laws).unwrap()).collect();
        for b in &bats {
            println!(
                "{} m {:.3} b {:.3} I {:.4} sd {:.4} {:?}",
                b.reading.label,
                b.mass_kg.value,
                b.balance_m.value,
                b.swing_moment_kg_m2.value,
                b.swing_moment_kg_m2.sd,
                b.warnings
            );
        }
        let strokes = stroke::built_in().unwrap();
        let t0 = std::time::Instant::now();
        let f = fit(
            &Order {
                player: &player,
                strokes: &strokes,
                bats: &bats,
                plan: &s.innings,
                bowling: &s.bowling,
                limits: &s.fit,
                sizes: &sizes,
                laws: &laws,
            },
            &|_, _| ControlFlow::Continue(()),
        )
        .unwrap();
        println!(
            "{file} {:.2} s, surrogate {:.4} %, cells {}, available {:.3}",
            t0.elapsed().as_secs_f64(),
            100.0 * f.surrogate_error,
            f.map.len(),
            f.setting.available_time_s()
        );
        let show = |w: &backlift::fit::rule::Worth| {
            format!(
                "m {:.3} b {:.4} I {:.4} goal {:.3} slack {:.4} tight {:?} T {:?} v {:?} held {:?} wrist {:?}",
                w.bat.mass_kg(),
                w.bat.balance_m(),
                w.bat.swing_moment_kg_m2(),
                w.goal_m_s,
                w.slack,
                w.tightest,
                w.strokes.iter().map(|s| (s.time_s * 1e3).round() / 1e3).collect::<Vec<_>>(),
                w.strokes.iter().map(|s| (s.bat_speed_m_s * 1e2).round() / 1e2).collect::<Vec<_>>(),
                w.strokes
                    .iter()
                    .map(|s| (s.held_back_time_s * 1e3).round() / 1e3)
                    .collect::<Vec<_>>(),
                w.strokes.iter().map(|s| (s.wrist_share * 1e3).round() / 1e3).collect::<Vec<_>>()
            )
        };
        println!(
            "REC {} {}\n  tol {:?} pick {:.3} sweet {:.3} handle {:.4}",
            f.recommendation.size,
            show(&f.recommendation.worth),
            f.recommendation.tolerances,
            f.recommendation.pickup_weight_kg,
            f.recommendation.sweet_spot_from_toe_m,
            f.recommendation.handle_diameter_m
        );
        println!("RUNNER {:?}", f.runner_up.as_ref().map(show));
        for g in &f.given {
            println!("GIVEN {} {}", g.label, show(&g.worth));
        }
        println!("BEST GIVEN {:?}", f.best_given.map(|i| &f.given[i].label));
        for m in &f.moved {
            println!("MOVED {} {} {}", m.what, m.changes_advice, show(&m.chosen));
        }
        let goal: Vec<f64> = f.map.iter().map(|c| c.worth.goal_m_s).collect();
        println!(
            "goal {:.3}-{:.3}, pass {}",
            goal.iter().copied().fold(f64::INFINITY, f64::min),
            goal.iter().copied().fold(0.0, f64::max),
            f.map.iter().filter(|c| c.worth.passes()).count()
        );
    }
}
