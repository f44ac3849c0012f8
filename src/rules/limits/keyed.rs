//! Limits of which the job itself chooses one: by its use, its one-way clutch, its driveshaft.

use super::{LimitId, Limits};
use crate::calc::driveshaft::TubeConstant;
use crate::job::{Job, OneWayKind, TubeMaterial, UseKind};
use crate::quantity::{One, PoundFoot, Quantity};
use crate::rules::parts;

impl Limits {
    /// How much harder than steady torque this use hits the parts.
    pub fn shock(&self, usage: UseKind) -> Quantity<One> {
        Quantity::new(self.get(shock_of(usage)))
    }

    /// What the shop lets this intermediate one-way clutch carry.
    pub fn one_way(&self, kind: OneWayKind, elements: u32) -> Quantity<PoundFoot> {
        Quantity::new(self.get(one_way_of(kind, elements)))
    }

    /// The whip constant of a driveshaft tube of this metal.
    pub fn tube(&self, material: TubeMaterial) -> TubeConstant {
        TubeConstant(self.get(tube_of(material)))
    }
}

impl LimitId {
    /// Did this job's sums use this limit, of those that only some jobs use?
    pub(in crate::rules) fn chosen_by(self, job: &Job) -> bool {
        match self {
            Self::shock_street
            | Self::shock_street_strip
            | Self::shock_drag
            | Self::shock_tow
            | Self::shock_offroad
            | Self::shock_pull => job.usage.kind.value().is_some_and(|usage| shock_of(*usage) == self),
            Self::one_way_roller | Self::one_way_sprag | Self::one_way_34 | Self::one_way_36 => {
                match (job.one_way.kind.value(), job.one_way.elements.value()) {
                    (Some(kind), Some(elements)) => one_way_of(*kind, *elements) == self,
                    _ => false,
                }
            }
            Self::tube_steel | Self::tube_aluminum => {
                job.driveshaft.material.value().is_some_and(|material| tube_of(*material) == self)
            }
            _ => true,
        }
    }
}

fn shock_of(usage: UseKind) -> LimitId {
    match usage {
        UseKind::Street => LimitId::shock_street,
        UseKind::StreetStrip => LimitId::shock_street_strip,
        UseKind::Drag => LimitId::shock_drag,
        UseKind::Tow => LimitId::shock_tow,
        UseKind::Offroad => LimitId::shock_offroad,
        UseKind::Pull => LimitId::shock_pull,
    }
}

fn one_way_of(kind: OneWayKind, elements: u32) -> LimitId {
    match (kind, elements) {
        (OneWayKind::Roller, _) => LimitId::one_way_roller,
        (OneWayKind::Sprag, parts::SPRAG_34) => LimitId::one_way_34,
        (OneWayKind::Sprag, parts::SPRAG_LARGE_HUB) => LimitId::one_way_36,
        (OneWayKind::Sprag, _) => LimitId::one_way_sprag,
    }
}

fn tube_of(material: TubeMaterial) -> LimitId {
    match material {
        TubeMaterial::Steel => LimitId::tube_steel,
        TubeMaterial::Aluminum => LimitId::tube_aluminum,
    }
}
