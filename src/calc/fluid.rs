//! Transmission fluid: how it grows with heat, what that does to the level, and what a pan holds.

use crate::quantity::{AtCelsius, CubicInch, Inch, KilogramPerCubicMetre, One, Quantity, Quart, SquareInch};

/// Cubic inches in a United States quart, 57.75; definition (231 in³ a gallon).
pub const CUBIC_INCHES_IN_QUART: f64 = 57.75;

/// Growth a degree Celsius, 0.0007 of the volume (looked up: a fluids engineer, quoted).
///
/// The simple rule, kept beside [`volume_factor`], which is the better one above 60 °C.
pub const GROWTH_A_DEGREE: f64 = 0.0007;

/// Temperature the density of an oil is given at, 15 °C.
pub const BASE: Quantity<AtCelsius> = Quantity::new(15.0);

/// Thermal expansion of lubricating oil at 15 °C, per degree Celsius: 0.6278 / density.
///
/// 800 to 1,160 kg/m³ at 15 °C. Standard: ASTM D1250-80, table 54D (constants
/// looked up in a public code file, memory, high, otherwise). They are per
/// degree **Celsius**: used with Fahrenheit they give 1.8 times the growth.
pub fn expansion(density: Quantity<KilogramPerCubicMetre>) -> f64 {
    0.6278 / density.value()
}

/// Volume at 15 °C over the volume at a temperature: exp(−α ΔT (1 + 0.8 α ΔT)).
///
/// Same source and range as [`expansion`]; −20 to 150 °C.
pub fn volume_factor(density: Quantity<KilogramPerCubicMetre>, at: Quantity<AtCelsius>) -> Quantity<One> {
    let grown = expansion(density) * (at - BASE).value();
    Quantity::new((-grown * (1.0 + 0.8 * grown)).exp())
}

/// Density at a temperature: density at 15 °C × volume factor.
pub fn density_at(
    density: Quantity<KilogramPerCubicMetre>,
    at: Quantity<AtCelsius>,
) -> Quantity<KilogramPerCubicMetre> {
    density * volume_factor(density, at).value()
}

/// Share by which the volume grows from one temperature to another.
pub fn growth(
    density: Quantity<KilogramPerCubicMetre>,
    from: Quantity<AtCelsius>,
    to: Quantity<AtCelsius>,
) -> Quantity<One> {
    Quantity::new(volume_factor(density, from) / volume_factor(density, to) - 1.0)
}

/// The same by the simple rule: 0.0007 a degree.
pub fn growth_by_rule(from: Quantity<AtCelsius>, to: Quantity<AtCelsius>) -> Quantity<One> {
    Quantity::new(GROWTH_A_DEGREE * (to - from).value())
}

/// Rise of the level: volume / area of the fluid's surface. Right only if all of it shows in the pan.
pub fn level_rise(more: Quantity<Quart>, surface: Quantity<SquareInch>) -> Quantity<Inch> {
    Quantity::new(to_cubic_inches(more).value() / surface.value())
}

/// Cubic inches in so many quarts.
pub fn to_cubic_inches(volume: Quantity<Quart>) -> Quantity<CubicInch> {
    Quantity::new(volume.value() * CUBIC_INCHES_IN_QUART)
}

/// Quarts in so many cubic inches.
pub fn to_quarts(volume: Quantity<CubicInch>) -> Quantity<Quart> {
    Quantity::new(volume.value() / CUBIC_INCHES_IN_QUART)
}

/// One level part of a pan.
#[derive(Clone, Copy, Debug)]
pub struct Part {
    /// Inside length.
    pub length: Quantity<Inch>,
    /// Inside width.
    pub width: Quantity<Inch>,
    /// Depth from the floor to the level that counts.
    pub depth: Quantity<Inch>,
}

/// What a pan holds: the sum of length × width × depth of its parts, less what stands in it.
///
/// Round corners and a sloping floor make it a few per cent less. Source: geometry.
pub fn pan_volume(parts: &[Part], taken_up: Quantity<CubicInch>) -> Quantity<Quart> {
    let inside: f64 = parts.iter().map(|part| part.length.value() * part.width.value() * part.depth.value()).sum();
    to_quarts(Quantity::new(inside - taken_up.value()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn at(celsius: f64) -> Quantity<AtCelsius> {
        Quantity::new(celsius)
    }

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    #[test]
    fn a_pan_is_the_sum_of_its_parts_less_the_filter() {
        let part = |length, width, depth| Part { length: inches(length), width: inches(width), depth: inches(depth) };
        let pan = [part(13.0, 12.0, 1.5), part(6.0, 12.0, 1.0)];
        let holds = pan_volume(&pan, Quantity::new(17.25)).value();
        assert!(same(holds, (234.0 + 72.0 - 17.25) / 57.75), "{holds}");
        assert_eq!(pan_volume(&[], Quantity::new(0.0)).value(), 0.0);
    }

    proptest! {
        #[test]
        fn the_factor_is_one_at_15_degrees_and_falls_with_heat(density in 820.0..920.0f64, celsius in -20.0..140.0f64) {
            let density = Quantity::new(density);
            prop_assert_eq!(volume_factor(density, BASE).value(), 1.0);
            prop_assert!(volume_factor(density, at(celsius + 1.0)) < volume_factor(density, at(celsius)));
            // Mass stays: density × volume is the same hot and cold.
            let mass_hot = density_at(density, at(celsius)).value() * (1.0 + growth(density, BASE, at(celsius)).value());
            prop_assert!(same(mass_hot, density.value()));
        }

        #[test]
        fn growth_adds_up_over_a_stop_on_the_way(density in 820.0..920.0f64, from in 0.0..60.0f64, middle in 60.0..90.0f64, to in 90.0..140.0f64) {
            let grown = |from, to| 1.0 + growth(Quantity::new(density), at(from), at(to)).value();
            prop_assert!(same(grown(from, middle) * grown(middle, to), grown(from, to)));
            prop_assert!(same(grown(from, to) * grown(to, from), 1.0));
        }

        #[test]
        fn near_15_degrees_the_simple_rule_is_near(density in 840.0..900.0f64, rise in 0.0..20.0f64) {
            let (better, simple) = (growth(Quantity::new(density), BASE, at(15.0 + rise)), growth_by_rule(BASE, at(15.0 + rise)));
            prop_assert!((better - simple).abs().value() < 0.002);
        }

        #[test]
        fn quarts_poured_into_a_box_stand_as_deep_as_the_rise(quarts in 0.1..8.0f64, length in 6.0..20.0f64, width in 6.0..20.0f64) {
            let deep = level_rise(Quantity::new(quarts), Quantity::new(length * width));
            let part = Part { length: inches(length), width: inches(width), depth: deep };
            prop_assert!(same(pan_volume(&[part], Quantity::new(0.0)).value(), quarts));
        }
    }
}
