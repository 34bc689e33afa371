//! Facts about the stage `workshop`.

mod to_card;
