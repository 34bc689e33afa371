//! From the texts of a described bat to the core's types.

use super::super::document::values::{
    MISSING, ReadText, Values, above_zero, choice, name, share, whole_number,
};
use super::super::document::{Places, Text};
use super::super::fault::Fault;
use super::{BladeV1, CleftV1, ExtrasV1, HandleV1, ShapeV1, StationV1};
use crate::bat::blade::HOLLOW;
use crate::bat::described::{Cleft, Described, DescribedBlade, DescribedExtras, DescribedHandle};
use crate::bat::handle::HandleShape;
use crate::bat::laws::BatType;
use crate::bat::measured::MeasuredStation;
use crate::bat::sizes::{Size, find};
use crate::uncertain::Uncertain;
use crate::units::Quantity::{self, Density, Length, Mass};
use crate::units::{self, parse};

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
        law_type: values.read("law_type", &v1.law_type, choice(&TYPES)),
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
    let name = values.needed("size", text, name, "\"short handle\"")?;
    match find(sizes, &name) {
        Ok(size) => Some(size.clone()),
        Err(unknown) => {
            values.fault("size", &unknown.to_string(), &unknown.mend());
            None
        }
    }
}

fn hollow(text: &str) -> ReadText<f64> {
    const HELP: &str = "write it like \"40 %\": 0 straight from edge to spine, 100 % level at the edge, below 0 full";
    let value = units::share(text).filter(|it| (HOLLOW[0]..=HOLLOW[1]).contains(it));
    value.ok_or_else(|| (format!("{text:?} is no hollowing"), HELP.to_owned()))
}

/// A length or a weight that may be nought: "none", "0", or nought in any unit.
fn or_none(what: Quantity) -> impl Fn(&str) -> ReadText<f64> {
    move |text| {
        let written = text.trim();
        let is_none = ["none", "no", "0"].iter().any(|it| written.eq_ignore_ascii_case(it));
        if is_none || parse(what, written) == Ok(0.0) {
            return Ok(0.0);
        }
        above_zero(what)(text)
    }
}

fn blade(values: &mut Values, v1: &BladeV1) -> DescribedBlade {
    let mut length =
        |name: &str, text: &Option<Text>| values.quantity(&format!("blade.{name}"), text, Length);
    DescribedBlade {
        length_m: length("length", &v1.length),
        width_m: length("width", &v1.width),
        edge_m: length("edge", &v1.edge),
        depth_m: length("depth", &v1.depth),
        swell_from_toe_m: length("swell", &v1.swell),
        shoulder_width_m: length("shoulder_width", &v1.shoulder_width),
        shoulder_length_m: length("shoulder_length", &v1.shoulder_length),
        toe_depth_m: length("toe_depth", &v1.toe_depth),
        bow_m: values.read("blade.bow", &v1.bow, or_none(Length)),
        camber_m: values.read("blade.camber", &v1.camber, or_none(Length)),
        hollow: values.read("blade.hollow", &v1.hollow, hollow),
        stations: stations(values, &v1.stations),
    }
}

fn stations(values: &mut Values, all: &[StationV1]) -> Vec<MeasuredStation> {
    let mut out = Vec::new();
    if all.len() > MOST_STATIONS {
        let message = format!("there are {} stations", all.len());
        values.fault("blade.stations", &message, &format!("leave at most {MOST_STATIONS}"));
        return out;
    }
    for (n, it) in all.iter().enumerate() {
        let at = |name: &str| format!("blade.stations.{n}.{name}");
        let from_toe = or_none(Length);
        let from_toe_m = values.needed(&at("from_toe"), &it.from_toe, from_toe, "\"10 in\"");
        let edge_m = values.needed(&at("edge"), &it.edge, above_zero(Length), "\"35 mm\"");
        let depth_m = values.needed(&at("depth"), &it.depth, above_zero(Length), "\"60 mm\"");
        let width_m = values.quantity(&at("width"), &it.width, Length);
        let hollow = values.read(&at("hollow"), &it.hollow, hollow);
        let camber_m = values.read(&at("camber"), &it.camber, or_none(Length));
        if let (Some(from_toe_m), Some(edge_m), Some(depth_m)) = (from_toe_m, edge_m, depth_m) {
            out.push(MeasuredStation { from_toe_m, edge_m, depth_m, width_m, hollow, camber_m });
        }
    }
    out
}

