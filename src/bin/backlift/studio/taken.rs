//! Where words stand already, so that none are written over others.

use std::cell::RefCell;

use egui::Rect;

/// Places that are taken.
#[derive(Default)]
pub struct Taken(RefCell<Vec<Rect>>);

impl Taken {
    /// Whether nothing stands there, nor close by.
    pub fn is_free(&self, place: Rect) -> bool {
        !self.0.borrow().iter().any(|it| it.expand(2.0).intersects(place))
    }

    /// Something stands there now.
    pub fn take(&self, place: Rect) {
        self.0.borrow_mut().push(place);
    }
}
