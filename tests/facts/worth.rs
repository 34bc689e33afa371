//! Facts about the stage `worth`.

mod constants;
mod evidence;
mod meeting;
mod suits;
