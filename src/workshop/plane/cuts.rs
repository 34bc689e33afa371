//! Where a maker takes wood off, in the terms of the tool's work.

use crate::bat::shape::BatShape;
use crate::bat::sizes::Craft;
use crate::bat::sound::sound;

use super::PickupMoments;

/// A place to take wood from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Place {
    /// Hollow of the back, shoulder to swell, both sides of the spine.
    HollowAbove,
    /// Hollow of the back, swell to toe, both sides of the spine.
    HollowBelow,
    /// The back along both edges.
    Edges,
    /// The ridge of the spine, from shoulder to toe; the edges stay.
    Spine,
    /// Both shoulders.
    Shoulders,
    /// The toe.
    Toe,
    /// The bare handle.
    Handle,
}

impl Place {
    /// All, in the order of the work: the broad planes first, what shows last.
    pub const ALL: [Self; 7] = [
        Self::HollowBelow,
        Self::HollowAbove,
        Self::Edges,
        Self::Spine,
        Self::Shoulders,
        Self::Toe,
        Self::Handle,
    ];

    /// In the trade's words.
    pub fn words(self) -> &'static str {
        match self {
            Self::HollowAbove => "hollow of the back, above the swell",
            Self::HollowBelow => "hollow of the back, below the swell",
            Self::Edges => "back of the edges",
            Self::Spine => "spine",
            Self::Shoulders => "shoulders",
            Self::Toe => "toe",
            Self::Handle => "handle shave",
        }
    }

    /// Whether the work is done alike on two sides.
    pub fn has_two_sides(self) -> bool {
        !matches!(self, Self::Spine | Self::Toe | Self::Handle)
    }

    /// The place of that name, as [`Self::words`] has it; of a longer name its start is enough where no other place
    /// starts so.
    pub fn named(written: &str) -> Option<Self> {
        let written = written.trim().to_lowercase();
        let mut fits = Self::ALL.into_iter().filter(|it| it.words().starts_with(&written));
        let exact = Self::ALL.into_iter().find(|it| it.words() == written);
        let only = fits.next().filter(|_| !written.is_empty() && fits.next().is_none());
        exact.or(only)
    }

    /// How much at most, as an amount of [`cut`]: more hollow by, edges and spine thinner by (m), shoulders and toe
    /// thinner by a share, handle thinner by (m). Assumptions, wide: a sound bat with edges that last is the limit.
    fn most(self) -> f64 {
        match self {
            Self::HollowAbove | Self::HollowBelow => 0.9,
            Self::Edges | Self::Spine => 0.012,
            Self::Shoulders => 0.35,
            Self::Toe => 0.35,
            Self::Handle => 0.002,
        }
    }

    /// How strongly a station is cut, 0 to 1, without corners that a plane could not make.
    fn weight(self, from_shoulder: f64, swell: f64) -> f64 {
        let bump = |from: f64, to: f64| {
            let t = ((from_shoulder - from) / (to - from)).clamp(0.0, 1.0);
            let rise = t * (1.0 - t);
            (4.0 * rise).min(1.0)
        };
        match self {
            Self::HollowAbove => bump(0.07, swell),
            Self::HollowBelow => bump(swell - 0.05, 1.0),
            Self::Edges => bump(0.10, 1.0),
            Self::Spine => bump(0.05, 1.0),
            Self::Shoulders => bump(0.0, 0.16),
            Self::Toe => ((from_shoulder - 0.88) / 0.12).clamp(0.0, 1.0),
            Self::Handle => 0.0,
        }
    }
}

/// The shape with one place cut by an amount.
pub fn cut(shape: &BatShape, place: Place, amount: f64) -> BatShape {
    let mut out = shape.clone();
    let swell = shape.blade.deepest().map_or(0.7, |it| it.from_shoulder);
    if place == Place::Handle {
        out.handle.top_diameter_m -= amount;
        out.handle.shoulder_diameter_m -= amount;
        return out;
    }
    for it in &mut out.blade.stations {
        let weighted = amount * place.weight(it.from_shoulder, swell);
        match place {
            Place::HollowAbove | Place::HollowBelow => it.hollow += weighted,
            Place::Edges => it.edge_m -= weighted,
            Place::Spine => it.depth_m -= weighted,
            Place::Shoulders | Place::Toe => {
                it.depth_m *= 1.0 - weighted;
                it.edge_m *= 1.0 - weighted;
            }
            Place::Handle => {}
        }
    }
    out
}

