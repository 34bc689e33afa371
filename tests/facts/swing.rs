//! Facts about the stage `swing`.
