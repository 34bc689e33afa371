//! Water in the wood: a bat carried from the workshop's air to that of the place where it will live.

use super::Stop;
use super::delivered::weigh_up;
use crate::bat::figures::WeighedBat;
use crate::bat::pendulum::usual_swings_s;
use crate::bat::sizes::named;
use crate::card::{Card, Figure};
use crate::files::assets::sizes;
use crate::files::fault::Fault;
use crate::measurement::bench::BatReading;
use crate::workshop::carved::Figures;
use crate::workshop::pressing::{Pressed, Pressing, USUAL_DENSER};
use crate::workshop::season::drift;
use crate::workshop::season::uptake::{
    DAY_S, DIFFUSION_FACTOR, DIFFUSION_M2_S, bare_share, mean_thickness_m, share, time_constant_s,
};
use crate::workshop::season::year::share_within;
use crate::workshop::season::{Air, Seasoned, State};

/// What the bat is called.
pub const THE_BAT: &str = "the bat";

/// A bat ready to be carried.
#[derive(Clone, Debug)]
pub struct Given {
    /// Its card, if it has one.
    pub card: Option<Card>,
    /// The bat.
    pub weighed: WeighedBat,
    /// What its scale, pencil and pendulum say.
    pub on_the_scale: Figures,
}

impl Given {
    /// A bat off the bench; what is merely odd comes beside it. `called` says what a field of the reading is called
    /// where it was given.
    ///
    /// # Errors
    /// Every fault of the reading together.
    pub fn read(
        reading: &BatReading,
        called: impl Fn(&str) -> String,
    ) -> Result<(Self, Vec<Fault>), Stop> {
        let (weighed, warnings) = weigh_up(reading, called)?;
        let timed = reading.pendulum.map(|_| weighed.swing_moment_kg_m2.value);
        Ok((Self::weighing(weighed, None, timed), warnings))
    }

    /// The bat of a card.
    ///
    /// # Errors
    /// Every figure of the card that no bat has.
    pub fn carded(card: Card, called: impl Fn(&str) -> String) -> Result<(Self, Vec<Fault>), Stop> {
        let reading = BatReading {
            size: Some(card.size.clone()),
            length_m: Some(card.length_m),
            balance_m: Some(card.balance_m()),
            ..BatReading::weighed(THE_BAT, card.mass_kg())
        };
        let (weighed, warnings) = weigh_up(&reading, called)?;
        let swing_moment_kg_m2 = Some(card.swing_moment_kg_m2());
        Ok((Self::weighing(weighed, Some(card), swing_moment_kg_m2), warnings))
    }

    fn weighing(weighed: WeighedBat, card: Option<Card>, swing_moment_kg_m2: Option<f64>) -> Self {
        let on_the_scale = Figures {
            mass_kg: weighed.mass_kg.value,
            balance_m: weighed.balance_m.value,
            swing_moment_kg_m2,
        };
        Self { card, weighed, on_the_scale }
    }

    /// Figures that are the size's own, because nobody measured them on this bat: their names in JSON.
    pub fn estimated(&self) -> Vec<&'static str> {
        let balance = self.weighed.balance_m.is_estimated().then_some("balance_m");
        let swing = self.on_the_scale.swing_moment_kg_m2.is_none().then_some("swing_moment_kg_m2");
        balance.into_iter().chain(swing).collect()
    }
}

/// What was asked.
#[derive(Clone, Copy, Debug)]
pub struct Asked {
    /// Workshop, and where the bat will live.
    pub airs: [Air; 2],
    /// Oiled, or bare.
    pub oiled: bool,
    /// Days in the new air.
    pub days: Option<u32>,
    /// How far the face was pressed, m.
    pub pressed_m: Option<f64>,
    /// How much denser it got.
    pub denser: Option<f64>,
}

/// What came of it.
#[derive(Clone, Debug)]
pub struct Found {
    /// What was asked.
    pub asked: Asked,
    /// The bat in both airs, and the aim.
    pub seasoned: Seasoned,
    /// Ten swings of the bat to aim for, s.
    pub aim_ten_swings_s: Option<f64>,
    /// Time constant of the blade, s: short, central, long.
    pub time_constants_s: [f64; 3],
    /// How far it has gone by some days.
    pub course: Vec<Gone>,
    /// Against the card's limits, with a card.
    pub limits: Option<Limits>,
    /// What the pressing did.
    pub pressing: Option<(Pressing, Pressed)>,
}

