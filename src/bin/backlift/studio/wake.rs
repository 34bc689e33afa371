//! How a thread that has something to tell calls a window that sleeps.

use std::sync::Arc;
use std::time::Duration;

/// How a window is called; nobody where there is none.
#[derive(Clone)]
pub struct Wake(Arc<dyn Fn(Duration) + Send + Sync>);

impl Wake {
    /// `call` shows another picture within so long.
    pub fn new(call: impl Fn(Duration) + Send + Sync + 'static) -> Self {
        Self(Arc::new(call))
    }

    /// Shows what there is at once.
    pub fn now(&self) {
        self.within(Duration::ZERO);
    }

    /// Shows it within so long, with what else there may be by then.
    pub fn within(&self, so_long: Duration) {
        (self.0)(so_long);
    }
}

impl Default for Wake {
    fn default() -> Self {
        Self::new(|_| {})
    }
}
