//! A bat's own file: what it is to be, how its maker describes it, and what was read and done, in order of time.
//! Version 1 of the text; `convert` turns it into the core's types.
//!
//! Every field is text with its unit, as in a scenario; what is left out is as in the size's reference bat. The card
//! stands in it as it was written.

mod convert;
mod load;

pub use load::{DEMO, LoadedShape, load, load_own, load_text};

use ron::value::RawValue;

use super::document::{Document, Kind, Mends, Text, left_out, part};
use super::stages::entry::EntryV1;

pub use super::own_file::VERSION;

const SHAPE: Kind = Kind {
    what: "the file of a described bat",
    noun: "described bat",
    named: "a .ron file",
    like: "a described bat is a page of text; name the .ron file that holds it",
    none: "write a new one with `backlift shape --new FILE`, or name none for the built-in example",
};

/// What stands in for a bat at the bench: its own file, or the card alone.
const OWN: Kind = Kind {
    what: "a bat's own file, nor a card",
    noun: "bat's own file",
    named: "a .ron file",
    like: "name the bat's own .ron file, or its card's",
    none: "`backlift fit` writes the card; `backlift plane CARD.ron … --new FILE` begins the bat's own file",
};

part! {
    /// What was measured at one height: edge and depth, and what else was.
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
        /// Height of the face's arc along the blade.
        bow,
        ;
        /// Heights at which it was measured, from the shoulder to the toe; what is given above is carved out of them.
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
        /// In its place, how many pieces of cane it is glued up of, a rubber strip between each two.
        pieces,
        /// Thickness of these strips.
        strip,
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
        /// Type under the Laws, "A" to "D".
        law_type,
        ;
        blade: BladeV1,
        handle: HandleV1,
        extras: ExtrasV1,
        willow: WillowV1,
        /// What it is to be, as `backlift fit` wrote it.
        card: Option<Box<RawValue>>,
        /// What was read and done, in order of time.
        log: Vec<EntryV1>,
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
}
