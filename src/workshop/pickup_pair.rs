//! Pairs of bats that can be made and that show what pickup is: alike on the scale and unlike in the hand,
//! alike in the hand and unlike on the scale.

use crate::bat::family::Family;
use crate::bat::laws::Limits;
use crate::bat::makeable::{MadeBat, Wanted};
use crate::bat::shape::BatShape;
use crate::bat::sizes::Size;
use crate::bat::willow::USUAL_DENSITY_KG_M3;
use crate::uncertain::Uncertain;
use crate::workshop::carved::{Figures, Held};
use crate::workshop::to_card::{Start, with_figures};

/// Both pairs of bats, the first of each lighter in the hand or on the scale.
#[derive(Clone, Debug, PartialEq)]
pub struct Pairs {
    /// One dead weight, two pickups.
    pub same_scale: [MadeBat; 2],
    /// One swing moment, two dead weights.
    pub same_hand: [MadeBat; 2],
}

/// The bat as a maker can make it: of the same weight, balance point and swing moment, from the size's blade with a
/// joint that holds the handle, which the family's own taper may leave too thin; or what stands in the way, in plain
/// words.
pub fn to_make(
    it: &MadeBat,
    family: &Family,
    size: &Size,
    limits: &Limits,
) -> Result<BatShape, String> {
    let density_kg_m3 = it.shape.blade.density_kg_m3;
    let mut shape = family.reference().clone();
    shape.blade.density_kg_m3 = density_kg_m3;
    let start = Start {
        shape,
        density_kg_m3: Uncertain { value: density_kg_m3, ..USUAL_DENSITY_KG_M3 },
        willow_given: true,
        cleft: None,
        size,
        limits,
        held: Held::default(),
    };
    let figures = Figures {
        mass_kg: it.bat.mass_kg(),
        balance_m: it.bat.balance_m(),
        swing_moment_kg_m2: Some(it.bat.swing_moment_kg_m2()),
    };
    with_figures(&start, &figures).map(|it| it.shape)
}

/// How far towards what can just be made a bat of a pair goes, as a share: a maker keeps some room.
const REACH: f64 = 0.85;
/// Steps of balance point and dead weight in the search, m and kg.
const STEP_M: f64 = 0.002;
const STEP_KG: f64 = 0.010;
/// Farthest steps either way.
const STEPS: u32 = 40;
/// How near two swing moments must be to count as one, as a share.
const NEAR: f64 = 1e-6;

/// The pairs of a size around a dead weight, of bats whose swell lies where makers of the size cut it; none where the
/// size has no bat of that weight.
pub fn pairs(family: &Family, limits: &Limits, mass_kg: f64) -> Option<Pairs> {
    let make = |mass_kg: f64, balance_m: f64| {
        let wanted = Wanted { mass_kg, balance_m, swell_from_toe_m: None };
        family.make("", &wanted, limits).ok().filter(|it| family.has_makers_swell(&it.shape))
    };
    let own_m = family.reference().mass_moments().com_B().x;
    let middle_m = middle(own_m, STEP_M, |it| make(mass_kg, it).is_some())?;
    let [near_m, far_m] = reach(middle_m, STEP_M, |it| make(mass_kg, it).is_some());
    let same_scale = [make(mass_kg, near_m)?, make(mass_kg, far_m)?];

    let swing = make(mass_kg, middle_m)?.bat.swing_moment_kg_m2();
    let alike = |mass_kg: f64| with_swing_moment(&make, mass_kg, middle_m, swing);
    let [light_kg, heavy_kg] = reach(mass_kg, STEP_KG, |it| alike(it).is_some());
    let same_hand = [alike(light_kg)?, alike(heavy_kg)?];
    Some(Pairs { same_scale, same_hand })
}

/// The place nearest to `from` where it can be.
fn middle(from: f64, step: f64, can: impl Fn(f64) -> bool) -> Option<f64> {
    let out = (0..=STEPS).flat_map(|n| {
        let by = f64::from(n) * step;
        [from + by, from - by]
    });
    out.into_iter().find(|it| can(*it))
}

/// How far it can be moved either way, less some room.
fn reach(from: f64, step: f64, can: impl Fn(f64) -> bool) -> [f64; 2] {
    [-1.0, 1.0].map(|way| {
        let steps = (1..=STEPS).take_while(|n| can(from + way * f64::from(*n) * step)).count();
        from + way * REACH * steps as f64 * step
    })
}

/// A bat of this weight with this swing moment, by its balance point; none where that cannot be made.
fn with_swing_moment(
    make: &impl Fn(f64, f64) -> Option<MadeBat>,
    mass_kg: f64,
    near_m: f64,
    swing_moment_kg_m2: f64,
) -> Option<MadeBat> {
    let off = |it: &MadeBat| it.bat.swing_moment_kg_m2() / swing_moment_kg_m2 - 1.0;
    let mut balance_m = middle(near_m, STEP_M, |it| make(mass_kg, it).is_some())?;
    for _ in 0..12 {
        let here = make(mass_kg, balance_m)?;
        if off(&here).abs() < NEAR {
            return Some(here);
        }
        let aside =
            [1e-4, -1e-4].into_iter().find_map(|by| Some((by, make(mass_kg, balance_m + by)?)));
        let (by, aside) = aside?;
        let slope = (off(&aside) - off(&here)) / by;
        balance_m -= off(&here) / slope;
    }
    None
}
