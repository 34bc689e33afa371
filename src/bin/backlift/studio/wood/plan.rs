//! A planing plan with what it was made from, and the wood it takes from each place.

use backlift::bat::shape::BatShape;
use backlift::workshop::plane::{Pass, PickupMoments, Place, Plan, PlanFault, thinner_m};

/// A plane takes so much more or less off than it should, one standard deviation, as a share: assumption, as
/// on the command line.
pub const PLANING_SD: f64 = 0.10;

/// On which solid a plan is drawn.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum DrawnOn {
    /// The blade that is described, at the bat's weight and balance.
    Described,
    /// The size's own blade, at the bat's weight and balance.
    Size,
    /// A blade of the size that no carving brings to the bat's weight and balance.
    OtherWeight,
}

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
    pub plan: Result<Plan, PlanFault>,
}

/// Wood that the passes to come take from one place.
#[derive(Clone, Debug, PartialEq)]
pub struct Region {
    /// Where.
    pub place: Place,
    /// First and last pass there, counted from nought.
    pub passes: [usize; 2],
    /// What comes off, kg.
    pub off_kg: f64,
    /// The shape before them, and after.
    pub shapes: [BatShape; 2],
    /// Most that it gets thinner anywhere on the blade, m.
    pub deepest_m: f64,
    /// Where that is: share from the shoulder, and share of the way from an edge to the middle.
    pub deepest_at: [f64; 2],
}

impl Planned {
    /// The bat after so many passes.
    pub fn after(&self, passes: usize) -> &BatShape {
        self.last_of(passes).map_or(&self.shape, |it| &it.shape)
    }

    /// The whole bat to expect if the plane stopped after so many passes: what goes on is on.
    pub fn whole_after(&self, passes: usize) -> PickupMoments {
        self.last_of(passes).map_or(self.now, |it| it.then) + self.to_come
    }

    /// The last of so many passes; none before the first.
    fn last_of(&self, passes: usize) -> Option<&Pass> {
        self.plan.as_ref().ok()?.passes.get(passes.checked_sub(1)?)
    }

    /// What the passes after the first `done` take, place by place.
    pub fn regions(&self, done: usize) -> Vec<Region> {
        let Ok(plan) = &self.plan else { return Vec::new() };
        let mut out: Vec<Region> = Vec::new();
        for (n, pass) in plan.passes.iter().enumerate().skip(done) {
            match out.last_mut().filter(|it| it.place == pass.place) {
                Some(region) => {
                    region.passes[1] = n;
                    region.off_kg += pass.off_kg;
                    region.shapes[1] = pass.shape.clone();
                }
                None => out.push(Region {
                    place: pass.place,
                    passes: [n, n],
                    off_kg: pass.off_kg,
                    shapes: [self.after(n).clone(), pass.shape.clone()],
                    deepest_m: 0.0,
                    deepest_at: [0.5, 1.0],
                }),
            }
        }
        out.iter_mut().for_each(Region::find_deepest);
        out
    }
}

/// Steps along and across a blade in which a region's deepest place is looked for.
const STEPS: [u32; 2] = [40, 8];

impl Region {
    /// How much thinner the blade gets there, m.
    pub fn thinner_m(&self, from_shoulder: f64, u: f64) -> f64 {
        let [before, after] = &self.shapes;
        thinner_m(&before.blade, &after.blade, from_shoulder, u)
    }

    fn find_deepest(&mut self) {
        let [along, across] = STEPS;
        for a in 0..=along {
            for c in 0..=across {
                let at = [f64::from(a) / f64::from(along), f64::from(c) / f64::from(across)];
                let thinner_m = self.thinner_m(at[0], at[1]);
                if thinner_m > self.deepest_m {
                    (self.deepest_m, self.deepest_at) = (thinner_m, at);
                }
            }
        }
    }
}
