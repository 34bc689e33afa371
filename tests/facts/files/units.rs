//! What people in the trade write, and what they read.

use approx::assert_relative_eq;
use backlift::files::air::air;
use backlift::units::Quantity::{Angle, Force, Length, Mass, Speed, Time};
use backlift::units::{
    Quantity, Units, decimals, parse, share, spoken, spoken_ball, spoken_stature,
};
use backlift::workshop::season::air::{CELSIUS, HUMIDITY};
use proptest::prelude::*;

/// 63 in are 1.6002 m and 71.5 in 1.8161 m, the nearest whole inch is said; a mile is 1609.344 m.
#[test]
fn statures_are_said_in_feet_and_centimetres_and_balls_in_both_speeds() {
    let plain = |it: String| it.replace('\u{2009}', " ");
    assert_eq!(plain(spoken_stature(1.6002, Units::Trade)), "5 ft 3 in (160 cm)");
    assert_eq!(plain(spoken_stature(1.8250, Units::Trade)), "6 ft 0 in (182 cm)");
    assert_eq!(plain(spoken_stature(1.6002, Units::Si)), "1.60 m");
    assert_eq!(plain(spoken_ball(102.0 / 3.6, 0.3, Units::Trade)), "102 km/h (63 mph)");
    assert_eq!(plain(spoken_ball(28.33, 0.1, Units::Si)), "28.3 m/s");
}

/// Conversions worked by hand from the exact definitions: pound 0.45359237 kg, inch 25.4 mm,
/// kilogram-force 9.80665 N, mile 1609.344 m.
#[test]
fn spellings_of_the_trade_are_understood() {
    let table: &[(Quantity, &str, f64)] = &[
        (Mass, "2 lb 9 oz", 41.0 * 0.028_349_523_125),
        (Mass, "2lb9oz", 41.0 * 0.028_349_523_125),
        (Mass, "2 lb 9.5 oz", 41.5 * 0.028_349_523_125),
        (Mass, "2lbs. 9½ oz.", 41.5 * 0.028_349_523_125),
        (Mass, "2 lb 9 1/2 oz", 41.5 * 0.028_349_523_125),
        (Mass, "2 lb, 9 oz", 41.0 * 0.028_349_523_125),
        (Mass, "41 oz", 41.0 * 0.028_349_523_125),
        (Mass, "1.16 kg", 1.16),
        (Mass, "1160 g", 1.16),
        (Mass, "1160G", 1.16),
        (Length, "33.5 in", 0.8509),
        (Length, "33 1/2 in", 0.8509),
        (Length, "33.5\"", 0.8509),
        (Length, "67/2 in", 0.8509),
        (Length, "540 mm", 0.54),
        (Length, "54 cm", 0.54),
        (Length, "5 ft 3 in", 1.6002),
        (Length, "5' 3\"", 1.6002),
        (Length, "1.75 m", 1.75),
        (Length, "1 m 75 cm", 1.75),
        (Length, "22 yd", 20.1168),
        (Force, "24 kg", 235.3596),
        (Force, "24 kgf", 235.3596),
        (Force, "235 N", 235.0),
        (Speed, "90 km/h", 25.0),
        (Speed, "56 mph", 25.034_24),
        (Speed, "25 m/s", 25.0),
        (Time, "0.2 s", 0.2),
        (Time, "200 ms", 0.2),
        (Time, "15.3 s", 15.3),
        (Time, "1 min 10 s", 70.0),
        (Angle, "180 deg", std::f64::consts::PI),
        (Angle, "5°", std::f64::consts::PI / 36.0),
        (Mass, "−1 kg", -1.0),
        (Mass, "1.16\u{2009}kg", 1.16),
    ];
    for (quantity, text, si) in table {
        let value = parse(*quantity, text).unwrap_or_else(|fault| panic!("{text}: {fault}"));
        assert_relative_eq!(value, *si, max_relative = 1e-12); // rounding only
    }
}

#[test]
fn what_is_no_quantity_is_refused_with_its_mend() {
    // Text, part of the message, part of the mend.
    let table: &[(Quantity, &str, &str, &str)] = &[
        (Mass, "", "nothing is written", "2 lb 9 oz"),
        (Mass, "   ", "nothing is written", "2 lb 9 oz"),
        (Mass, "1.16", "1.16 has no unit", "\"1.16 kg\""),
        (Length, "33.5", "33.5 has no unit", "33.5 in"),
        (Mass, "NaN kg", "\"NaN\" is not a number", "1.16 kg"),
        (Mass, "inf", "\"inf\" is not a number", "1.16 kg"),
        (Mass, "heavy", "\"heavy\" is not a number", "1.16 kg"),
        (Mass, "kg 1", "\"kg\" is not a number", "1.16 kg"),
        (Mass, "1.1.6 kg", "is not a number", "1.16 kg"),
        (Mass, "1/0 kg", "is not a number", "1.16 kg"),
        (Mass, "1,16 kg", "\"1,16\" has a comma", "with a point"),
        (Mass, "54 cm", "\"cm\" measures a length, not a weight", "1160 g"),
        (Length, "2 lb", "\"lb\" measures a weight, not a length", "540 mm"),
        (Speed, "0.2 s", "\"s\" measures a time, not a speed", "90 km/h"),
        (Mass, "2 lbd", "\"lbd\" is not a unit of weight", "did you mean \"lb\"?"),
        (Force, "3 bananas", "\"bananas\" is not a unit of grip force", "24 kg"),
        (Mass, "9 oz 2 lb", "larger unit to the smaller", "2 lb 9 oz"),
        (Mass, "2 lb 9", "has no unit", "2 lb 9 oz"),
        (Length, "5 ft 3 ft", "larger unit to the smaller", "5 ft 3 in"),
    ];
    for (quantity, text, message, mend) in table {
        let fault = parse(*quantity, text).expect_err(text);
        assert!(fault.to_string().contains(message), "{text:?}: {fault}");
        let offered = fault.mend(*quantity);
        assert!(offered.contains(mend), "{text:?}: {offered}");
    }
    let huge = format!("{} kg", "9".repeat(400));
    assert!(parse(Mass, &huge).unwrap_err().to_string().ends_with("is not a number"));
}

