//! Facts about the stage `workshop`.

mod assignment;
mod combined;
mod lateral;
mod orders;
mod pickup_pair;
mod plane;
mod pressing;
mod season;
mod stage_files;
mod stages;
mod thin_edges;
mod to_card;
mod uptake;
mod wish;
