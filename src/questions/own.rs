//! A bat by its own file: as it lies on the bench, and what was read of it last.

use super::Stop;
use super::placed::described_bat;
use crate::bat::described::Described;
use crate::bat::shape::BatShape;
use crate::card::Card;
use crate::files::assets::limits;
use crate::files::fault::Fault;
use crate::files::shape::LoadedShape;
use crate::measurement::bench::BatReading;
use crate::workshop::history::{Now, now};
use crate::workshop::plane::Finish;
use crate::workshop::plane::plan::PLANING_SD;
use crate::workshop::stages::{BatLog, Entry};

/// A bat's own file that does not say what the bat is to be.
pub fn no_card() -> Fault {
    Fault::new("the bat's file has no card: nobody knows what it is to be")
        .help("put the card into it as card: (…)")
}

/// The bat as its maker describes it; none if nothing is said of it.
///
/// # Errors
/// If what is described is no bat.
pub fn described(own: &LoadedShape) -> Result<Option<BatShape>, Stop> {
    if own.described == Described::default() {
        return Ok(None);
    }
    Ok(Some(described_bat(own, &limits()?)?.shape))
}

/// The bat as it lies on the bench, with everything on it that its card wants: what is described is then what was read
/// and planed. As it is described where it has no card, or no handle yet.
///
/// # Errors
/// If what is described is no bat.
pub fn as_it_lies(own: LoadedShape) -> Result<LoadedShape, Stop> {
    let Some(card) = &own.log.card else { return Ok(own) };
    let now = now(&own.log.entries, card, &own.size, described(&own)?.as_ref(), PLANING_SD);
    let Some(Now { shape, .. }) = now else { return Ok(own) };
    let density_kg_m3 = own.described.density_kg_m3();
    let described = Described::of(&shape, &own.size.reference, density_kg_m3);
    Ok(LoadedShape { described, ..own })
}

/// The last reading of a bat's own file, which must be of the finished bat: its card asks for no other.
///
/// # Errors
/// If the last reading is of a part-made bat.
pub fn finished(log: &BatLog, card: &Card) -> Result<Option<BatReading>, Fault> {
    let Some(last) = log.last() else { return Ok(None) };
    let lacks: Vec<&str> =
        log.finish().lacks(&Finish::of(card)).into_iter().map(|it| it.1).collect();
    let to_come = if last.stage.has_handle() { lacks.join(", ") } else { "the handle".to_owned() };
    if to_come.is_empty() {
        return Ok(Some(reading_of(last, card)));
    }
    let message = format!("what was read last is of a part-made bat; still to come: {to_come}");
    Err(Fault::new(message).help(
        "keep a reading of the finished bat with `backlift plane … --stage gripped --keep`, or give it here with --mass, --balance and --time",
    ))
}

/// An entry of a bat's own file as the bench reads a bat of that card.
pub fn reading_of(entry: &Entry, card: &Card) -> BatReading {
    BatReading {
        size: Some(card.size.clone()),
        handle_diameter_m: entry.handle_m,
        ..entry.reading("the bat")
    }
}
