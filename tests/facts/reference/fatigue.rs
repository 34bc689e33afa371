//! Shares of resting, active and fatigued muscle under given loads.

use backlift::files::reference::three_compartment;

#[test]
fn shares_of_muscle_sum_to_one_in_the_reference() {
    for run in three_compartment().unwrap().runs {
        for row in &run.rows {
            for shares in [&row[2..5], &row[5..8]] {
                let sum: f64 = shares.iter().sum();
                assert!((sum - 1.0).abs() < 1e-8, "{} {}: {sum}", run.group, run.history);
            }
        }
    }
}
