//! A rectangle on the page.

/// A rectangle on the page, px; y downwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Left edge.
    pub x: f64,
    /// Upper edge.
    pub y: f64,
    /// Width.
    pub width: f64,
    /// Height.
    pub height: f64,
}

impl Area {
    /// From its upper left corner.
    pub const fn new(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self { x, y, width, height }
    }
    /// Right edge.
    pub fn right(self) -> f64 {
        self.x + self.width
    }
    /// Lower edge.
    pub fn bottom(self) -> f64 {
        self.y + self.height
    }
    /// True when the two share a point.
    pub fn touches(self, other: Self) -> bool {
        self.x < other.right()
            && other.x < self.right()
            && self.y < other.bottom()
            && other.y < self.bottom()
    }

    /// Whether another area lies wholly in this one.
    pub fn holds(self, other: Self) -> bool {
        self.x <= other.x
            && other.right() <= self.right()
            && self.y <= other.y
            && other.bottom() <= self.bottom()
    }
}
