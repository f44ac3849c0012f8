//! The three-speed family with two planetary sets on one sun gear, as data.

use super::train::{CASE, Element, ElementKind, Fault, Holds, Pinions, PlanetarySet, Range, Train};
use crate::calc::gear_set::first_disagreement;
use crate::quantity::{One, Quantity};

/// How far a first ratio may lie from what second and reverse make it before the three are no set of this family.
///
/// Ratios written to two decimals stay within 0.02 (derived).
pub const DISAGREEMENT: Quantity<One> = Quantity::new(0.03);

/// Names of the holding elements of this family.
pub mod name {
    #![allow(missing_docs, reason = "the names say it")]
    pub const FORWARD: &str = "forward clutch";
    pub const DIRECT: &str = "direct clutch";
    pub const INTERMEDIATE: &str = "intermediate clutch";
    pub const INTERMEDIATE_ONE_WAY: &str = "intermediate one-way clutch";
    pub const LOW_ONE_WAY: &str = "low one-way clutch";
    pub const FRONT_BAND: &str = "front band";
    pub const REAR_BAND: &str = "rear band";
    /// All of them, in the order in which they are listed.
    pub const ALL: [&str; 7] =
        [FORWARD, DIRECT, INTERMEDIATE, INTERMEDIATE_ONE_WAY, LOW_ONE_WAY, FRONT_BAND, REAR_BAND];
}

/// Names of its shafts.
pub mod shaft {
    #![allow(missing_docs, reason = "the names say it")]
    pub const INPUT: &str = "input";
    pub const OUTPUT: &str = "output";
    pub const FRONT_RING: &str = "front ring";
    /// The sun gear and the direct drum turn as one.
    pub const SUN: &str = "sun and direct drum";
    pub const REAR_CARRIER: &str = "rear carrier";
    /// Outer race of the intermediate one-way clutch, which the intermediate clutch holds.
    pub const RACE: &str = "intermediate race";
}

/// Names of its planetary sets.
pub mod set {
    #![allow(missing_docs, reason = "the names say it")]
    pub const FRONT: &str = "front set";
    pub const REAR: &str = "rear set";
}

/// What a build of this family can have and another not.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Fitted {
    /// The front band, which holds the sun for engine braking in second.
    pub front_band: bool,
    /// The intermediate clutch's one-way clutch; without it the clutch holds the drum itself.
    pub intermediate_one_way: bool,
}

impl Default for Fitted {
    /// With all of it.
    fn default() -> Self {
        Self { front_band: true, intermediate_one_way: true }
    }
}

/// First gear by the low one-way clutch: free when the vehicle pushes.
pub const FIRST: Range = Range { name: "first", applied: &[name::FORWARD] };
/// First gear with the rear band on: the engine brakes.
pub const FIRST_HELD: Range = Range { name: "first, held by the band", applied: &[name::FORWARD, name::REAR_BAND] };
/// Second gear.
pub const SECOND: Range = Range { name: "second", applied: &[name::FORWARD, name::INTERMEDIATE] };
/// Second gear with the front band on: the engine brakes.
pub const SECOND_HELD: Range =
    Range { name: "second, held by the band", applied: &[name::FORWARD, name::INTERMEDIATE, name::FRONT_BAND] };
/// Third gear; the intermediate clutch stays on and its one-way clutch turns freely.
pub const THIRD: Range = Range { name: "third", applied: &[name::FORWARD, name::DIRECT, name::INTERMEDIATE] };
/// Reverse.
pub const REVERSE: Range = Range { name: "reverse", applied: &[name::DIRECT, name::REAR_BAND] };
/// First and reverse at once: the trans brake.
pub const BRAKE: Range = Range { name: "trans brake", applied: &[name::FORWARD, name::DIRECT, name::REAR_BAND] };
/// Nothing applied.
pub const NEUTRAL: Range = Range { name: "neutral", applied: &[] };

