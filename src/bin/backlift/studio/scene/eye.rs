//! From where the scene is seen, and where a point of it stands on the screen.

use backlift::frames::{DMat3, DVec3, Mirror, rotation};
use egui::{Pos2, Rect};

use crate::studio::playback::{Camera, Orbit};

/// Nearer than this nothing is seen, m.
pub const NEAR_M: f64 = 0.05;
/// Narrower rooms than this, width over height, are looked at from farther off.
const WIDE: f64 = 1.3;

pub struct Eye {
    pub position_W: DVec3,
    pub target_W: DVec3,
    /// Which way is up on the screen, W.
    pub up_W: DVec3,
    /// Height of what it sees, rad.
    pub tall_rad: f64,
}

/// What the eye's place hangs on.
pub struct Seen {
    pub mirror: Mirror,
    pub stature_m: f64,
    pub eyes_W: DVec3,
    pub contact_W: DVec3,
    /// Two players side by side: their distance, m; else nought.
    pub apart_m: f64,
    /// Width of the room over its height.
    pub aspect: f64,
}

impl Eye {
    /// The eye of a camera, moved by what was dragged.
    pub fn of(camera: Camera, orbit: Orbit, seen: &Seen) -> Self {
        let h = seen.stature_m;
        let to = |x: f64, y: f64, z: f64| seen.mirror.vector(DVec3::new(x, y, z)) * h;
        // Over the middle of the figure: its feet may be low on the screen, the toe of the bat goes high.
        let middle = to(0.12, -0.12, 0.57);
        let (from, target, up, tall_rad) = match camera {
            // A right-hander's chest faces −y: square of the wicket, on the off side.
            Camera::Side => (to(0.30, -2.55, 0.72), middle, DVec3::Z, 0.62),
            Camera::Bowler => (to(2.75, -0.10, 0.85), middle, DVec3::Z, 0.58),
            Camera::Keeper => (to(-2.65, -0.35, 0.85), middle, DVec3::Z, 0.58),
            Camera::Above => (to(0.15, -0.18, 2.9), to(0.15, -0.18, 0.3), to(0.0, 1.0, 0.0), 0.62),
            Camera::Batter => {
                let target_W = seen.contact_W * 0.85 + DVec3::new(3.0, 0.0, 0.6) * 0.15;
                let (position_W, up_W) = (seen.eyes_W, DVec3::Z);
                return Self { position_W, target_W, up_W, tall_rad: 1.4 }.turned(orbit);
            }
        };
        let mut it = Self { position_W: from, target_W: target, up_W: up.normalize(), tall_rad };
        let (away, reach) = (from - target, (from - target).length());
        let room = reach * (WIDE / seen.aspect.max(0.2)).max(1.0) + 0.9 * seen.apart_m;
        it.position_W = target + away * (room / reach);
        it.orbited(orbit)
    }

    /// Round what it looks at, and nearer or farther.
    pub fn orbited(mut self, orbit: Orbit) -> Self {
        if orbit == Orbit::default() {
            return self;
        }
        let away = self.position_W - self.target_W;
        let [right, _, _] = self.axes();
        let about = rotation(self.up_W, f64::from(orbit.turn_rad));
        let right = about * right;
        let away = about * away;
        // Never over the top, where up is no longer up.
        let high = libm::asin(away.normalize().dot(self.up_W).clamp(-1.0, 1.0));
        let raise = (high + f64::from(orbit.raise_rad)).clamp(-0.25, 1.5) - high;
        let raise =
            if self.up_W == DVec3::Z { raise } else { f64::from(orbit.raise_rad).clamp(-0.6, 0.6) };
        let away = rotation(right, -raise) * away;
        self.position_W = self.target_W + away * f64::from(orbit.nearness).recip();
        self
    }

    /// Looking about from where it is.
    fn turned(mut self, orbit: Orbit) -> Self {
        let ahead =
            rotation(self.up_W, f64::from(orbit.turn_rad)) * (self.target_W - self.position_W);
        self.target_W = self.position_W + ahead;
        let [right, ..] = self.axes();
        let ahead = rotation(right, f64::from(orbit.raise_rad).clamp(-0.9, 0.9)) * ahead;
        self.target_W = self.position_W + ahead;
        self
    }

    /// To the right and up on the screen, and ahead.
    pub fn axes(&self) -> [DVec3; 3] {
        let ahead = (self.target_W - self.position_W).normalize_or(DVec3::Y);
        let right = ahead.cross(self.up_W).normalize_or(DVec3::X);
        [right, right.cross(ahead), ahead]
    }

    /// Axes of a camera that looks along its −z, as columns in W.
    pub fn R_WC(&self) -> DMat3 {
        let [right, up, ahead] = self.axes();
        DMat3::from_cols(right, up, -ahead)
    }

    /// Where a point stands in a rectangle of the screen; nowhere if it is behind.
    pub fn on_screen(&self, point_W: DVec3, room: Rect) -> Option<Pos2> {
        let [right, up, ahead] = self.axes();
        let from = point_W - self.position_W;
        let depth = from.dot(ahead);
        if depth < NEAR_M {
            return None;
        }
        let px_per_unit = 0.5 * f64::from(room.height()) / (depth * libm::tan(0.5 * self.tall_rad));
        let (x, y) = (from.dot(right) * px_per_unit, -from.dot(up) * px_per_unit);
        Some(room.center() + egui::vec2(x as f32, y as f32))
    }
}
