//! The wood that a plan still takes, place by place.

use super::{Place, Plan, thinner_m};
use crate::bat::shape::BatShape;

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

impl Plan {
    /// What the passes after the first `done` take, place by place, off a bat that was `shape` before any.
    pub fn regions(&self, shape: &BatShape, done: usize) -> Vec<Region> {
        let mut out: Vec<Region> = Vec::new();
        let mut before = self.after(shape, done);
        for (n, pass) in self.passes.iter().enumerate().skip(done) {
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
                    shapes: [before.clone(), pass.shape.clone()],
                    deepest_m: 0.0,
                    deepest_at: [0.5, 1.0],
                }),
            }
            before = &pass.shape;
        }
        out.iter_mut().for_each(Region::find_deepest);
        out
    }

    /// The bat after so many passes, `shape` before any.
    pub fn after<'a>(&'a self, shape: &'a BatShape, passes: usize) -> &'a BatShape {
        let last = passes.checked_sub(1).and_then(|n| self.passes.get(n));
        last.map_or(shape, |it| &it.shape)
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