#[test]
fn every_spelling_that_a_mend_offers_is_accepted() {
    for quantity in [Mass, Length, Force, Speed, Time, Angle] {
        for text in quantity.accepted().split('"').skip(1).step_by(2) {
            assert!(parse(quantity, text).is_ok(), "{text}");
        }
    }
}

#[test]
fn figures_are_printed_with_as_many_digits_as_the_doubt_allows() {
    let thin = |text: &str| text.replace('~', "\u{2009}");
    assert_eq!(spoken(Mass, 1.162_33, 0.0, Units::Trade), thin("2~lb 9.00~oz"));
    assert_eq!(spoken(Mass, 1.162_33, 0.005, Units::Trade), thin("2~lb 9.0~oz"));
    assert_eq!(spoken(Mass, 1.162_33, 0.03, Units::Trade), thin("2~lb 9~oz"));
    assert_eq!(spoken(Mass, 1.162_33, 0.005, Units::Si), thin("1.162~kg"));
    assert_eq!(spoken(Mass, 1.162_33, 0.05, Units::Si), thin("1.16~kg"));
    assert_eq!(spoken(Length, 0.8509, 0.001, Units::Trade), thin("33.50~in"));
    assert_eq!(spoken(Speed, 25.0, 0.3, Units::Trade), thin("90~km/h"));
    assert_eq!(spoken(Speed, -0.61, 0.02, Units::Si), thin("−0.61~m/s"));
    assert_eq!(spoken(Speed, -0.001, 0.02, Units::Si), thin("0.00~m/s"));
    assert_eq!(decimals(0.01, 6), 2);
    assert_eq!(decimals(0.009, 6), 3);
    assert_eq!(decimals(40.0, 6), 0);
}

#[test]
fn sixteen_ounces_are_printed_as_a_pound() {
    let just_below_kg = 3.0 * 0.453_592_37 - 1e-6;
    assert_eq!(spoken(Mass, just_below_kg, 0.0, Units::Trade), "3\u{2009}lb 0.00\u{2009}oz");
}

proptest! {
    /// Printed without doubt, each trade and SI figure keeps at least these last digits.
    #[test]
    fn what_is_printed_is_read_back(si in 1e-3..50.0f64, sd in 0.0..0.5f64) {
        for quantity in [Mass, Length, Force, Speed, Time, Angle] {
            for units in [Units::Trade, Units::Si] {
                for sd in [0.0, sd] {
                    let text = spoken(quantity, si, sd, units);
                    let back = parse(quantity, &text).unwrap();
                    // Half the last digit of the coarsest unit printed, or half of what the doubt lost.
                    let coarsest = match quantity {
                        Force => 0.1 * 9.80665,
                        Angle => 0.1_f64.to_radians(),
                        Speed => 0.01,
                        _ => 0.001,
                    };
                    prop_assert!((back - si).abs() <= 0.5 * sd.max(coarsest) + 1e-12, "{si} sd {sd}: {text}");
                }
            }
        }
    }

    #[test]
    fn no_text_makes_the_reader_fall_over(text in "\\PC{0,40}") {
        for quantity in [Mass, Length, Force, Speed, Time, Angle] {
            if let Ok(value) = parse(quantity, &text) {
                prop_assert!(value.is_finite());
            }
        }
    }

    #[test]
    fn pounds_and_ounces_add_up(pounds in 0u32..8, ounces in 0u32..16) {
        let text = format!("{pounds} lb {ounces} oz");
        let expected = f64::from(16 * pounds + ounces) * 0.028_349_523_125;
        prop_assert!((parse(Mass, &text).unwrap() - expected).abs() < 1e-12);
    }
}

/// Whatever whole percentage is a bound somewhere, its own percentage lies within.
#[test]
fn every_whole_percentage_is_the_share_with_its_two_decimals() {
    for percent in -100..=300 {
        let decimal: f64 = format!("{:.2}", f64::from(percent) / 100.0).parse().unwrap();
        assert_eq!(share(&format!("{percent} %")), Some(decimal));
    }
}

#[test]
fn the_bounds_of_an_air_are_airs_in_either_scale() {
    for celsius in CELSIUS {
        for humidity in HUMIDITY {
            let fahrenheit = 1.8 * celsius + 32.0;
            for warmth in [format!("{celsius} C"), format!("{fahrenheit} F")] {
                let written = format!("{warmth}, {:.0} %", 100.0 * humidity);
                assert!(air(&written).is_ok(), "{written}: {:?}", air(&written));
            }
        }
    }
    assert!(air("18 C, 95.1 %").is_err() && air("30.1 F, 50 %").is_err());
}