fn handle(values: &mut Values, v1: &HandleV1) -> DescribedHandle {
    let sections: [(&[&str], HandleShape); 3] = [
        (&["round"], HandleShape::Round),
        (&["oval"], HandleShape::Oval),
        (&["semi-oval", "semi oval", "semioval"], HandleShape::SemiOval),
    ];
    let grips = whole_number([0, 4], "a whole number from 0 to 4");
    let mut length =
        |name: &str, text: &Option<Text>| values.quantity(&format!("handle.{name}"), text, Length);
    DescribedHandle {
        length_m: length("length", &v1.length),
        diameter_m: length("diameter", &v1.diameter),
        shoulder_diameter_m: length("shoulder_diameter", &v1.shoulder_diameter),
        splice_m: length("splice", &v1.splice),
        grip_m: length("grip", &v1.grip),
        grip_length_m: length("grip_length", &v1.grip_length),
        twine_m: values.read("handle.twine", &v1.twine, or_none(Length)),
        cane_kg_m3: values.quantity("handle.cane", &v1.cane, Density),
        rubber_kg_m3: values.quantity("handle.rubber", &v1.rubber, Density),
        grip_kg_m3: values.quantity("handle.grip_rubber", &v1.grip_rubber, Density),
        section: values.read("handle.section", &v1.section, choice(&sections)),
        rubber_share: values.read("handle.rubber_share", &v1.rubber_share, share),
        pieces: pieces(values, v1),
        grips: values.read("handle.grips", &v1.grips, grips),
    }
}

/// Pieces of cane and the thickness of the strips between them: both, and then no share beside them.
fn pieces(values: &mut Values, v1: &HandleV1) -> Option<(u32, f64)> {
    let pieces = whole_number([1, 20], "a whole number from 1 to 20");
    let pieces = values.read("handle.pieces", &v1.pieces, pieces);
    let strip_m = values.quantity("handle.strip", &v1.strip, Length);
    let (many, strips) = (pieces.is_some_and(|it| it > 1), v1.strip.is_some());
    if many && !strips {
        let help = "add strip: \"1.5 mm\", thickness of a rubber strip";
        values.fault("handle.strip", MISSING, help);
    }
    if strips && v1.pieces.is_none() {
        values.fault("handle.pieces", MISSING, "add pieces: 3, the pieces of cane");
    }
    if v1.pieces.is_some() && v1.rubber_share.is_some() {
        let message = "the share of rubber follows from pieces and strip";
        values.fault("handle.rubber_share", message, "leave it out, or leave pieces and strip out");
    }
    Some((pieces?, strip_m.unwrap_or(0.0)))
}

fn extras(values: &mut Values, v1: &ExtrasV1) -> DescribedExtras {
    DescribedExtras {
        labels_kg: values.read("extras.labels", &v1.labels, or_none(Mass)),
        face_sheet_kg: values.read("extras.face_sheet", &v1.face_sheet, or_none(Mass)),
        toe_guard_m: values.read("extras.toe_guard", &v1.toe_guard, or_none(Length)),
        oil_kg: values.read("extras.oil", &v1.oil, or_none(Mass)),
    }
}

fn cleft(values: &mut Values, v1: &CleftV1) -> Option<Cleft> {
    if *v1 == CleftV1::default() {
        return None;
    }
    let at = |name: &str| format!("willow.cleft.{name}");
    let moisture = values.read(&at("moisture"), &v1.moisture, share);
    let mass_kg = values.needed(&at("mass"), &v1.mass, above_zero(Mass), "\"2.1 kg\"");
    let length = above_zero(Length);
    let length_m = values.needed(&at("length"), &v1.length, &length, "\"710 mm\"");
    let width_m = values.needed(&at("width"), &v1.width, &length, "\"115 mm\"");
    let depth_m = values.needed(&at("depth"), &v1.depth, &length, "\"70 mm\"");
    Some(Cleft {
        mass_kg: mass_kg?,
        length_m: length_m?,
        width_m: width_m?,
        depth_m: depth_m?,
        moisture,
    })
}
