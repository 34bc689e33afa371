use backlift::workshop::season::uptake::{
    DAY_S, OIL_KEEPS_OUT, bare_share, mean_thickness_m, oil_keeps_out, share, time_constant_s,
};

/// Half of the way is gone at 0.049 L²/D. Source: Crank, The Mathematics of Diffusion (1956), plane sheet
/// (from memory).
#[test]
fn published_half_time_of_a_plane_sheet_comes_back() {
    let (thickness_m, diffusion_m2_s) = (0.04, 1e-10);
    let half_s = 0.049 * thickness_m * thickness_m / diffusion_m2_s;
    let gone = bare_share(half_s, time_constant_s(thickness_m, diffusion_m2_s));
    assert!((gone - 0.5).abs() < 0.001, "{gone}");
}

/// The same sheet by finite differences: 200 cells, faces held at the new moisture.
#[test]
fn a_sheet_marched_in_small_steps_goes_the_same_way() {
    const CELLS: usize = 200;
    let (thickness_m, diffusion_m2_s) = (0.04, 1e-10);
    let cell_m = thickness_m / CELLS as f64;
    let step_s = 0.4 * cell_m * cell_m / diffusion_m2_s;
    let mut moisture = [0.0_f64; CELLS];
    let constant_s = time_constant_s(thickness_m, diffusion_m2_s);
    let mut asked = [0.02, 0.1, 0.5, 1.0, 2.0].iter().map(|it| it * constant_s).peekable();
    for step in 1.. {
        let before = moisture;
        for i in 0..CELLS {
            // Half a cell lies between a face and the middle of the first cell.
            let left = if i == 0 { 2.0 * (1.0 - before[0]) } else { before[i - 1] - before[i] };
            let right =
                if i + 1 == CELLS { 2.0 * (1.0 - before[i]) } else { before[i + 1] - before[i] };
            moisture[i] += 0.4 * (left + right);
        }
        let time_s = f64::from(step) * step_s;
        match asked.peek() {
            None => break,
            Some(&next) if time_s >= next => {
                let marched = moisture.iter().sum::<f64>() / CELLS as f64;
                let ours = bare_share(time_s, constant_s);
                assert!((marched - ours).abs() < 0.002, "{time_s}: {marched} and {ours}");
                asked.next();
            }
            Some(_) => {}
        }
    }
}

#[test]
fn the_root_of_time_and_the_series_meet() {
    let (before, after) = (bare_share(0.05 - 1e-9, 1.0), bare_share(0.05 + 1e-9, 1.0));
    assert!((before - after).abs() < 1e-7, "{before} {after}");
}

/// Wood Handbook (2010), Table 16-3, linseed oil, three coats: 33 % after a day, 2 % after seven, nothing
/// after fourteen (read on a page copy).
#[test]
fn published_linseed_oil_keeps_vapour_out_for_days_only() {
    for (days, kept_out) in [(1.0, 0.33), (7.0, 0.02), (14.0, 0.0)] {
        assert!((oil_keeps_out(days * DAY_S) - kept_out).abs() < 1e-12, "{days}");
    }
    assert_eq!(OIL_KEEPS_OUT.len(), 3);
}

#[test]
fn an_oiled_bat_is_never_ahead_of_a_bare_one_and_neither_turns_back() {
    let constant_s = 13.0 * DAY_S;
    let at = |hours: u32, oiled| share(f64::from(hours) * 3600.0, constant_s, oiled);
    for hours in 1..24 * 60 {
        assert!(at(hours, true) <= at(hours, false));
        for oiled in [true, false] {
            let (before, now) = (at(hours - 1, oiled), at(hours, oiled));
            assert!(now >= before && now < 1.0 + 1e-12, "{hours} h: {before} {now}");
        }
    }
}

/// A blade that is a box of 100 by 40 mm is 40 mm thick.
#[test]
fn the_mean_thickness_of_a_box_is_its_depth() {
    let shape = super::pressing::boxed([0.1, 0.04]);
    assert!((mean_thickness_m(&shape) - 0.04).abs() < 1e-12);
}
