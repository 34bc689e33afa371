//! What everybody at a maker's bench must know.

/// Usual cautions of a workshop.
pub const WORKSHOP: [&str; 2] = [
    "Willow dust harms the lungs: extract it and wear a mask. Keep both hands behind the blade, and clamp the bat. Local safety rules come first",
    "A shape is not a bat: wood varies along the grain, and nothing here says how it will play or last",
];
