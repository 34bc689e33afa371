//! The edge to text and folders: scenarios, strokes and tables in, results out.

pub mod assets;
pub mod stroke;
