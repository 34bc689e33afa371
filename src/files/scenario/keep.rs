//! A calibration put into the text of a scenario; everything else stays as it was written.

use std::path::Path;

use super::super::document::still_holds;
use super::super::fault::{Fault, Faults};
use super::super::outline::Outline;
use super::super::save::over;
use super::SCENARIO;
use crate::measurement::nets::{Kept, PART_COUNT};

/// The text with this calibration in place of the old one, or after the player. None if the text has
/// no player.
pub fn with_calibration(text: &str, kept: &Kept) -> Option<String> {
    let outline = Outline::of(text);
    let part = part(kept);
    if let Some(old) = outline.find("calibration") {
        let span = old.whole();
        return Some(format!("{}{part}{}", text.get(..span.start)?, text.get(span.end..)?));
    }
    let end = outline.find("player")?.whole().end;
    let (before, after) = (text.get(..end)?, text.get(end..)?);
    Some(match after.strip_prefix(',') {
        Some(after) => format!("{before},\n\n    {part},{after}"),
        None => format!("{before},\n\n    {part}{after}"),
    })
}

/// Writes over a scenario's file that held `was` when the work began.
///
/// # Errors
/// If it was changed meanwhile, which must not be lost, or cannot be written.
pub fn over_unchanged(path: &Path, was: &str, text: &str) -> Result<(), Faults> {
    if !still_holds(path, &SCENARIO, was)? {
        let message =
            format!("{} was changed while this ran and was left as it is", path.display());
        return Err(Fault::new(message).help("run it again").into());
    }
    Ok(over(path, text.as_bytes())?)
}

/// The part as it stands in a file.
fn part(kept: &Kept) -> String {
    let it = &kept.calibration;
    let [trunk, arms, wrists] = it.ln_factor.map(libm::exp);
    let row = |i: usize| -> String {
        let numbers = it.ln_spread[i].iter().take(i + 1).map(|it| format!("{it:.4}"));
        numbers.collect::<Vec<_>>().join(" ")
    };
    let spread: Vec<String> = (0..PART_COUNT).map(row).collect();
    format!(
        "calibration: (
        // Written by `backlift calibrate`: strength over what the tables say for this grip and stature.
        readings: \"{}\",
        made_for: \"{}\",
        trunk: \"{trunk:.4}\",
        arms: \"{arms:.4}\",
        wrists: \"{wrists:.4}\",
        spread: \"{}\",
        // Share of what legs lose in an innings that trunk and arms lose.
        lasting: \"{:.3}\",
        lasting_low: \"{:.3}\",
        lasting_high: \"{:.3}\",
    )",
        plain(&kept.readings),
        plain(&kept.made_for),
        spread.join(" / "),
        it.lasting.central,
        it.lasting.low,
        it.lasting.high
    )
}

/// Without what would end a text in quotation marks.
fn plain(text: &str) -> String {
    text.replace(['"', '\\'], "'")
}
