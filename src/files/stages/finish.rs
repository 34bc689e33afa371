//! What is on a bat, as people write it.

use super::value::ReadText;
use crate::workshop::plane::Finish;

/// Reads "grip, twine, toe guard, oil, labels", "all" or "nothing".
pub fn finish(text: &str) -> ReadText<Finish> {
    let mut out = Finish::BARE;
    for word in text.split(',').map(str::trim).filter(|it| !it.is_empty()) {
        match word.to_lowercase().as_str() {
            "grip" | "one grip" => (out.grips, out.bound) = (1, true),
            "two grips" | "2 grips" => (out.grips, out.bound) = (2, true),
            "three grips" | "3 grips" => (out.grips, out.bound) = (3, true),
            "twine" => out.bound = true,
            "toe guard" | "guard" => out.toe_guard = true,
            "oil" => out.oiled = true,
            "labels" | "face sheet" => out.labels = true,
            "all" => out = Finish::ALL,
            "nothing" | "bare" => out = Finish::BARE,
            _ => {
                let help =
                    "name some of: grip, two grips, twine, toe guard, oil, labels, all, nothing";
                return Err((format!("{word:?} is not known here"), help.to_owned()));
            }
        }
    }
    Ok(out)
}

/// The same in words that read back to the same.
pub fn on_text(it: &Finish) -> String {
    let grips = match it.grips {
        0 => None,
        1 => Some("grip"),
        2 => Some("two grips"),
        _ => Some("three grips"),
    };
    let parts = [
        grips,
        (it.bound && it.grips == 0).then_some("twine"),
        it.toe_guard.then_some("toe guard"),
        it.oiled.then_some("oil"),
        it.labels.then_some("labels"),
    ];
    let parts: Vec<&str> = parts.into_iter().flatten().collect();
    if parts.is_empty() { "nothing".to_owned() } else { parts.join(", ") }
}
