//! The planing plan of the bat on the bench, from its readings to the card.

use backlift::bat::sizes::named;
use backlift::questions::plane::on_the_bench;
use backlift::workshop::plane::additions::additions;
use backlift::workshop::plane::{Bench, Finish, PickupMoments, plan};

use super::action::Work;
use super::plan::{PLANING_SD, Planned};
use crate::studio::answers::key;
use crate::studio::paper::OnDesk;
use crate::studio::state::Studio;

impl Studio {
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
        let bat = self.derived.bench_keys.get(self.bench_bat)?;
        let Finish { grips, bound, toe_guard, oiled, labels } = self.wood.on;
        let on = (grips, bound, toe_guard, oiled, labels);
        Some(key(("plan", self.wood.key, bat, self.wood_card_key()?, on)))
    }

    fn planned(&self, key: u64) -> Option<Planned> {
        let (bat, card) = (self.at_bench()?, self.wood_card()?);
        let size = named(&self.wood.sizes, &card.size)?;
        let described = self.wood.worked.as_ref().filter(|_| !self.wood.paper.is_untouched());
        let described = described.filter(|it| it.loaded.size.name == size.name);
        let shape = described.map(|it| &it.bat.shape);
        let (shape, drawn_on) = on_the_bench(bat, &self.wood.on, card, size, shape);
        let bench = Bench {
            mass_kg: bat.mass_kg,
            balance_m: bat.balance_m,
            swing_moment_kg_m2: bat.swing_moment_kg_m2,
            shape: &shape,
            finish: self.wood.on,
            besides: Vec::new(),
            planing_sd: PLANING_SD,
        };
        let now =
            PickupMoments::of(bat.mass_kg.value, bat.balance_m.value, bat.swing_moment_kg_m2.value);
        let to_come = additions(&shape, &self.wood.on, &Finish::of(card));
        let to_come = to_come.iter().fold(PickupMoments::default(), |sum, it| sum + it.adds);
        let plan = plan(&bench, card, &size.craft);
        Some(Planned { key, now, to_come, plan, shape, drawn_on })
    }
}
