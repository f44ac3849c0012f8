//! From a range to its flow: which way each one-way clutch stands, then every number.

use super::balance::{Engaged, Motion, Share, Torques};
use super::elimination::{Equations, ROUNDING};
use super::flow::{Flow, Input};
use super::train::{ElementKind, Fault, Range, Train};

impl Train {
    /// Speeds, torques and power everywhere in one range.
    ///
    /// A one-way clutch is locked where only its torque, in the sense it holds,
    /// lets the input's torque through, and overruns where that leaves it turning
    /// the way it lets go. Torque nought settles none. No losses, no inertia.
    /// Source: Willis's equation and the balance of torques on every shaft.
    pub fn flow(&self, range: &Range, input: Input) -> Result<Flow, Fault> {
        let mut applied = Engaged((1 << self.sets.len()) - 1);
        for name in range.applied {
            let found = self.elements.iter().position(|element| element.name == *name && !is_one_way(element.kind));
            applied.0 |= 1 << (self.sets.len() + found.ok_or(Fault::NotApplied(name))?);
        }
        Ok(match self.decide(applied, input) {
            Ok(state) => self.told(range, applied, &state, input),
            Err(open) => self.undecided(range, applied, open),
        })
    }

    /// The state that fits, or the one-way clutches of which it cannot be told.
    ///
    /// Virtual work lets no train that is driven forwards be stalled as well. What
    /// moves against the torque on it (the vehicle pushing) goes on moving.
    fn decide(&self, applied: Engaged, input: Input) -> Result<State, Engaged> {
        let one_ways = self.joints.iter().enumerate().filter(|(_, joint)| joint.sense.is_some());
        let one_ways = one_ways.fold(0, |bits, (at, _)| bits | 1 << at);
        let pushed = input.torque.value() * input.speed.value() < 0.0;
        let mut room = Equations::room();
        let (mut driven, mut stalled) = (Fitting::default(), Fitting::default());
        let mut locked = one_ways;
        // Every choice, the most locked first: of two that move alike, that one names everybody who helps.
        loop {
            let carries = self.carrying(Engaged(applied.0 | locked), one_ways, input, &mut room);
            match carries {
                // Virtual work again: whatever else carries while driven forwards moves like this.
                Some(state) if state.motion.turns && !pushed && driven.is_empty() && state.is_certain() => {
                    return Ok(state);
                }
                Some(state) if state.motion.turns => driven.add(state, one_ways),
                Some(state) => stalled.add(state, one_ways),
                None => {}
            }
            if locked == 0 {
                break;
            }
            locked = (locked - 1) & one_ways;
        }
        let mut free = || self.free(applied, input, &mut room).map(Ok);
        let stalled = || stalled.only();
        let found =
            driven.only().or_else(|| if pushed { free().or_else(stalled) } else { stalled().or_else(&mut free) });
        found.unwrap_or(Err(Engaged(one_ways)))
    }

    /// This choice, if it carries the torque and every one-way clutch agrees with it.
    fn carrying(&self, engaged: Engaged, one_ways: u32, input: Input, room: &mut Equations) -> Option<State> {
        let torque = input.torque.value();
        if torque == 0.0 && engaged.0 & one_ways != 0 {
            return None;
        }
        let motion = Motion::of(self, engaged, room);
        if !self.overruns_rightly(engaged, &motion, input, room) {
            return None;
        }
        let torques = Torques::of(self, engaged, &motion, if torque < 0.0 { -1.0 } else { 1.0 }, room)?;
        Some(State { engaged, motion, torques: Some(torques) })
    }

    /// With no one-way clutch locked and no torque going through.
    fn free(&self, applied: Engaged, input: Input, room: &mut Equations) -> Option<State> {
        let motion = Motion::of(self, applied, room);
        let fits = motion.turns && self.overruns_rightly(applied, &motion, input, room);
        fits.then_some(State { engaged: applied, motion, torques: None })
    }

