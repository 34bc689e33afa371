//! The map of the face.
