//! How the bat speed goes with the bat, as exponents.

use backlift::bat::Bat;
use backlift::measurement::bench::PICKUP_AXIS_FROM_TOP_M;
use backlift::ounce::cost::StrokeOunce;
use backlift::ounce::moments::TopMoments;

/// Exponents of the bat speed at a bat.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Exponents {
    /// On the swing moment, the balance point moved and the wood's spread about it kept.
    pub swing_moment_at_fixed_mass: f64,
    /// On the mass, the wood denser and the balance point moved until the swing moment is the old one.
    pub mass_at_fixed_swing_moment: f64,
}

impl Exponents {
    pub fn of(it: &StrokeOunce, bat: &Bat) -> Self {
        let (m, b, a) = (bat.mass_kg(), bat.balance_m(), PICKUP_AXIS_FROM_TOP_M);
        let (swing, d) = (bat.swing_moment_kg_m2(), b - a);
        let share = |by: TopMoments| it.change_m_s(by) / it.bat_speed_m_s;
        let moments = |mass_kg: f64, first_kg_m: f64, swing_kg_m2: f64| TopMoments {
            mass_kg,
            first_kg_m,
            second_kg_m2: swing_kg_m2 + 2.0 * a * first_kg_m - a * a * mass_kg,
        };
        // The balance moved by db, the wood's spread about it kept: dI = 2 m d db.
        let moved_m = swing / (2.0 * m * d);
        // The wood denser by a share, the balance moved until the swing moment is the old one:
        // dI = 0 = I + 2 m d db for the whole.
        let back_m = -swing / (2.0 * m * d);
        Self {
            swing_moment_at_fixed_mass: share(moments(0.0, m * moved_m, swing)),
            mass_at_fixed_swing_moment: share(moments(m, m * b + m * back_m, 0.0)),
        }
    }
}
