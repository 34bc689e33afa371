//! A planing plan with what it was made from.

use backlift::bat::shape::BatShape;
use backlift::workshop::plane::{DrawnOn, PickupMoments, Plan, Region, ThinEdge};

/// A plan with what it was made from.
pub struct Planned {
    /// What it hangs on.
    pub key: u64,
    /// The bat as it lies on the bench.
    pub shape: BatShape,
    /// What it is drawn on.
    pub drawn_on: DrawnOn,
    /// Its readings.
    pub now: PickupMoments,
    /// What goes on it after the plane.
    pub to_come: PickupMoments,
    /// The plan, or why there is none.
    pub plan: Result<Plan, String>,
    /// Of each pass, the edge that it leaves thinner than makers of the size leave it.
    pub thin_edges: Vec<Option<ThinEdge>>,
}

impl Planned {
    /// The bat after so many passes.
    pub fn after(&self, passes: usize) -> &BatShape {
        self.plan.as_ref().map_or(&self.shape, |it| it.after(&self.shape, passes))
    }

    /// The whole bat to expect if the plane stopped after so many passes: what goes on is on.
    pub fn whole_after(&self, passes: usize) -> PickupMoments {
        let last = passes.checked_sub(1).and_then(|n| self.plan.as_ref().ok()?.passes.get(n));
        last.map_or(self.now, |it| it.then) + self.to_come
    }

    /// What the passes after the first `done` take, place by place.
    pub fn regions(&self, done: usize) -> Vec<Region> {
        self.plan.as_ref().map_or_else(|_| Vec::new(), |it| it.regions(&self.shape, done))
    }
}
