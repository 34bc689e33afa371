//! Why a description is no bat, each with the nearest that is.

use super::BatFault;
use crate::measurement::absurd::tidy;
use crate::measurement::out_of_range::OutOfRange;

/// What is wrong with a described bat.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum ShapeFault {
    /// A figure that no bat has.
    #[error("{}: no bat has it", .0.words(tidy(&.0.value)))]
    Impossible(OutOfRange),
    /// Willow that no willow weighs.
    #[error(
        "{density_kg_m3:.0} kg/m³ is no willow: blades have {} to {} kg/m³ at the widest; nearest {nearest_kg_m3:.0} kg/m³",
        limits_kg_m3[0], limits_kg_m3[1]
    )]
    Density {
        /// Density asked, or that the cleft's weight and sizes give.
        density_kg_m3: f64,
        /// Lightest and heaviest.
        limits_kg_m3: [f64; 2],
        /// Nearest possible.
        nearest_kg_m3: f64,
    },
    /// The back comes out of the face.
    #[error(
        "{from_toe_m:.3} m from the toe the back comes out of the face ({thickness_m:.4} m thick there): less hollow, a thicker edge, or at most {nearest_hollow:.2} hollow"
    )]
    BackThroughFace {
        /// Where.
        from_toe_m: f64,
        /// Thickness there; nought or below.
        thickness_m: f64,
        /// Most hollow that leaves some wood there.
        nearest_hollow: f64,
    },
    /// An edge thicker than the blade is deep.
    #[error(
        "{from_toe_m:.3} m from the toe the edges are {edge_m:.4} m thick and the blade {depth_m:.4} m deep: the spine has to stand over the edges; nearest, an edge of {depth_m:.4} m"
    )]
    EdgeOverSpine {
        /// Where.
        from_toe_m: f64,
        /// Edge there.
        edge_m: f64,
        /// Depth there.
        depth_m: f64,
    },
    /// Stations that do not run from shoulder to toe.
    #[error(
        "station {number} lies {from_toe_m:.3} m from the toe, outside the blade or behind the one before: stations run from the shoulder ({length_m:.3} m) to the toe (0 m)"
    )]
    StationOrder {
        /// Which, counted from 1.
        number: usize,
        /// Where it lies.
        from_toe_m: f64,
        /// Length of the blade.
        length_m: f64,
    },
    /// Too few stations to make a blade.
    #[error(
        "a blade is measured at three heights or more, edge and depth at each: near the shoulder, near the toe and between; here are {count}"
    )]
    TooFewStations {
        /// How many there are.
        count: usize,
    },
    /// The swell where no blade has it.
    #[error(
        "a swell {from_toe_m:.3} m from the toe is off this blade's reach: from {low_m:.3} to {high_m:.3} m"
    )]
    Swell {
        /// Where it was asked.
        from_toe_m: f64,
        /// Lowest.
        low_m: f64,
        /// Highest.
        high_m: f64,
    },
    /// A splice longer than the blade.
    #[error(
        "the splice is {splice_m:.3} m long and the blade {blade_m:.3} m: nearest {nearest_m:.3} m"
    )]
    Splice {
        /// Length of the splice.
        splice_m: f64,
        /// Length of the blade.
        blade_m: f64,
        /// Longest that leaves wood under it.
        nearest_m: f64,
    },
    /// A handle that comes out of the blade where it is spliced in.
    #[error(
        "the handle is {handle_m:.4} m thick where it goes into a blade of {room_m:.4} m: nearest {room_m:.4} m"
    )]
    HandleOutOfBlade {
        /// Thickness of the handle at the shoulder.
        handle_m: f64,
        /// What the blade has there.
        room_m: f64,
    },
    /// A handle with no cane under its grip.
    #[error(
        "a handle of {diameter_m:.4} m over the grip has no cane in it: twine and grips alone are {cover_m:.4} m; nearest, something above that"
    )]
    NoCane {
        /// Diameter asked over the grip.
        diameter_m: f64,
        /// Diameter of what lies on the cane.
        cover_m: f64,
    },
    /// Rubber strips that leave no cane.
    #[error(
        "{strips} rubber strips of {strip_m:.4} m leave no cane in a handle {handle_m:.4} m thick: nearest, strips of less than {nearest_m:.4} m"
    )]
    Strips {
        /// How many.
        strips: u32,
        /// Thickness of one.
        strip_m: f64,
        /// Thickness of the handle through, half way along.
        handle_m: f64,
        /// Thickness at which they fill it.
        nearest_m: f64,
    },
    /// The cleft is too small for the blade.
    #[error(
        "the cleft is {have_m:.3} m in {what} and the blade needs {need_m:.3} m: nearest, a blade of {have_m:.3} m"
    )]
    Cleft {
        /// "length", "width" or "depth".
        what: &'static str,
        /// What the cleft has.
        have_m: f64,
        /// What the blade needs.
        need_m: f64,
    },
    /// The figures together belong to no rigid body.
    #[error(transparent)]
    Bat(#[from] BatFault),
}

impl ShapeFault {
    /// The field of a described bat to mend.
    pub fn field(&self) -> &'static str {
        self.field_and_why().0
    }

    /// What stands in the way, without figures: why a figure that is dragged goes no further.
    pub fn why(&self) -> &'static str {
        self.field_and_why().1
    }

    fn field_and_why(&self) -> (&'static str, &'static str) {
        match self {
            Self::Impossible(it) => (it.field, "no bat goes further"),
            Self::Density { .. } => ("willow.density", "no willow is so light or so heavy"),
            Self::BackThroughFace { .. } => ("blade.hollow", "the back would come out of the face"),
            Self::EdgeOverSpine { .. } => ("blade.edge", "the spine has to stand over the edges"),
            Self::StationOrder { .. } | Self::TooFewStations { .. } => {
                ("blade.stations", "the measured sections leave no room")
            }
            Self::Swell { .. } => ("blade.swell", "the swell would leave the blade"),
            Self::Splice { .. } => ("handle.splice", "the splice needs the wood"),
            Self::HandleOutOfBlade { .. } => {
                ("handle.shoulder_diameter", "the handle would come out of the blade")
            }
            Self::NoCane { .. } => ("handle.diameter", "no cane would be left under the grip"),
            Self::Strips { .. } => ("handle.strip", "no cane would be left under the grip"),
            Self::Cleft { .. } => ("willow.cleft", "the cleft is no larger"),
            Self::Bat(_) => ("blade", "no bat is so"),
        }
    }
}
