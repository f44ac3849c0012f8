//! Torque converter: stall at another torque, heat on the brake, pilot and spacer.

use crate::quantity::{Celsius, Inch, Kilogram, Kilowatt, One, PoundFoot, Quantity, Rpm, Second};

/// lb-ft × rpm in one kilowatt (33,000 / 2π ft-lb/min a horsepower, 0.7457 kW each).
pub const POUND_FOOT_RPM_IN_KILOWATT: f64 = 7043.0;

/// Heat of transmission fluid, kJ a kilogram and degree (memory, high; near the figure for unused engine oil).
pub const FLUID_HEAT: f64 = 2.0;

/// Heat of the steel around it, kJ a kilogram and degree (physics).
pub const METAL_HEAT: f64 = 0.46;

/// Pull-forward gap aimed for at the pads, 5/32 in (common practice: 1/8 to 3/16).
pub const GAP_AIMED: Quantity<Inch> = Quantity::new(0.15625);

/// Stall speed behind another torque: stall × √(here / rated).
///
/// Holds while the capacity factor (rpm a root lb-ft) stays constant; use the
/// engine's torque near stall, not its peak. Positive torques.
pub fn stall_at(stall: Quantity<Rpm>, here: Quantity<PoundFoot>, rated: Quantity<PoundFoot>) -> Quantity<Rpm> {
    Quantity::new(stall.value() * (here.value() / rated.value()).sqrt())
}

/// Capacity factor at stall: rpm a root lb-ft.
pub fn capacity_factor(stall: Quantity<Rpm>, torque: Quantity<PoundFoot>) -> f64 {
    stall.value() / torque.value().sqrt()
}

/// Engine power turned to heat while the brake holds: torque × stall rpm / 7,043.
///
/// All of it, since nothing moves behind the converter. Source: energy balance.
pub fn brake_power(torque: Quantity<PoundFoot>, stall: Quantity<Rpm>) -> Quantity<Kilowatt> {
    Quantity::new(torque.value() * stall.value() / POUND_FOOT_RPM_IN_KILOWATT)
}

/// Degrees the converter warms while held: kW × s / (2.0 × kg fluid + 0.46 × kg metal).
///
/// Takes no heat away by the cooler, so it is the worst case. Source: energy balance.
pub fn temperature_rise(
    power: Quantity<Kilowatt>,
    held: Quantity<Second>,
    fluid: Quantity<Kilogram>,
    metal: Quantity<Kilogram>,
) -> Quantity<Celsius> {
    Quantity::new(power.value() * held.value() / (FLUID_HEAT * fluid.value() + METAL_HEAT * metal.value()))
}

/// Torque at the turbine at stall: engine torque × the converter's torque ratio.
pub fn turbine_torque(engine: Quantity<PoundFoot>, stall_ratio: Quantity<One>) -> Quantity<PoundFoot> {
    Quantity::new(engine.value() * stall_ratio.value())
}

/// Spacer for every pad: gap − 5/32 in; nothing (zero) when the gap is already that small.
pub fn spacer(gap: Quantity<Inch>) -> Quantity<Inch> {
    let needed = gap - GAP_AIMED;
    if needed.value() > 0.0 { needed } else { Quantity::new(0.0) }
}

/// Pilot left inside the crank: pilot − spacer − recess. Wants 1/8 in or more (looked up).
///
/// Negative means the pilot does not reach the crank at all.
pub fn pilot_engaged(pilot: Quantity<Inch>, spacer: Quantity<Inch>, recess: Quantity<Inch>) -> Quantity<Inch> {
    pilot - spacer - recess
}
