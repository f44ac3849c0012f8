//! What every holding element of a build must hold, range by range, and what is left of its capacity.
//!
//! The share of input torque comes from the [power flow](super::power_flow);
//! what comes in is engine torque times what the converter makes of it, and a
//! one-way clutch takes the jolt of the shift on top: a plate clutch or a band
//! slips first, rollers and sprags cannot.

use super::power_flow::three_speed::{self, Fitted, Trains};
use super::power_flow::{ElementKind, ElementState, Fault, Flow, Input, Load, Range, Train};
use crate::quantity::{One, PoundFoot, Quantity, Rpm};

/// What engine, converter and use put into a gear train.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Demand {
    /// Torque of the engine, above nought.
    pub engine_torque: Quantity<PoundFoot>,
    /// Speed at which the pictures show the ranges.
    pub input_speed: Quantity<Rpm>,
    /// What the converter still multiplies by once the vehicle rolls (shop setting).
    pub coupling: Quantity<One>,
    /// The jolt of a shift on a one-way clutch (shop setting, by use).
    pub shock: Quantity<One>,
    /// What the converter multiplies by at stall; unknown until someone knows it.
    pub stall_ratio: Option<Quantity<One>>,
}

/// When a range loads its elements most.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Moment {
    /// From rest against a stalled converter: engine torque × stall ratio.
    Standing,
    /// As the range takes hold on the move: × coupling, and × shock on a one-way clutch.
    Shifting,
    /// On the move, taken hold: × coupling.
    Rolling,
    /// Backing up: bare engine torque. Nobody launches in reverse, and its pressure is raised (common practice).
    Backing,
}

/// One range and when it loads its elements most.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Duty {
    /// The range.
    pub range: Range,
    /// When it loads most.
    pub moment: Moment,
}

/// One range of a build: its power flow, and what each element must hold in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Holding {
    /// When the range loads most.
    pub moment: Moment,
    /// The power flow at bare engine torque, before the converter multiplies it.
    pub flow: Flow,
    /// Every element that carries something, in the train's order.
    pub loads: Vec<HeldLoad>,
}

/// What one element must hold in one range.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HeldLoad {
    /// Name of the element.
    pub element: &'static str,
    /// What kind of part it is.
    pub kind: ElementKind,
    /// Its part of the input torque, without sign; the sun of a reduction can carry more than all of it.
    pub share: Option<Quantity<One>>,
    /// Whether another helps it hold; it must be able to do so alone.
    pub helped: bool,
    /// What the converter multiplies by; `None` while the stall ratio is unknown.
    pub multiplied: Option<Quantity<One>>,
    /// What the jolt multiplies by; 1 without one.
    pub jolt: Quantity<One>,
    /// Torque it must hold: engine torque × share × multiplied × jolt.
    pub load: Option<Quantity<PoundFoot>>,
}

/// The most an element must hold over all ranges but reverse.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Need {
    /// No range loads it.
    Nothing,
    /// This, in this range.
    Torque {
        /// The range that asks most.
        range: &'static str,
        /// Torque it must hold there.
        load: Quantity<PoundFoot>,
    },
    /// This range loads it by what is not known yet.
    Unknown {
        /// The range.
        range: &'static str,
    },
}

/// The duties of the three-speed family, the trans brake only where one is fitted.
///
/// First starts a vehicle from rest; second takes hold under the jolt of the
/// shift; third shares its load between two clutches that slip together.
/// Source: shop handbook, sums 7 to 11.
pub fn three_speed_duties(fitted: Fitted, trans_brake: bool) -> Vec<Duty> {
    use Moment::{Backing, Rolling, Shifting, Standing};
    let duties = [
        (three_speed::FIRST, Standing, true),
        (three_speed::FIRST_HELD, Standing, true),
        (three_speed::SECOND, Shifting, true),
        (three_speed::SECOND_HELD, Shifting, fitted.front_band),
        (three_speed::THIRD, Rolling, true),
        (three_speed::REVERSE, Backing, true),
        (three_speed::BRAKE, Standing, trans_brake),
    ];
    duties.into_iter().filter(|(.., wanted)| *wanted).map(|(range, moment, _)| Duty { range, moment }).collect()
}

/// Works out every duty, each on the train of its range.
pub fn holding(trains: &Trains, demand: &Demand, duties: &[Duty]) -> Result<Vec<Holding>, Fault> {
    duties.iter().map(|duty| one(trains.of(&duty.range), demand, duty)).collect()
}

fn one(train: &Train, demand: &Demand, duty: &Duty) -> Result<Holding, Fault> {
    let flow = train.flow(&duty.range, Input { speed: demand.input_speed, torque: demand.engine_torque })?;
    let multiplied = match duty.moment {
        Moment::Standing => demand.stall_ratio,
        Moment::Shifting | Moment::Rolling => Some(demand.coupling),
        Moment::Backing => Some(Quantity::new(1.0)),
    };
    let loads = flow.elements.iter().filter_map(|element| {
        let bare = match element.load {
            Load::Unknown => None,
            Load::Carries(torque) | Load::UpTo(torque) => Some(torque.abs()),
        };
        if bare.is_some_and(|bare| bare.value() == 0.0) || element.state == ElementState::Open {
            return None;
        }
        let jolted = duty.moment == Moment::Shifting && matches!(element.kind, ElementKind::OneWay(_));
        let jolt = if jolted { demand.shock } else { Quantity::new(1.0) };
        Some(HeldLoad {
            element: element.name,
            kind: element.kind,
            share: bare.map(|bare| Quantity::new(bare / demand.engine_torque.abs())),
            helped: !matches!(element.load, Load::Carries(_)),
            multiplied,
            jolt,
            load: bare.zip(multiplied).map(|(bare, times)| bare * (times.value() * jolt.value())),
        })
    });
    Ok(Holding { moment: duty.moment, loads: loads.collect(), flow })
}

/// The most an element must hold going forward or on the brake; one unknown load leaves all of it unknown.
///
/// Backing up is left out, as in the handbook's need of the direct clutch: in
/// reverse it is fed at raised pressure, often on more area, so that load is to be
/// held against another capacity ([`Holding::loads`] has it).
pub fn need(holdings: &[Holding], element: &str) -> Need {
    let mut most = Need::Nothing;
    for holding in holdings.iter().filter(|holding| holding.moment != Moment::Backing) {
        let range = holding.flow.range;
        for held in holding.loads.iter().filter(|held| held.element == element) {
            let Some(load) = held.load else { return Need::Unknown { range } };
            let more = match most {
                Need::Torque { load: so_far, .. } => load > so_far,
                Need::Nothing | Need::Unknown { .. } => true,
            };
            if more {
                most = Need::Torque { range, load };
            }
        }
    }
    most
}

/// How many times over an element could hold what it must: capacity / load. Load above nought.
pub fn margin(capacity: Quantity<PoundFoot>, load: Quantity<PoundFoot>) -> Quantity<One> {
    Quantity::new(capacity / load)
}

#[cfg(test)]
mod tests;
