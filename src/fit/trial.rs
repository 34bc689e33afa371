//! Feel it before you order: tape on a bat the player owns, so that it picks up like the wanted one.
//!
//! Tape only adds. At a station x it adds its mass μ, moves the balance point to `(m b + μ x)/(m + μ)`
//! and raises the swing moment by `μ (x − 0.1524 m)²`: exact for tape on the bat's long axis. On the
//! back of the blade it lies about 4 cm behind that axis, which adds 0.2 % of its own mass times m²:
//! 0.00016 kg m² for 100 g, below what a bench can tell.

use crate::bat::Bat;
use crate::bat::shape::BatShape;
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;

/// What decides how a bat picks up.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Pickup {
    /// Dead weight, kg.
    pub mass_kg: f64,
    /// Balance point from the top of the handle, m.
    pub balance_m: f64,
    /// Swing moment, kg m².
    pub swing_moment_kg_m2: f64,
}

impl Pickup {
    /// Of a bat.
    pub fn of(bat: &Bat) -> Self {
        Self {
            mass_kg: bat.mass_kg(),
            balance_m: bat.balance_m(),
            swing_moment_kg_m2: bat.swing_moment_kg_m2(),
        }
    }

    /// Hold moment, N m: static moment about the pickup axis with the bat level.
    pub fn hold_moment_n_m(&self) -> f64 {
        self.mass_kg * STANDARD_GRAVITY_M_S2 * (self.balance_m - PICKUP_AXIS_FROM_TOP_M)
    }

    /// With weights taped on.
    pub fn taped(&self, weights: &[Tape]) -> Self {
        let mut mass_kg = self.mass_kg;
        let mut static_kg_m = self.mass_kg * self.balance_m;
        let mut swing_moment_kg_m2 = self.swing_moment_kg_m2;
        for tape in weights {
            let (added_kg, lever_m) = (tape.mass_kg(), tape.place.lever_m());
            mass_kg += added_kg;
            static_kg_m += added_kg * tape.place.from_top_m;
            swing_moment_kg_m2 += added_kg * lever_m * lever_m;
        }
        Self { mass_kg, balance_m: static_kg_m / mass_kg, swing_moment_kg_m2 }
    }
}

/// A place on the bat where tape holds.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// In plain words.
    pub words: &'static str,
    /// Middle of the tape from the top of the handle, m.
    pub from_top_m: f64,
}

impl Place {
    fn lever_m(&self) -> f64 {
        self.from_top_m - PICKUP_AXIS_FROM_TOP_M
    }
}

/// Middle of a band of tape from the end of the bat it is wound round, m.
const BAND_M: f64 = 0.02;

/// The four places of a bat of this shape, to the millimetre: above the top hand, on the blade just
/// below the shoulder, on the back at the swell, round the toe.
pub fn places(shape: &BatShape) -> [Place; 4] {
    let length_m = shape.length_m();
    let place = |words: &'static str, from_top_m: f64| Place {
        words,
        from_top_m: libm::round(1000.0 * from_top_m) / 1000.0,
    };
    [
        place("at the top of the handle", BAND_M),
        place("at the shoulder", shape.handle.length_m + BAND_M),
        place("on the back of the blade at the swell", length_m - shape.swell_from_toe_m()),
        place("round the toe", length_m - BAND_M),
    ]
}

/// Whole grams taped at one place.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tape {
    /// Grams.
    pub grams: u32,
    /// Where.
    pub place: Place,
}

impl Tape {
    /// Mass, kg.
    pub fn mass_kg(&self) -> f64 {
        f64::from(self.grams) / 1000.0
    }
}

/// How near the taped bat comes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Near {
    /// Swing moment and hold moment both as wanted: neither can be told from it by any published
    /// threshold.
    Alike,
    /// It swings as wanted, but lies heavier or lighter in a still hand.
    SwingOnly,
    /// The bat as it is picks up heavier than the wanted one; tape can only make it heavier.
    OwnedHeavier,
    /// The wanted bat picks up heavier than any tape that holds could make this one.
    TooFar,
}

/// What to tape on, and what comes of it.
#[derive(Clone, Debug, PartialEq)]
pub struct Trial {
    /// Weights, from the top of the handle down; none where nothing helps.
    pub weights: Vec<Tape>,
    /// The bat as it is.
    pub owned: Pickup,
    /// The bat with them.
    pub reached: Pickup,
    /// The bat to be felt.
    pub wanted: Pickup,
    /// How near it comes.
    pub near: Near,
}

/// Most that is taped at one place, g: what a few turns of tape hold safely (assumption).
pub const MOST_AT_A_PLACE_G: u32 = 150;
/// Most that is taped on in all, g: beyond it the bat is another bat in every way (assumption).
pub const MOST_IN_ALL_G: u32 = 250;
/// Places taped at once, at most.
const MOST_PLACES: usize = 3;
/// One place less is worth so many grams more.
const PLACE_WORTH_G: u32 = 5;
/// Swing moments this near to the nearest that can be reached count as one, as a share: a gram or so
/// at the toe.
const SWING_STEP: f64 = 0.002;
/// Hold moments likewise: far below the least published threshold, 2.5 %.
const HOLD_STEP: f64 = 0.01;
/// Within this share nobody can tell two bats apart by any published threshold.
pub const ALIKE: f64 = 0.025;

