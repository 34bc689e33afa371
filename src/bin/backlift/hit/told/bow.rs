//! What a bowed face does to the hit, in words.

use backlift::questions::hit::Found;

use crate::figure::plain;

/// Whether the bat has a bow.
pub fn is_bowed(it: &Found) -> bool {
    it.hit.parts.bow_m > 0.0
}

/// Where the face lies at the place met, how it looks there, and where the ball goes; nothing of a straight face.
pub fn told(it: &Found) -> Option<String> {
    let degrees = |rad: f64| plain(rad.abs().to_degrees(), 1, "°").replace('\u{2009}', "");
    let toward = |towards_toe: f64| if towards_toe > 0.0 { "the toe" } else { "the handle" };
    let (face, along_rad) = (it.face_met(), it.doubted.struck.along_rad);
    is_bowed(it).then(|| {
        format!(
            "The face is bowed: there it lies {} behind its chord and looks {} towards {}; the ball comes square to the chord and goes off {} towards {}",
            plain(1e3 * face.behind_chord_m, 1, "mm"),
            degrees(face.looks_to_toe_rad),
            toward(face.looks_to_toe_rad),
            degrees(along_rad),
            toward(along_rad),
        )
    })
}
