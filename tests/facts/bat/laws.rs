use backlift::bat::laws::{Dimension, GaugedSize, Verdict, check_size};

use super::{limits, sizes};

fn gauged(length_m: f64, width_m: f64, depth_m: f64, edge_m: f64) -> GaugedSize {
    GaugedSize {
        length_m: Some(length_m),
        width_m: Some(width_m),
        depth_m: Some(depth_m),
        edge_m: Some(edge_m),
    }
}

/// Laws of Cricket (2017 Code), Law 5 and Appendix B, read second-hand: 96.52, 10.8, 6.7, 4.0 cm.
#[test]
fn published_limits_of_the_2017_code_are_the_limits_used() {
    let limits = limits();
    let cm = [limits.length_m, limits.width_m, limits.depth_m, limits.edge_m].map(|it| 100.0 * it);
    for (ours, law) in cm.into_iter().zip([96.52, 10.8, 6.7, 4.0]) {
        assert!((ours - law).abs() < 1e-9, "{ours} cm, the Law says {law} cm");
    }
    assert_eq!(limits.handle_share, 0.52);
}

/// The Law prints 38 in, 4.25 in, 2.64 in and 1.56 in as well: a bat at exactly those is legal.
#[test]
fn a_bat_at_the_printed_inches_is_legal_and_half_a_millimetre_more_is_not() {
    let inch = 0.0254;
    let at_limit = [38.0 * inch, 4.25 * inch, 2.64 * inch, 1.56 * inch];
    let check = |s: [f64; 4]| check_size(&gauged(s[0], s[1], s[2], s[3]), &limits());
    assert_eq!(check(at_limit).verdict, Verdict::Yes);
    let limit = [0.9652, 0.108, 0.067, 0.040];
    let names = [Dimension::Length, Dimension::Width, Dimension::Depth, Dimension::Edge];
    for (i, name) in names.into_iter().enumerate() {
        let mut over = limit;
        over[i] += 0.0005;
        let found = check(over);
        assert_eq!(found.verdict, Verdict::No);
        assert_eq!(found.breaches.len(), 1);
        assert_eq!(found.breaches[0].dimension, name);
        assert_eq!(found.breaches[0].limit_m, limit[i]);
    }
}

#[test]
fn what_was_not_measured_is_named_and_never_called_legal() {
    let part = GaugedSize { edge_m: None, ..gauged(0.85, 0.107, 0.06, 0.0) };
    let found = check_size(&part, &limits());
    assert_eq!(found.verdict, Verdict::NotMeasured);
    assert_eq!(found.not_measured, [Dimension::Edge]);
    assert_eq!(check_size(&GaugedSize::default(), &limits()).not_measured.len(), 4);
    let wide = GaugedSize { edge_m: None, ..gauged(0.85, 0.11, 0.06, 0.0) };
    assert_eq!(check_size(&wide, &limits()).verdict, Verdict::No);
}

#[test]
fn the_edition_stands_beside_the_verdict_and_says_that_the_newer_was_not_seen() {
    let edition = check_size(&GaugedSize::default(), &limits()).edition;
    assert!(
        edition.contains("2017") && edition.contains("2026-10-01") && edition.contains("not seen")
    );
}

#[test]
fn every_reference_bat_is_legal() {
    for size in sizes() {
        let shape = &size.reference;
        let blade = &shape.blade;
        let depth_m = blade.deepest().unwrap().depth_m;
        let found = check_size(
            &gauged(shape.length_m(), blade.width_m(), depth_m, blade.thickest_edge_m()),
            &limits(),
        );
        assert_eq!(found.verdict, Verdict::Yes, "{}: {:?}", size.name, found.breaches);
        assert!(shape.handle.length_m / shape.length_m() < limits().handle_share, "{}", size.name);
    }
}
