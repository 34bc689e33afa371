//! What takes longer than a picture may is worked out once.

use std::sync::Arc;

use egui::Ui;

/// What was made for a key, made again when the key is another.
pub fn kept<T: Send + Sync + 'static>(
    ui: &Ui,
    name: &'static str,
    key: u64,
    make: impl FnOnce() -> Option<T>,
) -> Option<Arc<T>> {
    let id = egui::Id::new(name);
    let before = ui.data(|data| data.get_temp::<(u64, Arc<T>)>(id));
    if let Some((_, it)) = before.filter(|it| it.0 == key) {
        return Some(it);
    }
    let made = Arc::new(make()?);
    ui.data_mut(|data| data.insert_temp(id, (key, Arc::clone(&made))));
    Some(made)
}
