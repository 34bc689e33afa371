//! The bat here and there, and what to aim for here.

use super::air::Air;
use super::wetted::{CANE_RESPONSE, CANE_RESPONSE_SD, wetted, willow_and_handle_kg};
use crate::bat::family::Family;
use crate::bat::makeable::{NotMakeable, Wanted};
use crate::bat::pickup_weight::pickup_weight_kg;
use crate::bat::shape::BatShape;
use crate::bat::{Bat, BatFault};
use crate::uncertain::{Uncertain, independent_sd};
use crate::workshop::carved::Figures;

/// One standard deviation of a change of moisture against the equation, as a share. Assumption: the
/// equation is for wood in general, and wood that dries holds more than wood that wets (0.5 to 3 points in
/// four tropical woods, Simo-Tagne et al. 2016, abstract read).
pub const MOISTURE_CHANGE_RELATIVE_SD: f64 = 0.2;

/// A bat's figures in one air.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct State {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point, m from the top of the handle.
    pub balance_m: f64,
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: f64,
    /// Pickup weight, kg.
    pub pickup_weight_kg: f64,
}

/// A bat in two airs.
#[derive(Clone, Debug, PartialEq)]
pub struct Seasoned {
    /// Water in wood in the first air, kg for each kg of dry wood.
    pub moisture_from: f64,
    /// The same in the second.
    pub moisture_to: f64,
    /// The bat as given, in the first air.
    pub here: State,
    /// The same bat in the second.
    pub there: State,
    /// Change of dead weight, kg.
    pub mass_change_kg: Uncertain,
    /// Change of the balance point, m; above 0 nearer the toe.
    pub balance_change_m: Uncertain,
    /// Change of the swing moment, kg m².
    pub swing_moment_change_kg_m2: Uncertain,
    /// Change of the pickup weight, kg.
    pub pickup_weight_change_kg: Uncertain,
    /// Change of dead weight for each further 5 % of humidity there, kg.
    pub mass_for_5_percent_kg: f64,
    /// Willow in the bat as given, kg.
    pub willow_kg: f64,
    /// Cane and rubber strips of its handle, splice less the willow it displaces, kg.
    pub handle_kg: f64,
    /// What the bench must show in the first air, so that the figures given hold in the second: as sure as the changes.
    pub aim: State,
    /// The shape assumed of it.
    pub shape: BatShape,
}

/// Why there is no answer.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum SeasonFault {
    /// No blade of the size has these figures.
    #[error(transparent)]
    OutOfReach(#[from] NotMakeable),
    /// The figures belong to no rigid body.
    #[error(transparent)]
    Bat(#[from] BatFault),
}

/// Carries a bat from one air to another, and back for the aim: the bat as scale and pencil show it, its swing moment
/// that of the size's family when none is given. Which of its weight is willow and where it
/// lies is that of its `family`; `reference` is the size's own bat, for the pickup weight.
///
/// The ± are of the moisture, of cane against wood, and of wood and handle varying as makers vary them; not
/// of the airs themselves, which are taken as entered (see [`Seasoned::mass_for_5_percent_kg`]), nor of the
/// scale.
pub fn season(
    family: &Family,
    reference: &Bat,
    bat: &Figures,
    [from, to]: [Air; 2],
) -> Result<Seasoned, SeasonFault> {
    let (here_m, there_m) = (from.moisture(), to.moisture());
    let carry = |ends: f64, moistures: [f64; 2], response: f64| {
        Carried::of(family, reference, bat, ends, moistures, response)
    };
    let central = carry(0.0, [here_m, there_m], CANE_RESPONSE)?;
    let aim = carry(0.0, [there_m, here_m], CANE_RESPONSE)?;

    let more = there_m + MOISTURE_CHANGE_RELATIVE_SD * (there_m - here_m);
    let mut others = vec![
        carry(0.0, [here_m, more], CANE_RESPONSE)?,
        carry(0.0, [here_m, there_m], CANE_RESPONSE + CANE_RESPONSE_SD)?,
    ];
    // Where the wood lies: the further of the two ways; a bat at the edge of its size has perhaps one.
    let ways: Vec<Carried> = [-1.0, 1.0]
        .into_iter()
        .filter_map(|ends| carry(ends, [here_m, there_m], CANE_RESPONSE).ok())
        .collect();
    let far = |it: &Carried| (it.mass_change_kg() - central.mass_change_kg()).abs();
    others.extend(ways.into_iter().max_by(|a, b| far(a).total_cmp(&far(b))));
    let change = |of: &dyn Fn(&Carried) -> f64| {
        let offs: Vec<f64> = others.iter().map(|it| of(it) - of(&central)).collect();
        Uncertain::computed(of(&central), independent_sd(&offs))
    };

    // Towards drier air where damper leaves the table.
    let step = if to.damper(0.05) == to { -0.05 } else { 0.05 };
    let damper = to.damper(step);
    let taken = damper.relative_humidity() - to.relative_humidity();
    let damp = carry(0.0, [here_m, damper.moisture()], CANE_RESPONSE)?;
    let [willow_kg, handle_kg] = willow_and_handle_kg(&central.shape);
    Ok(Seasoned {
        moisture_from: here_m,
        moisture_to: there_m,
        here: central.here,
        there: central.there,
        balance_change_m: change(&|it| it.there.balance_m - it.here.balance_m),
        pickup_weight_change_kg: change(&|it| it.there.pickup_weight_kg - it.here.pickup_weight_kg),
        mass_for_5_percent_kg: (damp.mass_change_kg() - central.mass_change_kg()) * 0.05 / taken,
        willow_kg,
        handle_kg,
        aim: aim.there,
        mass_change_kg: change(&Carried::mass_change_kg),
        swing_moment_change_kg_m2: change(&|it| {
            it.there.swing_moment_kg_m2 - it.here.swing_moment_kg_m2
        }),
        shape: central.shape,
    })
}

/// One bat carried from one moisture to another.
struct Carried {
    here: State,
    there: State,
    shape: BatShape,
}

impl Carried {
    fn of(
        family: &Family,
        reference: &Bat,
        bat: &Figures,
        ends: f64,
        [from, to]: [f64; 2],
        cane_response: f64,
    ) -> Result<Self, SeasonFault> {
        let Figures { mass_kg, balance_m, swing_moment_kg_m2 } = *bat;
        let wanted = Wanted { mass_kg, balance_m, swell_from_toe_m: None };
        let shape = family
            .assumed_shape(mass_kg, balance_m, ends)
            .ok_or_else(|| crate::bat::makeable::out_of_reach(&wanted))?;
        let before = shape.bat("")?;
        let after = wetted(&shape, from, to, cane_response).bat("")?;
        // A measured swing moment drifts by the same share as the shape's.
        let factor = swing_moment_kg_m2.map_or(1.0, |it| it / before.swing_moment_kg_m2());
        let state = |bat: &Bat| {
            let swing_moment_kg_m2 = factor * bat.swing_moment_kg_m2();
            State {
                mass_kg: bat.mass_kg(),
                balance_m: bat.balance_m(),
                swing_moment_kg_m2,
                pickup_weight_kg: pickup_weight_kg(reference, swing_moment_kg_m2),
            }
        };
        Ok(Self { here: state(&before), there: state(&after), shape })
    }

    fn mass_change_kg(&self) -> f64 {
        self.there.mass_kg - self.here.mass_kg
    }
}
