//! What a range does: speeds, torques and power, as a page or a picture shows them.

use super::train::ElementKind;
use crate::quantity::{Kilowatt, One, PoundFoot, Quantity, Rpm};

/// What comes in at the input shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Input {
    /// Speed of the input shaft; its sense is called forwards.
    pub speed: Quantity<Rpm>,
    /// Torque on the input shaft: above nought drives, below nought is the vehicle pushing the engine.
    pub torque: Quantity<PoundFoot>,
}

/// One range with everything that turns and holds in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Flow {
    /// Name of the range.
    pub range: &'static str,
    /// What the range does as a whole.
    pub outcome: Outcome,
    /// Every shaft, input and output first.
    pub shafts: Vec<ShaftFlow>,
    /// Sun, ring and carrier of every set, set by set.
    pub members: Vec<MemberFlow>,
    /// Every clutch, brake, band and one-way clutch, as the train lists them.
    pub elements: Vec<ElementFlow>,
    /// Groups of elements that hold the same thing twice over: how they share it depends on how hard each is applied.
    pub shared: Vec<Vec<&'static str>>,
}

/// What a range does as a whole.
#[derive(Clone, Debug, PartialEq)]
pub enum Outcome {
    /// The input drives the output: input turns per output turn, negative in reverse.
    Driven(Quantity<One>),
    /// Over-constrained: the input cannot turn, and these elements are what stops it.
    ///
    /// The torques are those with nothing pushing at the output.
    Stalled {
        /// The elements that carry load against each other, in the train's order.
        fighting: Vec<&'static str>,
    },
    /// Under-constrained: no torque goes through, so all torques are nought.
    Free {
        /// How many speeds can still be chosen once the input's is given.
        freedoms: usize,
        /// The shafts whose speed is therefore not known.
        loose: Vec<&'static str>,
    },
    /// These one-way clutches could stand one way or the other, or no way fits; nothing else is said of the range.
    Undecided {
        /// The one-way clutches whose state is open.
        one_ways: Vec<&'static str>,
    },
}

/// One shaft.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShaftFlow {
    /// Name of the shaft.
    pub name: &'static str,
    /// Its speed, unless nothing settles it.
    pub speed: Option<Quantity<Rpm>>,
    /// Torque on it from outside the train: what comes in, or less what goes out; nought on a shaft inside.
    pub torque: Option<Quantity<PoundFoot>>,
}

/// One member of a planetary set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct MemberFlow {
    /// Name of the set.
    pub set: &'static str,
    /// Which of its members.
    pub member: Member,
    /// The shaft it is on, or the case.
    pub shaft: &'static str,
    /// Its speed, unless nothing settles it.
    pub speed: Option<Quantity<Rpm>>,
    /// Torque its shaft puts into it; the three of a set add up to nought.
    pub torque: Option<Quantity<PoundFoot>>,
    /// Power its shaft puts into it: torque × speed; the three of a set add up to nought.
    pub power: Option<Quantity<Kilowatt>>,
}

/// The members of a planetary set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
#[allow(missing_docs, reason = "the names say it")]
pub enum Member {
    Sun,
    Ring,
    Carrier,
}

/// One holding element.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ElementFlow {
    /// Name of the element.
    pub name: &'static str,
    /// What kind of part it is.
    pub kind: ElementKind,
    /// What it is doing.
    pub state: ElementState,
    /// Torque it puts on its shaft (and takes from what it ties the shaft to).
    pub load: Load,
    /// Speed of its shaft against what it ties it to; nought while it holds, unknown when nothing settles it.
    pub slip: Option<Quantity<Rpm>>,
    /// Power it passes on to its shaft; nought on the case.
    pub power: Option<Quantity<Kilowatt>>,
}

/// What a holding element is doing.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ElementState {
    /// Applied by the valve body.
    Applied,
    /// Released by the valve body.
    Open,
    /// A one-way clutch that holds.
    Locked,
    /// A one-way clutch that turns freely.
    Overrunning,
    /// A one-way clutch that neither holds nor turns against what it is tied to, or that nothing moves.
    Unloaded,
    /// A one-way clutch of which it cannot be told.
    Undecided,
}

/// Torque an element carries.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Load {
    /// Just this.
    Carries(Quantity<PoundFoot>),
    /// This if the others of its group carry nothing; less when they help.
    UpTo(Quantity<PoundFoot>),
    /// Cannot be told.
    Unknown,
}

impl Load {
    /// The most it can be, with its sense; `None` when that cannot be told.
    pub fn most(self) -> Option<Quantity<PoundFoot>> {
        match self {
            Self::Carries(torque) | Self::UpTo(torque) => Some(torque),
            Self::Unknown => None,
        }
    }
}

impl Flow {
    /// The holding element of this name.
    pub fn element(&self, name: &str) -> Option<&ElementFlow> {
        self.elements.iter().find(|element| element.name == name)
    }

    /// The shaft of this name.
    pub fn shaft(&self, name: &str) -> Option<&ShaftFlow> {
        self.shafts.iter().find(|shaft| shaft.name == name)
    }

    /// This member of the set of this name.
    pub fn member(&self, set: &str, member: Member) -> Option<&MemberFlow> {
        self.members.iter().find(|one| one.set == set && one.member == member)
    }

    /// Input turns per output turn, negative in reverse; `None` unless the input drives the output.
    pub fn ratio(&self) -> Option<Quantity<One>> {
        match self.outcome {
            Outcome::Driven(ratio) => Some(ratio),
            _ => None,
        }
    }
}

/// Power of a torque at a speed: 2π/60 × 1.3558179483314 N·m a lb-ft (exact to the digits given), in kilowatts.
pub fn power(torque: Quantity<PoundFoot>, speed: Quantity<Rpm>) -> Quantity<Kilowatt> {
    const KILOWATTS: f64 = std::f64::consts::TAU / 60.0 * 1.355_817_948_331_4 / 1000.0;
    Quantity::new(torque.value() * speed.value() * KILOWATTS)
}
