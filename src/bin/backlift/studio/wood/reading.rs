//! A new reading of the bat on the bench, begun in the bat's own file: its fields are then filled in like any other.

use backlift::bat::sizes::named;
use backlift::card::Card;
use backlift::files::fault::{Fault, Faults};
use backlift::files::shape_text::{Begun, own, with_begun, with_card};
use backlift::questions::plane::TO_PLANE;

use super::Wood;
use crate::clock;
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
    /// Begins it: now, by as many swings as the card asks, and with the plan's first pass as made.
    pub(super) fn next_reading(&mut self) -> Result<(), Faults> {
        let no_card = || {
            Fault::new("there is no card to plane to").help("open a card, or find the bat first")
        };
        let card = self.wood_card().ok_or_else(no_card)?;
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
