//! A described bat put into the text of its file: the parts that describe it anew, everything else as it was.

use super::card;
use super::document::{Document, Text, edit, in_one_line, in_ron};
use super::fault::Fault;
use super::shape::{BladeV1, CleftV1, ExtrasV1, HandleV1, ShapeV1, StationV1, WillowV1};
use super::stages::entry::{EntryV1, texts};
use crate::bat::described::{Cleft, Described, DescribedBlade, DescribedExtras, DescribedHandle};
use crate::bat::measured::MeasuredStation;
use crate::bat::shape::BatShape;
use crate::bat::sizes::Size;
use crate::bat::willow::USUAL_DENSITY_KG_M3;
use crate::card::Card;
use crate::files::stages::value::mass_text;
use crate::workshop::plane::Place;
use crate::workshop::stages::{Entry, Moment, Stage};

/// The text of a described bat with everything that describes it written anew: blade, handle, what is on the
/// blade, and the density of its willow. The cleft, the title and all notes outside of these parts stay.
///
/// # Errors
/// What the new parts cannot be written as; the text is then as it was.
pub fn rewritten(text: &str, described: &Described) -> Result<String, Fault> {
    let lost = || Fault::new("the text has no place for what describes the bat");
    let mut out = text.to_owned();
    let parts = [
        ("blade", in_ron(&blade(&described.blade))?),
        ("handle", in_ron(&handle(&described.handle))?),
        ("extras", in_ron(&extras(&described.extras))?),
    ];
    for (part, raw) in parts {
        let raw = raw.replace('\n', "\n    ");
        out = edit::put_raw(&out, part, &raw).ok_or_else(lost)?;
    }
    if let Some(density) = described.willow_kg_m3 {
        let written = kg_m3(density.value).0;
        out = edit::put(&out, "willow.density", &written).ok_or_else(lost)?;
    }
    Ok(out)
}

/// A file that says only what is not as in the reference bat of the size.
///
/// # Errors
/// If it cannot be written.
pub fn started(title: &str, size: &str) -> Result<String, Fault> {
    written(title, false, size, &Described::default())
}

/// A bat's own file for a card, with what was read of it so far; what is not said of its shape is as in the reference bat
/// of the size.
///
/// # Errors
/// If it cannot be written.
pub fn own(title: &str, card: &Card, entries: &[Entry]) -> Result<String, Fault> {
    let mut text = with_card(&started(title, &card.size)?, card)?;
    let mut before = None;
    for (n, it) in entries.iter().enumerate() {
        text = with_entry(&text, n, it, before)?;
        before = Some(it.stage);
    }
    Ok(text)
}

/// The text of a bat's own file with the card it is made for; invented if that is.
///
/// # Errors
/// If the text has no place for it.
pub fn with_card(text: &str, card: &Card) -> Result<String, Fault> {
    let raw = card::write(card).map_err(Fault::new)?;
    let raw = raw.trim_end().replace('\n', "\n    ");
    let text = match card.invented {
        true => edit::put(text, "invented", "yes"),
        false => Some(text.to_owned()),
    };
    let with = text.and_then(|it| edit::put_raw(&it, "card", &raw));
    with.ok_or_else(|| Fault::new("the bat's file has no place for its card"))
}

/// The text of a bat's own file with its `n`th entry, behind one of that stage; every other letter stays.
///
/// # Errors
/// If the text has no place for it.
pub fn with_entry(
    text: &str,
    n: usize,
    entry: &Entry,
    before: Option<Stage>,
) -> Result<String, Fault> {
    with_texts(text, n, &texts(entry, before))
}

/// A reading that is only begun: what is measured is still to be written.
#[derive(Clone, Copy, Debug)]
pub struct Begun {
    /// The stage, where it is not that of the reading before.
    pub stage: Option<Stage>,
    /// When.
    pub at: Moment,
    /// How many swings will be timed.
    pub swings: u32,
    /// Where the plane was at work since the reading before, and how much it was asked to take, kg.
    pub planed: Option<(Place, f64)>,
}

/// The text of a bat's own file with room for its `n`th entry; every other letter stays.
///
/// # Errors
/// If the text has no place for it.
pub fn with_begun(text: &str, n: usize, begun: &Begun) -> Result<String, Fault> {
    let some = |it: String| Some(Text(it));
    let entry = EntryV1 {
        stage: begun.stage.and_then(|it| some(it.name().to_owned())),
        planed: begun.planed.and_then(|(it, _)| some(it.words().to_owned())),
        asked: begun.planed.and_then(|(_, off_kg)| some(mass_text(off_kg))),
        at: some(begun.at.to_string()),
        swings: some(begun.swings.to_string()),
        ..EntryV1::default()
    };
    with_texts(text, n, &entry)
}

fn with_texts(text: &str, n: usize, entry: &EntryV1) -> Result<String, Fault> {
    let lost = || Fault::new("the bat's file has no place for a reading");
    let raw = in_one_line(entry)?;
    if n == 0 && edit::written(text, "log").is_none() {
        return edit::put_raw(text, "log", &format!("[\n        {raw},\n    ]")).ok_or_else(lost);
    }
    edit::put_raw(text, &format!("log.{n}"), &raw).ok_or_else(lost)
}

