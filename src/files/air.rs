//! Air as people write it: temperature and relative humidity.

use super::document::values::ReadText;
use crate::workshop::season::{Air, AirFault};

/// Reads `"18 C, 55 %"`; the comma and the degree sign may be left out, and °F are known too.
pub fn air(text: &str) -> ReadText<Air> {
    let unread = || {
        let message = format!("{:?} is not a temperature and a humidity", text.trim());
        (message, "write it like \"18 C, 55 %\" or \"64 F, 55 %\"".to_owned())
    };
    let (warmth, rest) = number(text).ok_or_else(unread)?;
    let rest = rest.trim_start_matches(['°', 'º']).trim_start();
    let scale = rest.chars().next().ok_or_else(unread)?;
    let celsius = match scale.to_ascii_lowercase() {
        'c' => warmth,
        // To a billionth, so that 30.2 F is −1 C and no bound is missed by a hair.
        'f' => libm::round(1e9 * (warmth - 32.0) / 1.8) / 1e9,
        _ => return Err(unread()),
    };
    let rest = rest.get(1..).unwrap_or_default().trim_start().trim_start_matches([',', ';']);
    let (percent, rest) = number(rest).ok_or_else(unread)?;
    let rest = rest.strip_prefix('%').ok_or_else(unread)?.trim();
    if !["", "rh", "r.h.", "humidity"].contains(&rest.to_lowercase().as_str()) {
        return Err(unread());
    }
    Air::new(celsius, percent / 100.0).map_err(|fault| {
        let help = match fault {
            AirFault::Temperature { .. } => "give the mean of a month, not the hottest hour",
            AirFault::Humidity { .. } => {
                "give the mean of some weeks; a bat in air damper than 95 % grows wet, not heavy"
            }
        };
        (fault.to_string(), help.to_owned())
    })
}

/// A decimal number at the start, and what follows it.
fn number(text: &str) -> Option<(f64, &str)> {
    let text = text.trim_start();
    let sign = text.chars().next().filter(|it| "-−+".contains(*it));
    let digits = text.get(sign.map_or(0, char::len_utf8)..)?;
    let end = digits.find(|c: char| !(c.is_ascii_digit() || c == '.')).unwrap_or(digits.len());
    let value: f64 = digits.get(..end)?.parse().ok()?;
    let value = if matches!(sign, Some('-' | '−')) { -value } else { value };
    Some((value, digits.get(end..)?.trim_start()))
}
