//! Facts about the stage `files`.
