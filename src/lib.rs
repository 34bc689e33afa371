//! Backlift fits a cricket bat to a player by simulating the swing.
//!
//! Data flows one way; each stage uses the stages above it, never one below:
//!
//! 1. [`uncertain`], [`frames`]: values with their doubt, the frames of reference
//! 2. [`measurement`]: what was weighed, balanced, timed; tape measure, grip and wrist hold test; swings read in the
//!    nets
//! 3. [`bat`]: mass, centre of mass, inertia tensor and what a hand feels of them
//! 4. [`player`]: segments, strength, grip, endurance
//! 5. [`dynamics`]: rigid bodies in a tree with a closed loop, in reduced coordinates
//! 6. [`stroke`]: drive, pull, hook as data over normalised time
//! 7. [`swing`]: the player swings the bat with limited torque; the fastest controlled swing
//! 8. [`innings`]: fatigue, ball by ball
//! 9. [`ounce`]: what a small mass costs a stroke, by its station along the bat
//! 10. [`calibration`]: from readings in the nets to the player's own strength
//! 11. [`comparison`]: is a difference real, and can it be felt
//! 12. [`worth`]: what a bat is worth to a player who is not known exactly
//! 13. [`impact`]: ball meets bat: rebound, jar of the hands, twist, bend of the splice
//! 14. [`sensitivity`]: which measurements matter
//! 15. [`fit`]: the bat to order, its middles, its tolerances
//! 16. [`card`]: what the maker needs, and the check of the bat that comes back
//! 17. [`workshop`]: from the card to the wood: a blade that meets it, the plane, the seasons
//!
//! Up to `workshop` nothing knows files, clocks, the environment or the terminal. The edges are
//! [`units`] (trade spellings), [`files`] (scenarios, assets, saves), [`validation`] (every outside check) and
//! [`drawing`] (pictures, the sheet). What can be asked of it all stands in [`questions`].
#![allow(non_snake_case, reason = "frame suffixes are capitals: omega_W, com_B")]

pub mod frames;
pub mod normal;
pub mod uncertain;

pub mod measurement;

pub mod bat;
pub mod player;

pub mod dynamics;
pub mod stroke;
pub mod swing;

pub mod innings;

pub mod ounce;

pub mod calibration;

pub mod comparison;

pub mod worth;

pub mod impact;

pub mod sensitivity;

pub mod fit;

pub mod card;

pub mod workshop;

pub mod drawing;
pub mod files;
pub mod questions;
pub mod units;
pub mod validation;
