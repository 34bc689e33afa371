use backlift::files::{assets, scenario, stroke};
use backlift::measurement::plan::STROKES;
use backlift::swing::batter::Batter;

#[test]
fn explore_speed() {
    let loaded =
        scenario::load(&scenario::Given::File("scenarios/junior.ron".into()), &[], &STROKES)
            .unwrap();
    let s = loaded.scenario;
    let sizes = assets::sizes().unwrap();
    let player = backlift::player::player(&s.player).unwrap();
    let size = sizes.iter().find(|x| x.name == "6").unwrap();
    let reference = size.reference.bat("ref").unwrap();
    let strokes = stroke::built_in().unwrap();
    let t0 = std::time::Instant::now();
    let batter = Batter::new(&player, &strokes, &reference, 0.034).unwrap();
    println!("batter {:.1} ms", t0.elapsed().as_secs_f64() * 1e3);
    let t0 = std::time::Instant::now();
    let t = batter.take_up(&reference).unwrap();
    println!("take up {:.2} ms", t0.elapsed().as_secs_f64() * 1e3);
    for i in 0..3 {
        let sw = t.held[i].swinger(&[1.0; 7]);
        let mut best = f64::INFINITY;
        for _ in 0..2 {
            let t0 = std::time::Instant::now();
            std::hint::black_box(sw.swing(0.5, None));
            best = best.min(t0.elapsed().as_secs_f64());
        }
        let f = t.held[i].fastest(&[1.0; 7], None).unwrap();
        let g = t.held[i].fastest(&[0.95; 7], Some(f.stroke_time_s * 1.028)).unwrap();
        let g2 = t.held[i].fastest(&[0.95; 7], Some(g.stroke_time_s * 1.002)).unwrap();
        println!(
            "swing {i} {:.2} ms; fastest {} swings, near {} nearer {}",
            best * 1e3,
            f.swings,
            g.swings,
            g2.swings
        );
    }
}
