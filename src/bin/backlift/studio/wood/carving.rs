//! The blade carved to a card: asked in the background, one of the answers taken.

use backlift::bat::described::Described;
use backlift::card::Card;
use backlift::files::shape_text::rewritten;
use backlift::workshop::carved::Held;
use backlift::workshop::to_card::{Start, ToCard, to_card};

use super::Wood;
use super::action::Holdable;
use crate::studio::answers::{Keyed, key};
use crate::studio::state::Studio;
use crate::studio::work::Question;

impl Wood {
    /// What is held, at its present figures.
    fn held(&self) -> Held {
        let Some(shape) = self.worked.as_ref().map(|it| &it.bat.shape) else {
            return Held::default();
        };
        let holds = |it: Holdable| self.held.contains(&it);
        let swell = shape.blade.deepest();
        Held {
            edge_m: holds(Holdable::Edge).then(|| shape.blade.thickest_edge_m()),
            depth_m: swell.filter(|_| holds(Holdable::Depth)).map(|it| it.depth_m),
            swell_from_toe_m: holds(Holdable::Swell).then(|| shape.swell_from_toe_m()),
            hollow: swell.filter(|_| holds(Holdable::Hollow)).map(|it| it.hollow),
        }
    }
}

impl Studio {
    /// The card that the wood is held against: that in the bat's own file, the one that was opened, or the fitting's.
    pub fn wood_card(&self) -> Option<&Card> {
        let opened = || self.wood.card.as_ref().map(|it| &it.card);
        let own = self.wood.own_card();
        own.or_else(opened).or_else(|| self.fitted().map(|it| &it.it.card))
    }

    pub(super) fn wood_card_key(&self) -> Option<u64> {
        let own = self.wood.worked.as_ref().and_then(|it| it.card_key);
        let opened = || self.wood.card.as_ref().map(|it| it.key);
        own.or_else(opened).or_else(|| self.fitted().map(|it| it.key))
    }

    /// What shapes for the card hang on.
    pub fn carving_key(&self) -> u64 {
        key(("carve", self.wood.key, &self.wood.held, self.wood_card_key()))
    }

    /// The shapes that were found last, or what stands in their way.
    pub fn carved(&self) -> Option<Keyed<'_, ToCard>> {
        self.answers.last(Question::Carve)
    }

    pub(super) fn carve(&mut self) {
        let (Some(worked), Some(card)) = (self.wood.worked.clone(), self.wood_card().cloned())
        else {
            return self
                .refuse("there is no card to carve to", "open a card, or find the bat first");
        };
        let (held, limits) = (self.wood.held(), self.wood.limits.clone());
        self.work.start(Question::Carve, self.carving_key(), move |progress, _| {
            let described = &worked.loaded.described;
            let start = Start {
                shape: worked.bat.shape.clone(),
                density_kg_m3: worked.bat.density_kg_m3,
                willow_given: described.cleft.is_some() || described.willow_kg_m3.is_some(),
                cleft: described.cleft,
                size: &worked.loaded.size,
                limits: &limits,
                held,
            };
            Ok(to_card(&start, &card, &|| progress.report("carving", 0.5).is_break()))
        });
    }

    /// Takes one of the shapes that were found as the description.
    pub(super) fn take_carved(&mut self, n: usize) {
        let Some(Keyed { it: carved, .. }) = self.carved() else { return };
        let answer = carved.answers.get(n).or(carved.nearest.as_ref().filter(|_| n == 0));
        let (Some(answer), Some(worked)) = (answer, &self.wood.worked) else { return };
        let reference = &worked.loaded.size.reference;
        let described = Described::of(&answer.bat.shape, reference, answer.bat.density_kg_m3);
        let changed = self.wood.change("take a carved shape".to_owned(), |it| {
            *it = it.with_text(&rewritten(it.text(), &described)?)?;
            Ok(())
        });
        changed.unwrap_or_else(|faults| self.say_faults(&faults));
    }
}
