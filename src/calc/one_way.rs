//! What the intermediate one-way clutch must hold in second gear.

use crate::quantity::{One, PoundFoot, Quantity};

/// Share by which the converter still multiplies torque when second gear takes hold.
///
/// Shop setting (memory, low).
pub const COUPLING_IN_SECOND: Quantity<One> = Quantity::new(1.10);

/// Torque on the outer race in second: (second ratio − 1) × torque × coupling × shock.
///
/// The bare (ratio − 1) is derived: it is the reaction on a held sun gear.
/// Coupling and shock are shop settings. Ratio above 1, torque at the flywheel.
pub fn second_gear_load(
    second_ratio: Quantity<One>,
    engine_torque: Quantity<PoundFoot>,
    coupling: Quantity<One>,
    shock: Quantity<One>,
) -> Quantity<PoundFoot> {
    Quantity::new((second_ratio.value() - 1.0) * engine_torque.value() * coupling.value() * shock.value())
}

/// Load as a share of what the shop lets this clutch carry; above 1 it is too much.
pub fn load_share(load: Quantity<PoundFoot>, limit: Quantity<PoundFoot>) -> Quantity<One> {
    Quantity::new(load / limit)
}