/// Whole grams at no more than three of the places that bring the swing moment nearest; among those
/// equally near, the hold moment; among those, the least tape at the fewest places.
pub fn trial(owned: Pickup, wanted: Pickup, places: &[Place; 4]) -> Trial {
    let swing_step = SWING_STEP * wanted.swing_moment_kg_m2;
    let hold_step = HOLD_STEP * wanted.hold_moment_n_m();
    let room = Room::new(owned, wanted, places);
    let mut nearest = f64::INFINITY;
    room.each(f64::INFINITY, &mut |it| nearest = nearest.min(it.swing_miss));
    let limit = nearest + swing_step;
    let mut steadiest = f64::INFINITY;
    room.each(limit, &mut |it| steadiest = steadiest.min(it.hold_miss));
    let mut best: Option<Candidate> = None;
    room.each(limit, &mut |it| {
        let key = |it: &Candidate| (it.trouble_g(), it.swing_miss, it.hold_miss);
        if it.hold_miss <= steadiest + hold_step && best.is_none_or(|b| key(&it) < key(&b)) {
            best = Some(it);
        }
    });
    let grams = best.map_or([0; 4], |it| it.grams);
    let weights: Vec<Tape> = grams
        .into_iter()
        .zip(*places)
        .filter(|(grams, _)| *grams > 0)
        .map(|(grams, place)| Tape { grams, place })
        .collect();
    let taped = owned.taped(&weights);
    let near = near(&taped, &wanted);
    match near {
        Near::OwnedHeavier => Trial { weights: Vec::new(), owned, reached: owned, wanted, near },
        _ => Trial { weights, owned, reached: taped, wanted, near },
    }
}

fn near(reached: &Pickup, wanted: &Pickup) -> Near {
    let short = 1.0 - reached.swing_moment_kg_m2 / wanted.swing_moment_kg_m2;
    let hold_off = reached.hold_moment_n_m() / wanted.hold_moment_n_m() - 1.0;
    if short.abs() > ALIKE {
        if short < 0.0 { Near::OwnedHeavier } else { Near::TooFar }
    } else if hold_off.abs() > ALIKE {
        Near::SwingOnly
    } else {
        Near::Alike
    }
}

#[derive(Clone, Copy, Debug)]
struct Candidate {
    grams: [u32; 4],
    swing_miss: f64,
    hold_miss: f64,
}

impl Candidate {
    /// Grams, and what each place is worth.
    fn trouble_g(&self) -> u32 {
        let places = self.grams.iter().filter(|it| **it > 0).count() as u32;
        self.grams.iter().sum::<u32>() + PLACE_WORTH_G * places
    }
}

/// All the ways to tape, as what is missing and what a gram at each place brings.
struct Room {
    swing_kg_m2: f64,
    hold_n_m: f64,
    swing_per_g: [f64; 4],
    hold_per_g: [f64; 4],
}

impl Room {
    fn new(owned: Pickup, wanted: Pickup, places: &[Place; 4]) -> Self {
        Self {
            swing_kg_m2: wanted.swing_moment_kg_m2 - owned.swing_moment_kg_m2,
            hold_n_m: wanted.hold_moment_n_m() - owned.hold_moment_n_m(),
            swing_per_g: places.map(|it| 1e-3 * it.lever_m() * it.lever_m()),
            hold_per_g: places.map(|it| 1e-3 * STANDARD_GRAVITY_M_S2 * it.lever_m()),
        }
    }

    /// Shows every way whose swing moment misses by no more than `limit`. The grams at the toe follow
    /// from the others: only those near what is then missing are looked at.
    fn each(&self, limit: f64, show: &mut dyn FnMut(Candidate)) {
        let per_toe = self.swing_per_g[3];
        let reach = if limit.is_finite() { limit / per_toe } else { 1.0 };
        let weigh = |grams: [u32; 4], per_g: &[f64; 4]| -> f64 {
            grams.into_iter().zip(per_g).map(|(g, per)| f64::from(g) * per).sum()
        };
        for a in 0..=MOST_AT_A_PLACE_G {
            for b in 0..=MOST_AT_A_PLACE_G {
                for c in 0..=MOST_AT_A_PLACE_G {
                    let Some(room) = MOST_IN_ALL_G.checked_sub(a + b + c) else { break };
                    let used = [a, b, c].into_iter().filter(|g| *g > 0).count();
                    let missing = self.swing_kg_m2 - weigh([a, b, c, 0], &self.swing_per_g);
                    let most = f64::from(room.min(MOST_AT_A_PLACE_G));
                    let toe = (missing / per_toe).clamp(0.0, most);
                    let (low, high) = ((toe - reach).max(0.0), (toe + reach).min(most));
                    let (low, high) = match used {
                        MOST_PLACES => (0, 0),
                        _ => (libm::floor(low) as u32, libm::ceil(high) as u32),
                    };
                    for d in low..=high {
                        let grams = [a, b, c, d];
                        let swing_miss = (missing - f64::from(d) * per_toe).abs();
                        if swing_miss <= limit {
                            let held = weigh(grams, &self.hold_per_g);
                            let hold_miss = (self.hold_n_m - held).abs();
                            show(Candidate { grams, swing_miss, hold_miss });
                        }
                    }
                }
            }
        }
    }
}
