//! A bat as its maker describes it, worked out, and carved until it meets a card.

use super::Stop;
use super::placed::{argument_fault, described_bat};
use crate::bat::completed::Completed;
use crate::bat::described::Described;
use crate::bat::shaped::ShapedBat;
use crate::card::Card;
use crate::files::assets::limits;
use crate::files::fault::Fault;
use crate::files::shape::LoadedShape;
use crate::files::shape_text;
use crate::units::{Quantity, UnitFault, parse};
use crate::workshop::carved::Held;
use crate::workshop::middles::middles;
use crate::workshop::to_card::{Answer, Start, ToCard, to_card};

/// A described bat, worked out.
#[derive(Clone, Debug)]
pub struct Worked {
    /// As it was described.
    pub loaded: LoadedShape,
    /// The bat that comes of it.
    pub bat: ShapedBat,
    /// The same with its middle low, as it is and high, where no card is to be met.
    pub middles: Vec<(&'static str, ShapedBat)>,
    /// The card that it is carved to, and what comes of that.
    pub to: Option<(Card, ToCard)>,
    /// It is carved from the bat described; else from the size's own.
    pub own: bool,
}

impl Worked {
    /// The answer to the card that is drawn, exported and written down: the first, else the nearest there is.
    pub fn answer(&self) -> Option<&Answer> {
        self.to.as_ref().and_then(|(_, it)| it.answers.first().or(it.nearest.as_ref()))
    }

    /// What it is carved from, in words.
    pub fn carved_from(&self) -> String {
        match self.own {
            true => self.loaded.title.clone(),
            false => format!("the standard bat of size {}", self.loaded.size.name),
        }
    }

    /// What the bat that is drawn and written is called.
    pub fn title(&self) -> String {
        match self.answer() {
            Some(it) => format!("{}, carved to a card from {}", it.name, self.carved_from()),
            None => self.loaded.title.clone(),
        }
    }

    /// The bat that answers the card as the text of a described bat, so that it can be read and worked on; none
    /// without a card.
    ///
    /// # Errors
    /// If it cannot be written.
    pub fn written(&self) -> Result<Option<String>, Fault> {
        let (Some((card, _)), Some(answer)) = (&self.to, self.answer()) else { return Ok(None) };
        let LoadedShape { size, described, .. } = &self.loaded;
        let it = &answer.bat;
        let mut of = Described::of(&it.shape, &size.reference, it.density_kg_m3);
        of.cleft = described.cleft.filter(|_| self.own);
        of.law_type = described.law_type.filter(|_| self.own);
        let title = self.title();
        let invented = card.invented || (self.own && self.loaded.invented);
        // A bench calls a bat by its order.
        let number = card.order.as_ref().and_then(|it| it.number.as_ref());
        let title = number.map_or(title, |it| format!("Order {it}"));
        let text = shape_text::written(&title, invented, &size.name, &of)?;
        shape_text::with_card(&text, card).map(Some)
    }

    /// What the size's lines completed of a blade that was measured at some heights.
    pub fn completed(&self) -> Vec<Completed> {
        self.loaded.described.completed(&self.loaded.size.reference)
    }

    /// The bat to be drawn and exported: the best answer to the card, else the nearest to it, else as
    /// described.
    pub fn chosen(&self) -> &ShapedBat {
        self.answer().map_or(&self.bat, |it| &it.bat)
    }
}

/// A card to carve a bat to.
#[derive(Clone, Debug)]
pub struct ToMeet {
    /// The card.
    pub card: Card,
    /// What the maker will not have changed.
    pub held: Held,
    /// The bat described is the maker's own; the built-in one stands for nothing but its size.
    pub own: bool,
}

/// Works a described bat out, and carves it to a card if there is one.
///
/// # Errors
/// If what is described is no bat.
pub fn worked(loaded: LoadedShape, to_meet: Option<ToMeet>) -> Result<Worked, Stop> {
    let limits = limits()?;
    let bat = described_bat(&loaded, &limits)?;
    let density_kg_m3 = loaded.described.density_kg_m3();
    let like_described =
        |it: &ShapedBat| it.clone().with_rubber(bat.rubber_share, bat.law_type, &limits);
    let own = to_meet.as_ref().is_none_or(|it| it.own);
    let to = to_meet.map(|ToMeet { card, held, own }| {
        let described = &loaded.described;
        let start = Start {
            shape: if own { bat.shape.clone() } else { loaded.size.reference.clone() },
            density_kg_m3,
            willow_given: own && (described.cleft.is_some() || described.willow_kg_m3.is_some()),
            cleft: described.cleft.filter(|_| own),
            size: &loaded.size,
            limits: &limits,
            held,
        };
        let mut answer = to_card(&start, &card, &|| false);
        if own {
            // Carving leaves the handle's cane and rubber as they were described.
            let of_answers = answer.answers.iter_mut().chain(&mut answer.nearest);
            of_answers.for_each(|it| it.bat = like_described(&it.bat));
        }
        (card, answer)
    });
    let middles = match to {
        None => middles(&bat.shape, density_kg_m3, &loaded.size, &limits)
            .into_iter()
            .map(|(name, it)| (name, like_described(&it)))
            .collect(),
        Some(_) => Vec::new(),
    };
    Ok(Worked { loaded, bat, middles, to, own })
}

const WHAT: &str =
    "hold edge, depth, swell or hollow, like --hold \"edge=38 mm\" or --hold \"hollow=40 %\"";

/// What the maker will not have changed, read from arguments like "edge=38 mm".
///
/// # Errors
/// The first that cannot be held.
pub fn held(given: &[String]) -> Result<Held, Stop> {
    let mut held = Held::default();
    for argument in given {
        let fault = |message: &str| argument_fault("--hold", argument, message, WHAT);
        let (what, value) = argument.split_once('=').ok_or_else(|| fault("there is no \"=\""))?;
        let length = || {
            let unit_fault = |it: UnitFault| {
                argument_fault("--hold", argument, &it.to_string(), &it.mend(Quantity::Length))
            };
            let length_m =
                parse(Quantity::Length, value.trim().trim_matches('"')).map_err(unit_fault)?;
            if length_m > 0.0 { Ok(length_m) } else { Err(fault("it is not above zero")) }
        };
        match what.trim() {
            "edge" => held.edge_m = Some(length()?),
            "depth" | "spine" => held.depth_m = Some(length()?),
            "swell" => held.swell_from_toe_m = Some(length()?),
            "hollow" => {
                let share = crate::units::share(value).filter(|it| (-1.0..=1.5).contains(it));
                held.hollow = Some(share.ok_or_else(|| fault("it is no hollowing"))?);
            }
            other => return Err(fault(&format!("{other:?} cannot be held"))),
        }
    }
    Ok(held)
}
