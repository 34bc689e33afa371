//! Facts about the stage `measurement`.

use backlift::measurement::plan::Bowling;

/// Law 6: 22 yards; Harwood, King & Yeadon 2017 (ISBS 35): 16 yards under 7 and 21 under 13 (England, about
/// 2017). No step where an age between them is fitted.
#[test]
fn published_pitch_lengths_are_usual_and_grow_evenly_between() {
    let length = |age_y: f64| Bowling::usual_at(age_y).pitch_length_m;
    assert!([5.0, 6.0].into_iter().all(|age| (length(age) - 14.63).abs() < 1e-9));
    assert!((length(12.0) - 19.2).abs() < 1e-9 && (length(12.9) - 19.2).abs() < 1e-9);
    assert!((length(13.0) - 20.12).abs() < 1e-9 && (length(30.0) - 20.12).abs() < 1e-9);
    let grows = (60..120)
        .map(|tenth| length(f64::from(tenth + 1) / 10.0) - length(f64::from(tenth) / 10.0));
    assert!(grows.into_iter().all(|m| (m - 0.1 * 4.57 / 6.0).abs() < 1e-9));
}
