//! What everybody at a maker's bench must know.

/// Usual workshop cautions.
pub const WORKSHOP: [&str; 4] = [
    "Willow and cane dust harm the lungs: extract it, wear a mask, sweep wet",
    "Draw-knife, spokeshave and saw: cut away from the hand that holds, clamp the work, guards on",
    "Glue, oil and rubber solution: air the room, no flame; rags with linseed oil catch fire by themselves, so spread them out or drown them",
    "Local safety codes decide over all of this; a junior works beside an adult",
];

/// The same with what a shape does not tell.
pub const SHAPE: [&str; 5] = {
    let [dust, tools, glue, codes] = WORKSHOP;
    let shape = "A shape is not a bat: wood varies along the grain, and nothing here says how it will play or last";
    [dust, tools, glue, codes, shape]
};
