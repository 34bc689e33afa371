//! Facts about the stage `fit`.

mod advice;
mod demo;
mod trial;
