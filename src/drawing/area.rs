//! A rectangle on the page, px; y downwards.

/// By its upper left corner.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    pub x: f64,
    pub y: f64,
    pub width: f64,
    pub height: f64,
}

impl Area {
    pub const fn new(x: f64, y: f64, width: f64, height: f64) -> Self {
        Self { x, y, width, height }
    }

    pub fn right(self) -> f64 {
        self.x + self.width
    }

    pub fn bottom(self) -> f64 {
        self.y + self.height
    }

    /// Whether the two share a point.
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
