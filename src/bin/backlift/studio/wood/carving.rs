//! The blade carved to a card: asked in the background, one of the answers taken.

use std::sync::Arc;

use backlift::bat::described::Described;
use backlift::card::Card;
use backlift::files::fault::Fault;
use backlift::files::shape_text::rewritten;
use backlift::questions::Progress as _;
use backlift::workshop::carved::Held;
use backlift::workshop::to_card::{Start, ToCard, to_card};

use super::Wood;
use super::act::first;
use super::action::Holdable;
use crate::studio::derived::key;
use crate::studio::state::Studio;
use crate::studio::work::{Answer, Question};

/// Shapes for a card.
pub struct Carved {
    /// What they hang on.
    pub key: u64,
    /// The shapes, or what stands in their way.
    pub it: Arc<ToCard>,
}

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
    /// The card that the wood is held against.
    pub fn wood_card(&self) -> Option<&Card> {
        let fitted = || self.results.fitted.as_ref().map(|it| &it.it.card);
        self.wood.card.as_deref().or_else(fitted)
    }

    /// What shapes for the card hang on.
    pub fn carving_key(&self) -> u64 {
        key(&(self.wood.key, &self.wood.held, self.wood_card()))
    }

    pub(super) fn carve(&mut self) {
        let (Some(worked), Some(card)) = (self.wood.worked.clone(), self.wood_card().cloned())
        else {
            let fault = Fault::new("there is no card to carve to");
            return self.say_fault(&fault.help("open a card, or find the bat first"));
        };
        let (held, limits) = (self.wood.held(), self.wood.limits.clone());
        let task = move |progress: &crate::progress::Progress, _: &dyn Fn(Answer)| {
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
            Ok(Answer::Carved(Arc::new(to_card(&start, &card, &|| {
                progress.report("carving", 0.5).is_break()
            }))))
        };
        let key = self.carving_key();
        self.results.failed.remove(&key);
        self.work.start(Question::Carve, key, Box::new(task));
    }

    /// Takes one of the shapes that were found as the description.
    pub(super) fn take_carved(&mut self, n: usize) -> Result<(), Fault> {
        let (Some(worked), Some(carved)) = (self.wood.worked.clone(), &self.wood.carved) else {
            return Ok(());
        };
        let answer = carved.it.answers.get(n).or(carved.it.nearest.as_ref().filter(|_| n == 0));
        let Some(answer) = answer else { return Ok(()) };
        let shape = &answer.bat.shape;
        let reference = &worked.loaded.size.reference;
        let described = Described::of(shape, reference, answer.bat.density_kg_m3);
        let text = rewritten(self.wood.file.text(), &described)?;
        self.wood.file = self.wood.file.with_text(&text).map_err(first)?;
        Ok(())
    }
}
