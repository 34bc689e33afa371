//! Which willow a card can be carved from: the lightest and the heaviest of which some blade meets it.
//!
//! A light cleft makes a thick blade, until the Laws forbid its edges or its depth; a heavy one a thin blade, until its
//! edges would not last. At each density the plain blade is tried first, then, where the maker has that way out, one
//! with a fuller back at the light end and a hollower one at the heavy end.

use crate::bat::described::Cleft;
use crate::bat::laws::Limits;
use crate::bat::shape::BatShape;
use crate::bat::sizes::Size;
use crate::bat::willow::{POSSIBLE_KG_M3, USUAL_DENSITY_KG_M3};
use crate::card::Card;
use crate::workshop::carved::Held;
use crate::workshop::to_card::{HOLLOW_MOVE, Start, plainest};

/// Out of what willow a card can be made.
#[derive(Clone, Debug, PartialEq)]
pub struct Willow {
    /// Lightest and heaviest, kg/m³ at 12 % water, to [`STEP_KG_M3`].
    pub density_kg_m3: [f64; 2],
    /// What stands in the way of a lighter and of a heavier one.
    pub beyond: [String; 2],
    /// The one that leaves the blade nearest to the size's own, kg/m³.
    pub best_kg_m3: f64,
    /// The cleft usually sawn for the size; its weight is that of the best willow.
    pub usual_cleft: Cleft,
}

impl Willow {
    /// Lightest and heaviest usual cleft, kg at 12 % water.
    pub fn cleft_kg(&self) -> [f64; 2] {
        self.density_kg_m3.map(|it| it * volume_m3(&self.usual_cleft))
    }
}

/// How near the ends are found, kg/m³: far inside what a cleft's volume leaves open.
pub const STEP_KG_M3: f64 = 1.0;
/// Steps outward, halved until they are [`STEP_KG_M3`].
const FIRST_STEP_KG_M3: f64 = 16.0;
/// A cleft is sawn longer, wider and deeper than the size's standard blade by this, m: assumption.
const TO_SPARE_M: [f64; 3] = [0.150, 0.010, 0.010];

fn volume_m3(cleft: &Cleft) -> f64 {
    cleft.length_m * cleft.width_m * cleft.depth_m
}

/// A card, and the size and Laws that it is made under.
#[derive(Clone, Copy, Debug)]
pub struct Asked<'a> {
    /// The card.
    pub card: &'a Card,
    /// Its size.
    pub size: &'a Size,
    /// The Laws.
    pub limits: &'a Limits,
}

impl Asked<'_> {
    /// The blade that meets the card out of willow of a density, kg/m³, on its handle; or what stands in the way of
    /// the plain one, in plain words.
    pub fn shape(&self, density_kg_m3: f64) -> Result<BatShape, String> {
        let plain = self.held(density_kg_m3, Held::default());
        let Err(why) = plain else { return plain };
        let own = self.size.reference.blade.deepest().map_or(0.0, |it| it.hollow);
        let light = density_kg_m3 < self.size.reference.blade.density_kg_m3;
        let hollow = own + if light { -HOLLOW_MOVE } else { HOLLOW_MOVE };
        let turned = self.held(density_kg_m3, Held { hollow: Some(hollow), ..Held::default() });
        turned.map_err(|_| why)
    }

    fn held(&self, density_kg_m3: f64, held: Held) -> Result<BatShape, String> {
        let mut density = USUAL_DENSITY_KG_M3;
        density.value = density_kg_m3;
        let start = Start { density_kg_m3: density, willow_given: true, held, ..self.start() };
        plainest(&start, self.card).map(|it| it.shape)
    }

    fn start(&self) -> Start<'_> {
        Start {
            shape: self.size.reference.clone(),
            density_kg_m3: USUAL_DENSITY_KG_M3,
            willow_given: false,
            cleft: None,
            size: self.size,
            limits: self.limits,
            held: Held::default(),
        }
    }

    /// The willow that the card can be made of; if it can be made of none, what stands in the way, in plain words.
    pub fn willow(&self) -> Result<Willow, String> {
        // Of the willow that makers find, as in the size's family.
        let best_kg_m3 = plainest(&self.start(), self.card)?.shape.blade.density_kg_m3;
        let (low, why_not_lighter) = self.end(best_kg_m3, -1.0);
        let (high, why_not_heavier) = self.end(best_kg_m3, 1.0);
        let blade = &self.size.reference.blade;
        let sizes = [blade.length_m, blade.width_m(), blade.deepest().map_or(0.0, |it| it.depth_m)];
        let [length_m, width_m, depth_m] =
            core::array::from_fn(|k| sizes[k] + TO_SPARE_M[k]).map(to_5_mm);
        let mut usual_cleft = Cleft { mass_kg: 0.0, length_m, width_m, depth_m, moisture: None };
        usual_cleft.mass_kg = best_kg_m3 * volume_m3(&usual_cleft);
        Ok(Willow {
            density_kg_m3: [low, high],
            beyond: [why_not_lighter, why_not_heavier],
            best_kg_m3,
            usual_cleft,
        })
    }

    /// The last density towards one side of which a blade can be made, and why not one step further.
    fn end(&self, from_kg_m3: f64, way: f64) -> (f64, String) {
        let [lightest, heaviest] = POSSIBLE_KG_M3;
        let (mut can, mut step) = (from_kg_m3, FIRST_STEP_KG_M3);
        let mut why = String::new();
        while step >= STEP_KG_M3 {
            let next = can + way * step;
            if !(lightest..=heaviest).contains(&next) {
                why = format!("no willow has fewer than {lightest} or more than {heaviest} kg/m³");
                step *= 0.5;
                continue;
            }
            match self.shape(next) {
                Ok(_) => can = next,
                Err(it) => (why, step) = (it, 0.5 * step),
            }
        }
        (can, why)
    }
}

/// A saw is set to 5 mm.
fn to_5_mm(length_m: f64) -> f64 {
    libm::ceil(length_m / 0.005 - 1e-9) * 0.005
}
