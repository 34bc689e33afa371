//! Shares as people write them.

/// Reads "0.9" or "90 %"; what a share may be is for the caller.
pub fn share(written: &str) -> Option<f64> {
    let written = written.trim();
    let (number, whole) = match written.strip_suffix('%') {
        Some(percent) => (percent.trim(), 100.0),
        None => (written, 1.0),
    };
    // Divided, not multiplied by 0.01: 95 % is then the same number as 0.95, and no bound is missed by a hair.
    number.parse::<f64>().ok().filter(|it| it.is_finite()).map(|it| it / whole)
}
