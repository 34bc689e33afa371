//! The wood that a plan still takes, place by place.

use super::thinner::{Deepest, deepest};
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
    /// Where it comes off deepest.
    pub deepest: Deepest,
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
                    deepest: pass.deepest,
                }),
            }
            before = &pass.shape;
        }
        for it in &mut out {
            let [before, after] = &it.shapes;
            it.deepest = deepest(before, after);
        }
        out
    }

    /// The bat after so many passes, `shape` before any.
    pub fn after<'a>(&'a self, shape: &'a BatShape, passes: usize) -> &'a BatShape {
        let last = passes.checked_sub(1).and_then(|n| self.passes.get(n));
        last.map_or(shape, |it| &it.shape)
    }
}

impl Region {
    /// How much thinner the blade gets there, m.
    pub fn thinner_m(&self, from_shoulder: f64, u: f64) -> f64 {
        let [before, after] = &self.shapes;
        thinner_m(&before.blade, &after.blade, from_shoulder, u)
    }
}
