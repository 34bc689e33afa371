//! A hand on the handle: a mass on a soft spring, and the friction that holds the handle from turning.

use crate::player::grip::{FRICTION, grip_needed_n, twist_limit_n_m};
use crate::uncertain::{Origin, Uncertain};

/// Stiffness of palm, glove and rubber between handle and hand, N/m: assumption, no source; half to twice as
/// much is as likely as not.
pub const STIFFNESS: Uncertain = Uncertain { value: 5e4, sd: 2.5e4, origin: Origin::Assumed };
/// Share of critical damping between handle and hand: assumption, no source.
pub const DAMPING_SHARE: f64 = 0.4;
/// Radius of gyration of a closed hand about the handle, m: assumption, no source.
pub const GYRATION_M: f64 = 0.035;
/// Mass of the hand that goes along, as a share of the hand's mass: the forearm hangs on a wrist that gives.
/// Assumption, no source; one standard deviation.
pub const MASS_SHARE: Uncertain = Uncertain { value: 1.0, sd: 0.5, origin: Origin::Assumed };

/// A hand as the hit needs it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hand {
    /// Its centre, m from the top of the handle.
    pub from_top_m: f64,
    /// Mass that goes along, kg.
    pub mass_kg: f64,
    /// Stiffness towards the handle, N/m.
    pub stiffness_n_m: f64,
    /// Greatest grip force, N.
    pub grip_n: f64,
    /// Radius of the handle with its grip, m.
    pub radius_m: f64,
}

impl Hand {
    /// A hand of this mass there, else as assumed.
    pub fn of(hand_kg: f64, from_top_m: f64, grip_n: f64, handle_diameter_m: f64) -> Self {
        Self {
            from_top_m,
            mass_kg: MASS_SHARE.value * hand_kg,
            stiffness_n_m: STIFFNESS.value,
            grip_n,
            radius_m: 0.5 * handle_diameter_m,
        }
    }

    /// Damping towards the handle, N s/m.
    pub fn damping_n_s_m(&self) -> f64 {
        2.0 * DAMPING_SHARE * (self.stiffness_n_m * self.mass_kg).sqrt()
    }

    /// Moment of inertia about the handle, kg m².
    pub fn turning_kg_m2(&self) -> f64 {
        self.mass_kg * GYRATION_M * GYRATION_M
    }

    /// The skin's spring, N m/rad, and damper, N m s/rad, about the handle: those of the hand at its radius.
    pub fn skin(&self) -> [f64; 2] {
        let arm = self.radius_m * self.radius_m;
        [self.stiffness_n_m * arm, self.damping_n_s_m() * arm]
    }

    /// Grip force that keeps the handle from turning under this couple, N.
    pub fn grip_needed_n(&self, couple_n_m: f64) -> f64 {
        grip_needed_n(0.0, couple_n_m, self.radius_m, FRICTION.value)
    }

    /// Greatest couple before the handle turns in the hand, N m.
    pub fn couple_limit_n_m(&self) -> f64 {
        twist_limit_n_m(self.grip_n, 2.0 * self.radius_m, FRICTION.value)
    }
}
