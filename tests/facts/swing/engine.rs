//! The same player, bat and law on the rigid-body engine and on our own dynamics.

use backlift::bat::Bat;
use backlift::files;
use backlift::measurement::person::{Handed, PersonReading, Sex};
use backlift::player::Player;
use backlift::stroke::Stroke;
use backlift::swing::engine::pair::{ContactDifference, engine_swing_in};
use backlift::swing::player_stroke::{Held, PlayerStroke};

use super::pilot::pilot_bat;

fn player(age_y: f64, stature_m: f64, handed: Handed) -> Player {
    backlift::player::player(&PersonReading {
        age_y,
        sex: Sex::Male,
        stature_m,
        handed,
        mass_kg: None,
        arm_length_m: None,
        hand_length_m: None,
        grip_top_n: None,
        grip_bottom_n: None,
        wrist_hold: None,
    })
    .unwrap()
}

#[test]
fn explore_engine() {
    for (who, p, bats) in [
        (
            "adult",
            player(25.0, 1.80, Handed::Right),
            [pilot_bat(1.10, 0.85, 0.51), pilot_bat(1.30, 0.85, 0.55)],
        ),
        (
            "child",
            player(12.0, 1.50, Handed::Right),
            [pilot_bat(0.90, 0.80, 0.48), pilot_bat(1.08, 0.80, 0.515)],
        ),
    ] {
        for stroke in files::stroke::built_in().unwrap() {
            let ps = PlayerStroke::new(&p, &stroke, &bats[0]).unwrap();
            for (b, bat) in bats.iter().enumerate() {
                let held = ps.hold(bat).unwrap();
                let f = held.fastest(&[1.0; 7], None).unwrap();
                let swinger = held.swinger(&[1.0; 7]);
                let t = f.stroke_time_s;
                for fine in [400usize, 800, 1600, 3200] {
                    let t0 = std::time::Instant::now();
                    match engine_swing_in(&swinger, t, fine) {
                        Ok(e) => {
                            let ms = t0.elapsed().as_secs_f64() * 1e3;
                            let d = e.difference(&f.contact);
                            let c = ContactDifference::between(&e.coarse, &f.contact);
                            let g = ContactDifference::between(&e.fine, &f.contact);
                            println!(
                                "{who} {} {b} T {t:.4} fine {fine} h {:.2e}/2 | v {:.3} toe {:.3} | coarse v {:+.3} toe {:+.3} fine v {:+.3} toe {:+.3} pair v {:+.4} toe {:+.4} n {:+.4} % pos {:+.3} mm face {:+.3} line {:+.3} deg t {:+.3} ms | pos own {:.2} mm | {ms:.0} ms",
                                stroke.name,
                                e.step_s,
                                f.contact.bat_speed_m_s,
                                f.contact.toe_speed_m_s,
                                100.0 * c.bat_speed,
                                100.0 * c.toe_speed,
                                100.0 * g.bat_speed,
                                100.0 * g.toe_speed,
                                100.0 * d.bat_speed,
                                100.0 * d.toe_speed,
                                100.0 * d.normal_speed,
                                1e3 * d.position_m,
                                d.face_rad.to_degrees(),
                                d.line_rad.to_degrees(),
                                1e3 * d.time_s,
                                1e3 * f.contact.position_error_m
                            );
                        }
                        Err(e) => println!("{who} {} {b} fine {fine}: {e}", stroke.name),
                    }
                }
            }
        }
    }
}
