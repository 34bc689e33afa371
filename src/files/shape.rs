//! A bat described by its maker, as a file: version 1 of the text, and its way into the core.
//!
//! Every field is text with its unit, as in a scenario; what is left out is as in the size's reference bat.

use std::path::Path;

use super::document::values::Values;
use super::document::{
    self, Document, Fields, Kind, Mends, NoRoom, Places, Text, left_out, part, text_of_file,
};
use super::fault::{Fault, Faults, Source};
use crate::bat::blade::{HOLLOW, Station};
use crate::bat::described::{Cleft, Described, DescribedBlade, DescribedExtras, DescribedHandle};
use crate::bat::handle::HandleShape;
use crate::bat::sizes::{Size, named};
use crate::uncertain::Uncertain;
use crate::units::Quantity::{Density, Length, Mass};
use crate::units::share;

/// What stands in the field `version` of a file that this program can read.
pub const VERSION: &str = "backlift/shape/1";

/// The described bat that is built in: invented.
pub const DEMO: &str = include_str!("../../scenarios/blade.ron");

const SHAPE: Kind = Kind {
    what: "the file of a described bat",
    noun: "described bat",
    named: "a .ron file",
    like: "a described bat is a page of text; name the .ron file that holds it",
    none: "write a new one with `backlift shape --new FILE`, or name none for the built-in example",
};

part! {
    /// One measured section.
    StationV1 = "Station" {
        /// Place over the toe.
        from_toe,
        /// Width.
        width,
        /// Thickness of the edges.
        edge,
        /// Depth from face to spine.
        depth,
        /// Hollowing of the back.
        hollow,
        /// Height of the middle of the face over its edges.
        camber,
    }
}

part! {
    /// The blade.
    BladeV1 = "Blade" {
        /// From shoulder to toe.
        length,
        /// Greatest width.
        width,
        /// Greatest thickness of the edges.
        edge,
        /// Spine height.
        depth,
        /// Height of the swell over the toe.
        swell,
        /// Hollowing of the back at the swell.
        hollow,
        /// Height of the middle of the face over its edges.
        camber,
        /// Width where the handle goes in.
        shoulder_width,
        /// From there to full width.
        shoulder_length,
        /// Depth at the toe.
        toe_depth,
        ;
        /// Measured sections from the shoulder to the toe, in place of the figures above.
        stations: Vec<StationV1>,
    }
}

part! {
    /// The handle.
    HandleV1 = "Handle" {
        /// From its top to the shoulder.
        length,
        /// Across, over the grip at the bottom hand.
        diameter,
        /// Bare, across, at the shoulder.
        shoulder_diameter,
        /// "round", "oval" or "semi-oval".
        section,
        /// Density of the cane.
        cane,
        /// Density of the rubber strips.
        rubber,
        /// Share of the handle that is rubber.
        rubber_share,
        /// Length of the splice.
        splice,
        /// Thickness of the twine.
        twine,
        /// Number of grips.
        grips,
        /// Thickness of one grip.
        grip,
        /// Length of the grips.
        grip_length,
        /// Density of the grips.
        grip_rubber,
    }
}

part! {
    /// What is put on the blade.
    ExtrasV1 = "Extras" {
        /// Labels and glue.
        labels,
        /// Face sheet.
        face_sheet,
        /// Thickness of the toe guard, or "none".
        toe_guard,
        /// Oil in the wood.
        oil,
    }
}

part! {
    /// The cleft.
    CleftV1 = "Cleft" {
        /// Weight.
        mass,
        /// Along the grain.
        length,
        /// Across.
        width,
        /// From face to back.
        depth,
        /// Water when it was weighed, "18 %" of the dry wood.
        moisture,
    }
}

part! {
    /// The wood.
    WillowV1 = "Willow" {
        /// Density, where it is known.
        density,
        ;
        /// The cleft, weighed and measured.
        cleft: CleftV1,
    }
}

