//! The clefts on the rack, each weighed and measured.

use crate::bat::described::{Cleft, SEASONED};
use crate::uncertain::{Uncertain, independent_sd};

/// A cleft on the rack.
#[derive(Clone, Debug, PartialEq)]
pub struct RackCleft {
    /// What it is called, on it and in the file.
    pub label: String,
    /// Weight, sizes and moisture.
    pub cleft: Cleft,
    /// Grains across the face, where somebody counted them. How they make a bat play is not known here: they count
    /// nowhere.
    pub grains: Option<u32>,
    /// Whatever else.
    pub note: Option<String>,
}

/// All clefts of a rack.
#[derive(Clone, Debug, PartialEq)]
pub struct Rack {
    /// They are made up.
    pub invented: bool,
    /// The clefts, each with a label of its own.
    pub clefts: Vec<RackCleft>,
}

/// One standard deviation of a moisture meter in willow, kg of water for each kg of dry wood: assumption.
pub const METER_SD: f64 = 0.02;
/// The same where no meter was held to the cleft, about [`SEASONED`]: assumption.
pub const UNREAD_SD: f64 = 0.04;

impl RackCleft {
    /// Density of the blade to be made of it, kg/m³ at 12 % water, in doubt by its volume and its moisture; shrinkage
    /// is left out.
    pub fn density_kg_m3(&self) -> Uncertain {
        let it = self.cleft.density_kg_m3();
        let (moisture, sd) = match self.cleft.moisture {
            Some(moisture) => (moisture, METER_SD),
            None => (SEASONED, UNREAD_SD),
        };
        let by_moisture = sd / (1.0 + moisture) * it.value;
        Uncertain::computed(it.value, independent_sd(&[it.sd, by_moisture]))
    }
}
