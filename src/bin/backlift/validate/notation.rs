//! Figures of a row as they are printed.

use backlift::units::THIN;
use backlift::validation::{Accept, Row};

use crate::figure::{number, percent};

/// What stands where there is no figure.
const NONE: &str = "–";

pub struct Cells {
    /// Published or reference value with its spread and unit.
    pub expected: String,
    /// Ours.
    pub ours: String,
    /// Ours less theirs, with its sign.
    pub difference: String,
}

/// Writes a row's figures with four digits, a miss of nought and the difference with two.
pub fn cells(row: &Row) -> Cells {
    let unit = unit(row);
    let size = row.expected.unwrap_or(0.0).abs().max(row.ours.unwrap_or(0.0).abs());
    let digits = if row.expected == Some(0.0) { 2 } else { 4 };
    let told = |it: Option<f64>| it.map(|it| of_size(it, size, digits));
    let spread = row.sd.map_or(String::new(), |it| format!(" ± {}", of_size(it, size, 4)));
    let difference = row.difference().map(|it| {
        let text = of_size(it, it.abs(), 2);
        let zero = text.chars().all(|c| matches!(c, '0' | '.' | '−'));
        if it > 0.0 && !zero { format!("+{text}") } else { text }
    });
    Cells {
        expected: told(row.expected).map_or(NONE.into(), |it| it + &spread + &unit),
        ours: told(row.ours).unwrap_or_else(|| NONE.into()),
        difference: difference.unwrap_or_else(|| NONE.into()),
    }
}

fn unit(row: &Row) -> String {
    match row.unit {
        "" => String::new(),
        "°" => "°".to_owned(),
        unit => format!("{THIN}{unit}"),
    }
}

/// The difference with its unit, and as a share of what was expected.
pub fn off_by(row: &Row) -> String {
    let off = cells(row).difference + &unit(row);
    match (row.difference(), row.expected) {
        (Some(by), Some(of)) if of != 0.0 && by.is_finite() => {
            let plus = if by > 0.0 { "+" } else { "" };
            format!("{off} ({plus}{})", percent(by / of.abs(), 1))
        }
        _ => off,
    }
}

/// What a row had to keep to, in words.
pub fn accepted(row: &Row) -> Option<String> {
    let told = |it: f64| of_size(it, it.abs(), 2) + &unit(row);
    Some(match row.accept? {
        Accept::Share(share) => {
            format!("within {}{THIN}%", of_size(100.0 * share, 100.0 * share, 2))
        }
        Accept::Within(most) => format!("within {}", told(most)),
        Accept::Deviations(count) => format!("within {count} standard deviations"),
        Accept::Between(low, high) => format!("from {} to {}", told(low), told(high)),
        Accept::AtMost => "not above".to_owned(),
        Accept::AtLeast => "not below".to_owned(),
    })
}

/// Sizes below this are written with a power of ten.
const SMALL: f64 = 1e-4;

/// A number with as many decimals as give a value of that size so many digits, trailing noughts dropped.
fn of_size(value: f64, size: f64, digits: i32) -> String {
    if !value.is_finite() {
        return "not a number".into();
    }
    if size == 0.0 || value == 0.0 {
        return "0".into();
    }
    if value.abs() < SMALL {
        let text = format!("{value:.0e}").replace("e-", "e−");
        return match text.strip_prefix('-') {
            Some(positive) => format!("−{positive}"),
            None => text,
        };
    }
    let power = size.log10().floor() as i32;
    let decimals = (digits - 1 - power).clamp(0, 8) as usize;
    let text = number(value, decimals);
    match text.contains('.') {
        true => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        false => text,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(expected: f64, ours: f64) -> Cells {
        let accept = Accept::Share(0.01);
        cells(&Row::compared("", "", "m/s", expected, ours, accept))
    }

    #[test]
    fn figures_have_four_digits_and_differences_two() {
        let it = row(15.79123, 15.92345);
        assert_eq!((it.expected.as_str(), it.ours.as_str()), ("15.79\u{2009}m/s", "15.92"));
        assert_eq!(it.difference, "+0.13");
        assert_eq!(row(1234.5, 1200.0).difference, "−34");
    }

    #[test]
    fn a_disagreement_tells_its_size_in_the_unit_and_as_a_share() {
        let accept = Accept::Share(0.005);
        let row = Row::compared("", "", "m/s", 20.0, 19.5, accept);
        assert_eq!(off_by(&row), "−0.5\u{2009}m/s (−2.5\u{2009}%)");
        assert_eq!(accepted(&row).as_deref(), Some("within 0.5\u{2009}%"));
    }

    #[test]
    fn what_is_tiny_keeps_its_power_of_ten_and_nought_is_nought() {
        let it = row(0.0, 2.4e-7);
        assert_eq!((it.expected.as_str(), it.ours.as_str()), ("0\u{2009}m/s", "2e−7"));
        assert_eq!(it.difference, "+2e−7");
        assert_eq!(row(2.0, 2.0).difference, "0");
    }
}
