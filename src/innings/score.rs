//! A score in words.

/// "1 run", "50 runs".
pub fn runs_words(runs: f64) -> String {
    let noun = if runs.round() == 1.0 { "run" } else { "runs" };
    format!("{runs:.0} {noun}")
}
