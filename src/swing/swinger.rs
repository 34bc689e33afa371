//! A swing set up: who, with what, along which plan.

use super::chain::Chain;
use super::control::Control;
use super::reference::Reference;
use crate::frames::STANDARD_GRAVITY_M_S2;
use crate::player::Strength;
use crate::player::joints::JOINT_COUNT;
use crate::stroke::Tolerance;

const N: usize = JOINT_COUNT;

/// A swing set up: who, with what, along which plan.
#[derive(Clone, Debug)]
pub struct Swinger<'a> {
    /// Player and bat.
    pub chain: &'a Chain,
    /// The plan, sampled twice a step.
    pub reference: &'a Reference,
    /// Strength at present, fatigue included.
    pub strength: Strength,
    /// Tolerances of the stroke.
    pub tolerance: Tolerance,
    /// Constants of the law.
    pub control: Control,
    /// Free fall, m/s²; standard unless a reference case says otherwise.
    pub gravity_m_s2: f64,
    /// Joint torques at the top of the backlift, N m; what the law calls for there unless a reference
    /// case gives its own.
    pub start_torque_n_m: Option<[f64; N]>,
    /// By sample of the plan, what each joint gives over what is called for; one unless a noisy swing is tried.
    pub given_share: Option<&'a [[f64; N]]>,
}

impl<'a> Swinger<'a> {
    /// A swing with the default law and standard gravity.
    pub fn new(
        chain: &'a Chain,
        reference: &'a Reference,
        strength: Strength,
        tolerance: Tolerance,
    ) -> Self {
        Self {
            chain,
            reference,
            strength,
            tolerance,
            control: Control::default(),
            gravity_m_s2: STANDARD_GRAVITY_M_S2,
            start_torque_n_m: None,
            given_share: None,
        }
    }
}