/// How far a bat has gone to its new weight by one day.
#[derive(Clone, Copy, Debug)]
pub struct Gone {
    /// Days in the new air.
    pub days: u32,
    /// Share of the way of a bare bat: slow wood, usual, quick wood.
    pub bare: [f64; 3],
    /// Share of the way of an oiled bat in usual wood.
    pub oiled: f64,
}

/// The card's limits, where the bat will live and through a year.
#[derive(Clone, Debug)]
pub struct Limits {
    /// Each figure there of a bat that meets the card in the workshop, and whether it is within.
    pub there: Vec<(Figure, f64, bool)>,
    /// Share of a year between the two airs within all limits, made to the card's figures today.
    pub year_made_to_card: f64,
    /// The same, made to the aim.
    pub year_made_to_aim: f64,
}

/// Days at which the way is told.
const DAYS: [u32; 7] = [1, 3, 7, 14, 30, 60, 120];

/// Carries the bat from one air to the other.
///
/// # Errors
/// If no bat of its size is like it, or the pressing cannot be.
pub fn season(given: &Given, asked: Asked) -> Result<Found, Stop> {
    let sizes = sizes()?;
    let size = named(&sizes, &given.weighed.size)
        .ok_or_else(|| Stop::our_mistake("the size found is not there"))?;
    let reference = size.reference.bat("").map_err(Stop::our_mistake)?;
    let family = given.weighed.family();
    let seasoned =
        drift::season(family, &reference, &given.on_the_scale, asked.airs).map_err(|fault| {
            let help = "check size, weight and balance point, and their units";
            Stop::no_answer(fault, help)
        })?;
    let aim = seasoned.aim;
    let aim_ten_swings_s = usual_swings_s(aim.mass_kg, aim.balance_m, aim.swing_moment_kg_m2, 10);
    let thickness_m = mean_thickness_m(&seasoned.shape);
    let time_constants_s = [DIFFUSION_FACTOR, 1.0, 1.0 / DIFFUSION_FACTOR]
        .map(|factor| time_constant_s(thickness_m, factor * DIFFUSION_M2_S));
    let [quick_s, usual_s, slow_s] = time_constants_s;
    let mut days: Vec<u32> = DAYS.into_iter().chain(asked.days).collect();
    days.sort_unstable();
    days.dedup();
    let gone = |days: u32| {
        let time_s = f64::from(days) * DAY_S;
        Gone {
            days,
            bare: [slow_s, usual_s, quick_s].map(|it| bare_share(time_s, it)),
            oiled: share(time_s, usual_s, true),
        }
    };
    let pressing = asked.pressed_m.map(|depth_m| {
        let pressing = Pressing { depth_m, denser: asked.denser.unwrap_or(USUAL_DENSER) };
        let pressed = pressing.press(&seasoned.shape).map_err(|fault| {
            Fault::new(format!("--pressed: {fault}"))
                .help("press less, or give how much denser the face got with --denser")
        })?;
        Ok::<_, Stop>((pressing, pressed))
    });
    Ok(Found {
        aim_ten_swings_s,
        time_constants_s,
        course: days.into_iter().map(gone).collect(),
        limits: given.card.as_ref().map(|it| limits(it, &seasoned)),
        pressing: pressing.transpose()?,
        asked,
        seasoned,
    })
}

fn limits(card: &Card, seasoned: &Seasoned) -> Limits {
    const DRIFTING: [Figure; 3] = [Figure::SwingMoment, Figure::DeadWeight, Figure::Balance];
    let of = |state: &State, figure: Figure| match figure {
        Figure::SwingMoment => state.swing_moment_kg_m2,
        Figure::DeadWeight => state.mass_kg,
        _ => state.balance_m,
    };
    let year = |ends: [&State; 2]| {
        share_within(&DRIFTING.map(|it| (ends.map(|end| of(end, it)), card.asked(it).tolerance)))
    };
    let within = |it: Figure| {
        let value = of(&seasoned.there, it);
        (it, value, card.asked(it).takes(value))
    };
    Limits {
        there: DRIFTING.map(within).to_vec(),
        year_made_to_card: year([&seasoned.here, &seasoned.there]),
        year_made_to_aim: year([&seasoned.aim, &seasoned.here]),
    }
}

impl Found {
    /// Dead weight of the bat as given after some days in the new air, kg.
    pub fn mass_after_kg(&self, gone: &Gone) -> f64 {
        let share = if self.asked.oiled { gone.oiled } else { gone.bare[1] };
        self.seasoned.here.mass_kg + share * self.seasoned.mass_change_kg.value
    }
}
