//! Facts about the stage `fit`.

mod demo;
mod trial;
