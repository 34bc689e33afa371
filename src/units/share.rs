//! Shares as people write them.

/// Reads "0.9" or "90 %"; what a share may be is for the caller.
pub fn share(written: &str) -> Option<f64> {
    let written = written.trim();
    let (number, size) = match written.strip_suffix('%') {
        Some(percent) => (percent.trim(), 0.01),
        None => (written, 1.0),
    };
    number.parse::<f64>().ok().filter(|it| it.is_finite()).map(|it| it * size)
}
