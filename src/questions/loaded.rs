//! What most questions start from: the scenario taken through the bench and the tape measure, with
//! each fault of the core put where it was written.

use super::Stop;
use super::placed::{
    argument_fault, bat_fault, bat_warning, innings_stop, player_fault, player_warnings,
};
use crate::bat::Bat;
use crate::bat::figures::{WeighedBat, weigh};
use crate::bat::laws::Limits;
use crate::bat::sizes::Size;
use crate::card::cautions::JUNIOR_BELOW_Y;
use crate::card::order;
use crate::files::assets::{limits, sizes};
use crate::files::fault::{Fault, Faults, all_there_are, nearest_or, nearest_or_all};
use crate::files::scenario::{self, Places};
use crate::files::stroke::built_in;
use crate::files::stroke_paths::serving_paths;
use crate::fit::candidates::suitable;
use crate::fit::setting::Setting;
use crate::innings::played::{AtScore, FIFTY, play};
use crate::measurement::nets::made_for;
use crate::measurement::plan::Scenario;
use crate::player::joints::GROUP_COUNT;
use crate::player::{Player, player};
use crate::stroke::{PULL, Stroke, leading};
use crate::swing::batter::Batter;
use crate::swing::player_stroke::SwingFault;
use crate::worth::order::Order;

/// A scenario with its player built and its bats weighed.
#[derive(Clone, Debug)]
pub struct Loaded {
    /// As it was given.
    pub scenario: Scenario,
    /// Trade sizes.
    pub sizes: Vec<Size>,
    /// Size limits of the Laws.
    pub laws: Limits,
    /// The strokes that the scenario chooses: drive, pull, hook where it says nothing.
    pub strokes: Vec<Stroke>,
    /// The same on other joint paths, where there are any.
    pub strokes_otherwise: Vec<Stroke>,
    /// The bats, in the scenario's order.
    pub bats: Vec<WeighedBat>,
    /// The player.
    pub player: Player,
    /// Where each field was written.
    pub places: Places,
    /// What the order is called and what is wished, where somebody said it.
    pub order: Option<order::Order>,
}

/// Builds the player and weighs the bats; what is merely odd comes beside the result.
///
/// # Errors
/// Every fault of player and bats together, each where it was written.
pub fn built(read: scenario::Loaded) -> Result<(Loaded, Vec<Fault>), Stop> {
    let scenario::Loaded { scenario, places, own_strokes, fields, order } = read;
    let (sizes, laws) = (sizes()?, limits()?);
    let (mut faults, mut warnings) = (Vec::new(), Vec::new());
    for (path, written) in
        [("fit.share_limit", &fields.fit.share_limit), ("fit.tie_width", &fields.fit.tie_width)]
    {
        if written.is_some() {
            warnings.push(places.warning(
                path,
                "it belongs to an earlier rule and changes nothing any more",
                "leave it out",
            ));
        }
    }
    match scenario.player.faults().as_slice() {
        [] => warnings.extend(player_warnings(&scenario.player, &places)),
        all => faults.extend(all.iter().map(|it| player_fault(&places, &scenario.player, it))),
    }
    let mut bats = Vec::with_capacity(scenario.bats.len());
    for (n, reading) in scenario.bats.iter().enumerate() {
        match weigh(reading, &sizes, &laws) {
            Ok(bat) => {
                warnings.extend(bat.warnings.iter().map(|it| bat_warning(&places, n, it)));
                bats.push(bat);
            }
            Err(found) => faults.extend(found.iter().map(|it| bat_fault(&places, n, it))),
        }
    }
    if !faults.is_empty() {
        return Err(Stop::WrongInput(Faults(faults)));
    }
    let mut player =
        player(&scenario.player).map_err(|it| player_fault(&places, &scenario.player, &it))?;
    if let Some(kept) = &scenario.calibration {
        if kept.made_for != made_for(&scenario.player) {
            warnings.push(places.warning(
                "calibration.made_for",
                "age, stature, grip or wrist hold were others when the nets were read",
                "run `backlift calibrate` again; the strength found then is used meanwhile",
            ));
        }
        player = player.calibrated(&kept.calibration);
    }
    let all: Vec<Stroke> = own_strokes.into_iter().chain(built_in()?).collect();
    let of = |name: &String| all.iter().find(|it| it.name == *name).cloned();
    let strokes: Vec<Stroke> = scenario.strokes.iter().filter_map(of).collect();
    let strokes_otherwise = serving_paths(&strokes)?;
    let loaded =
        Loaded { scenario, sizes, laws, strokes, strokes_otherwise, bats, player, places, order };
    Ok((loaded, warnings))
}

impl Loaded {
    /// The bat named by its label or its number from 0; the first if none is named.
    ///
    /// # Errors
    /// If there is no such bat.
    pub fn bat(&self, named: Option<&str>) -> Result<usize, Stop> {
        let Some(name) = named else { return Ok(0) };
        let wanted = name.trim().to_lowercase();
        let labels = || self.bats.iter().map(|it| it.reading.label.as_str());
        let by_number = || wanted.parse::<usize>().ok().filter(|it| *it < self.bats.len());
        labels().position(|it| it.to_lowercase() == wanted).or_else(by_number).ok_or_else(|| {
            let numbered: Vec<String> =
                labels().enumerate().map(|(n, it)| format!("{n} {it:?}")).collect();
            let help = nearest_or(&wanted, labels(), all_there_are("the bats", &numbered));
            argument_fault("--bat", name, &format!("no bat is called {name:?}"), &help)
        })
    }

