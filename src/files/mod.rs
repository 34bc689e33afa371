//! The edge to the disk: scenarios, readings from the nets, strokes, tables and cards read and written, faults with
//! their place, saves that leave nothing half done.
#![allow(clippy::disallowed_methods, clippy::disallowed_types, reason = "edge")]

pub mod air;
pub mod assets;
pub mod batch;
pub mod card;
mod card_choices;
pub mod card_file;
mod card_short;
pub mod document;
pub mod fault;
pub mod outline;
pub mod own_file;
pub mod rack;
pub mod readings;
pub mod reference;
pub mod save;
pub mod scenario;
pub mod shape;
mod shape_table;
pub mod shape_text;
pub mod solid;
pub mod stages;
pub mod stroke;
pub mod stroke_paths;
mod table;
