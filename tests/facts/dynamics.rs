//! Facts about the stage `dynamics`.

mod identities;
mod outside;