part! {
    /// A whole described bat.
    ShapeV1 = "Shape" {
        /// [`VERSION`].
        version,
        /// One line saying what it is.
        title,
        /// "yes" if it is made up.
        invented,
        /// Trade size.
        size,
        ;
        /// Blade.
        blade: BladeV1,
        /// Handle.
        handle: HandleV1,
        /// On the blade.
        extras: ExtrasV1,
        /// Wood.
        willow: WillowV1,
    }
}

impl Document for ShapeV1 {
    const KIND: Kind = SHAPE;
    const VERSION: &'static str = VERSION;
    const MENDS: Mends = Mends {
        instead: "name the file of the described bat",
        brackets: "fields and stations are parted with commas; each \"(\" needs its \")\"",
        list: "write it as [(from_toe: \"0 in\", width: …), …]",
        start: "write a new one with `backlift shape --new FILE`",
        compare: "compare with the file that `backlift shape --new FILE` writes",
    };

    fn version(&self) -> Option<&Text> {
        self.version.as_ref()
    }

    fn at(&mut self, path: &[&str]) -> Option<&mut Option<Text>> {
        match *path {
            [name] => self.text(name),
            ["blade", name] => self.blade.text(name),
            ["blade", "stations", n, name] => {
                self.blade.stations.get_mut(n.parse::<usize>().ok()?)?.text(name)
            }
            ["handle", name] => self.handle.text(name),
            ["extras", name] => self.extras.text(name),
            ["willow", name] => self.willow.text(name),
            ["willow", "cleft", name] => self.willow.cleft.text(name),
            _ => None,
        }
    }

    fn names_under(path: &[&str]) -> Option<&'static [&'static str]> {
        match *path {
            [] => Some(Self::NAMES),
            ["blade"] => Some(BladeV1::NAMES),
            ["blade", "stations", _] => Some(StationV1::NAMES),
            ["handle"] => Some(HandleV1::NAMES),
            ["extras"] => Some(ExtrasV1::NAMES),
            ["willow"] => Some(WillowV1::NAMES),
            ["willow", "cleft"] => Some(CleftV1::NAMES),
            _ => None,
        }
    }

    fn make_room(&mut self, _: &[&str]) -> Result<(), NoRoom> {
        Ok(())
    }
}

/// A described bat, ready to work with.
#[derive(Clone, Debug)]
pub struct LoadedShape {
    /// One line saying what it is.
    pub title: String,
    /// It is made up.
    pub invented: bool,
    /// Its size.
    pub size: Size,
    /// What its maker says.
    pub described: Described,
    /// Where each field stands, for faults that the core finds.
    pub places: Places,
}

/// Loads a described bat, `--set` arguments over it; without a file the built-in example. All faults of one
/// file are reported together.
pub fn load(file: Option<&Path>, sets: &[String], sizes: &[Size]) -> Result<LoadedShape, Faults> {
    let source = match file {
        Some(path) => text_of_file(path, &SHAPE)?,
        None => Source::new("scenarios/blade.ron (built in)", DEMO),
    };
    load_text(source, sets, sizes)
}

/// The same from a text at hand.
pub fn load_text(source: Source, sets: &[String], sizes: &[Size]) -> Result<LoadedShape, Faults> {
    let Fields { document, mut places, mut faults } = document::fields::<ShapeV1>(source);
    let Some(mut fields) = document else { return Err(Faults(faults)) };
    for argument in sets {
        faults.extend(document::set(&mut fields, &mut places, argument).err());
    }
    let (size, described, found) = to_core(&fields, &places, sizes);
    faults.extend(found);
    let written = |text: &Option<Text>| text.as_ref().map(|it| it.0.trim().to_owned());
    match size {
        Some(size) if faults.is_empty() => Ok(LoadedShape {
            title: written(&fields.title).unwrap_or_else(|| "A bat".to_owned()),
            invented: written(&fields.invented).is_some_and(|it| it == "yes" || it == "true"),
            size,
            described,
            places,
        }),
        _ => Err(Faults(faults)),
    }
}

