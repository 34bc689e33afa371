//! Why a bat could not be weighed up.

use super::BatFault;
use super::sizes::UnknownSize;
use crate::measurement::absurd::Absurd;

/// Why a bat could not be weighed up.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WeighFault {
    /// A reading that cannot be true.
    #[error(transparent)]
    Absurd(#[from] Absurd),
    /// No size of that name.
    #[error("{0}; {mend}", mend = .0.mend())]
    UnknownSize(#[from] UnknownSize),
    /// The table of sizes is empty.
    #[error("there are no sizes to compare with")]
    NoSizes,
    /// The figures together belong to no rigid body.
    #[error(transparent)]
    Bat(#[from] BatFault),
}

impl WeighFault {
    /// The field to mend, as in a scenario, where one field is to blame.
    pub fn field(&self) -> Option<&'static str> {
        match self {
            Self::Absurd(absurd) => Some(absurd.field()),
            Self::UnknownSize(_) => Some("size"),
            Self::NoSizes | Self::Bat(_) => None,
        }
    }
}
