//! Quantities as people read them: trade or SI, with as many digits as the doubt allows.

use super::{INCH_M, KILOGRAM_FORCE_N, MILE_PER_HOUR_M_S, POUND_KG, Quantity};

/// Which units to print in.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Units {
    /// Pounds and ounces, inches, kilograms of grip, km/h.
    #[default]
    Trade,
    /// Kilograms, metres, newtons, m/s.
    Si,
}

/// Thin space (U+2009), between a number and its unit.
pub const THIN: char = '\u{2009}';

/// Decimals that a doubt of one standard deviation allows: the last digit is worth no more than `sd`.
/// No doubt (zero) allows `most`.
pub fn decimals(sd: f64, most: usize) -> usize {
    if !(sd > 0.0 && sd.is_finite()) {
        return most;
    }
    // A hair's breadth keeps a doubt of exactly 0.01 at two decimals.
    let wanted = libm::ceil(-libm::log10(sd) - 1e-9);
    (wanted.max(0.0) as usize).min(most)
}

/// A number with the true minus sign; nothing is printed as minus zero.
pub fn number(value: f64, decimals: usize) -> String {
    let text = format!("{value:.decimals$}");
    match text.strip_prefix('-') {
        Some(zero) if zero.chars().all(|c| matches!(c, '0' | '.')) => zero.to_owned(),
        Some(positive) => format!("−{positive}"),
        None => text,
    }
}

/// One quantity in words and figures; `si` and `sd` (one standard deviation, zero if not in doubt)
/// in SI. What is printed is read back by [`super::parse`] to half its last digit.
pub fn spoken(quantity: Quantity, si: f64, sd: f64, units: Units) -> String {
    let plain = |unit: &str, size: f64, most: usize| {
        format!("{}{THIN}{unit}", number(si / size, decimals(sd / size, most)))
    };
    match (quantity, units) {
        (Quantity::Mass, Units::Trade) => pounds_and_ounces(si, sd),
        (Quantity::Mass, Units::Si) => plain("kg", 1.0, 3),
        (Quantity::Length, Units::Trade) => plain("in", INCH_M, 2),
        (Quantity::Length, Units::Si) => plain("m", 1.0, 4),
        (Quantity::Force, Units::Trade) => plain("kg", KILOGRAM_FORCE_N, 1),
        (Quantity::Force, Units::Si) => plain("N", 1.0, 1),
        (Quantity::Speed, Units::Trade) => plain("km/h", 1.0 / 3.6, 2),
        (Quantity::Speed, Units::Si) => plain("m/s", 1.0, 2),
        (Quantity::Time, _) => plain("s", 1.0, 3),
        (Quantity::Density, _) => plain("kg/m³", 1.0, 0),
        (Quantity::Angle, _) => plain("deg", std::f64::consts::PI / 180.0, 1),
    }
}

/// A stature: "5 ft 3 in (160 cm)", or "1.60 m".
pub fn spoken_stature(stature_m: f64, units: Units) -> String {
    match units {
        Units::Trade => {
            let inches = libm::round(stature_m / INCH_M);
            let feet = libm::floor(inches / 12.0);
            format!(
                "{feet:.0}{THIN}ft {:.0}{THIN}in ({:.0}{THIN}cm)",
                inches - 12.0 * feet,
                100.0 * stature_m
            )
        }
        Units::Si => format!("{stature_m:.2}{THIN}m"),
    }
}

/// Speed of a ball in a sentence: "102 km/h (63 mph)", or "28.3 m/s"; `sd` as in [`spoken`].
pub fn spoken_ball(speed_m_s: f64, sd_m_s: f64, units: Units) -> String {
    let speed = spoken(Quantity::Speed, speed_m_s, sd_m_s, units);
    match units {
        Units::Trade => format!("{speed} ({}{THIN}mph)", number(speed_m_s / MILE_PER_HOUR_M_S, 0)),
        Units::Si => speed,
    }
}

/// "2 lb 9.5 oz": ounces rounded first, so that sixteen of them never stand beside the pounds.
fn pounds_and_ounces(mass_kg: f64, sd_kg: f64) -> String {
    let ounce_kg = POUND_KG / 16.0;
    let digits = decimals(sd_kg / ounce_kg, 2);
    let step = [1.0, 10.0, 100.0][digits.min(2)];
    let ounces = libm::round(mass_kg.abs() / ounce_kg * step) / step;
    let sign = if mass_kg < 0.0 && ounces > 0.0 { "−" } else { "" };
    let pounds = libm::floor(ounces / 16.0);
    let rest = number(ounces - 16.0 * pounds, digits);
    if pounds == 0.0 {
        return format!("{sign}{rest}{THIN}oz");
    }
    format!("{sign}{pounds:.0}{THIN}lb {rest}{THIN}oz")
}
