//! Segments of the arm as published, copied here apart from the ones the model uses.

use crate::measurement::person::Sex;

pub(super) const SOURCE: &str =
    "de Leva 1996, J Biomech 29:1223, Table 4 (read second-hand in two copies that agree)";

/// One segment: length of the reference body's, m; mass over body mass; centre of mass from the upper
/// end and radii of gyration about the sagittal, transverse and long axis, over length.
pub(super) struct Published {
    pub length_m: f64,
    pub mass: f64,
    pub com: f64,
    pub gyration: [f64; 3],
}

/// The reference body of one sex.
pub(super) struct Body {
    pub sex: Sex,
    pub words: &'static str,
    pub stature_m: f64,
    pub mass_kg: f64,
    pub upper_arm: Published,
    pub forearm: Published,
    /// Wrist to the tip of the middle finger.
    pub hand: Published,
    /// Trunk (middle of the shoulders to middle of the hips) and head (vertex to C7): mass, length of the
    /// trunk, m, and its centre of mass from the shoulders, over that length.
    pub trunk: [f64; 3],
    /// Mass, length, m, and centre of mass from the vertex, over that length.
    pub head: [f64; 3],
}

const fn published(length_m: f64, mass: f64, com: f64, gyration: [f64; 3]) -> Published {
    Published { length_m, mass, com, gyration }
}

/// Men and women. The woman's hand turns about its long axis with 0.154, not the man's 0.184 that one copy
/// has: 0.335 × 0.0780/0.1701 = 0.154.
pub(super) const BODIES: [Body; 2] = [
    Body {
        sex: Sex::Male,
        words: "man",
        stature_m: 1.741,
        mass_kg: 73.0,
        upper_arm: published(0.2817, 0.0271, 0.5772, [0.285, 0.269, 0.158]),
        forearm: published(0.2689, 0.0162, 0.4574, [0.276, 0.265, 0.121]),
        hand: published(0.1879, 0.0061, 0.3624, [0.288, 0.235, 0.184]),
        trunk: [0.4346, 0.5155, 0.4310],
        head: [0.0694, 0.2429, 0.5002],
    },
    Body {
        sex: Sex::Female,
        words: "woman",
        stature_m: 1.735,
        mass_kg: 61.9,
        upper_arm: published(0.2751, 0.0255, 0.5754, [0.278, 0.260, 0.148]),
        forearm: published(0.2643, 0.0138, 0.4559, [0.261, 0.257, 0.094]),
        hand: published(0.1701, 0.0056, 0.3427, [0.244, 0.208, 0.154]),
        trunk: [0.4257, 0.4979, 0.3782],
        head: [0.0668, 0.2437, 0.4841],
    },
];
