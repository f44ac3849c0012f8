//! Speeds and torques of a train for one choice of which elements hold, for one turn and one unit of torque in.
//!
//! Every set and every holding element is one equation between speeds, and puts
//! torques in the proportion of its factors on the same shafts; that one
//! equation serves both balances is the principle of virtual work.

use super::elimination::{Equations, ROUNDING, Solved};
use super::train::{MOST_JOINTS, MOST_SHAFTS, Train};

/// Which joints take part: a bit for each set and then for each element.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Engaged(pub(super) u32);

impl Engaged {
    pub(super) fn has(self, joint: usize) -> bool {
        self.0 >> joint & 1 == 1
    }

    pub(super) fn joints(self) -> impl Iterator<Item = usize> {
        (0..MOST_JOINTS).filter(move |joint| self.has(*joint))
    }
}

/// How the shafts move.
pub(super) struct Motion {
    /// Turns of each shaft for one of the input, where settled; noughts if the input cannot turn.
    pub(super) speeds: [Option<f64>; MOST_SHAFTS],
    /// Whether the input can turn.
    pub(super) turns: bool,
    /// How many speeds are open once the input's is given.
    pub(super) freedoms: usize,
}

impl Motion {
    pub(super) fn of(train: &Train, engaged: Engaged, equations: &mut Equations) -> Self {
        let held = engaged.0.count_ones() as usize;
        equations.start(held + 1, train.shafts.len());
        for (row, joint) in engaged.joints().enumerate() {
            let row = equations.row(row);
            for term in train.joints[joint].terms {
                if let Some(shaft) = term.shaft {
                    row[shaft] += term.factor;
                }
            }
        }
        let input = equations.row(held);
        input[train.input] = 1.0;
        input[train.shafts.len()] = 1.0;
        let solved = equations.solve();
        let mut speeds = [None; MOST_SHAFTS];
        for (shaft, speed) in speeds.iter_mut().enumerate().take(train.shafts.len()) {
            *speed = solved.settled(shaft).map(|speed| if solved.consistent { speed } else { 0.0 });
        }
        Self { speeds, turns: solved.consistent, freedoms: solved.open().count() }
    }

    /// Speed of an element's shaft against what it is tied to, for one turn of the input.
    pub(super) fn slip(&self, train: &Train, joint: usize) -> Option<f64> {
        let [shaft, to, _] = train.joints[joint].terms;
        let speed = |shaft: Option<usize>| shaft.map_or(Some(0.0), |shaft| self.speeds[shaft]);
        Some(speed(shaft.shaft)? - speed(to.shaft)?)
    }
}

/// What a joint carries, in units of the torque that comes in.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Share {
    Carries(f64),
    UpTo(f64),
    Unknown,
}

/// How the torque goes through.
pub(super) struct Torques {
    /// What each joint puts on the first of its shafts.
    pub(super) shares: [Share; MOST_JOINTS],
    /// Torque on the output shaft from outside.
    pub(super) output: f64,
    /// Joints that hold something twice over, group by group.
    pub(super) groups: Vec<Engaged>,
}

impl Torques {
    /// The torques if this choice carries them with every locked one-way clutch loaded the way it holds.
    ///
    /// `input` is the torque that comes in, 1 or -1.
    pub(super) fn of(
        train: &Train,
        engaged: Engaged,
        motion: &Motion,
        input: f64,
        equations: &mut Equations,
    ) -> Option<Self> {
        let mut room = [0; MOST_JOINTS];
        let mut count = 0;
        for joint in engaged.joints() {
            room[count] = joint;
            count += 1;
        }
        let joints = &room[..count];
        let unknowns = count + usize::from(motion.turns);
        equations.start(train.shafts.len(), unknowns);
        for (unknown, joint) in joints.iter().enumerate() {
            for term in train.joints[*joint].terms {
                if let Some(shaft) = term.shaft {
                    equations.row(shaft)[unknown] += term.factor;
                }
            }
        }
        if motion.turns {
            equations.row(train.output)[joints.len()] = 1.0;
        }
        equations.row(train.input)[unknowns] = -input;
        let solved = equations.solve();
        if !solved.consistent {
            return None;
        }
        let mut torques = Self {
            shares: [Share::Carries(0.0); MOST_JOINTS],
            output: if motion.turns { solved.basic(joints.len()) } else { 0.0 },
            groups: Vec::new(),
        };
        for (unknown, joint) in joints.iter().enumerate() {
            torques.shares[*joint] = solved.settled(unknown).map_or(Share::Unknown, Share::Carries);
        }
        torques.share_out(train, joints, &solved)?;
        let held = joints.iter().all(|joint| match (train.joints[*joint].sense, torques.shares[*joint]) {
            (Some(sense), Share::Carries(load) | Share::UpTo(load)) => load * sense > ROUNDING,
            _ => true,
        });
        held.then_some(torques)
    }

    /// Finds who shares with whom; `None` if a one-way clutch would have to pull the way it cannot.
    fn share_out(&mut self, train: &Train, joints: &[usize], solved: &Solved) -> Option<()> {
        // What leans on each open unknown, and whether what leans on another touches it.
        let mut groups: Vec<(Engaged, Option<usize>)> = Vec::new();
        for open in solved.open() {
            let leans = (0..joints.len()).filter(|unknown| solved.growth(*unknown, open).abs() > ROUNDING);
            let mut joined = (Engaged(leans.fold(0, |bits, unknown| bits | 1 << joints[unknown])), Some(open));
            groups.retain(|(other, _)| {
                let apart = other.0 & joined.0.0 == 0;
                if !apart {
                    joined = (Engaged(joined.0.0 | other.0), None);
                }
                apart
            });
            groups.push(joined);
        }
        for (group, open) in &groups {
            // Twice over in more than one way stays unknown.
            if let Some(open) = open {
                let members: Vec<usize> = (0..joints.len()).filter(|unknown| group.has(joints[*unknown])).collect();
                self.share_one(train, joints, solved, *open, &members)?;
            }
        }
        self.groups = groups.into_iter().map(|(group, _)| group).collect();
        Some(())
    }

    /// One group: what each carries when one after the other of the elements in it carries nothing.
    fn share_one(
        &mut self,
        train: &Train,
        joints: &[usize],
        solved: &Solved,
        open: usize,
        group: &[usize],
    ) -> Option<()> {
        let load = |unknown: usize, extra: f64| solved.basic(unknown) + extra * solved.growth(unknown, open);
        let possible = |extra: &f64| {
            group.iter().all(|unknown| {
                train.joints[joints[*unknown]].sense.is_none_or(|sense| load(*unknown, *extra) * sense >= -ROUNDING)
            })
        };
        let elements = group.iter().filter(|unknown| joints[**unknown] >= train.sets.len());
        let mut extras = elements.clone().map(|unknown| -solved.basic(*unknown) / solved.growth(*unknown, open));
        let extras: Vec<f64> = extras.by_ref().filter(possible).collect();
        if extras.is_empty() && elements.count() > 0 {
            return None;
        }
        for unknown in group {
            let loads = || extras.iter().map(|extra| load(*unknown, *extra));
            let Some(most) = loads().max_by(|a, b| a.abs().total_cmp(&b.abs())) else { continue };
            let same = loads().all(|load| (load - most).abs() < ROUNDING);
            self.shares[joints[*unknown]] = if same { Share::Carries(most) } else { Share::UpTo(most) };
        }
        Some(())
    }
}
