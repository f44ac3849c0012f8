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

/// How far a stall lies from the label's, as a share of the label: here / label − 1. Above nought it is higher.
pub fn off_the_label(here: Quantity<Rpm>, label: Quantity<Rpm>) -> Quantity<One> {
    Quantity::new(here / label - 1.0)
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

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all, same};
    use proptest::prelude::*;

    fn stalls(stall: f64, here: f64, rated: f64) -> f64 {
        stall_at(Quantity::new(stall), Quantity::new(here), Quantity::new(rated)).value()
    }

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    #[test]
    fn agrees_with_published_sums() {
        let shop = "shop handbook, stall, heat and pilot sums";
        let table = "public 21-point demonstration converter, K at stall 137.4652";
        let root = "square-root law, computed apart";
        let power = brake_power(Quantity::new(820.0), Quantity::new(stalls(3200.0, 820.0, 500.0)));
        let warm = temperature_rise(Quantity::new(477.0), Quantity::new(3.0), Quantity::new(5.0), Quantity::new(12.0));
        let oil = "adiabatic rise of 9.5 L at 820 kg/m³ and 2.1 kJ/kgK, computed apart";
        // The same energy in the same oil: 2.0 kJ per kg here, 2.1 there, so the mass is scaled.
        let same_heat = Quantity::new(9.5 * 0.820 * 2.1 / FLUID_HEAT);
        let oil_only = temperature_rise(Quantity::new(100.0), Quantity::new(5.0), same_heat, Quantity::new(0.0));
        let at_300 = brake_power(Quantity::new(300.0), Quantity::new(2381.0));
        all(&[
            Check {
                source: shop,
                what: "3,200 at 500, behind 820",
                computed: stalls(3200.0, 820.0, 500.0),
                published: 4098.0,
                within: 0.5,
            },
            Check {
                source: shop,
                what: "4,098 against a label of 3,200",
                computed: off_the_label(Quantity::new(4098.0), Quantity::new(3200.0)).value(),
                published: 0.281,
                within: 0.0005,
            },
            Check {
                source: shop,
                what: "heat of 820 at 4,098, kW",
                computed: power.value(),
                published: 477.0,
                within: 0.5,
            },
            Check {
                source: shop,
                what: "3 s with 5 kg and 12 kg, °C",
                computed: warm.value(),
                published: 92.0,
                within: 0.5,
            },
            Check {
                source: table,
                what: "K of 2,381 at 300",
                computed: capacity_factor(Quantity::new(2381.0), Quantity::new(300.0)),
                published: 137.4652,
                within: 0.14,
            },
            Check {
                source: table,
                what: "heat of 300 at 2,381, kW",
                computed: at_300.value(),
                published: 101.4,
                within: 0.11,
            },
            Check {
                source: root,
                what: "K 200 behind 400",
                computed: stalls(200.0, 400.0, 1.0),
                published: 4000.0,
                within: 4.0,
            },
            Check {
                source: root,
                what: "K 160 behind 350",
                computed: stalls(160.0, 350.0, 1.0),
                published: 2993.0,
                within: 3.0,
            },
            Check {
                source: root,
                what: "a fifth more torque",
                computed: stalls(1.0, 1.2, 1.0),
                published: 1.0954,
                within: 0.001,
            },
            Check {
                source: oil,
                what: "100 kW for 5 s, °C",
                computed: oil_only.value(),
                published: 30.6,
                within: 0.05,
            },
            Check {
                source: shop,
                what: "spacer for a gap of 0.220",
                computed: spacer(inches(0.220)).value(),
                published: 0.064,
                within: 0.0005,
            },
            Check {
                source: shop,
                what: "pilot left",
                computed: pilot_engaged(inches(0.55), inches(0.064), inches(0.20)).value(),
                published: 0.286,
                within: 1e-9,
            },
            Check {
                source: shop,
                what: "turbine torque of 560",
                computed: turbine_torque(Quantity::new(560.0), Quantity::new(2.0)).value(),
                published: 1120.0,
                within: 1e-9,
            },
        ]);
    }

    #[test]
    fn the_kilowatt_constant_comes_from_the_units() {
        // One pound-force foot is 1.3558179483 N·m.
        let exact = 60_000.0 / (1.355_817_948_3 * std::f64::consts::TAU);
        assert!((POUND_FOOT_RPM_IN_KILOWATT / exact - 1.0).abs() < 1e-4, "{exact}");
    }

    #[test]
    fn a_gap_inside_the_aim_asks_for_no_spacer() {
        assert_eq!(spacer(inches(0.156)).value(), 0.0);
        assert_eq!(spacer(GAP_AIMED).value(), 0.0);
        assert!(spacer(inches(0.157)).value() > 0.0);
    }

    #[test]
    fn a_pilot_that_does_not_reach_reads_below_nothing() {
        assert!(pilot_engaged(inches(0.30), inches(0.11), inches(0.20)).value() < 0.0);
        assert!(pilot_engaged(inches(0.30), inches(0.09), inches(0.20)).value() > 0.0);
    }

    proptest! {
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
            prop_assert!(same((inches(gap) - spacer(inches(gap))).value(), 0.15625));
        }
    }
}
