//! What takes longer than a picture may is worked out once.

use std::sync::Arc;

use egui::Ui;

/// What was made for a key, made again when the key is another.
pub fn kept<T: Send + Sync + 'static>(
    ui: &Ui,
    name: &'static str,
    key: &str,
    make: impl FnOnce() -> Option<T>,
) -> Option<Arc<T>> {
    let id = egui::Id::new(name);
    let before = ui.data(|data| data.get_temp::<(String, Arc<T>)>(id));
    if let Some((_, it)) = before.filter(|it| it.0 == key) {
        return Some(it);
    }
    let made = Arc::new(make()?);
    ui.data_mut(|data| data.insert_temp(id, (key.to_owned(), Arc::clone(&made))));
    Some(made)
}