    /// Whether every one-way clutch that is not locked can turn the way it lets go, all of them at once.
    fn overruns_rightly(&self, engaged: Engaged, motion: &Motion, input: Input, room: &mut Equations) -> bool {
        let Some(unsettled) = self.unsettled(engaged, motion, input) else { return false };
        // One that nothing settles may turn either way; of several, what suits one may not suit the next.
        if !motion.turns || unsettled.count_ones() < 2 {
            return true;
        }
        // If all can be suited, then also with some of them just at rest and the others settled thereby.
        let mut resting = unsettled;
        while resting != 0 {
            let engaged = Engaged(engaged.0 | resting);
            let motion = Motion::of(self, engaged, room);
            if motion.turns && self.unsettled(engaged, &motion, input) == Some(0) {
                return true;
            }
            resting = (resting - 1) & unsettled;
        }
        false
    }

    /// The one-way clutches that are not locked and whose slip nothing settles; `None` if one turns the way it holds.
    fn unsettled(&self, engaged: Engaged, motion: &Motion, input: Input) -> Option<u32> {
        let open = self.joints.iter().enumerate().filter(|(at, _)| !engaged.has(*at));
        open.filter_map(|(at, joint)| Some((at, joint.sense?))).try_fold(0, |bits, (at, sense)| {
            match motion.slip(self, at) {
                None => Some(bits | 1 << at),
                Some(slip) => (slip * sense_of(input) * sense >= -ROUNDING).then_some(bits),
            }
        })
    }
}

/// The first choice that fits, and the one-way clutches that stand otherwise in another that moves otherwise.
#[derive(Default)]
struct Fitting {
    first: Option<State>,
    open: u32,
    /// Choices that lock a one-way clutch of which it cannot be told whether it is pulled the way it holds.
    doubtful: Vec<State>,
}

impl Fitting {
    fn is_empty(&self) -> bool {
        self.first.is_none() && self.doubtful.is_empty()
    }

    fn add(&mut self, state: State, one_ways: u32) {
        if state.is_doubtful(one_ways) {
            self.doubtful.push(state);
            return;
        }
        match &self.first {
            Some(first) if !first.moves_like(&state) => self.open |= first.engaged.0 ^ state.engaged.0,
            Some(_) => {}
            None => self.first = Some(state),
        }
    }

    /// The one way that fits.
    ///
    /// A doubtful choice that does fit can be relieved of one one-way clutch after the other, each just unloaded, until
    /// what is left is told. So it counts only beside such a one, and then names more of those who may help.
    fn only(self) -> Option<Result<State, Engaged>> {
        let first = self.first?;
        if self.open != 0 {
            return Some(Err(Engaged(self.open)));
        }
        Some(Ok(self.doubtful.into_iter().find(|more| more.moves_like(&first)).unwrap_or(first)))
    }
}

/// One choice that fits.
pub(super) struct State {
    pub(super) engaged: Engaged,
    pub(super) motion: Motion,
    /// Without them no torque goes through.
    pub(super) torques: Option<Torques>,
}

impl State {
    /// Whether every load is told, so that no one-way clutch stands locked unseen.
    fn is_certain(&self) -> bool {
        self.torques.as_ref().is_some_and(|torques| !torques.shares.contains(&Share::Unknown))
    }

    /// Whether a one-way clutch stands locked of whose load nothing is told.
    fn is_doubtful(&self, one_ways: u32) -> bool {
        let locked = Engaged(self.engaged.0 & one_ways);
        self.torques
            .as_ref()
            .is_some_and(|torques| locked.joints().any(|joint| torques.shares[joint] == Share::Unknown))
    }

    /// Whether no shaft is known to turn otherwise in the other.
    fn moves_like(&self, other: &Self) -> bool {
        let both = self.motion.speeds.iter().zip(&other.motion.speeds);
        both.flat_map(|(one, other)| one.zip(*other)).all(|(one, other)| (one - other).abs() < ROUNDING)
    }
}

/// 1 or -1: the sense in which the input turns or, at rest, would; nought with neither speed nor torque.
pub(super) fn sense_of(input: Input) -> f64 {
    let (speed, torque) = (input.speed.value(), input.torque.value());
    let sense = if speed == 0.0 { torque } else { speed };
    if sense == 0.0 { 0.0 } else { sense.signum() }
}

fn is_one_way(kind: ElementKind) -> bool {
    matches!(kind, ElementKind::OneWay(_))
}
