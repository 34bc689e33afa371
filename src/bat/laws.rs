//! Law 5 and Appendix B: is the bat within the size limits?

/// Size limits of one edition of the Laws of Cricket, m.
#[derive(Clone, Debug, PartialEq)]
pub struct Limits {
    /// Edition the limits were taken from, and what was not seen, as printed beside every verdict.
    pub edition: String,
    /// Greatest overall length.
    pub length_m: f64,
    /// Greatest width of the blade.
    pub width_m: f64,
    /// Greatest depth from face to spine.
    pub depth_m: f64,
    /// Greatest thickness of the edges.
    pub edge_m: f64,
    /// Greatest length of the handle as a share of the overall length.
    pub handle_share: f64,
    /// Greatest share of the handle's volume that is neither cane, wood nor twine, of bats of type A or B.
    pub rubber_share: f64,
    /// The same of bats of type C or D.
    pub rubber_share_c_d: f64,
}

/// Type of a bat under the Laws. Which a bat is, is said by its maker: it follows from no measurement.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum BatType {
    /// The one that may be used anywhere (from memory); the usual one.
    #[default]
    A,
    /// With the limits of handle and rubber of type A.
    B,
    /// With more rubber in the handle.
    C,
    /// The same; for juniors, in sizes up to 6 (from memory), and since 2026 not for them alone (read second-hand).
    D,
}

impl BatType {
    /// All of them.
    pub const ALL: [Self; 4] = [Self::A, Self::B, Self::C, Self::D];

    /// Its letter.
    pub fn letter(self) -> &'static str {
        match self {
            Self::A => "A",
            Self::B => "B",
            Self::C => "C",
            Self::D => "D",
        }
    }
}

impl Limits {
    /// Greatest share of rubber in the handle of a bat of this type.
    pub fn rubber_share_of(&self, bat_type: BatType) -> f64 {
        match bat_type {
            BatType::A | BatType::B => self.rubber_share,
            BatType::C | BatType::D => self.rubber_share_c_d,
        }
    }
}

/// What of a bat was measured for the size check, m.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct GaugedSize {
    /// Overall length.
    pub length_m: Option<f64>,
    /// Width of the blade.
    pub width_m: Option<f64>,
    /// Depth from face to spine.
    pub depth_m: Option<f64>,
    /// Edge thickness.
    pub edge_m: Option<f64>,
}

/// Answer of the size check.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// All four sizes measured and within the limits.
    Yes,
    /// At least one measured size beyond its limit.
    No,
    /// No breach found, but not everything was measured.
    NotMeasured,
}

/// One of the limited sizes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Dimension {
    /// Overall length.
    Length,
    /// Width of the blade.
    Width,
    /// Depth from face to spine.
    Depth,
    /// Edge thickness.
    Edge,
}

impl Dimension {
    /// In plain words.
    pub fn words(self) -> &'static str {
        match self {
            Self::Length => "length",
            Self::Width => "width",
            Self::Depth => "depth",
            Self::Edge => "edge",
        }
    }
}

/// A size beyond its limit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Breach {
    /// Which size.
    pub dimension: Dimension,
    /// As measured, m.
    pub measured_m: f64,
    /// Limit, m.
    pub limit_m: f64,
}

/// Verdict with its grounds.
#[derive(Clone, Debug, PartialEq)]
pub struct LawCheck {
    /// Yes, no, or not measured.
    pub verdict: Verdict,
    /// Every size beyond its limit.
    pub breaches: Vec<Breach>,
    /// What was not measured.
    pub not_measured: Vec<Dimension>,
    /// Edition of the Laws used.
    pub edition: String,
}

/// The Laws print each limit in inches and in centimetres; the two differ by up to 0.06 mm (depth:
/// 2.64 in is 6.7056 cm, printed 6.7). A size within this much of the limit is no breach.
pub const PRINTED_ROUNDING_M: f64 = 1e-4;

/// Checks the measured sizes against the limits, toe guard and coverings not counted: the Laws let them come on top.
/// The share of the handle and the materials are not checked: they cannot be read off with a tape.
pub fn check_size(size: &GaugedSize, limits: &Limits) -> LawCheck {
    let rows = [
        (Dimension::Length, size.length_m, limits.length_m),
        (Dimension::Width, size.width_m, limits.width_m),
        (Dimension::Depth, size.depth_m, limits.depth_m),
        (Dimension::Edge, size.edge_m, limits.edge_m),
    ];
    let mut breaches = Vec::new();
    let mut not_measured = Vec::new();
    for (dimension, measured, limit_m) in rows {
        match measured {
            Some(measured_m) if measured_m > limit_m + PRINTED_ROUNDING_M => {
                breaches.push(Breach { dimension, measured_m, limit_m });
            }
            Some(_) => {}
            None => not_measured.push(dimension),
        }
    }
    let verdict = match (breaches.is_empty(), not_measured.is_empty()) {
        (false, _) => Verdict::No,
        (true, true) => Verdict::Yes,
        (true, false) => Verdict::NotMeasured,
    };
    LawCheck { verdict, breaches, not_measured, edition: limits.edition.clone() }
}
