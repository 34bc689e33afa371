//! Frames of reference, the vector types, and the left-hander's mirror.
//!
//! * **World W**: origin on the ground between the feet, x down the pitch towards the bowler, z up,
//!   y completing the right-handed set (a right-hander's chest faces −y).
//! * **Bat B**: origin at the top of the handle, +x along the bat to the toe, +z out of the hitting
//!   face, y completing. Stations along the bat are metres from the top of the handle.
//! * **Hands**: the *top hand* is nearer the top of the handle; the left one of a right-hander.
//!
//! A vector's name ends in the frame its components stand in: `omega_W`, `force_top_B`. `p_PQ_W` is
//! the position of Q from P; `R_WB` turns components in B into components in W.

pub use rapier3d_f64::glamx::{DMat3, DVec3};

/// Acceleration of free fall used throughout, m/s². Source: ISO 80000-3, standard value 9.80665.
pub const STANDARD_GRAVITY_M_S2: f64 = 9.80665;

/// Rotation by `angle_rad` about the unit vector `axis` (Rodrigues), with the platform-independent sine.
pub fn rotation(axis: DVec3, angle_rad: f64) -> DMat3 {
    let (s, c) = libm::sincos(angle_rad);
    let (x, y, z) = (axis.x, axis.y, axis.z);
    let t = 1.0 - c;
    DMat3::from_cols(
        DVec3::new(c + x * x * t, z * s + x * y * t, -y * s + x * z * t),
        DVec3::new(-z * s + x * y * t, c + y * y * t, x * s + y * z * t),
        DVec3::new(y * s + x * z * t, -x * s + y * z * t, c + z * z * t),
    )
}

/// Rotation vector (axis times angle) of a rotation, for angles below π.
pub fn rotation_vector(R: &DMat3) -> DVec3 {
    let w =
        0.5 * DVec3::new(R.y_axis.z - R.z_axis.y, R.z_axis.x - R.x_axis.z, R.x_axis.y - R.y_axis.x);
    let n = w.length();
    let angle = libm::atan2(n, 0.5 * (R.x_axis.x + R.y_axis.y + R.z_axis.z - 1.0));
    if n > 1e-9 { w * (angle / n) } else { w }
}

/// Which way round the player stands. A left-hander is the mirror image of a right-hander in the
/// x–z plane and is simulated as one: positions change the sign of y, axes of rotation that of x and z.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Mirror {
    left_handed: bool,
}

impl Mirror {
    /// The right-hander: nothing changes.
    pub const RIGHT_HANDED: Self = Self { left_handed: false };
    /// The left-hander: mirrored in the x–z plane.
    pub const LEFT_HANDED: Self = Self { left_handed: true };

    fn s(self) -> f64 {
        if self.left_handed { -1.0 } else { 1.0 }
    }

    /// Mirror image of a position, velocity or force.
    pub fn vector(self, v: DVec3) -> DVec3 {
        DVec3::new(v.x, self.s() * v.y, v.z)
    }

    /// Mirror image of an axis of rotation, angular velocity or couple.
    pub fn axis(self, a: DVec3) -> DVec3 {
        let s = self.s();
        DVec3::new(s * a.x, a.y, s * a.z)
    }
}
