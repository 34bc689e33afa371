//! Facts about the stage `workshop`.

mod pickup_pair;
mod plane;
mod to_card;
