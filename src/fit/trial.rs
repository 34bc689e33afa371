//! Feel it before you order: tape on a bat the player owns, so that it swings like the wanted one in the stroke
//! that matters, and lies in the hand as nearly like it as can be.
//!
//! What a gram of tape takes from the stroke's bat speed is the cost law's (`ounce`) at its station.
//!
//! Tape only adds. At a station x it adds its mass μ, moves the balance point to `(m b + μ x)/(m + μ)`
//! and raises the swing moment by `μ (x − 0.1524 m)²`: exact for tape on the bat's long axis. On the
//! back of the blade it lies about 4 cm behind that axis, which adds 0.2 % of its own mass times m²:
//! 0.00016 kg m² for 100 g, below what a bench can tell.

use crate::bat::Bat;
use crate::bat::shape::BatShape;
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use crate::ounce::cost::StrokeOunce;
use crate::ounce::moments::TopMoments;

/// What decides how a bat lies in the hand and swings.
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

    /// Mass and moments about the top of the handle.
    pub fn moments(&self) -> TopMoments {
        TopMoments::of(self.mass_kg, self.balance_m, self.swing_moment_kg_m2)
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
    /// The stroke is as fast as wanted, and neither swing moment nor hold moment can be told from the wanted
    /// by any published threshold.
    Alike,
    /// The stroke is as fast as wanted, but the bat is heavier or lighter in the hand.
    SwingOnly,
    /// The bat as it is swings slower than the wanted one; tape can only slow it.
    OwnedHeavier,
    /// The wanted bat swings slower than any tape that holds could make this one.
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
/// Bat speeds this near to the nearest that can be reached count as one, as a share: a gram or so at the toe.
const SPEED_STEP: f64 = 0.0005;
/// What the hand feels likewise: far below the least published threshold, 2.5 %.
const FEEL_STEP: f64 = 0.01;
/// Within this share nobody can tell two bats apart by any published threshold.
pub const ALIKE: f64 = 0.025;
/// Bat speeds within this share count as the same, as in the fit. Assumption.
pub const SAME_SPEED: f64 = 0.005;

/// Whole grams at no more than three of the places that bring the bat speed of one stroke nearest to that with
/// the wanted bat; among those equally near, what the hand feels (swing moment or hold moment, whichever is
/// farther off); among those, the least tape at the fewest places.
///
/// `cost` is the stroke's law about the wanted bat.
pub fn trial(owned: Pickup, wanted: Pickup, places: &[Place; 4], cost: &StrokeOunce) -> Trial {
    let speed_step = SPEED_STEP * cost.bat_speed_m_s;
    let room = Room::new(owned, wanted, places, cost);
    let mut nearest = f64::INFINITY;
    room.each(f64::INFINITY, &mut |it| nearest = nearest.min(it.speed_miss));
    let limit = nearest + speed_step;
    let mut closest = f64::INFINITY;
    room.each(limit, &mut |it| closest = closest.min(it.feel_miss));
    let mut best: Option<Candidate> = None;
    room.each(limit, &mut |it| {
        let key = |it: &Candidate| (it.trouble_g(), it.speed_miss, it.feel_miss);
        if it.feel_miss <= closest + FEEL_STEP && best.is_none_or(|b| key(&it) < key(&b)) {
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
    // By the cost law about the wanted bat.
    let speed_off_share = cost.change_m_s(taped.moments() - wanted.moments()) / cost.bat_speed_m_s;
    let near = near(&taped, &wanted, speed_off_share);
    let (weights, reached) = match near {
        Near::OwnedHeavier => (Vec::new(), owned),
        _ => (weights, taped),
    };
    Trial { weights, owned, reached, wanted, near }
}

fn near(reached: &Pickup, wanted: &Pickup, speed_off_share: f64) -> Near {
    let swing_off = reached.swing_moment_kg_m2 / wanted.swing_moment_kg_m2 - 1.0;
    let hold_off = reached.hold_moment_n_m() / wanted.hold_moment_n_m() - 1.0;
    if speed_off_share.abs() > SAME_SPEED {
        if speed_off_share < 0.0 { Near::OwnedHeavier } else { Near::TooFar }
    } else if swing_off.abs() > ALIKE || hold_off.abs() > ALIKE {
        Near::SwingOnly
    } else {
        Near::Alike
    }
}

#[derive(Clone, Copy, Debug)]
struct Candidate {
    grams: [u32; 4],
    /// Bat speed off, m/s.
    speed_miss: f64,
    /// Swing moment or hold moment off, the larger, as a share.
    feel_miss: f64,
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
    /// What the tape must take from the bat speed, m/s.
    speed_m_s: f64,
    speed_per_g: [f64; 4],
    /// Swing moment and hold moment that are missing, as shares of the wanted ones.
    feel: [f64; 2],
    feel_per_g: [[f64; 4]; 2],
}

impl Room {
    fn new(owned: Pickup, wanted: Pickup, places: &[Place; 4], cost: &StrokeOunce) -> Self {
        let (swing, hold) = (wanted.swing_moment_kg_m2, wanted.hold_moment_n_m());
        Self {
            speed_m_s: cost.change_m_s(owned.moments() - wanted.moments()),
            speed_per_g: places.map(|it| -1e-3 * cost.at(it.from_top_m)),
            feel: [1.0 - owned.swing_moment_kg_m2 / swing, 1.0 - owned.hold_moment_n_m() / hold],
            feel_per_g: [
                places.map(|it| 1e-3 * it.lever_m() * it.lever_m() / swing),
                places.map(|it| 1e-3 * STANDARD_GRAVITY_M_S2 * it.lever_m() / hold),
            ],
        }
    }

    /// Shows every way whose bat speed misses by no more than `limit`. The grams at the toe follow from the
    /// others: only those near what is then missing are looked at.
    fn each(&self, limit: f64, show: &mut dyn FnMut(Candidate)) {
        let per_toe = self.speed_per_g[3];
        let weigh = |grams: [u32; 4], per_g: &[f64; 4]| -> f64 {
            grams.into_iter().zip(per_g).map(|(g, per)| f64::from(g) * per).sum()
        };
        for a in 0..=MOST_AT_A_PLACE_G {
            for b in 0..=MOST_AT_A_PLACE_G {
                for c in 0..=MOST_AT_A_PLACE_G {
                    let Some(room) = MOST_IN_ALL_G.checked_sub(a + b + c) else { break };
                    let used = [a, b, c].into_iter().filter(|g| *g > 0).count();
                    let missing = self.speed_m_s - weigh([a, b, c, 0], &self.speed_per_g);
                    let most = room.min(MOST_AT_A_PLACE_G);
                    let (low, high) = match used {
                        MOST_PLACES => (0, 0),
                        _ => around(missing, limit, per_toe, most),
                    };
                    for d in low..=high {
                        let grams = [a, b, c, d];
                        let speed_miss = (missing - f64::from(d) * per_toe).abs();
                        if speed_miss <= limit {
                            let off = |n: usize| self.feel[n] - weigh(grams, &self.feel_per_g[n]);
                            let feel_miss = off(0).abs().max(off(1).abs());
                            show(Candidate { grams, speed_miss, feel_miss });
                        }
                    }
                }
            }
        }
    }
}

/// Whole grams that bring what is missing to within `limit`, each bringing `per_g`; all of them where a gram
/// brings nothing.
fn around(missing: f64, limit: f64, per_g: f64, most: u32) -> (u32, u32) {
    if per_g <= 0.0 {
        return (0, most);
    }
    let most = f64::from(most);
    let reach = if limit.is_finite() { limit / per_g } else { 1.0 };
    let grams = (missing / per_g).clamp(0.0, most);
    let (low, high) = ((grams - reach).max(0.0), (grams + reach).min(most));
    (libm::floor(low) as u32, libm::ceil(high) as u32)
}
