//! The player swings the bat: two hands on one handle, limited torques, the fastest controlled swing.

pub mod activation;
pub mod assumed;
pub mod barrier;
pub mod batter;
pub mod bottom_grip;
pub mod chain;
pub mod close_path;
pub mod contact;
pub mod control;
pub mod engine;
pub mod fastest_controlled;
pub mod film;
pub mod hand_wrench;
pub mod law;
pub mod noise;
pub mod observed;
pub mod plan;
pub mod player_stroke;
pub mod reference;
pub mod root;
pub mod run;
pub mod state;
pub mod swinger;
pub mod time_in_hand;
pub mod wishes;