fn to_core(v1: &ShapeV1, places: &Places, sizes: &[Size]) -> (Option<Size>, Described, Vec<Fault>) {
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
    };
    (size, described, values.faults)
}

/// One standard deviation of a density that the maker gives, as a share: assumption.
const DENSITY_RELATIVE_SD: f64 = 0.02;

fn size(values: &mut Values, text: &Option<Text>, sizes: &[Size]) -> Option<Size> {
    let name = values.name("size", text);
    let name = values.needed("size", text, name, "\"short handle\"")?;
    let found = named(sizes, &name).cloned();
    if found.is_none() {
        let known: Vec<&str> = sizes.iter().map(|it| it.name.as_str()).collect();
        let help = format!("the sizes are {}", known.join(", "));
        values.fault("size", &format!("no size is called {name:?}"), &help);
    }
    found
}

fn hollow(values: &mut Values, path: &str, text: &Option<Text>) -> Option<f64> {
    let written = values.short(path, text)?.to_owned();
    let value = share(&written).filter(|it| (HOLLOW[0]..=HOLLOW[1]).contains(it));
    if value.is_none() {
        values.fault(
            path,
            &format!("{written:?} is no hollowing"),
            "write it like \"40 %\": 0 straight from edge to spine, 100 % level at the edge, below 0 full",
        );
    }
    value
}

/// A length that may be nought, as "none" or "0 mm".
fn or_none(
    values: &mut Values,
    path: &str,
    text: &Option<Text>,
    what: crate::units::Quantity,
) -> Option<f64> {
    let written = text.as_ref().map(|it| it.0.trim().to_lowercase());
    match written.as_deref() {
        Some("none" | "no" | "0") => Some(0.0),
        Some(it) if it.starts_with("0 ") => Some(0.0),
        _ => values.quantity(path, text, what),
    }
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
    };
    out.camber_m = or_none(values, "blade.camber", &v1.camber, Length);
    out.hollow = hollow(values, "blade.hollow", &v1.hollow);
    for (n, it) in v1.stations.iter().enumerate() {
        let at = |name: &str| format!("blade.stations.{n}.{name}");
        let from_toe_m = or_none(values, &at("from_toe"), &it.from_toe, Length);
        let from_toe_m = values.needed(&at("from_toe"), &it.from_toe, from_toe_m, "\"10 in\"");
        let mut needed = |name: &str, text: &Option<Text>, example: &str| {
            let value = values.quantity(&at(name), text, Length);
            values.needed(&at(name), text, value, example)
        };
        let width_m = needed("width", &it.width, "\"107 mm\"");
        let edge_m = needed("edge", &it.edge, "\"35 mm\"");
        let depth_m = needed("depth", &it.depth, "\"60 mm\"");
        let hollow = hollow(values, &at("hollow"), &it.hollow).unwrap_or(0.0);
        let camber_m = or_none(values, &at("camber"), &it.camber, Length).unwrap_or(0.0);
        if let (Some(from_toe_m), Some(width_m), Some(edge_m), Some(depth_m)) =
            (from_toe_m, width_m, edge_m, depth_m)
        {
            let section =
                Station { from_shoulder: 0.0, width_m, edge_m, depth_m, hollow, camber_m };
            out.stations.push((from_toe_m, section));
        }
    }
    out
}

fn handle(values: &mut Values, v1: &HandleV1) -> DescribedHandle {
    let at = |name: &str| format!("handle.{name}");
    let mut length = |name: &str, text: &Option<Text>| values.quantity(&at(name), text, Length);
    let (length_m, diameter_m) = (length("length", &v1.length), length("diameter", &v1.diameter));
    let shoulder_diameter_m = length("shoulder_diameter", &v1.shoulder_diameter);
    let (splice_m, twine_m) = (length("splice", &v1.splice), length("twine", &v1.twine));
    let (grip_m, grip_length_m) =
        (length("grip", &v1.grip), length("grip_length", &v1.grip_length));
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
