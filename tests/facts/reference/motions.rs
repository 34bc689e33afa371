//! Swings under given torques.

use backlift::files::reference::{closed_chain, drawn_chains, open_chain};
use backlift::frames::DVec3;

use super::chain::{gap_m, toe_W};

#[test]
fn outside_programs_put_the_toe_where_the_files_chain_has_it() {
    for swings in [open_chain().unwrap(), closed_chain().unwrap()] {
        for swing in swings.chains {
            for case in &swing.cases {
                for (q_rad, toe_m) in case.q_rad.iter().zip(&case.toe_m) {
                    let off_m = toe_W(&swing.chain, q_rad).distance(DVec3::from_array(*toe_m));
                    assert!(off_m < 1e-9, "{}: {off_m} m", swing.name); // 12 digits are stored
                    assert!(gap_m(&swing.chain, q_rad) < 1e-9);
                }
            }
        }
    }
}

#[test]
fn outside_programs_agree_on_the_toe_speed_within_a_hundredth_of_our_tolerance() {
    for swings in [open_chain().unwrap(), closed_chain().unwrap()] {
        for swing in swings.chains {
            for case in &swing.cases {
                let speed_m_s = DVec3::from_array(*case.toe_velocity_m_s.last().unwrap()).length();
                let fine = &case.mujoco_rk4["dt_0.00025_s"];
                // ours is held to 0.5 %; the references must not eat into that
                assert!(fine.toe_velocity_off_by_m_s < 5e-5 * speed_m_s, "{}", swing.name);
            }
        }
    }
}

#[test]
fn drawn_players_hold_their_bats_with_both_hands_at_the_start() {
    let drawn = drawn_chains().unwrap();
    assert_eq!(drawn.cases.len(), 200);
    for case in &drawn.cases {
        let gap_m = gap_m(&drawn.chain(case), &case.q0_rad);
        assert!(gap_m < 1e-8, "{gap_m} m"); // chains are stored to 9 digits
    }
}
