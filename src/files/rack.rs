//! The clefts on the rack, as a file: version 1 of the text.

use std::path::Path;

use super::document::values::{Values, name, share, whole_number, within, yes_or_no};
use super::document::{
    self, Document, Fields, Kind, Mends, Places, Text, left_out, part, text_of_file,
};
use super::fault::{Faults, Source};
use crate::bat::described::Cleft;
use crate::bat::willow::POSSIBLE_KG_M3;
use crate::units::Quantity::{Length, Mass};
use crate::workshop::orders::rack::{Rack, RackCleft};

/// What stands in the field `version` of a file that this program can read.
pub const VERSION: &str = "backlift/rack/1";

/// More clefts than one rack holds.
pub const MOST_CLEFTS: usize = 500;

const RACK: Kind = Kind {
    what: "a rack of clefts",
    noun: "rack of clefts",
    named: "its .ron file",
    like: "a rack is some pages of text; name the .ron file that holds it",
    none: "scenarios/rack.ron is one to start from",
};

part! {
    /// One cleft.
    RackCleftV1 = "Cleft" {
        /// What it is called.
        label,
        /// Weight.
        mass,
        /// Along the grain.
        length,
        /// Across.
        width,
        /// From face to back.
        depth,
        /// By a meter when it was weighed, "18 %" of the dry wood.
        moisture,
        /// Grains across the face.
        grains,
        /// Whatever else.
        note,
    }
}

part! {
    /// A whole rack.
    RackV1 = "Rack" {
        /// [`VERSION`].
        version,
        /// "yes" if it is made up.
        invented,
        ;
        clefts: Vec<RackCleftV1>,
    }
}

impl Document for RackV1 {
    const KIND: Kind = RACK;
    const VERSION: &'static str = VERSION;
    const MENDS: Mends = Mends {
        instead: "name the file of the rack",
        brackets: "fields and clefts are parted with commas; each \"(\" needs its \")\"",
        list: "write it as [(label: \"A1\", mass: \"2.4 kg\", …), …]",
        start: "scenarios/rack.ron is one to start from",
        compare: "compare with scenarios/rack.ron",
    };
}

/// Reads a rack; all faults come together.
///
/// # Errors
/// Everything wrong with it.
pub fn read(path: &Path) -> Result<Rack, Faults> {
    read_text(text_of_file(path, &RACK)?)
}

/// The same from a text at hand.
///
/// # Errors
/// Everything wrong with it.
pub fn read_text(source: Source) -> Result<Rack, Faults> {
    let Fields { document, places, mut faults } = document::fields::<RackV1>(source, &[]);
    let Some(file) = document else { return Err(Faults(faults)) };
    let mut values = Values::new(&places);
    let invented = values.read("invented", &file.invented, yes_or_no);
    let count = file.clefts.len();
    let clefts = match count {
        0 => {
            let like = "add clefts: [(label: \"A1\", mass: \"2.4 kg\", length: \"710 mm\", …)]";
            values.fault("clefts", "there is no cleft", like);
            Vec::new()
        }
        _ if count > MOST_CLEFTS => {
            let message = format!("there are {count} clefts");
            values.fault("clefts", &message, &format!("leave at most {MOST_CLEFTS}"));
            Vec::new()
        }
        _ => clefts(&mut values, &file.clefts, &places),
    };
    faults.append(&mut values.faults);
    match faults.is_empty() {
        true => Ok(Rack { invented: invented.unwrap_or(false), clefts }),
        false => Err(Faults(faults)),
    }
}

fn clefts(values: &mut Values, all: &[RackCleftV1], places: &Places) -> Vec<RackCleft> {
    let mut out: Vec<RackCleft> = Vec::with_capacity(all.len());
    for (n, it) in all.iter().enumerate() {
        let Some(cleft) = cleft(values, n, it) else { continue };
        if out.iter().any(|other| other.label == cleft.label) {
            let message = format!("there is another cleft {:?}", cleft.label);
            let help = "give each cleft a label of its own";
            values.faults.push(places.fault(&format!("clefts.{n}.label"), &message, help));
        }
        out.push(cleft);
    }
    out
}

/// Least and most that a cleft weighs, kg, and measures, m: assumptions, wide on purpose.
const MASS_KG: [f64; 2] = [0.1, 20.0];
/// See [`MASS_KG`].
const LENGTH_M: [f64; 2] = [0.1, 2.0];
/// See [`MASS_KG`].
const ACROSS_M: [f64; 2] = [0.01, 0.5];
/// What a meter reads in wood, kg of water for each kg of dry wood.
const METER: [f64; 2] = [0.01, 0.30];

fn cleft(values: &mut Values, n: usize, it: &RackCleftV1) -> Option<RackCleft> {
    let at = |name: &str| format!("clefts.{n}.{name}");
    let label = values.needed(&at("label"), &it.label, name, "\"A1\"");
    let mass = within(Mass, MASS_KG, "kg");
    let mass_kg = values.needed(&at("mass"), &it.mass, mass, "\"2.4 kg\"");
    let mut length = |name: &str, text: &Option<Text>, limits, like: &str| {
        values.needed(&at(name), text, within(Length, limits, "m"), like)
    };
    let length_m = length("length", &it.length, LENGTH_M, "\"710 mm\"");
    let width_m = length("width", &it.width, ACROSS_M, "\"118 mm\"");
    let depth_m = length("depth", &it.depth, ACROSS_M, "\"72 mm\"");
    let moisture = values.read(&at("moisture"), &it.moisture, share);
    let wet = moisture.filter(|it| !(METER[0]..=METER[1]).contains(it));
    if let Some(wet) = wet {
        let message =
            format!("{:.0} % water is outside 1 to 30 %, what a meter reads in wood", 100.0 * wet);
        values.fault(&at("moisture"), &message, "read it again, or leave it out");
    }
    let grains = whole_number([1, 60], "a whole number from 1 to 60");
    let grains = values.read(&at("grains"), &it.grains, grains);
    let note = values.short(&at("note"), &it.note).map(|it| it.trim().to_owned());
    let rack = RackCleft {
        label: label?,
        cleft: Cleft {
            mass_kg: mass_kg?,
            length_m: length_m?,
            width_m: width_m?,
            depth_m: depth_m?,
            moisture,
        },
        grains,
        note: note.filter(|it| !it.is_empty()),
    };
    let density_kg_m3 = rack.density_kg_m3().value;
    let [low, high] = POSSIBLE_KG_M3;
    if wet.is_none() && !(low..=high).contains(&density_kg_m3) {
        let message = format!(
            "weight and sizes make {density_kg_m3:.0} kg/m³, which is no willow: {low} to {high} at the widest"
        );
        values.fault(
            &at("mass"),
            &message,
            "check weight, length, width and depth, and their units",
        );
    }
    Some(rack)
}