/// A train of this family from the ratio of ring to sun of its two sets.
///
/// First is 1 + 1/front + rear/front, second 1 + 1/front, reverse −rear. Both ratios above nought.
pub fn train(front: Quantity<One>, rear: Quantity<One>, fitted: Fitted) -> Result<Train, Fault> {
    let planetary = |name, ratio, ring, carrier| PlanetarySet {
        name,
        pinions: Pinions::Single,
        ratio,
        sun: shaft::SUN,
        ring,
        carrier,
    };
    let sets = [
        planetary(set::FRONT, front, shaft::FRONT_RING, shaft::OUTPUT),
        planetary(set::REAR, rear, shaft::OUTPUT, shaft::REAR_CARRIER),
    ];
    let element = |name, kind, shaft, to| Element { name, kind, shaft, to };
    let backward = ElementKind::OneWay(Holds::Backward);
    let mut elements = vec![
        element(name::FORWARD, ElementKind::Clutch, shaft::FRONT_RING, shaft::INPUT),
        element(name::DIRECT, ElementKind::Clutch, shaft::SUN, shaft::INPUT),
    ];
    if fitted.intermediate_one_way {
        elements.push(element(name::INTERMEDIATE, ElementKind::Brake, shaft::RACE, CASE));
        elements.push(element(name::INTERMEDIATE_ONE_WAY, backward, shaft::SUN, shaft::RACE));
    } else {
        elements.push(element(name::INTERMEDIATE, ElementKind::Brake, shaft::SUN, CASE));
    }
    if fitted.front_band {
        elements.push(element(name::FRONT_BAND, ElementKind::Band, shaft::SUN, CASE));
    }
    elements.push(element(name::LOW_ONE_WAY, backward, shaft::REAR_CARRIER, CASE));
    elements.push(element(name::REAR_BAND, ElementKind::Band, shaft::REAR_CARRIER, CASE));
    Train::new(&sets, &elements, shaft::INPUT, shaft::OUTPUT)
}

/// The ratios of ring to sun, front and rear, that make this first and second gear.
///
/// front = 1 / (second − 1), rear = (first − second) / (second − 1). First and
/// second come out exact; reverse is what they make it. Second above 1, first
/// above second. Source: derived.
pub fn sets_from_ratios(first: Quantity<One>, second: Quantity<One>) -> (Quantity<One>, Quantity<One>) {
    let gain = second.value() - 1.0;
    (Quantity::new(1.0 / gain), Quantity::new((first - second).value() / gain))
}

/// The trains of one build of this family, one for each pair of its three written ratios.
///
/// A build has one train, and any two ratios make it. Written ones are rounded, so
/// each pair makes a train a hair apart from the others. Every range is worked with
/// the pair that decides what it asks of its elements, which is the pair of the
/// shop's sums and rules for it: its numbers are theirs to the last digit.
#[derive(Clone, Debug)]
pub struct Trains {
    forward: Train,
    backward: Train,
    brake: Train,
}

impl Trains {
    /// The trains of the three ratios on record, reverse as a positive size.
    ///
    /// `None` when the three do not belong to one set of this family (see
    /// [`DISAGREEMENT`]), or are no ratios of it at all.
    pub fn from_ratios(
        first: Quantity<One>,
        second: Quantity<One>,
        reverse: Quantity<One>,
        fitted: Fitted,
    ) -> Option<Self> {
        if first_disagreement(first, second, reverse) > DISAGREEMENT {
            return None;
        }
        let (front, rear) = sets_from_ratios(first, second);
        // What the brake is worked with: first = 1 + (1 + rear) / front, reverse = rear.
        let front_on_brake = Quantity::new((1.0 + reverse.value()) / (first.value() - 1.0));
        Some(Self {
            forward: train(front, rear, fitted).ok()?,
            backward: train(front, reverse, fitted).ok()?,
            brake: train(front_on_brake, reverse, fitted).ok()?,
        })
    }

    /// The train this range is worked with.
    pub fn of(&self, range: &Range) -> &Train {
        match Pair::of(range) {
            Pair::FirstAndSecond => &self.forward,
            Pair::SecondAndReverse => &self.backward,
            Pair::FirstAndReverse => &self.brake,
        }
    }
}

/// Two of the three written ratios.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pair {
    /// For the forward ranges.
    FirstAndSecond,
    /// For reverse.
    SecondAndReverse,
    /// For first and reverse at once: the trans brake.
    FirstAndReverse,
}

impl Pair {
    /// The two that decide what this range asks of its elements.
    pub fn of(range: &Range) -> Self {
        let applies = |element| range.applied.contains(&element);
        match (applies(name::DIRECT) && applies(name::REAR_BAND), applies(name::FORWARD)) {
            (false, _) => Self::FirstAndSecond,
            (true, false) => Self::SecondAndReverse,
            (true, true) => Self::FirstAndReverse,
        }
    }

    /// In words: `first and reverse`.
    pub const fn words(self) -> &'static str {
        match self {
            Self::FirstAndSecond => "first and second",
            Self::SecondAndReverse => "second and reverse",
            Self::FirstAndReverse => "first and reverse",
        }
    }
}
