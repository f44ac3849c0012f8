//! Two planetary sets on one sun gear: reactions, drum speeds, who carries what.
//!
//! Ratios are input turns per output turn; the reverse ratio is given as a
//! positive size. Torques leave converter multiplication to the caller.
//! Source: derived, from the balance of speeds and torques.

use crate::quantity::{One, PoundFoot, Quantity, Rpm};

/// Reaction on the member held in a forward gear: (ratio − 1) × input torque.
///
/// In first this is on the rear one-way clutch (and the band, when it is on).
pub fn forward_reaction(ratio: Quantity<One>, input: Quantity<PoundFoot>) -> Quantity<PoundFoot> {
    input * (ratio.value() - 1.0)
}

/// Reaction on the rear band in reverse: (ratio + 1) × input torque.
pub fn reverse_reaction(reverse_ratio: Quantity<One>, input: Quantity<PoundFoot>) -> Quantity<PoundFoot> {
    input * (reverse_ratio.value() + 1.0)
}

/// Speed of the direct drum and the sun gear in a forward gear; negative runs backwards.
///
/// input × (second / gear − 1) / (second − 1). Second ratio above 1; `gear` is
/// the ratio engaged: the drum runs backwards in first, stands in second and
/// turns with the input in third.
pub fn direct_drum_speed(gear: Quantity<One>, second_ratio: Quantity<One>, input: Quantity<Rpm>) -> Quantity<Rpm> {
    let second = second_ratio.value();
    input * ((second / gear.value() - 1.0) / (second - 1.0))
}

/// Share of input torque through the direct clutch in third: (second − 1) / second.
///
/// The forward clutch carries the rest.
pub fn direct_share_in_third(second_ratio: Quantity<One>) -> Quantity<One> {
    Quantity::new((second_ratio.value() - 1.0) / second_ratio.value())
}

/// Share of turbine torque through the direct clutch on the trans brake: first / (first + reverse).
///
/// With nothing pushing at the wheels. The forward clutch carries the rest, and
/// the rear band holds all of the turbine torque, in the sense of reverse.
pub fn direct_share_on_brake(first_ratio: Quantity<One>, reverse_ratio: Quantity<One>) -> Quantity<One> {
    Quantity::new(first_ratio.value() / (first_ratio.value() + reverse_ratio.value()))
}

/// First ratio that the other two make certain: second + (second − 1) × reverse.
///
/// Holds for every pair of sets on one sun gear, equal or not.
pub fn first_from_others(second_ratio: Quantity<One>, reverse_ratio: Quantity<One>) -> Quantity<One> {
    Quantity::new(second_ratio.value() + (second_ratio.value() - 1.0) * reverse_ratio.value())
}

/// How far a written first ratio is from what second and reverse make it; a
/// large difference is a slip of the pen, or another kind of gear set.
///
/// Ratios written to two decimals stay within about 0.02.
pub fn first_disagreement(
    first_ratio: Quantity<One>,
    second_ratio: Quantity<One>,
    reverse_ratio: Quantity<One>,
) -> Quantity<One> {
    (first_ratio - first_from_others(second_ratio, reverse_ratio)).abs()
}
