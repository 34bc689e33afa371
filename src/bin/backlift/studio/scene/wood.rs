//! The bat on the maker's bench: its solid, what is painted on it, and from where it is seen.

use backlift::bat::shape::BatShape;
use backlift::drawing::palette::{Colour, Theme};
use backlift::frames::{DMat3, DVec3};
use backlift::workshop::plane::{Place, Region};
use egui::Rect;

use super::bat::{Fineness, Spot, TWINE, WILLOW, painted};
use super::eye::Eye;
use super::solid::{Solid, Tone, tone};
use crate::studio::state::Studio;
use crate::studio::style::theme;
use crate::studio::wood::Wood;
use crate::studio::wood::action::{Face, Work};

const ON_BENCH: Fineness = Fineness { across: 24, between: 10 };
const GRIP: Tone = [0.42, 0.44, 0.46];
/// Share of a region's deepest cut from which on it is painted, and how strongly there.
const PAINTED: f64 = 0.04;
const FAINTEST: f32 = 0.35;
/// Height of what the eye sees, rad.
const TALL_RAD: f64 = 0.40;
/// Half of the bat's length that has to fit across the room, over it, with room for letters; and what must fit
/// down it, m.
const ACROSS: f64 = 0.56;
const DOWN_M: f64 = 0.20;

pub struct Bench<'a> {
    pub shape: &'a BatShape,
    pub eye: Eye,
}

impl Bench<'_> {
    /// Where a point of the bat lies, the middle of the bat over the origin, m, W.
    pub fn point_W(&self, point_B: DVec3) -> DVec3 {
        // The toe to the right, the back to the near side.
        let R_WB = DMat3::from_cols(DVec3::X, DVec3::NEG_Z, DVec3::Y);
        R_WB * (point_B - DVec3::new(0.5 * self.shape.length_m(), 0.0, 0.0))
    }
}

impl Wood {
    /// The shape on the bench: the blade that is described, or the bat after the passes shown as done.
    pub fn shown(&self) -> Option<&BatShape> {
        match (self.work, &self.planned) {
            (Work::Plane, Some(planned)) => Some(planned.after(self.done)),
            _ => Some(&self.worked.as_ref()?.bat.shape),
        }
    }

    /// What the passes to come take off it.
    pub fn to_come_off(&self) -> Vec<Region> {
        match (self.work, &self.planned) {
            (Work::Plane, Some(planned)) => planned.regions(self.done),
            _ => Vec::new(),
        }
    }

    /// What the solid of it hangs on.
    pub fn solid_key(&self) -> u64 {
        let plan = self.planned.as_ref().filter(|_| self.work == Work::Plane);
        let plan = plan.map_or(0, |it| it.key.rotate_left(9) ^ (self.done as u64 + 1));
        self.key ^ plan
    }
}

impl Studio {
    /// What lies on the bench, for a room on the screen.
    pub fn on_bench(&self, room: Rect) -> Option<Bench<'_>> {
        let shape = self.wood.shown()?;
        let eye = eye(self.wood.seen, shape.length_m(), room).orbited(self.wood.orbit);
        Some(Bench { shape, eye })
    }

    /// The solid, wood to come off painted in the colour of its place.
    pub fn bench_solid(&self, around: usize) -> Option<Solid> {
        let shape = self.wood.shown()?;
        let regions = self.wood.to_come_off();
        let theme = theme(&self.look);
        let shaved = regions.iter().any(|it| it.place == Place::Handle);
        let bound = if shaved { tone(place_colour(theme, Place::Handle)) } else { TWINE };
        let paint = |spot: Spot| {
            if spot.is_on_face {
                return None;
            }
            let cut = |it: &Region| {
                (it.thinner_m(spot.from_shoulder, spot.u) / it.deepest.deep_m, it.place)
            };
            let deepest = regions.iter().filter(|it| it.deepest.deep_m > 0.0).map(cut);
            let (share, place) = deepest.max_by(|a, b| a.0.total_cmp(&b.0))?;
            let share = (share > PAINTED).then_some(share as f32)?;
            let strength = FAINTEST + (1.0 - FAINTEST) * share.min(1.0);
            let colour = tone(place_colour(theme, place));
            Some(core::array::from_fn(|k| WILLOW[k] + strength * (colour[k] - WILLOW[k])))
        };
        Some(painted(shape, (around, ON_BENCH), [GRIP, bound], &paint))
    }
}

/// The colour of a place; its number and name stand beside it wherever it is shown.
pub fn place_colour(theme: &Theme, place: Place) -> Colour {
    let [a, b, c, d] = theme.bats;
    match place {
        Place::HollowBelow => a,
        Place::Edges => b,
        Place::HollowAbove => c,
        Place::Shoulders => d,
        Place::Toe | Place::Spine => theme.quiet,
        Place::Handle => theme.hairline,
    }
}

fn eye(seen: Face, length_m: f64, room: Rect) -> Eye {
    let aspect = f64::from(room.width() / room.height().max(1.0)).max(0.2);
    let half = libm::tan(0.5 * TALL_RAD);
    let away_m = (ACROSS * length_m / (half * aspect)).max(DOWN_M / half);
    let (from, up_W) = match seen {
        // A little from above, so that the back's slope shows.
        Face::Back => (DVec3::new(0.0, -0.97, 0.24), DVec3::Z),
        Face::Front => (DVec3::new(0.0, 0.97, 0.24), DVec3::Z),
        Face::Edge => (DVec3::Z, DVec3::Y),
    };
    Eye { position_W: from * away_m, target_W: DVec3::ZERO, up_W, tall_rad: TALL_RAD }
}
