//! The numbers of a state that was decided on, put into words and units.

use super::balance::{Engaged, Share};
use super::decide::State;
use super::elimination::ROUNDING;
use super::flow::{ElementFlow, ElementState, Flow, Input, Load, Member, MemberFlow, Outcome, ShaftFlow, power};
use super::train::{ElementKind, Range, Train};
use crate::quantity::{Kilowatt, PoundFoot, Quantity, Rpm};

impl Train {
    pub(super) fn told(&self, range: &Range, applied: Engaged, state: &State, input: Input) -> Flow {
        let size = Quantity::new(input.torque.value().abs());
        let names = |joints: Engaged| -> Vec<&'static str> {
            let elements = self.elements.iter().enumerate();
            elements.filter(|(at, _)| joints.has(self.sets.len() + at)).map(|(_, element)| element.name).collect()
        };
        let share = |joint: usize| match &state.torques {
            Some(torques) if state.engaged.has(joint) => torques.shares[joint],
            _ => Share::Carries(0.0),
        };
        let speed = |shaft: Option<usize>| match shaft {
            None => Some(Quantity::new(0.0)),
            Some(shaft) => state.motion.speeds[shaft].map(|speed| input.speed * speed),
        };
        let outcome = match &state.torques {
            None => Outcome::Free {
                freedoms: state.motion.freedoms,
                loose: self.named_shafts(|shaft| state.motion.speeds[shaft].is_none()),
            },
            Some(_) if state.motion.turns => {
                Outcome::Driven(Quantity::new(1.0 / state.motion.speeds[self.output].unwrap_or(f64::NAN)))
            }
            Some(_) => {
                let loaded = (self.sets.len()..self.joints.len()).filter(|joint| match share(*joint) {
                    Share::Carries(load) => load.abs() > ROUNDING,
                    Share::UpTo(_) | Share::Unknown => true,
                });
                Outcome::Stalled { fighting: names(Engaged(loaded.fold(0, |bits, joint| bits | 1 << joint))) }
            }
        };
        let carries = state.torques.as_ref();
        let shafts = self.shafts.iter().enumerate().map(|(shaft, name)| ShaftFlow {
            name,
            speed: speed(Some(shaft)),
            torque: Some(match carries {
                Some(_) if shaft == self.input => input.torque,
                Some(torques) if shaft == self.output => size * torques.output,
                _ => Quantity::new(0.0),
            }),
        });
        let members = self.sets.iter().zip(&self.joints).enumerate().flat_map(|(joint, (set, tie))| {
            let names = [(Member::Sun, set.sun), (Member::Ring, set.ring), (Member::Carrier, set.carrier)];
            let share = share(joint);
            names.into_iter().zip(tie.terms).map(move |((member, shaft), term)| {
                let torque = match share {
                    Share::Carries(load) => Some(size * (-load * term.factor)),
                    Share::UpTo(_) | Share::Unknown => None,
                };
                let speed = speed(term.shaft);
                MemberFlow { set: set.name, member, shaft, speed, torque, power: power_if(torque, speed) }
            })
        });
        let turns = |slip: Option<f64>| slip.is_some_and(|slip| slip.abs() > ROUNDING && input.speed.value() != 0.0);
        let elements = self.elements.iter().enumerate().map(|(at, element)| {
            let joint = self.sets.len() + at;
            let load = match share(joint) {
                Share::Carries(load) => Load::Carries(size * load),
                Share::UpTo(load) => Load::UpTo(size * load),
                Share::Unknown => Load::Unknown,
            };
            let engaged = state.engaged.has(joint);
            let slip = if engaged { Some(0.0) } else { state.motion.slip(self, joint) };
            let exact = match load {
                Load::Carries(torque) => Some(torque),
                Load::UpTo(_) | Load::Unknown => None,
            };
            let passes = match self.joints[joint].terms[1].shaft {
                Some(shaft) => power_if(exact, speed(Some(shaft))),
                None => Some(Quantity::new(0.0)),
            };
            ElementFlow {
                name: element.name,
                kind: element.kind,
                state: match element.kind {
                    ElementKind::OneWay(_) if engaged && load == Load::Unknown => ElementState::Undecided,
                    ElementKind::OneWay(_) if engaged => ElementState::Locked,
                    ElementKind::OneWay(_) if turns(slip) => ElementState::Overrunning,
                    ElementKind::OneWay(_) => ElementState::Unloaded,
                    _ if applied.has(joint) => ElementState::Applied,
                    _ => ElementState::Open,
                },
                load,
                slip: slip.map(|slip| input.speed * slip),
                power: if engaged { passes } else { Some(Quantity::new(0.0)) },
            }
        });
        // Sets side by side share as well, but no element of theirs can be named.
        let groups = carries.iter().flat_map(|torques| &torques.groups);
        Flow {
            range: range.name,
            shafts: shafts.collect(),
            members: members.collect(),
            elements: elements.collect(),
            shared: groups.map(|group| names(*group)).filter(|group| !group.is_empty()).collect(),
            outcome,
        }
    }

    pub(super) fn undecided(&self, range: &Range, applied: Engaged, open: Engaged) -> Flow {
        let joint = |at: usize| self.sets.len() + at;
        let elements = self.elements.iter().enumerate();
        let one_ways =
            elements.clone().filter(|(at, _)| open.has(joint(*at))).map(|(_, element)| element.name).collect();
        let elements = elements.map(|(at, element)| ElementFlow {
            name: element.name,
            kind: element.kind,
            state: match element.kind {
                ElementKind::OneWay(_) => ElementState::Undecided,
                _ if applied.has(joint(at)) => ElementState::Applied,
                _ => ElementState::Open,
            },
            load: Load::Unknown,
            slip: None,
            power: None,
        });
        let members = self.sets.iter().flat_map(|set| {
            let names = [(Member::Sun, set.sun), (Member::Ring, set.ring), (Member::Carrier, set.carrier)];
            names.map(|(member, shaft)| MemberFlow {
                set: set.name,
                member,
                shaft,
                speed: None,
                torque: None,
                power: None,
            })
        });
        Flow {
            range: range.name,
            outcome: Outcome::Undecided { one_ways },
            shafts: self.shafts.iter().map(|name| ShaftFlow { name, speed: None, torque: None }).collect(),
            members: members.collect(),
            elements: elements.collect(),
            shared: Vec::new(),
        }
    }

    fn named_shafts(&self, wanted: impl Fn(usize) -> bool) -> Vec<&'static str> {
        self.shafts.iter().enumerate().filter(|(shaft, _)| wanted(*shaft)).map(|(_, name)| *name).collect()
    }
}

fn power_if(torque: Option<Quantity<PoundFoot>>, speed: Option<Quantity<Rpm>>) -> Option<Quantity<Kilowatt>> {
    torque.zip(speed).map(|(torque, speed)| power(torque, speed))
}
