//! Why a question has no answer.

use crate::files::assets::AssetFault;
use crate::files::fault::{Fault, Faults};
use crate::files::stroke::StrokeFault;
use crate::ounce::swung::OunceFault;
use crate::swing::player_stroke::SwingFault;

/// A question that came to no answer; whose fault it is decides how a program ends.
#[derive(Debug)]
pub enum Stop {
    /// What was given is wrong, or cannot be read or written.
    WrongInput(Faults),
    /// What was given is right, and there is no answer to it.
    NoAnswer(Fault),
    /// The work was asked to stop.
    Cancelled,
    /// Something that came with the program is broken.
    OurMistake(String),
}

impl Stop {
    /// What was given is right, there is no answer to it, and this could be done about it.
    pub fn no_answer(why: impl std::fmt::Display, help: impl Into<String>) -> Self {
        Self::NoAnswer(Fault::new(why).help(help))
    }

    /// Something of the program's own is broken.
    pub fn our_mistake(what: impl std::fmt::Display) -> Self {
        Self::OurMistake(what.to_string())
    }
}

impl From<Fault> for Stop {
    fn from(fault: Fault) -> Self {
        Self::WrongInput(fault.into())
    }
}

impl From<Faults> for Stop {
    fn from(faults: Faults) -> Self {
        Self::WrongInput(faults)
    }
}

impl From<AssetFault> for Stop {
    fn from(fault: AssetFault) -> Self {
        Self::our_mistake(fault)
    }
}

impl From<StrokeFault> for Stop {
    fn from(fault: StrokeFault) -> Self {
        Self::our_mistake(fault)
    }
}

/// A player who cannot swing the bat is an answer, not a mistake in what was given.
impl From<SwingFault> for Stop {
    fn from(fault: SwingFault) -> Self {
        let help = match fault {
            SwingFault::NoControlledSwing { .. } => "try a lighter bat",
            SwingFault::Path { .. } => {
                "the hands cannot stay on the handle: check stature, arm_length and hand_length"
            }
            SwingFault::Chain(_) => return Self::our_mistake(fault),
        };
        Self::no_answer(fault, help)
    }
}

/// An ounce that cannot be put there is a mistake of ours; a bat that cannot be swung with it is an answer.
impl From<OunceFault> for Stop {
    fn from(fault: OunceFault) -> Self {
        match fault {
            OunceFault::Swing(fault) => fault.into(),
            OunceFault::Bat { .. } => Self::our_mistake(fault),
        }
    }
}
