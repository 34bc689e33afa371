use std::f64::consts::PI;

use approx::assert_relative_eq;
use backlift::bat::blade::{Blade, Station};
use backlift::bat::handle::Handle;
use backlift::bat::lofted_solid::{GAUSS_4, MassMoments};

fn blade(stations: Vec<Station>) -> Blade {
    Blade {
        length_m: 0.5,
        face_m: 0.02,
        bow_m: 0.0,
        density_kg_m3: 400.0,
        stations,
        face_cover_kg_m2: 0.0,
        toe_guard_m: 0.0,
        toe_guard_kg_m3: 0.0,
    }
}

fn station(from_shoulder: f64, width_m: f64, edge_m: f64, depth_m: f64) -> Station {
    Station { from_shoulder, width_m, edge_m, depth_m, hollow: 0.0, camber_m: 0.0 }
}

fn bare_handle() -> Handle {
    Handle::bare(0.3, [0.03, 0.03], [1.0; 2], 600.0)
}

fn of_blade(blade: &Blade, shoulder_m: f64) -> MassMoments {
    let mut moments = MassMoments::default();
    blade.add_to(&mut moments, shoulder_m);
    moments
}

fn of_handle(handle: &Handle, willow_kg_m3: f64) -> MassMoments {
    let mut moments = MassMoments::default();
    handle.add_to(&mut moments, willow_kg_m3);
    moments
}

#[test]
fn four_gauss_points_integrate_every_power_up_to_seven_and_not_eight() {
    let sum = |power: i32| GAUSS_4.iter().map(|(t, w)| w * t.powi(power)).sum::<f64>();
    for power in 0..=7 {
        assert_relative_eq!(sum(power), 1.0 / f64::from(power + 1), max_relative = 1e-14);
    }
    assert!((sum(8) - 1.0 / 9.0).abs() > 1e-6);
}

#[test]
fn a_wedge_running_to_a_line_balances_at_a_third() {
    let (w, h, l) = (0.1, 0.04, 0.5);
    let moments = of_blade(&blade(vec![station(0.0, w, h, h), station(1.0, w, 0.0, 0.0)]), 0.0);
    assert_relative_eq!(moments.com_B().x, l / 3.0, max_relative = 1e-14);
    let m = 400.0 * 0.5 * w * h * l;
    // right triangle in x–z about its centre: (l² + h²)/18, product +m l h/36 with the face on top
    let I = moments.I_Com_B();
    assert_relative_eq!(I.y_axis.y, m * (l * l + h * h) / 18.0, max_relative = 1e-12);
    assert_relative_eq!(I.z_axis.x, -m * (l * h) / 36.0, max_relative = 1e-12);
}

#[test]
fn a_pyramid_balances_at_a_quarter() {
    let mut tip = blade(vec![station(0.0, 0.1, 0.04, 0.04), station(1.0, 0.0, 0.0, 0.0)]);
    tip.face_m = 0.0;
    let moments = of_blade(&tip, 0.0);
    assert_relative_eq!(moments.mass_kg, 400.0 * 0.1 * 0.04 * 0.5 / 3.0, max_relative = 1e-14);
    assert_relative_eq!(moments.com_B().x, 0.125, max_relative = 1e-14);
}

#[test]
fn cutting_a_solid_at_a_station_changes_nothing() {
    let (a, b) = (station(0.0, 0.08, 0.02, 0.05), station(1.0, 0.11, 0.04, 0.06));
    let mut hollow = (a, b);
    (hollow.0.hollow, hollow.1.hollow) = (0.3, 0.3);
    let middle = Station { hollow: 0.3, ..station(0.25, 0.0875, 0.025, 0.0525) };
    let whole = of_blade(&blade(vec![hollow.0, hollow.1]), 0.3);
    let cut = of_blade(&blade(vec![hollow.0, middle, hollow.1]), 0.3);
    let off = whole.I_Com_B() - cut.I_Com_B();
    assert_relative_eq!(whole.mass_kg, cut.mass_kg, max_relative = 1e-14);
    assert!(off.to_cols_array().iter().all(|it| it.abs() < 1e-15));
}

