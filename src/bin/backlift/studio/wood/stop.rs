//! Where a field that is dragged goes no further.

/// Where a drag goes no further.
#[derive(Clone, Debug, PartialEq)]
pub struct Stop {
    /// The field.
    pub path: String,
    /// The last figure that the blade allows, SI.
    pub value: f64,
    /// What stands in the way.
    pub why: &'static str,
    /// Whether what lies above it is what is not allowed.
    pub(super) is_most: bool,
}

/// Whether the field is a share; else a length.
pub fn is_share(path: &str) -> bool {
    path == "blade.hollow"
}

impl Stop {
    /// Whether it is in the way of dragging a field to a figure.
    pub(super) fn holds(&self, path: &str, to: f64) -> bool {
        let beyond = if self.is_most { to >= self.value } else { to <= self.value };
        self.path == path && beyond
    }
}
