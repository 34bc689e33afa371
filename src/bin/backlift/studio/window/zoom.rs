//! How large a point is drawn, so that a window on a large screen is read without being asked for it.

use egui::Vec2;

/// A window that is higher is zoomed until it is not, points.
const HIGHEST: f32 = 1200.0;
/// Not so far that it would be narrower than this, points.
const WIDE: f32 = 1366.0;
/// Steps of the zoom: letters stay sharp.
const STEP: f32 = 0.25;

/// How many of the system's points one of ours is across, in a window of this size.
pub fn zoom(window: Vec2) -> f32 {
    let asked = (window.y / HIGHEST / STEP).ceil();
    let most = (window.x / WIDE / STEP).floor();
    (asked.min(most) * STEP).max(1.0)
}

#[cfg(test)]
mod tests {
    use egui::vec2;

    use crate::studio::window::zoom::zoom;

    #[test]
    fn a_large_window_is_zoomed_until_it_is_as_high_as_usual() {
        for size in [[1024.0, 600.0], [1366.0, 768.0], [1920.0, 1080.0], [1920.0, 1200.0]] {
            assert_eq!(zoom(size.into()), 1.0, "{size:?}");
        }
        assert_eq!(zoom(vec2(3840.0, 2160.0)), 2.0);
        for size in [[2560.0, 1440.0], [2560.0, 1600.0], [3840.0, 2160.0], [5120.0, 2880.0]] {
            let [_, height] = size.map(|it| it / zoom(size.into()));
            assert!((720.0..=1200.0).contains(&height), "{size:?}: {height}");
        }
        // On its side it stays as wide as the panels need.
        assert_eq!(zoom(vec2(1440.0, 2560.0)), 1.0);
    }
}
