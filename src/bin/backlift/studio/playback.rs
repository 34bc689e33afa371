//! What is swung on the screen, and from where it is seen.

use serde::{Deserialize, Serialize};

/// Where the scene is seen from.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub enum Camera {
    /// From the bowler's end.
    Bowler,
    /// From behind the stumps.
    Keeper,
    /// Square of the wicket, on the side the batter faces.
    #[default]
    Side,
    /// From above.
    Above,
    /// From the batter's eyes.
    Batter,
}

/// The stroke on the screen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Playback {
    /// Stroke by name.
    pub stroke: String,
    /// Score at which it is played: the tiredness of the player.
    pub runs: u32,
    /// First and second bat, by their place in the scenario.
    pub bats: [usize; 2],
    /// Whether the second bat is shown.
    pub second: bool,
    /// Time from the top of the backlift, s.
    pub time_s: f64,
    /// Whether time runs.
    pub playing: bool,
    /// Seconds of the stroke in a second on the screen.
    pub rate: f64,
    /// Whether it starts again at the end.
    pub looping: bool,
    /// View.
    pub camera: Camera,
    /// Both bats in one place; else side by side.
    pub overlay: bool,
}

impl Default for Playback {
    fn default() -> Self {
        Self {
            stroke: "pull".to_owned(),
            runs: 0,
            bats: [0, 1],
            second: true,
            time_s: 0.0,
            playing: true,
            rate: 0.15,
            looping: true,
            camera: Camera::Side,
            overlay: true,
        }
    }
}