/// What a place can give: the shape cut as far as it goes, and what that takes off.
#[derive(Clone, Debug, PartialEq)]
pub struct Room {
    /// Where.
    pub place: Place,
    /// Greatest amount.
    pub amount: f64,
    /// What comes off then.
    pub off: PickupMoments,
}

/// Halvings of the greatest amount: to a thousandth of it.
const HALVINGS: usize = 10;

/// The most that will do, up to `most`; nought does.
pub(super) fn greatest(most: f64, does: impl Fn(f64) -> bool) -> f64 {
    if does(most) {
        return most;
    }
    let (mut can, mut cannot) = (0.0, most);
    for _ in 0..HALVINGS {
        let middle = 0.5 * (can + cannot);
        *(if does(middle) { &mut can } else { &mut cannot }) = middle;
    }
    can
}

/// The most that can come off a place and leave a sound bat with edges that last; none where nothing can.
/// `thinnest_handle_m` is over the grip at the bottom hand.
pub fn room(shape: &BatShape, place: Place, craft: &Craft, thinnest_handle_m: f64) -> Option<Room> {
    let thinnest_edge_m = craft.thinnest_edge_m.min(shape.blade.thinnest_edge_m());
    let good = |amount: f64| {
        let it = cut(shape, place, amount);
        let handle_m = it.handle.diameter_over_grip_m(it.handle.bottom_hand_m());
        sound(&it).len() <= sound(shape).len()
            && it.blade.thinnest_edge_m() >= thinnest_edge_m - 1e-12
            && (place != Place::Handle || handle_m >= thinnest_handle_m)
    };
    let can = greatest(place.most(), good);
    let off = PickupMoments::of_shape(shape) - PickupMoments::of_shape(&cut(shape, place, can));
    (can > 0.0 && off.mass_kg > 0.0).then_some(Room { place, amount: can, off })
}

/// The amount of a place that takes off so much, kg.
pub fn amount_for(shape: &BatShape, room: &Room, mass_kg: f64) -> f64 {
    refined(shape, room.place, room.amount * mass_kg / room.off.mass_kg, mass_kg)
}

/// The mass is all but straight in the amount, and a few steps of the secant meet it.
fn refined(shape: &BatShape, place: Place, mut amount: f64, mass_kg: f64) -> f64 {
    let own_kg = shape.mass_moments().mass_kg;
    for _ in 0..3 {
        let off_kg = own_kg - cut(shape, place, amount).mass_moments().mass_kg;
        if off_kg > 0.0 {
            amount *= mass_kg / off_kg;
        }
    }
    amount
}

/// What the plane did to a bat since it came out.
#[derive(Clone, Debug, PartialEq)]
pub struct Planed {
    /// The bat before.
    pub from: BatShape,
    /// Each pass.
    pub passes: Vec<Taken>,
}

/// One pass, as it was made.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Taken {
    /// Where.
    pub place: Place,
    /// The amount of [`cut`].
    pub amount: f64,
    /// What a kilogram of the wood there takes along.
    pub per_kg: PickupMoments,
}

impl Planed {
    /// Nothing yet.
    pub fn not_yet(from: &BatShape) -> Self {
        Self { from: from.clone(), passes: Vec::new() }
    }

    /// What a place gave in all, as an amount of [`cut`].
    pub fn amount(&self, place: Place) -> f64 {
        self.passes.iter().filter(|it| it.place == place).map(|it| it.amount).sum()
    }
}

/// The shape after a maker took so much wood off a place, kg, whether or not a plan would have, and the amount of
/// [`cut`] that was; as it was where no sound bat is left.
pub fn planed_off(shape: &BatShape, place: Place, mass_kg: f64) -> (BatShape, Taken) {
    let little = 0.01 * place.most();
    let off = PickupMoments::of_shape(shape) - PickupMoments::of_shape(&cut(shape, place, little));
    let per_kg = if off.mass_kg > 0.0 { off * (1.0 / off.mass_kg) } else { off };
    let nothing = Taken { place, amount: 0.0, per_kg };
    if off.mass_kg <= 0.0 || mass_kg <= 0.0 {
        return (shape.clone(), nothing);
    }
    let amount = refined(shape, place, little * mass_kg / off.mass_kg, mass_kg);
    let planed = cut(shape, place, amount);
    match sound(&planed).len() > sound(shape).len() {
        true => (shape.clone(), nothing),
        false => (planed, Taken { amount, ..nothing }),
    }
}
