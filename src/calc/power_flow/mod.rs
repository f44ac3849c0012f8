//! Power flow: speeds, torques and power of any train of planetary sets, range by range.
//!
//! A [`Train`] is described as data: sets by their ratio of ring to sun and the
//! shafts their members are on, holding elements by the two things they tie
//! together. [`Train::flow`] then tells everything about one [`Range`], whatever
//! is applied: what is driven, what is stalled and which elements fight, what is
//! left free. The three-speed family on one sun gear is one such train
//! ([`three_speed`]).
//!
//! Forwards is the sense of the input. Torque on a shaft drives it forwards when
//! above nought. Steady running, no losses. Source: Willis's equation for every
//! set and the balance of torques on every shaft; derived.

mod balance;
mod decide;
mod elimination;
mod flow;
mod teeth;
mod tell;
pub mod three_speed;
mod train;

pub use flow::{ElementFlow, ElementState, Flow, Input, Load, Member, MemberFlow, Outcome, ShaftFlow, power};
pub use teeth::{Misfit, Teeth, spaced_evenly};
pub use train::{
    CASE, Element, ElementKind, Fault, Holds, MOST_JOINTS, MOST_ONE_WAYS, MOST_SHAFTS, Pinions, PlanetarySet, Range,
    Train,
};

#[cfg(test)]
mod tests;
