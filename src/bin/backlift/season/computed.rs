//! Everything the command shows.

use backlift::bat::pendulum::time_for_swings_s;
use backlift::bat::sizes::named;
use backlift::card::{Card, Figure};
use backlift::files::assets::sizes;
use backlift::files::fault::Fault;
use backlift::measurement::bench::{PICKUP_AXIS_FROM_TOP_M, USUAL_AMPLITUDE_RAD};
use backlift::workshop::pressing::{Pressed, Pressing, USUAL_DENSER};
use backlift::workshop::season::drift::{SeasonFault, season};
use backlift::workshop::season::uptake::{
    DAY_S, DIFFUSION_FACTOR, DIFFUSION_M2_S, bare_share, mean_thickness_m, share, time_constant_s,
};
use backlift::workshop::season::year::share_within;
use backlift::workshop::season::{Air, Seasoned, State};

use super::bat::Given;
use crate::outcome::Stop;

/// What was asked.
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
#[derive(Clone, Copy)]
pub struct Gone {
    /// Days in the new air.
    pub days: u32,
    /// Share of the way of a bare bat: slow wood, usual, quick wood.
    pub bare: [f64; 3],
    /// Share of the way of an oiled bat in usual wood.
    pub oiled: f64,
}

/// The card's limits, where the bat will live and through a year.
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

/// Computes it.
pub fn of(given: &Given, asked: Asked) -> Result<Found, Stop> {
    let sizes = sizes()?;
    let size = named(&sizes, &given.weighed.size)
        .ok_or_else(|| Stop::OurMistake("the size found is not there".into()))?;
    let reference = size.reference.bat("").map_err(|it| Stop::OurMistake(it.to_string()))?;
    let family = given.weighed.family();
    let seasoned =
        season(family, &reference, &given.on_the_scale, asked.airs).map_err(no_answer)?;
    let aim = seasoned.aim.now;
    let aim_ten_swings_s = time_for_swings_s(
        aim.mass_kg,
        aim.balance_m,
        aim.swing_moment_kg_m2,
        10,
        PICKUP_AXIS_FROM_TOP_M,
        USUAL_AMPLITUDE_RAD,
    );
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
        let [low, high] = card.asked(it).tolerance;
        (it, value, (low..=high).contains(&value))
    };
    Limits {
        there: DRIFTING.map(within).to_vec(),
        year_made_to_card: year([&seasoned.here, &seasoned.there]),
        year_made_to_aim: year([&seasoned.aim.now, &seasoned.here]),
    }
}

fn no_answer(fault: SeasonFault) -> Stop {
    Stop::NoAnswer(
        Fault::new(fault.to_string()).help("check size, weight and balance point, and their units"),
    )
}

impl Found {
    /// Dead weight of the bat as given after some days in the new air, kg.
    pub fn mass_after_kg(&self, gone: &Gone) -> f64 {
        let share = if self.asked.oiled { gone.oiled } else { gone.bare[1] };
        self.seasoned.here.mass_kg + share * self.seasoned.mass_change_kg.value
    }
}
