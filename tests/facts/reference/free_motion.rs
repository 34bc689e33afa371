//! A bat that spins freely.

use backlift::files::reference;
use backlift::frames::{DMat3, DVec3};

#[test]
fn a_spinning_bat_keeps_its_angular_momentum_in_the_reference() {
    let spin = reference::free_motion().unwrap().spin;
    let inertia = DMat3::from_diagonal(DVec3::from_array(spin.inertia_com_kg_m2));
    for case in &spin.cases {
        for (rows, omega) in case.rotation_rows.iter().zip(&case.omega_rad_s) {
            let R_WB = DMat3::from_cols_array(rows).transpose();
            let momentum_W = R_WB * (inertia * (R_WB.transpose() * DVec3::from_array(*omega)));
            assert!(momentum_W.distance(DVec3::from_array(case.angular_momentum_kg_m2_s)) < 1e-9);
        }
    }
}
