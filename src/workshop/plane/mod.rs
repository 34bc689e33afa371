//! The planing plan: from a part-made bat on the bench to its card, a pass at a time, from the heavy side.

pub mod additions;
pub mod cuts;
mod part_made;
pub mod plan;
mod regions;
pub mod sides;
pub mod thin_edges;
mod thinner;

pub use super::pickup_moments::PickupMoments;
pub use additions::{Addition, Finish};
pub use cuts::{Place, Planed, Taken};
pub use part_made::{DrawnOn, Lies, on_the_bench, part_made};
pub use plan::{Bench, Pass, Plan, PlanFault, plan};
pub use regions::Region;
pub use thin_edges::ThinEdge;
pub use thinner::{Deepest, lever_m, thinner_m};
