//! Colours. Every one is used by its role, never by its look.

use std::fmt;

/// An opaque sRGB colour.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Colour(pub [u8; 3]);

impl fmt::Display for Colour {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Self([r, g, b]) = self;
        write!(f, "#{r:02X}{g:02X}{b:02X}")
    }
}

/// The colours of one setting.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Theme {
    /// The paper.
    pub ground: Colour,
    /// Raised areas, and patches behind labels.
    pub panel: Colour,
    /// Text and marks.
    pub ink: Colour,
    /// Text of second rank: units, notes.
    pub quiet: Colour,
    /// Rules.
    pub hairline: Colour,
    /// Bats A to D.
    pub bats: [Colour; 4],
}

/// By day.
pub const LIGHT: Theme = Theme {
    ground: Colour([0xFA, 0xF8, 0xF4]),
    panel: Colour([0xFF, 0xFF, 0xFF]),
    ink: Colour([0x1E, 0x23, 0x26]),
    quiet: Colour([0x5A, 0x62, 0x68]),
    hairline: Colour([0xD9, 0xD4, 0xCA]),
    bats: [
        Colour([0x0F, 0x3B, 0x73]),
        Colour([0x9C, 0x3A, 0x12]),
        Colour([0x2B, 0x9A, 0x80]),
        Colour([0xC7, 0x65, 0xC9]),
    ],
};

/// By night.
pub const DARK: Theme = Theme {
    ground: Colour([0x16, 0x19, 0x1B]),
    panel: Colour([0x1F, 0x24, 0x27]),
    ink: Colour([0xE8, 0xE6, 0xE1]),
    quiet: Colour([0xA3, 0xAB, 0xB0]),
    hairline: Colour([0x3A, 0x41, 0x45]),
    bats: [
        Colour([0x54, 0x90, 0xEE]),
        Colour([0xDE, 0x6A, 0x2C]),
        Colour([0x6F, 0xE8, 0xBC]),
        Colour([0xED, 0xB7, 0xE8]),
    ],
};

/// On paper: the day's colours on white, with black ink.
pub const PRINT: Theme = Theme {
    ground: Colour([0xFF, 0xFF, 0xFF]),
    ink: Colour([0x00, 0x00, 0x00]),
    quiet: Colour([0x40, 0x45, 0x48]),
    hairline: Colour([0x9A, 0x9A, 0x9A]),
    ..LIGHT
};

/// Dash pattern of bats A to D, px; empty is solid.
pub const BAT_DASHES: [&str; 4] = ["", "11 5", "0.1 5", "11 4.5 0.1 4.5"];

/// What a bat looks like everywhere, by its place in the list; from the fifth on all are grey and solid.
pub fn bat_look(theme: &Theme, bat: usize) -> (Colour, &'static str) {
    let colour = theme.bats.get(bat).copied().unwrap_or(theme.quiet);
    (colour, BAT_DASHES.get(bat).copied().unwrap_or(""))
}

/// Cividis at ninths. Source: Nuñez, Anderson & Renslow 2018, PLoS ONE 13:e0199239; read from the table of
/// matplotlib (every 32nd entry).
const CIVIDIS: [[u8; 3]; 9] = [
    [0, 34, 78],
    [26, 56, 111],
    [67, 78, 108],
    [97, 101, 111],
    [125, 124, 120],
    [155, 148, 118],
    [188, 174, 108],
    [222, 201, 88],
    [254, 232, 56],
];

/// A scale that is even to the eye, to the colour-blind, and in grey; `share` from 0 (dark) to 1 (light).
pub fn cividis(share: f64) -> Colour {
    let place = share.clamp(0.0, 1.0) * 8.0;
    let below = (place.floor() as usize).min(7);
    let part = place - below as f64;
    Colour([0, 1, 2].map(|channel| {
        let [from, to] = [below, below + 1].map(|n| f64::from(CIVIDIS[n][channel]));
        (from + part * (to - from)).round() as u8
    }))
}

/// Lines and outlines on the shades are black by day and by night, for the shades are the same.
pub(super) const BLACK: Colour = Colour([0, 0, 0]);
