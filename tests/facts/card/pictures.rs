use super::sample::{arc, innings, map};
use backlift::drawing::contour::Field;
use backlift::drawing::palette::{Colour, DARK, LIGHT, PRINT, cividis};
use backlift::drawing::type_setting::{Lettering, Size, tree};
use backlift::drawing::{arc as arc_drawing, innings_chart, map as map_drawing, words};

/// Relative luminance, 0 to 1. Source: WCAG 2.2, definition of relative luminance.
fn luminance(Colour(channels): Colour) -> f64 {
    let [r, g, b] = channels.map(|channel| {
        let c = f64::from(channel) / 255.0;
        if c <= 0.04045 { c / 12.92 } else { libm::pow((c + 0.055) / 1.055, 2.4) }
    });
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

/// Contrast of two colours, 1 to 21. Source: WCAG 2.2, definition of contrast ratio.
fn contrast(one: Colour, other: Colour) -> f64 {
    let (a, b) = (luminance(one), luminance(other));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

/// WCAG 2.2: black on white has the greatest contrast, 21 to 1; text needs 4.5, lines and marks 3.
#[test]
fn published_contrast_suffices_for_every_text_and_every_bat() {
    assert!((contrast(Colour([0; 3]), Colour([255; 3])) - 21.0).abs() < 1e-9);
    for theme in [LIGHT, DARK, PRINT] {
        for text in [theme.ink, theme.quiet] {
            assert!(contrast(text, theme.ground) >= 4.5 && contrast(text, theme.panel) >= 4.5);
        }
        for bat in theme.bats {
            assert!(contrast(bat, theme.ground) >= 3.0, "{bat}: {}", contrast(bat, theme.ground));
        }
    }
}

#[test]
fn the_maps_scale_grows_lighter_all_the_way_so_that_grey_paper_keeps_it() {
    let shades: Vec<f64> = (0..=40).map(|k| luminance(cividis(f64::from(k) / 40.0))).collect();
    assert!(shades.windows(2).all(|it| it[0] < it[1]), "{shades:?}");
}

/// Law 5 gives its limits in both systems: 38 in is 96.52 cm, 4.25 in is 10.8 cm.
#[test]
fn published_lengths_of_law_5_print_in_inches_as_the_law_writes_them() {
    assert_eq!(words::joined(&words::inches(0.9652)), "38.00\u{2009}in");
    assert_eq!(words::joined(&words::inches(0.108)), "4.25\u{2009}in");
}

/// The pound is 0.45359237 kg by agreement (1959), so 2 lb 9 oz is 1.162330 kg.
#[test]
fn published_pounds_and_ounces_carry_over() {
    assert_eq!(words::joined(&words::pounds_ounces(1.162_330)), "2\u{2009}lb 9.0\u{2009}oz");
    assert_eq!(words::joined(&words::pounds_ounces(0.907_18)), "2\u{2009}lb 0.0\u{2009}oz");
}

#[test]
fn a_negative_number_has_a_minus_sign_and_zero_has_none() {
    assert_eq!(words::number(-0.34, 1), "\u{2212}0.3");
    assert_eq!(words::number(-0.04, 1), "0.0");
}

#[test]
fn level_lines_and_bands_of_a_plane_are_exact() {
    let (x, y) = ([0.0, 1.0, 2.5, 4.0], [0.0, 1.0, 3.0]);
    let value: Vec<Option<f64>> =
        y.iter().flat_map(|b| x.iter().map(move |a| Some(a + 2.0 * b))).collect();
    let field = Field { x: &x, y: &y, value: &value };
    let lines = field.lines(5.0);
    assert_eq!(lines.len(), 1, "one unbroken line");
    for [a, b] in lines.iter().flatten() {
        assert!((a + 2.0 * b - 5.0).abs() < 1e-12);
    }
    let area: f64 = field.band(2.0, 5.0).iter().map(|it| polygon_area(it)).sum();
    // Between x + 2y = 2 and x + 2y = 5 inside 4 by 3: 1 to its left below 2; below 5 a 5 by 2.5
    // triangle less the half unit beyond x = 4.
    assert!((area - (6.25 - 0.25 - 1.0)).abs() < 1e-12, "{area}");
}

fn polygon_area(points: &[[f64; 2]]) -> f64 {
    let nexts = points.iter().cycle().skip(1);
    points.iter().zip(nexts).map(|(a, b)| 0.5 * (a[0] * b[1] - b[0] * a[1])).sum::<f64>().abs()
}

#[test]
fn a_place_without_a_value_takes_its_neighbourhood_off_the_map() {
    let (x, y) = ([0.0, 1.0, 2.0], [0.0, 1.0]);
    let value = [Some(1.0), Some(1.0), Some(1.0), Some(1.0), Some(1.0), None];
    let field = Field { x: &x, y: &y, value: &value };
    let area: f64 = field.band(0.0, 2.0).iter().map(|it| polygon_area(it)).sum();
    assert!((area - 1.5).abs() < 1e-12, "{area}");
}

#[test]
fn every_picture_is_drawn_by_day_and_by_night_with_the_same_bytes_each_time() {
    for theme in [LIGHT, DARK] {
        let all = || {
            [
                map_drawing::svg(&map(), &theme, 900.0, 620.0).unwrap(),
                arc_drawing::svg(&arc(), &theme, 1000.0, 520.0),
                innings_chart::svg(&innings(), &theme, 1200.0, 420.0),
            ]
        };
        assert_eq!(all(), all());
        for svg in all() {
            assert!(!svg.contains("NaN") && !svg.contains("inf"));
            assert!(tree(&svg).is_ok());
        }
    }
}

#[test]
fn a_map_whose_values_do_not_fill_its_grid_is_refused() {
    let mut map = map();
    map.value.pop();
    assert!(map_drawing::svg(&map, &LIGHT, 900.0, 620.0).is_err());
}

/// But for the semi-bold 4, which Inter 3.19 itself makes 0.16 % narrower.
#[test]
fn the_digits_are_equally_wide() {
    for lettering in
        [Lettering::new(Size::Big, LIGHT.ink), Lettering::new(Size::Big, LIGHT.ink).bold()]
    {
        let widths: Vec<f64> =
            "0123456789".chars().map(|it| lettering.width(&it.to_string())).collect();
        assert!(
            widths[0] > 10.0 && widths.iter().all(|it| (it / widths[0] - 1.0).abs() < 0.002),
            "{widths:?}"
        );
    }
}
