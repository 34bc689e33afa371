//! The planing plan of the bat on the bench, from its readings to the card.

use backlift::bat::sizes::named;
use backlift::questions::Stop;
use backlift::questions::plane::{Way, planned_by};
use backlift::workshop::combined::Reading;
use backlift::workshop::plane::additions::additions;
use backlift::workshop::plane::plan::PLANING_SD;
use backlift::workshop::plane::{
    Bench, Finish, Lies, PickupMoments, Plan, Planed, on_the_bench, plan,
};
use backlift::workshop::stages::BatLog;

use super::action::Work;
use super::plan::Planned;
use crate::studio::answers::key;
use crate::studio::paper::OnDesk;
use crate::studio::state::Studio;

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
        let Finish { grips, bound, toe_guard, oiled, labels } = self.wood.on;
        let on = (grips, bound, toe_guard, oiled, labels);
        Some(key(("plan", self.wood.key, bat, self.wood_card_key()?, on)))
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
        let to_come = additions(&shape, &self.wood.on, &Finish::of(card));
        let to_come = to_come.iter().fold(PickupMoments::default(), |sum, it| sum + it.adds);
        let plan = plan(&bench, card, &size.craft).map_err(|it| it.to_string());
        let thin_edges = plan.as_ref().map(|it| it.thin_edges(&shape, &size.reference));
        let thin_edges = thin_edges.unwrap_or_default();
        Some(Planned { key, now, to_come, plan, thin_edges, shape, drawn_on })
    }

    /// The plan of a bat that has its own file, as on the command line.
    fn planned_by_its_file(&self, key: u64) -> Option<Planned> {
        let worked = self.wood.worked.as_ref()?;
        let way = Way { besides: Vec::new(), planing_sd: PLANING_SD };
        let adds = |plan: &Plan| {
            plan.to_come.iter().fold(PickupMoments::default(), |sum, it| sum + it.adds)
        };
        let loaded = &worked.loaded;
        Some(match planned_by(loaded, &loaded.log, &way, str::to_owned) {
            Ok((it, _)) => Planned {
                key,
                now: it.now,
                to_come: adds(&it.plan),
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
                let shape = worked.bat.shape.clone();
                let now = PickupMoments::of_shape(&shape);
                let drawn_on = backlift::workshop::plane::DrawnOn::Described;
                let to_come = PickupMoments::default();
                let thin_edges = Vec::new();
                Planned { key, now, to_come, plan: Err(fault), thin_edges, shape, drawn_on }
            }
        })
    }
}