/// A whole file of a described bat. What is read back from it has the figures of what was written.
///
/// # Errors
/// If it cannot be written.
pub fn written(
    title: &str,
    invented: bool,
    size: &str,
    described: &Described,
) -> Result<String, Fault> {
    let text = |it: &str| Some(Text(it.to_owned()));
    let it = ShapeV1 {
        version: text(super::shape::VERSION),
        title: text(title),
        size: text(size),
        law_type: described.law_type.and_then(|it| text(it.letter())),
        invented: text("yes").filter(|_| invented),
        blade: blade(&described.blade),
        handle: handle(&described.handle),
        extras: extras(&described.extras),
        willow: WillowV1 {
            density: described.willow_kg_m3.map(|it| kg_m3(it.value)),
            cleft: described.cleft.as_ref().map(cleft).unwrap_or_default(),
        },
        card: None,
        log: Vec::new(),
    };
    it.to_ron()
}

/// The file of a shape at hand, as its maker would describe it over the reference bat of its size, to be made or carved on.
///
/// # Errors
/// If it cannot be written.
pub fn of_shape(
    title: &str,
    invented: bool,
    size: &Size,
    shape: &BatShape,
) -> Result<String, Fault> {
    let described = Described::of(shape, &size.reference, USUAL_DENSITY_KG_M3);
    written(title, invented, &size.name, &described)
}

/// A length to the nanometre, without noughts behind.
pub fn mm(it_m: f64) -> Text {
    Text(format!("{} mm", short(1e3 * it_m)))
}

/// A share to a millionth of a percent.
pub fn percent(it: f64) -> Text {
    Text(format!("{} %", short(100.0 * it)))
}

fn kg_m3(it: f64) -> Text {
    Text(format!("{} kg/m³", short(it)))
}

fn short(it: f64) -> String {
    let digits = format!("{it:.6}");
    let digits = digits.trim_end_matches('0').trim_end_matches('.');
    if digits == "-0" { "0".to_owned() } else { digits.to_owned() }
}

fn blade(it: &DescribedBlade) -> BladeV1 {
    BladeV1 {
        length: it.length_m.map(mm),
        width: it.width_m.map(mm),
        edge: it.edge_m.map(mm),
        depth: it.depth_m.map(mm),
        swell: it.swell_from_toe_m.map(mm),
        hollow: it.hollow.map(percent),
        camber: it.camber_m.map(mm),
        shoulder_width: it.shoulder_width_m.map(mm),
        shoulder_length: it.shoulder_length_m.map(mm),
        toe_depth: it.toe_depth_m.map(mm),
        bow: it.bow_m.map(mm),
        stations: it.stations.iter().map(station).collect(),
    }
}

fn station(it: &MeasuredStation) -> StationV1 {
    StationV1 {
        from_toe: Some(mm(it.from_toe_m)),
        width: it.width_m.map(mm),
        edge: Some(mm(it.edge_m)),
        depth: Some(mm(it.depth_m)),
        hollow: it.hollow.map(percent),
        camber: it.camber_m.map(mm),
    }
}

fn handle(it: &DescribedHandle) -> HandleV1 {
    HandleV1 {
        length: it.length_m.map(mm),
        diameter: it.diameter_m.map(mm),
        shoulder_diameter: it.shoulder_diameter_m.map(mm),
        section: it.section.map(|it| Text(it.words().to_owned())),
        cane: it.cane_kg_m3.map(kg_m3),
        rubber: it.rubber_kg_m3.map(kg_m3),
        rubber_share: it.rubber_share.map(percent),
        pieces: it.pieces.map(|it| Text(it.0.to_string())),
        strip: it.pieces.filter(|it| it.0 > 1).map(|it| mm(it.1)),
        splice: it.splice_m.map(mm),
        twine: it.twine_m.map(mm),
        grips: it.grips.map(|it| Text(it.to_string())),
        grip: it.grip_m.map(mm),
        grip_length: it.grip_length_m.map(mm),
        grip_rubber: it.grip_kg_m3.map(kg_m3),
    }
}

fn grams(it_kg: f64) -> Text {
    Text(format!("{} g", short(1e3 * it_kg)))
}

fn cleft(it: &Cleft) -> CleftV1 {
    CleftV1 {
        mass: Some(grams(it.mass_kg)),
        length: Some(mm(it.length_m)),
        width: Some(mm(it.width_m)),
        depth: Some(mm(it.depth_m)),
        moisture: it.moisture.map(percent),
    }
}

fn extras(it: &DescribedExtras) -> ExtrasV1 {
    ExtrasV1 {
        labels: it.labels_kg.map(grams),
        face_sheet: it.face_sheet_kg.map(grams),
        toe_guard: it.toe_guard_m.map(mm),
        oil: it.oil_kg.map(grams),
    }
}
