//! From the texts of a described bat to the core's types.

use super::super::document::values::Values;
use super::super::document::{Places, Text};
use super::super::fault::Fault;
use super::{BladeV1, CleftV1, ExtrasV1, HandleV1, ShapeV1};
use crate::bat::blade::HOLLOW;
use crate::bat::described::{Cleft, Described, DescribedBlade, DescribedExtras, DescribedHandle};
use crate::bat::handle::HandleShape;
use crate::bat::laws::BatType;
use crate::bat::measured::MeasuredStation;
use crate::bat::sizes::{Size, find};
use crate::uncertain::Uncertain;
use crate::units::Quantity::{self, Density, Length, Mass};
use crate::units::{parse, share};

pub(super) fn to_core(
    v1: &ShapeV1,
    places: &Places,
    sizes: &[Size],
) -> (Option<Size>, Described, Vec<Fault>) {
    let mut values = Values::new(places);
    let size = size(&mut values, &v1.size, sizes);
    let described = Described {
        blade: blade(&mut values, &v1.blade),
        handle: handle(&mut values, &v1.handle),
        extras: extras(&mut values, &v1.extras),
        willow_kg_m3: values
            .quantity("willow.density", &v1.willow.density, Density)
            .map(|it| Uncertain::measured(it, DENSITY_RELATIVE_SD * it)),
        cleft: cleft(&mut values, &v1.willow.cleft),
        law_type: values.choice("law_type", &v1.law_type, &TYPES),
    };
    (size, described, values.faults)
}

/// Types under the Laws by their letters.
const TYPES: [(&[&str], BatType); 4] =
    [(&["a"], BatType::A), (&["b"], BatType::B), (&["c"], BatType::C), (&["d"], BatType::D)];

/// One standard deviation of a density that the maker gives, as a share: assumption.
const DENSITY_RELATIVE_SD: f64 = 0.02;

/// More sections than anybody measures.
const MOST_STATIONS: usize = 100;

fn size(values: &mut Values, text: &Option<Text>, sizes: &[Size]) -> Option<Size> {
    let name = values.name("size", text);
    let name = values.needed("size", text, name, "\"short handle\"")?;
    match find(sizes, &name) {
        Ok(size) => Some(size.clone()),
        Err(unknown) => {
            values.fault("size", &unknown.to_string(), &unknown.mend());
            None
        }
    }
}

fn hollow(values: &mut Values, path: &str, text: &Option<Text>) -> Option<f64> {
    const HELP: &str = "write it like \"40 %\": 0 straight from edge to spine, 100 % level at the edge, below 0 full";
    values.read(path, text, |written| {
        let value = share(written).filter(|it| (HOLLOW[0]..=HOLLOW[1]).contains(it));
        value.ok_or_else(|| (format!("{written:?} is no hollowing"), HELP.to_owned()))
    })
}

/// A length or a weight that may be nought: "none", "0", or nought in any unit.
fn or_none(values: &mut Values, path: &str, text: &Option<Text>, what: Quantity) -> Option<f64> {
    let written = text.as_ref().map_or("", |it| it.0.trim());
    let is_none = ["none", "no", "0"].iter().any(|it| written.eq_ignore_ascii_case(it));
    if is_none || parse(what, written) == Ok(0.0) {
        return Some(0.0);
    }
    values.quantity(path, text, what)
}

fn blade(values: &mut Values, v1: &BladeV1) -> DescribedBlade {
    let mut length =
        |name: &str, text: &Option<Text>| values.quantity(&format!("blade.{name}"), text, Length);
    let mut out = DescribedBlade {
        length_m: length("length", &v1.length),
        width_m: length("width", &v1.width),
        edge_m: length("edge", &v1.edge),
        depth_m: length("depth", &v1.depth),
        swell_from_toe_m: length("swell", &v1.swell),
        camber_m: None,
        hollow: None,
        shoulder_width_m: length("shoulder_width", &v1.shoulder_width),
        shoulder_length_m: length("shoulder_length", &v1.shoulder_length),
        toe_depth_m: length("toe_depth", &v1.toe_depth),
        stations: Vec::new(),
        bow_m: None,
    };
    out.bow_m = or_none(values, "blade.bow", &v1.bow, Length);
    out.camber_m = or_none(values, "blade.camber", &v1.camber, Length);
    out.hollow = hollow(values, "blade.hollow", &v1.hollow);
    if v1.stations.len() > MOST_STATIONS {
        let message = format!("there are {} stations", v1.stations.len());
        values.fault("blade.stations", &message, &format!("leave at most {MOST_STATIONS}"));
        return out;
    }
    for (n, it) in v1.stations.iter().enumerate() {
        let at = |name: &str| format!("blade.stations.{n}.{name}");
        let from_toe_m = or_none(values, &at("from_toe"), &it.from_toe, Length);
        let from_toe_m = values.needed(&at("from_toe"), &it.from_toe, from_toe_m, "\"10 in\"");
        let mut needed = |name: &str, text: &Option<Text>, example: &str| {
            let value = values.quantity(&at(name), text, Length);
            values.needed(&at(name), text, value, example)
        };
        let edge_m = needed("edge", &it.edge, "\"35 mm\"");
        let depth_m = needed("depth", &it.depth, "\"60 mm\"");
        let width_m = values.quantity(&at("width"), &it.width, Length);
        let hollow = hollow(values, &at("hollow"), &it.hollow);
        let camber_m = or_none(values, &at("camber"), &it.camber, Length);
        if let (Some(from_toe_m), Some(edge_m), Some(depth_m)) = (from_toe_m, edge_m, depth_m) {
            let it = MeasuredStation { from_toe_m, edge_m, depth_m, width_m, hollow, camber_m };
            out.stations.push(it);
        }
    }
    out
}

