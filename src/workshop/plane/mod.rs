//! The planing plan: from a part-made bat on the bench to its card, a pass at a time, from the heavy side.

pub mod additions;
pub mod bench;
pub mod cuts;
pub mod even_sides;
mod goal;
mod part_made;
pub mod pass;
pub mod plan;
mod regions;
mod shares;
pub mod thin_edges;
mod thinner;

pub use super::pickup_moments::PickupMoments;
pub use additions::{Addition, Finish};
pub use bench::Bench;
pub use cuts::{Place, Planed, Taken};
pub use part_made::{DrawnOn, Lies, on_the_bench, part_made};
pub use pass::Pass;
pub use plan::{Plan, TooLight, plan};
pub use regions::Region;
pub use thin_edges::ThinEdge;
pub use thinner::{Deepest, lever_m, thinner_m};
