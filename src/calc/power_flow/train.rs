//! What a gear train is made of, described by the names of its shafts.

use crate::quantity::{One, Quantity};

/// The case: what never turns. A member fixed for good, a band and a brake name it as their shaft.
pub const CASE: &str = "case";

/// How many shafts a train may have, the case not counted.
pub const MOST_SHAFTS: usize = 16;

/// How many planetary sets and holding elements a train may have together.
pub const MOST_JOINTS: usize = 22;

/// How many one-way clutches a train may have.
pub const MOST_ONE_WAYS: usize = 6;

/// A sun gear, a ring gear and the carrier of the pinions between them, each by the shaft it is on.
///
/// Two sets that share a long pinion are two of these with carrier and ring in
/// common: one of single pinions, one of pairs.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PlanetarySet {
    /// What the set is called.
    pub name: &'static str,
    /// Single pinions or meshing pairs.
    pub pinions: Pinions,
    /// Ring teeth / sun teeth, above nought; for stepped pinions × sun-side teeth / ring-side teeth of the pinion.
    pub ratio: Quantity<One>,
    /// Shaft of the sun gear.
    pub sun: &'static str,
    /// Shaft of the ring gear.
    pub ring: &'static str,
    /// Shaft of the carrier.
    pub carrier: &'static str,
}

/// What stands between sun and ring.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Pinions {
    /// One pinion: with the carrier held, sun and ring turn against each other.
    Single,
    /// Two that mesh: with the carrier held, sun and ring turn the same way.
    Pair,
}

/// A part that can tie a shaft to another or to the case.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Element {
    /// What it is called.
    pub name: &'static str,
    /// What kind of part it is.
    pub kind: ElementKind,
    /// The shaft it holds or drives.
    pub shaft: &'static str,
    /// What it ties that shaft to: another shaft, or the [`CASE`].
    pub to: &'static str,
}

/// The kinds of holding element.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum ElementKind {
    /// Plates between two turning shafts.
    Clutch,
    /// Plates between a shaft and the case.
    Brake,
    /// A band around a drum.
    Band,
    /// Rollers or sprags, which hold one way by themselves.
    OneWay(Holds),
}

/// What a one-way clutch does not let its shaft do, seen from the shaft or case it is tied to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Holds {
    /// Turn backwards: against the sense of the input.
    Backward,
    /// Turn forwards.
    Forward,
}

/// A range: which elements the valve body applies. One-way clutches apply themselves.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Range {
    /// What the range is called.
    pub name: &'static str,
    /// The names of the elements applied.
    pub applied: &'static [&'static str],
}