/// Area under a parabola: a camber adds ⅔ of its height, a full hollow leaves ⅓ of the rise.
#[test]
fn camber_and_hollow_take_the_area_of_their_parabolas() {
    let mut round = station(0.0, 0.1, 0.02, 0.05);
    (round.hollow, round.camber_m) = (1.0, 0.003);
    let end = Station { from_shoulder: 1.0, ..round };
    let area = 0.1 * (0.02 + 0.003 * 2.0 / 3.0 + (0.05 - 0.02 - 0.003) / 3.0);
    let moments = of_blade(&blade(vec![round, end]), 0.0);
    assert_relative_eq!(moments.mass_kg, 400.0 * area * 0.5, max_relative = 1e-14);
}

#[test]
fn a_cone_weighs_a_third_of_its_cylinder_and_turns_at_three_tenths() {
    let moments = of_handle(&Handle { shoulder_diameter_m: 0.0, ..bare_handle() }, 400.0);
    let m = 600.0 * PI * 0.015 * 0.015 * 0.3 / 3.0;
    assert_relative_eq!(moments.mass_kg, m, max_relative = 1e-14);
    assert_relative_eq!(moments.I_Com_B().x_axis.x, 0.3 * m * 0.015 * 0.015, max_relative = 1e-12);
}

#[test]
fn a_grip_is_a_tube_over_the_twine_and_two_grips_are_thicker() {
    let one = Handle {
        twine_m: 0.0005,
        twine_kg_m3: 900.0,
        grips: 1,
        grip_m: 0.0016,
        grip_length_m: 0.28,
        grip_kg_m3: 1150.0,
        ..bare_handle()
    };
    let tube = |inner: f64, outer: f64| PI * (outer * outer - inner * inner);
    let bare = of_handle(&bare_handle(), 400.0).mass_kg;
    let twine = 900.0 * 0.3 * tube(0.015, 0.0155);
    let grip = 1150.0 * 0.28 * tube(0.0155, 0.0171);
    assert_relative_eq!(of_handle(&one, 400.0).mass_kg, bare + twine + grip, max_relative = 1e-13);
    let two = Handle { grips: 2, ..one };
    assert_relative_eq!(
        two.diameter_over_grip_m(0.1),
        0.03 + 2.0 * (0.0005 + 0.0032),
        max_relative = 1e-13
    );
    assert!(of_handle(&two, 400.0).mass_kg > of_handle(&one, 400.0).mass_kg + grip);
}

#[test]
fn a_splice_adds_half_its_block_in_cane_less_willow() {
    let spliced = Handle { splice_m: 0.12, ..bare_handle() };
    let added = of_handle(&spliced, 400.0).mass_kg - of_handle(&bare_handle(), 400.0).mass_kg;
    assert_relative_eq!(added, 200.0 * 0.5 * PI * 0.015 * 0.015 * 0.12, max_relative = 1e-10);
}

#[test]
fn labels_weigh_on_the_face_and_a_guard_at_the_toe() {
    let plain = blade(vec![station(0.0, 0.1, 0.04, 0.04), station(1.0, 0.1, 0.04, 0.04)]);
    let bare = of_blade(&plain, 0.3);
    let labelled = of_blade(&Blade { face_cover_kg_m2: 0.2, ..plain.clone() }, 0.3);
    assert_relative_eq!(labelled.mass_kg - bare.mass_kg, 0.2 * 0.1 * 0.5, max_relative = 1e-12);
    assert!(labelled.com_B().z > bare.com_B().z);
    let guarded = of_blade(&Blade { toe_guard_m: 0.002, toe_guard_kg_m3: 1100.0, ..plain }, 0.3);
    assert_relative_eq!(
        guarded.mass_kg - bare.mass_kg,
        1100.0 * 0.002 * 0.004,
        max_relative = 1e-12
    );
    assert!(guarded.com_B().x > bare.com_B().x);
}