fn handle(values: &mut Values, v1: &HandleV1) -> DescribedHandle {
    let at = |name: &str| format!("handle.{name}");
    let mut length = |name: &str, text: &Option<Text>| values.quantity(&at(name), text, Length);
    let (length_m, diameter_m) = (length("length", &v1.length), length("diameter", &v1.diameter));
    let shoulder_diameter_m = length("shoulder_diameter", &v1.shoulder_diameter);
    let splice_m = length("splice", &v1.splice);
    let (grip_m, grip_length_m) =
        (length("grip", &v1.grip), length("grip_length", &v1.grip_length));
    let twine_m = or_none(values, "handle.twine", &v1.twine, Length);
    let mut density = |name: &str, text: &Option<Text>| values.quantity(&at(name), text, Density);
    let (cane_kg_m3, rubber_kg_m3) = (density("cane", &v1.cane), density("rubber", &v1.rubber));
    let grip_kg_m3 = density("grip_rubber", &v1.grip_rubber);
    let sections: [(&[&str], HandleShape); 3] = [
        (&["round"], HandleShape::Round),
        (&["oval"], HandleShape::Oval),
        (&["semi-oval", "semi oval", "semioval"], HandleShape::SemiOval),
    ];
    let whole = |it: f64| (0.0..=4.0).contains(&it) && it.fract() == 0.0;
    DescribedHandle {
        length_m,
        diameter_m,
        shoulder_diameter_m,
        section: values.choice(&at("section"), &v1.section, &sections),
        cane_kg_m3,
        rubber_kg_m3,
        rubber_share: values.share(&at("rubber_share"), &v1.rubber_share),
        pieces: pieces(values, v1),
        splice_m,
        twine_m,
        grips: values
            .number(&at("grips"), &v1.grips, whole, "a whole number from 0 to 4")
            .map(|it| it as u32),
        grip_m,
        grip_length_m,
        grip_kg_m3,
    }
}

/// Pieces of cane and the thickness of the strips between them: both, and then no share beside them.
fn pieces(values: &mut Values, v1: &HandleV1) -> Option<(u32, f64)> {
    let whole = |it: f64| (1.0..=20.0).contains(&it) && it.fract() == 0.0;
    let like = "a whole number from 1 to 20";
    let pieces = values.number("handle.pieces", &v1.pieces, whole, like).map(|it| it as u32);
    let strip_m = values.quantity("handle.strip", &v1.strip, Length);
    let (many, strips) = (pieces.is_some_and(|it| it > 1), v1.strip.is_some());
    if many && !strips {
        values.needed(
            "handle.strip",
            &v1.strip,
            strip_m,
            "\"1.5 mm\", thickness of a rubber strip",
        );
    }
    if strips && v1.pieces.is_none() {
        values.needed("handle.pieces", &v1.pieces, pieces, "3, the pieces of cane");
    }
    if v1.pieces.is_some() && v1.rubber_share.is_some() {
        let message = "the share of rubber follows from pieces and strip";
        values.fault("handle.rubber_share", message, "leave it out, or leave pieces and strip out");
    }
    Some((pieces?, strip_m.unwrap_or(0.0)))
}

fn extras(values: &mut Values, v1: &ExtrasV1) -> DescribedExtras {
    DescribedExtras {
        labels_kg: or_none(values, "extras.labels", &v1.labels, Mass),
        face_sheet_kg: or_none(values, "extras.face_sheet", &v1.face_sheet, Mass),
        toe_guard_m: or_none(values, "extras.toe_guard", &v1.toe_guard, Length),
        oil_kg: or_none(values, "extras.oil", &v1.oil, Mass),
    }
}

fn cleft(values: &mut Values, v1: &CleftV1) -> Option<Cleft> {
    if *v1 == CleftV1::default() {
        return None;
    }
    let at = |name: &str| format!("willow.cleft.{name}");
    let moisture = values.share(&at("moisture"), &v1.moisture);
    let mut needed = |name: &str, text: &Option<Text>, quantity, example: &str| {
        let value = values.quantity(&at(name), text, quantity);
        values.needed(&at(name), text, value, example)
    };
    let mass_kg = needed("mass", &v1.mass, Mass, "\"2.1 kg\"");
    let length_m = needed("length", &v1.length, Length, "\"710 mm\"");
    let width_m = needed("width", &v1.width, Length, "\"115 mm\"");
    let depth_m = needed("depth", &v1.depth, Length, "\"70 mm\"");
    Some(Cleft {
        mass_kg: mass_kg?,
        length_m: length_m?,
        width_m: width_m?,
        depth_m: depth_m?,
        moisture,
    })
}