/// Why a description is no gear train, or a range none of its ranges.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
#[allow(missing_docs, reason = "the messages say it")]
pub enum Fault {
    #[error("{0}: the ratio of ring to sun must be above 0, and other than 1 with pairs of pinions")]
    Ratio(&'static str),
    #[error("{0}: sun, ring and carrier must be on three shafts, or two and the case")]
    SameShaft(&'static str),
    #[error("{0}: a band or a brake ties a shaft to the case, a clutch ties two shafts")]
    WrongEnd(&'static str),
    #[error("the shaft \"{0}\" is named only once, so nothing reaches it")]
    LooseShaft(&'static str),
    #[error("input and output must be two shafts, and neither is the case")]
    Ends,
    #[error("two parts are called \"{0}\"")]
    SameName(&'static str),
    #[error("at most {MOST_SHAFTS} shafts, {MOST_JOINTS} sets and elements, {MOST_ONE_WAYS} one-way clutches")]
    TooLarge,
    #[error("no clutch, brake or band is called \"{0}\"; one-way clutches apply themselves")]
    NotApplied(&'static str),
}

/// A gear train that holds together: what [`Train::new`] found no fault in.
#[derive(Clone, Debug)]
pub struct Train {
    pub(super) sets: Vec<PlanetarySet>,
    pub(super) elements: Vec<Element>,
    /// Every shaft but the case, in the order they were named.
    pub(super) shafts: Vec<&'static str>,
    pub(super) input: usize,
    pub(super) output: usize,
    /// Each set, then each element.
    pub(super) joints: Vec<Joint>,
}

/// What ties shafts together: the equation between their speeds.
#[derive(Clone, Copy, Debug)]
pub(super) struct Joint {
    pub(super) terms: [Term; 3],
    /// 1 or -1 for a one-way clutch: the sense of the torque it can put on its shaft, and of the slip it allows.
    pub(super) sense: Option<f64>,
}

/// A factor on the speed of one shaft; the case, whose speed is nought, is no shaft.
#[derive(Clone, Copy, Debug)]
pub(super) struct Term {
    pub(super) shaft: Option<usize>,
    pub(super) factor: f64,
}

impl Train {
    /// Reads a description, and refuses one that cannot be a gear train.
    pub fn new(
        sets: &[PlanetarySet],
        elements: &[Element],
        input: &'static str,
        output: &'static str,
    ) -> Result<Self, Fault> {
        sets.iter().try_for_each(sound_set)?;
        elements.iter().try_for_each(sound_element)?;
        if input == output || input == CASE || output == CASE {
            return Err(Fault::Ends);
        }
        let one_ways = elements.iter().filter(|element| matches!(element.kind, ElementKind::OneWay(_))).count();
        if sets.len() + elements.len() > MOST_JOINTS || one_ways > MOST_ONE_WAYS {
            return Err(Fault::TooLarge);
        }
        let names = || sets.iter().map(|set| set.name).chain(elements.iter().map(|element| element.name));
        if let Some(twice) = named_more_than_once(names) {
            return Err(Fault::SameName(twice));
        }
        let mentions = || {
            let by_sets = sets.iter().flat_map(|set| [set.sun, set.ring, set.carrier]);
            let by_elements = elements.iter().flat_map(|element| [element.shaft, element.to]);
            [input, output].into_iter().chain(by_sets).chain(by_elements).filter(|shaft| *shaft != CASE)
        };
        let mut shafts: Vec<&'static str> = Vec::new();
        for shaft in mentions() {
            if mentions().filter(|other| *other == shaft).count() < 2 {
                return Err(Fault::LooseShaft(shaft));
            }
            if !shafts.contains(&shaft) {
                shafts.push(shaft);
            }
        }
        if shafts.len() > MOST_SHAFTS {
            return Err(Fault::TooLarge);
        }
        let term = |shaft: &str, factor| Term { shaft: shafts.iter().position(|name| *name == shaft), factor };
        let of_set = |set: &PlanetarySet| {
            let ring = signed_ratio(set);
            let terms = [term(set.sun, 1.0), term(set.ring, ring), term(set.carrier, -1.0 - ring)];
            Joint { terms, sense: None }
        };
        let of_element = |element: &Element| Joint {
            terms: [term(element.shaft, 1.0), term(element.to, -1.0), term(CASE, 0.0)],
            sense: match element.kind {
                ElementKind::OneWay(Holds::Backward) => Some(1.0),
                ElementKind::OneWay(Holds::Forward) => Some(-1.0),
                ElementKind::Clutch | ElementKind::Brake | ElementKind::Band => None,
            },
        };
        let joints = sets.iter().map(of_set).chain(elements.iter().map(of_element)).collect();
        // The ends are mentioned first, so they are shafts 0 and 1.
        Ok(Self { sets: sets.to_vec(), elements: elements.to_vec(), shafts, input: 0, output: 1, joints })
    }

    /// The planetary sets, as described.
    pub fn sets(&self) -> &[PlanetarySet] {
        &self.sets
    }

    /// The holding elements, as described.
    pub fn elements(&self) -> &[Element] {
        &self.elements
    }

    /// The shafts, input and output first; the case is none of them.
    pub fn shafts(&self) -> &[&'static str] {
        &self.shafts
    }
}

/// Willis: sun + ratio × ring = (1 + ratio) × carrier, with the ratio below nought for pairs of pinions.
fn signed_ratio(set: &PlanetarySet) -> f64 {
    match set.pinions {
        Pinions::Single => set.ratio.value(),
        Pinions::Pair => -set.ratio.value(),
    }
}

fn sound_set(set: &PlanetarySet) -> Result<(), Fault> {
    let ratio = set.ratio.value();
    let of_no_use = set.pinions == Pinions::Pair && ratio == 1.0;
    if !(ratio > 0.0 && ratio.is_finite()) || of_no_use {
        return Err(Fault::Ratio(set.name));
    }
    let same = set.sun == set.ring || set.ring == set.carrier || set.carrier == set.sun;
    if same { Err(Fault::SameShaft(set.name)) } else { Ok(()) }
}

fn sound_element(element: &Element) -> Result<(), Fault> {
    let to_case = element.to == CASE;
    let right = match element.kind {
        ElementKind::Clutch => !to_case,
        ElementKind::Brake | ElementKind::Band => to_case,
        ElementKind::OneWay(_) => true,
    };
    let ends = element.shaft != CASE && element.shaft != element.to;
    if right && ends { Ok(()) } else { Err(Fault::WrongEnd(element.name)) }
}

fn named_more_than_once<I: Iterator<Item = &'static str>>(names: impl Fn() -> I) -> Option<&'static str> {
    names().find(|name| names().filter(|other| other == name).count() > 1)
}
