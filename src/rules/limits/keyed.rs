//! Limits of which the job itself chooses one: by its use, its one-way clutch, its driveshaft.

use super::{LimitId, Limits};
use crate::calc::driveshaft::TubeConstant;
use crate::job::{Job, OneWayKind, TubeMaterial, UseKind};
use crate::quantity::{One, PoundFoot, Quantity};
use crate::rules::parts;

impl Limits {
    /// How much harder than steady torque this use hits the parts.
    pub fn shock(&self, usage: UseKind) -> Quantity<One> {
        Quantity::new(self.get(LimitId::of_use(usage)))
    }

    /// What the shop lets this intermediate one-way clutch carry.
    pub fn one_way(&self, kind: OneWayKind, elements: u32) -> Quantity<PoundFoot> {
        Quantity::new(self.get(LimitId::of_one_way(kind, elements)))
    }

    /// The whip constant of a driveshaft tube of this metal.
    pub fn tube(&self, material: TubeMaterial) -> TubeConstant {
        TubeConstant(self.get(LimitId::of_tube(material)))
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
            | Self::shock_pull => job.usage.kind.value().is_some_and(|usage| Self::of_use(*usage) == self),
            Self::one_way_roller | Self::one_way_sprag | Self::one_way_34 | Self::one_way_36 => {
                match (job.one_way.kind.value(), job.one_way.elements.value()) {
                    (Some(kind), Some(elements)) => Self::of_one_way(*kind, *elements) == self,
                    _ => false,
                }
            }
            Self::tube_steel | Self::tube_aluminum => {
                job.driveshaft.material.value().is_some_and(|material| Self::of_tube(*material) == self)
            }
            _ => true,
        }
    }
}

impl LimitId {
    /// Which shock factor goes with this use.
    pub const fn of_use(usage: UseKind) -> Self {
        match usage {
            UseKind::Street => Self::shock_street,
            UseKind::StreetStrip => Self::shock_street_strip,
            UseKind::Drag => Self::shock_drag,
            UseKind::Tow => Self::shock_tow,
            UseKind::Offroad => Self::shock_offroad,
            UseKind::Pull => Self::shock_pull,
        }
    }

    /// Which limit this intermediate one-way clutch has.
    pub const fn of_one_way(kind: OneWayKind, elements: u32) -> Self {
        match (kind, elements) {
            (OneWayKind::Roller, _) => Self::one_way_roller,
            (OneWayKind::Sprag, parts::SPRAG_34) => Self::one_way_34,
            (OneWayKind::Sprag, parts::SPRAG_LARGE_HUB) => Self::one_way_36,
            (OneWayKind::Sprag, _) => Self::one_way_sprag,
        }
    }

    /// Which whip constant a driveshaft tube of this metal has.
    pub const fn of_tube(material: TubeMaterial) -> Self {
        match material {
            TubeMaterial::Steel => Self::tube_steel,
            TubeMaterial::Aluminum => Self::tube_aluminum,
        }
    }
}
