//! Heat while the brake holds: how warm, how soon, and what the fluid takes up.

use super::{FLUID_HEAT, METAL_HEAT};
use crate::quantity::{
    AtCelsius, Celsius, Kilogram, KilogramPerCubicMetre, KilojoulePerKilogramCelsius, Kilowatt, One, Quantity, Quart,
    Second,
};

/// Litres in a United States quart; exact.
const LITRES_IN_QUART: f64 = 0.946_352_946;

/// Heat one kilogram of a petroleum oil takes for a degree: 4.1868 × (0.388 + 0.00045 × °F) / √(specific gravity).
///
/// 0 to 150 °C, specific gravity at 60 °F of 0.75 to 0.96. Source: NBS
/// Miscellaneous Publication 97 (looked up in a secondary text); 1 to 3 % under
/// the printed figures for unused engine oil.
pub fn oil_heat(specific_gravity: Quantity<One>, at: Quantity<AtCelsius>) -> Quantity<KilojoulePerKilogramCelsius> {
    let fahrenheit = at.value() * 1.8 + 32.0;
    Quantity::new(4.1868 * (0.388 + 0.00045 * fahrenheit) / specific_gravity.value().sqrt())
}

/// Water at 60 °F, in kg/m³ (memory, high).
const WATER: f64 = 999.0;

/// Specific gravity at 60 °F from a density at 15 °C: density / 999.
///
/// The two temperatures are half a degree apart, which moves the fourth figure.
pub fn specific_gravity(density: Quantity<KilogramPerCubicMetre>) -> Quantity<One> {
    Quantity::new(density.value() / WATER)
}

/// Mass of so much fluid.
pub fn mass(volume: Quantity<Quart>, density: Quantity<KilogramPerCubicMetre>) -> Quantity<Kilogram> {
    Quantity::new(volume.value() * LITRES_IN_QUART * density.value() / 1000.0)
}

/// Degrees the fluid alone warms: kW × s / (kg × heat). Nothing is led away, so it is the most. Source: energy balance.
pub fn fluid_rise(
    power: Quantity<Kilowatt>,
    held: Quantity<Second>,
    fluid: Quantity<Kilogram>,
    heat: Quantity<KilojoulePerKilogramCelsius>,
) -> Quantity<Celsius> {
    Quantity::new(power.value() * held.value() / (fluid.value() * heat.value()))
}

/// Seconds the brake may be held until fluid and metal have warmed from one temperature to another.
///
/// [`super::temperature_rise`] solved for time. Nothing is led away, so it is
/// the least time. `None` without power. Already too warm: nothing (zero).
pub fn time_to(
    from: Quantity<AtCelsius>,
    limit: Quantity<AtCelsius>,
    power: Quantity<Kilowatt>,
    fluid: Quantity<Kilogram>,
    metal: Quantity<Kilogram>,
) -> Option<Quantity<Second>> {
    let kilojoules = (limit - from).value().max(0.0) * (FLUID_HEAT * fluid.value() + METAL_HEAT * metal.value());
    (power.value() > 0.0).then(|| Quantity::new(kilojoules / power.value()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use crate::calc::converter::temperature_rise;
    use proptest::prelude::*;

    #[test]
    fn no_power_takes_for_ever_and_too_warm_leaves_no_time() {
        let time = |from: f64, power: f64| {
            let (from, power) = (Quantity::new(from), Quantity::new(power));
            time_to(from, Quantity::new(150.0), power, Quantity::new(5.0), Quantity::new(12.0)).map(Quantity::value)
        };
        assert_eq!(time(80.0, 0.0), None);
        assert_eq!(time(80.0, -1.0), None);
        assert_eq!(time(150.0, 100.0), Some(0.0));
        assert_eq!(time(160.0, 100.0), Some(0.0));
        assert!(time(149.0, 100.0).is_some_and(|seconds| seconds > 0.0));
    }

    proptest! {
        #[test]
        fn held_so_long_it_is_just_so_warm(from in 20.0..100.0f64, rise in 1.0..120.0f64, power in 10.0..600.0f64, fluid in 2.0..12.0f64, metal in 0.0..30.0f64) {
            let [fluid, metal] = [fluid, metal].map(Quantity::new);
            let held = time_to(Quantity::new(from), Quantity::new(from + rise), Quantity::new(power), fluid, metal);
            let reached = temperature_rise(Quantity::new(power), held.expect("there is power"), fluid, metal).value();
            prop_assert!((reached - rise).abs() < 1e-9 * (from + rise));
        }

        #[test]
        fn fluid_and_metal_of_no_mass_agree_with_fluid_alone(power in 10.0..600.0f64, seconds in 0.5..10.0f64, quarts in 2.0..14.0f64) {
            let fluid = mass(Quantity::new(quarts), Quantity::new(820.0));
            let alone = fluid_rise(Quantity::new(power), Quantity::new(seconds), fluid, Quantity::new(FLUID_HEAT)).value();
            let both = temperature_rise(Quantity::new(power), Quantity::new(seconds), fluid, Quantity::new(0.0)).value();
            prop_assert!(same(alone, both));
            // A quart is 57.75 in³; an inch is 2.54 cm.
            prop_assert!(same(fluid.value(), quarts * 57.75 * 2.54_f64.powi(3) * 0.820 / 1000.0));
        }

        #[test]
        fn warm_oil_takes_more_heat_and_heavy_oil_less(gravity in 0.8..0.95f64, at in 0.0..140.0f64) {
            let heat = |gravity: f64, at: f64| oil_heat(Quantity::new(gravity), Quantity::new(at)).value();
            prop_assert!(heat(gravity, at + 5.0) > heat(gravity, at) && heat(gravity + 0.01, at) < heat(gravity, at));
            // 860 kg/m³ is 33 degrees API: 141.5 / gravity - 131.5.
            let api = 141.5 / specific_gravity(Quantity::new(860.0)).value() - 131.5;
            prop_assert!((api - 32.9).abs() < 0.05, "{api}");
        }
    }
}
