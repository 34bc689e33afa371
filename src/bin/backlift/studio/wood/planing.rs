//! The planing plan of the bat on the bench, from its readings to the card.

use backlift::bat::figures::WeighedBat;
use backlift::bat::shape::BatShape;
use backlift::bat::sizes::{Size, named};
use backlift::card::Card;
use backlift::workshop::plane::additions::additions;
use backlift::workshop::plane::{
    Bench, Finish, Pass, PickupMoments, Place, Plan, PlanFault, part_made, plan, thinner_m,
};

use crate::studio::derived::key;
use crate::studio::state::Studio;

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

impl Studio {
    /// Makes the plan anew where the bat, the card or what is on the bat has changed.
    pub(in crate::studio) fn follow_plan(&mut self) {
        let key = self.planing_key();
        if self.wood.planned.as_ref().map(|it| it.key) == key {
            return;
        }
        self.wood.planned = key.and_then(|key| self.planned(key));
        // A new plan begins with the bat as it lies there now.
        self.wood.done = 0;
    }

    fn planing_key(&self) -> Option<u64> {
        let (bat, card) = (self.at_bench()?, self.wood_card()?);
        let figures = (bat.mass_kg, bat.balance_m, bat.swing_moment_kg_m2, &bat.size);
        Some(key(&(self.wood.key, figures, card, self.wood.on)))
    }

    fn planned(&self, key: u64) -> Option<Planned> {
        let (bat, card) = (self.at_bench()?, self.wood_card()?);
        let size = named(&self.wood.sizes, &card.size)?;
        let (shape, drawn_on) = self.on_the_bench(bat, card, size);
        let bench = Bench {
            mass_kg: bat.mass_kg,
            balance_m: bat.balance_m,
            swing_moment_kg_m2: bat.swing_moment_kg_m2,
            shape: &shape,
            finish: self.wood.on,
            besides: Vec::new(),
            planing_sd: PLANING_SD,
        };
        let now =
            PickupMoments::of(bat.mass_kg.value, bat.balance_m.value, bat.swing_moment_kg_m2.value);
        let to_come = additions(&shape, &self.wood.on, &Finish::of(card));
        let to_come = to_come.iter().fold(PickupMoments::default(), |sum, it| sum + it.adds);
        let plan = plan(&bench, card, &size.craft);
        Some(Planned { key, now, to_come, plan, shape, drawn_on })
    }

    /// The bat at the bench as a solid, and what it is drawn on: the blade that is described on the screen, or
    /// the size's own on the card's handle, at the weight and balance that were read.
    fn on_the_bench(&self, bat: &WeighedBat, card: &Card, size: &Size) -> (BatShape, DrawnOn) {
        let described = self
            .wood
            .worked
            .as_ref()
            .filter(|it| it.loaded.size.name == size.name && !self.wood.is_untouched());
        let mut like = described.map_or(&size.reference, |it| &it.bat.shape).clone();
        like.handle.grips = card.condition.grips;
        if described.is_none() {
            like = like.with_length_m(card.length_m);
            like = like.with_handle_over_grip_m(card.handle_diameter_m());
        }
        let reading = [bat.mass_kg.value, bat.balance_m.value];
        let wanted = Finish::of(card);
        match (part_made(&like, &size.craft, reading, &self.wood.on, &wanted), described) {
            (Some(shape), Some(_)) => (shape, DrawnOn::Described),
            (Some(shape), None) => (shape, DrawnOn::Size),
            (None, _) => (like, DrawnOn::OtherWeight),
        }
    }
}
