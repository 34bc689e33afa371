//! The bat on the bench: its planing plan from its readings to the card, and a new reading begun in its own file, whose
//! fields are then filled in like any other.

use backlift::bat::sizes::named;
use backlift::card::Card;
use backlift::files::fault::{Fault, Faults};
use backlift::files::shape_text::{Begun, own, with_begun, with_card};
use backlift::questions::Stop;
use backlift::questions::plane::{TO_PLANE, Way, planned_by};
use backlift::workshop::combined::Reading;
use backlift::workshop::plane::additions::{Addition, additions};
use backlift::workshop::plane::plan::PLANING_SD;
use backlift::workshop::plane::{
    Bench, DrawnOn, Finish, Lies, PickupMoments, Planed, on_the_bench, plan,
};
use backlift::workshop::stages::BatLog;

use super::action::Work;
use super::{Planned, Wood};
use crate::clock;
use crate::studio::answers::key;
use crate::studio::paper::OnDesk;
use crate::studio::state::Studio;

impl Wood {
    /// Whether something was read of the bat, or is being read.
    pub fn has_log(&self) -> bool {
        !self.paper.fields().log.is_empty()
    }

    /// The text of the bat's own file for a card; that of the bat described, if it is of the card's size.
    fn for_card(&self, card: &Card) -> Result<String, Faults> {
        if self.paper.is_untouched() {
            let number = card.order.as_ref().and_then(|it| it.number.as_ref());
            let title =
                number.map_or_else(|| format!("A bat of size {}", card.size), String::clone);
            return Ok(own(&title, card, &[])?);
        }
        let of_card = named(&self.sizes, &card.size).map(|it| &it.name);
        let described = self.worked.as_ref().map(|it| &it.loaded.size.name);
        if let Some(described) = described.filter(|it| of_card != Some(*it)) {
            let message =
                format!("the bat described is of size {described}, the card of size {}", card.size);
            let help = "open its own card, or begin a new blade";
            return Err(Fault::new(message).help(help).into());
        }
        Ok(with_card(self.paper.text(), card)?)
    }
}

impl Studio {
    /// What was read and done to the bat in front, where it has a file of its own and was weighed with its handle in.
    pub fn own_log(&self) -> Option<&BatLog> {
        let log = &self.wood.worked.as_ref()?.loaded.log;
        let read = log.last().is_some_and(|it| it.stage.has_handle());
        (read && log.card.is_some()).then_some(log)
    }

    /// Makes the plan anew where the bat, the card or what is on the bat has changed.
    pub(in crate::studio) fn follow_plan(&mut self) {
        if self.wood.work != Work::Plane {
            return;
        }
        let key = self.planing_key();
        if self.wood.planned.as_ref().map(|it| it.key) == key {
            return;
        }
        self.wood.planned = key.and_then(|key| self.planned(key));
        // A new plan begins with the bat as it lies there now.
        self.wood.done = 0;
    }

    fn planing_key(&self) -> Option<u64> {
        if self.own_log().is_some() {
            let worked = self.wood.worked.as_ref()?;
            return Some(key(("own plan", self.wood.key, worked.log_key)));
        }
        // Of a bat whose first reading is not all there yet nothing is known.
        if self.wood.has_log() {
            return None;
        }
        let bat = self.derived.bench_keys.get(self.bench_bat)?;
        Some(key(("plan", self.wood.key, bat, self.wood_card_key()?, self.wood.on)))
    }

    fn planned(&self, key: u64) -> Option<Planned> {
        if self.own_log().is_some() {
            return self.planned_by_its_file(key);
        }
        let (bat, card) = (self.at_bench()?, self.wood_card()?);
        let size = named(&self.wood.sizes, &card.size)?;
        let described = self.wood.worked.as_ref().filter(|_| !self.wood.paper.is_untouched());
        let described = described.filter(|it| it.loaded.size.name == size.name);
        let shape = described.map(|it| &it.bat.shape);
        let lies = Lies {
            reading: [bat.mass_kg.value, bat.balance_m.value],
            handle_m: bat.reading.handle_diameter_m,
            finish: self.wood.on,
        };
        let (shape, drawn_on) = on_the_bench(&lies, card, size, shape);
        let bench = Bench {
            reading: Reading::of(bat),
            shape: &shape,
            planed: &Planed::not_yet(&shape),
            finish: self.wood.on,
            besides: Vec::new(),
            planing_sd: PLANING_SD,
            left_m: 0.0,
        };
        let now = bench.reading.moments();
        let to_come = adds(&additions(&shape, &self.wood.on, &Finish::of(card)));
        let plan = plan(&bench, card, &size.craft).map_err(|it| it.to_string());
        let thin_edges = plan.as_ref().map(|it| it.thin_edges(&shape, &size.reference));
        let thin_edges = thin_edges.unwrap_or_default();
        Some(Planned { key, now, to_come, plan, thin_edges, shape, drawn_on })
    }

    /// The plan of a bat that has its own file, as on the command line.
    fn planned_by_its_file(&self, key: u64) -> Option<Planned> {
        let worked = self.wood.worked.as_ref()?;
        let way = Way { besides: Vec::new(), planing_sd: PLANING_SD };
        let loaded = &worked.loaded;
        Some(match planned_by(loaded, &loaded.log, &way, str::to_owned) {
            Ok((it, _)) => Planned {
                key,
                now: it.now,
                to_come: adds(&it.plan.to_come),
                shape: it.shape,
                drawn_on: it.drawn_on,
                thin_edges: it.thin_edges,
                plan: Ok(it.plan),
            },
            Err(stop) => {
                let fault = match stop {
                    Stop::NoAnswer(fault) => fault.to_string(),
                    _ => "the bat's own file cannot be followed: plane it on the command line to see why".to_owned(),
                };
                Planned {
                    key,
                    now: PickupMoments::of_shape(&worked.bat.shape),
                    to_come: PickupMoments::default(),
                    shape: worked.bat.shape.clone(),
                    drawn_on: DrawnOn::Described,
                    thin_edges: Vec::new(),
                    plan: Err(fault),
                }
            }
        })
    }

    /// Begins it: now, by as many swings as the card asks, and with the plan's first pass as made.
    pub(super) fn next_reading(&mut self) -> Result<(), Faults> {
        let Some(card) = self.wood_card() else {
            let fault = Fault::new("there is no card to plane to");
            return Err(fault.help("open a card, or find the bat first").into());
        };
        let read = self.wood.paper.fields().log.len();
        let text = match self.wood.paper.fields().card {
            Some(_) => self.wood.paper.text().to_owned(),
            None => self.wood.for_card(card)?,
        };
        let plan = self.own_log().and_then(|_| self.wood.planned.as_ref()?.plan.as_ref().ok());
        let begun = Begun {
            stage: (read == 0).then_some(TO_PLANE),
            at: clock::now(),
            swings: card.pendulum_swings,
            planed: plan.and_then(|it| it.passes.first()).map(|it| (it.place, it.off_kg)),
        };
        let text = with_begun(&text, read, &begun)?;
        self.wood.change(format!("reading {}", read + 1), |it| {
            *it = it.with_text(&text)?;
            Ok(())
        })
    }
}

fn adds(all: &[Addition]) -> PickupMoments {
    all.iter().fold(PickupMoments::default(), |sum, it| sum + it.adds)
}
