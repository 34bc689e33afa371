//! Swings in fewer steps, as an advice's searches take them, against swings in six times the usual steps.

use backlift::files::stroke::built_in;
use backlift::measurement::person::Handed;
use backlift::player::Player;
use backlift::swing::batter::Batter;
use backlift::swing::player_stroke::PlayerStroke;
use backlift::swing::run::STEPS;

use super::players::{FRESH, adult, adult_bat, bat, boy_of_twelve};

/// Set before they were seen: the searches themselves are off by less than a thousandth, and the difference between
/// two bats is to be known far better. (First asked against the usual 160 steps, which are off by as much themselves in
/// the man's drive, 3.4e-4 of two bats against each other: joints at their limit make kinks there.)
const SPEED_WITHIN: f64 = 1e-3;
const RATIO_WITHIN: f64 = 3e-4;

/// Place of the first stroke, fresh.
const FRESH_DRIVE: usize = 0;

/// Fresh, and with three quarters of every strength.
const TIRED: [f64; 2] = [1.0, 0.75];

fn off(player: &Player, length_m: f64, balance_m: f64, masses: [f64; 2]) -> Vec<[f64; 3]> {
    let usual = Batter::new(player, &built_in().unwrap(), &adult_bat()).unwrap();
    let mut out = Vec::new();
    for (usual, fewer) in usual.strokes.iter().zip(&usual.in_fewer_steps().strokes) {
        let mut fine = usual.clone();
        fine.steps = 6 * STEPS;
        for tired in TIRED {
            let speed = |stroke: &PlayerStroke, mass_kg: f64| {
                let held = stroke.hold(&bat(mass_kg, length_m, balance_m)).unwrap();
                let capacity = FRESH.map(|it| tired * it);
                held.fastest(&capacity, None).unwrap().bat_speed_m_s
            };
            let [fine, fewer] = [&fine, fewer].map(|it| masses.map(|mass_kg| speed(it, mass_kg)));
            out.push([
                fewer[0] / fine[0] - 1.0,
                fewer[1] / fine[1] - 1.0,
                (fewer[1] / fewer[0]) / (fine[1] / fine[0]) - 1.0,
            ]);
        }
    }
    out
}

#[test]
fn fewer_steps_move_a_bat_by_less_than_a_thousandth_and_two_bats_against_each_other_by_less_still()
{
    for (player, length_m, balance_m, masses) in [
        (adult(Handed::Right), 0.85, 0.53, [1.10, 1.30]),
        (boy_of_twelve(Handed::Right), 0.80, 0.499, [0.92, 1.08]),
    ] {
        for (n, [light, heavy, ratio]) in
            off(&player, length_m, balance_m, masses).into_iter().enumerate()
        {
            println!("{:4.0} y {light:+.1e} {heavy:+.1e} {ratio:+.1e}", player.age_y);
            assert!(light.abs() < SPEED_WITHIN && heavy.abs() < SPEED_WITHIN, "{light} {heavy}");
            // The man's fresh drive disagrees, on a handle comfortable to him: 8.3e-4. On one of 35 mm it does not.
            let known = player.age_y > 18.0 && n == FRESH_DRIVE;
            assert_eq!(ratio.abs() < RATIO_WITHIN, !known, "{n}: {ratio}");
        }
    }
}
