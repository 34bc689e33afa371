//! Why a bat could not be weighed up.

use super::BatFault;
use crate::measurement::absurd::Absurd;

/// Why a bat could not be weighed up.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum WeighFault {
    /// A reading that cannot be true.
    #[error(transparent)]
    Absurd(#[from] Absurd),
    /// No size of that name.
    #[error("no size is called {name:?}; the sizes are {}", known.join(", "))]
    UnknownSize {
        /// Name given.
        name: String,
        /// Names of all sizes.
        known: Vec<String>,
    },
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
            Self::UnknownSize { .. } => Some("size"),
            Self::NoSizes | Self::Bat(_) => None,
        }
    }
}
