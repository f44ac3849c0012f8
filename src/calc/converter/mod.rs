//! Torque converter: stall at another torque, heat on the brake, pilot and spacer.

pub mod heat;
pub mod stall;
pub mod table;
pub mod torque_curve;

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

/// How far a stall lies from the label's, as a share of the label: here / label − 1. Above nought it is higher.
pub fn off_the_label(here: Quantity<Rpm>, label: Quantity<Rpm>) -> Quantity<One> {
    Quantity::new(here / label - 1.0)
}

/// How loosely a converter couples, K: pump rpm a root lb-ft. A larger one stalls higher.
///
/// Source: SAE J643, capacity factor (looked up in a summary).
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct CapacityFactor(pub f64);

/// Newton metres in a pound-force foot.
const NEWTON_METRES_IN_POUND_FOOT: f64 = 1.355_817_948_331_4;

impl CapacityFactor {
    /// From a speed and the torque taken at it: rpm / √lb-ft.
    pub fn from_stall(stall: Quantity<Rpm>, torque: Quantity<PoundFoot>) -> Self {
        Self(stall.value() / torque.value().sqrt())
    }

    /// Torque the pump takes at a speed: (rpm / K)².
    ///
    /// At 1,000 rpm it is the reference torque T × (1,000 / n)² of EU Regulation 2017/2400, annex VI.
    pub fn torque_at(self, speed: Quantity<Rpm>) -> Quantity<PoundFoot> {
        let root = speed.value() / self.0;
        Quantity::new(root * root)
    }

    /// Speed at which the pump takes a torque: K √T.
    pub fn speed_at(self, torque: Quantity<PoundFoot>) -> Quantity<Rpm> {
        Quantity::new(self.0 * torque.value().sqrt())
    }

    /// The same factor as metric sheets print it, rpm a root N·m: K / √1.3558.
    pub fn metric(self) -> f64 {
        self.0 / NEWTON_METRES_IN_POUND_FOOT.sqrt()
    }

    /// From a metric sheet, rpm a root N·m.
    pub fn from_metric(factor: f64) -> Self {
        Self(factor * NEWTON_METRES_IN_POUND_FOOT.sqrt())
    }
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

/// Spacer for every pad: gap − what is aimed at, as supplied [`GAP_AIMED`]; nothing (zero) when the gap is already that small.
pub fn spacer(gap: Quantity<Inch>, aim: Quantity<Inch>) -> Quantity<Inch> {
    let needed = gap - aim;
    if needed.value() > 0.0 { needed } else { Quantity::new(0.0) }
}

/// Pilot left inside the crank: pilot − spacer − recess. Wants 1/8 in or more (looked up).
///
/// Negative means the pilot does not reach the crank at all.
pub fn pilot_engaged(pilot: Quantity<Inch>, spacer: Quantity<Inch>, recess: Quantity<Inch>) -> Quantity<Inch> {
    pilot - spacer - recess
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn stalls(stall: f64, here: f64, rated: f64) -> f64 {
        stall_at(Quantity::new(stall), Quantity::new(here), Quantity::new(rated)).value()
    }

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    #[test]
    fn the_kilowatt_constant_comes_from_the_units() {
        // One pound-force foot is 1.3558179483 N·m.
        let exact = 60_000.0 / (1.355_817_948_3 * std::f64::consts::TAU);
        assert!((POUND_FOOT_RPM_IN_KILOWATT / exact - 1.0).abs() < 1e-4, "{exact}");
    }

    #[test]
    fn a_gap_inside_the_aim_asks_for_no_spacer() {
        assert_eq!(spacer(inches(0.156), GAP_AIMED).value(), 0.0);
        assert_eq!(spacer(GAP_AIMED, GAP_AIMED).value(), 0.0);
        assert!(spacer(inches(0.157), GAP_AIMED).value() > 0.0);
        assert_eq!(spacer(inches(0.157), inches(0.157)).value(), 0.0, "a shop may aim at another gap");
    }

    #[test]
    fn a_pilot_that_does_not_reach_reads_below_nothing() {
        assert!(pilot_engaged(inches(0.30), inches(0.11), inches(0.20)).value() < 0.0);
        assert!(pilot_engaged(inches(0.30), inches(0.09), inches(0.20)).value() > 0.0);
    }

    proptest! {
        #[test]
        fn a_factor_gives_back_the_stall_it_came_from(rpm in 800.0..6000.0f64, torque in 50.0..1500.0f64) {
            let factor = CapacityFactor::from_stall(Quantity::new(rpm), Quantity::new(torque));
            prop_assert!(same(factor.speed_at(Quantity::new(torque)).value(), rpm));
            prop_assert!(same(factor.torque_at(Quantity::new(rpm)).value(), torque));
            // The same stall on a metric sheet: torque in N·m under the root.
            prop_assert!((factor.metric() * (torque * 1.355_817_948_331_4).sqrt() / rpm - 1.0).abs() < 1e-9);
            prop_assert!(same(CapacityFactor::from_metric(factor.metric()).0, factor.0));
        }

        #[test]
        fn the_factor_stays_when_the_torque_changes(stall in 1200.0..6000.0f64, here in 100.0..2000.0f64, rated in 100.0..2000.0f64) {
            let moved = stalls(stall, here, rated);
            // Squares instead of roots: (rpm²) / torque is the same before and after.
            prop_assert!(same(moved * moved / here, stall * stall / rated));
            prop_assert!((moved > stall) == (here > rated) || here == rated);
            prop_assert!(same(stalls(moved, rated, here), stall), "there and back");
        }

        #[test]
        fn heat_goes_where_the_energy_balance_says(kilowatts in 1.0..900.0f64, seconds in 0.1..10.0f64, fluid in 1.0..15.0f64, metal in 0.0..40.0f64) {
            let rise = temperature_rise(Quantity::new(kilowatts), Quantity::new(seconds), Quantity::new(fluid), Quantity::new(metal)).value();
            prop_assert!(same(rise * 2.0 * fluid + rise * 0.46 * metal, kilowatts * seconds));
        }

        #[test]
        fn a_spacer_brings_the_gap_to_the_aim(gap in 0.16..0.5f64) {
            prop_assert!(same((inches(gap) - spacer(inches(gap), GAP_AIMED)).value(), 0.15625));
        }
    }
}