    /// Names of the strokes that are swung.
    pub fn stroke_names(&self) -> Vec<&str> {
        self.strokes.iter().map(|it| it.name.as_str()).collect()
    }

    /// The stroke that a result is led by.
    pub fn lead(&self) -> usize {
        leading(&self.strokes)
    }

    /// The pull, for a question about nothing else.
    ///
    /// # Errors
    /// If the scenario leaves the pull out.
    pub fn pull(&self) -> Result<usize, Stop> {
        self.strokes.iter().position(|it| it.name == PULL).ok_or_else(|| {
            let message = "this command tells of the pull, which is not among them";
            self.places.fault("strokes", message, "add pull to strokes").into()
        })
    }

    /// The stroke of that name.
    ///
    /// # Errors
    /// If it is not among the scenario's.
    pub fn stroke(&self, named: &str) -> Result<usize, Stop> {
        let wanted = named.trim().to_lowercase();
        self.strokes.iter().position(|it| it.name.to_lowercase() == wanted).ok_or_else(|| {
            let help = nearest_or_all(&wanted, "the strokes", &self.stroke_names());
            argument_fault("--stroke", named, &format!("there is no stroke {named:?}"), &help)
        })
    }

    /// The player with every stroke there is, each strength times `capacity`.
    ///
    /// # Errors
    /// If the player's hands cannot stay on this bat.
    pub fn batter(&self, bat: &WeighedBat, capacity: f64) -> Result<Batter, Stop> {
        let strength = self.player.strength.times(&[capacity; GROUP_COUNT]);
        let player = Player { strength, ..self.player.clone() };
        Ok(Batter::new(&player, &self.strokes, &bat.bat)?)
    }

    /// What an advice starts from.
    pub fn order(&self) -> Order<'_> {
        Order {
            player: &self.player,
            strokes: &self.strokes,
            strokes_otherwise: &self.strokes_otherwise,
            bats: &self.bats,
            uses: self.scenario.uses,
            seen: &self.scenario.seen,
            plan: &self.scenario.innings,
            bowling: &self.scenario.bowling,
            limits: &self.scenario.fit,
            sizes: &self.sizes,
            laws: &self.laws,
        }
    }

    /// The size that suits the player first.
    fn standard(&self) -> Option<Size> {
        let suits = suitable(&self.sizes, &self.scenario.fit, self.player.stature_m);
        suits.into_iter().next()
    }

    /// Name of the size that suits the player first.
    pub fn standard_size(&self) -> Option<String> {
        self.standard().map(|it| it.name)
    }

    /// Whether the player is a junior here.
    pub fn is_junior(&self) -> bool {
        self.player.age_y < JUNIOR_BELOW_Y
    }

    /// The time in which each stroke is asked for, s: a multiple of the fresh fastest with the reference
    /// bat of the player's size, so that it is the same for all bats and scores.
    ///
    /// # Errors
    /// If the player cannot control the reference bat.
    pub fn asked_times_s(&self, batter: &Batter) -> Result<Vec<f64>, Stop> {
        let size =
            self.standard().ok_or_else(|| Stop::our_mistake("the table of sizes is empty"))?;
        let reference = size.reference.bat(size.name.as_str()).map_err(Stop::our_mistake)?;
        let factor = self.scenario.fit.asked_time_factor;
        Setting::asked_times_s(batter, &reference, factor).map_err(|fault| match fault {
            SwingFault::NoControlledSwing { stroke, .. } => {
                self.standard_bat_beyond_control(&stroke)
            }
            fault => fault.into(),
        })
    }

    /// The scenario's innings with a bat: all strokes at each of `scores`, each asked for in its time.
    ///
    /// # Errors
    /// If no such innings can be played, or a stroke has no controlled swing.
    pub fn play(
        &self,
        batter: &Batter,
        bat: &Bat,
        asked_time_s: &[f64],
        scores: &[f64],
    ) -> Result<Vec<AtScore>, Stop> {
        let (plan, bowled) = (&self.scenario.innings, self.scenario.bowling);
        play(batter, bat, plan, bowled, asked_time_s, scores)
            .map_err(|it| innings_stop(&self.places, it))
    }

    /// The same at fifty alone.
    ///
    /// # Errors
    /// As [`Self::play`].
    pub fn at_fifty(
        &self,
        batter: &Batter,
        bat: &Bat,
        asked_time_s: &[f64],
    ) -> Result<AtScore, Stop> {
        let played = self.play(batter, bat, asked_time_s, &[FIFTY])?;
        played.into_iter().next().ok_or_else(|| Stop::our_mistake("fifty was not played"))
    }

    /// The standard bat, from which every advice starts, is too much for this player in that stroke.
    pub fn standard_bat_beyond_control(&self, stroke: &str) -> Stop {
        let size = self.standard_size().unwrap_or_default();
        let message = format!(
            "this player is not strong enough for the {stroke} with a standard bat of size {size}, in any stroke time, and that is what bats are judged by"
        );
        Stop::no_answer(message, self.lighter_mend())
    }

    /// What to do where bats are too much for this player.
    pub fn lighter_mend(&self) -> &'static str {
        let smallest = self.sizes.first().map(|it| it.name.as_str());
        match self.standard_size().as_deref() == smallest {
            true => {
                "there is no smaller size: check age, grip_top and grip_bottom, or leave the stroke out of strokes; if they are right, no bat of the trade fits, and the coach should choose a softer game"
            }
            false => {
                "check age, grip_top and grip_bottom; ask for a smaller size with fit.sizes, or leave the stroke out of strokes"
            }
        }
    }
}
