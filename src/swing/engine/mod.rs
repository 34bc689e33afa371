//! The second dynamics: the same player, bat and law on the rigid-body engine rapier.
//!
//! Trunk and arms are one multibody of hinges ([`hinges`]); the bat is a free body that each hand
//! holds by a joint of its own, so that the load of each hand is read and not worked out ([`plant`]). The
//! engine is of first order with a smooth error: every figure shown is the same swing at a step and at half of it,
//! extrapolated, `2·fine − coarse` ([`run`], [`pair`]). It never searches: it swings the strokes of a card at the time
//! the search found, and the difference is printed as part of the doubt.

pub mod hinges;
pub mod pair;
pub mod plan;
pub mod plant;
pub mod run;

/// Why the engine gave no swing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, thiserror::Error)]
pub enum EngineFault {
    /// A hinge could not be added.
    #[error("the engine does not take link {link} as a hinge on its parent")]
    Hinge {
        /// Link of the chain.
        link: usize,
    },
    /// The state ran away: a stroke so slow that the step is too long for it.
    #[error("the engine lost the swing at step {step} of {steps}")]
    Lost {
        /// Step.
        step: usize,
        /// Steps to the planned contact.
        steps: usize,
    },
    /// The bat never came to the ball.
    #[error("the bat did not come to the ball before the path ended")]
    Missed,
}
