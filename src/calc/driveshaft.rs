//! Driveshaft: the speed at which a plain tube whips.

use crate::quantity::{Inch, One, PoundPerCubicInch, Psi, Quantity, Rpm};
use std::f64::consts::PI;

/// Whip constant of a tube, in inches and rpm: critical rpm = constant × √(OD² + ID²) / length².
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct TubeConstant(pub f64);

/// Standard gravity, in/s²: turns a weight density into a mass density.
const GRAVITY: f64 = 386.088_582_677;

/// Constant of another metal from its modulus and weight density: (30π / 4) × √(E g / w).
///
/// Source: Euler–Bernoulli beam, pinned ends, mass spread along the tube.
pub fn tube_constant(modulus: Quantity<Psi>, density: Quantity<PoundPerCubicInch>) -> TubeConstant {
    TubeConstant(30.0 * PI / 4.0 * (modulus.value() * GRAVITY / density.value()).sqrt())
}

/// First critical speed with the mass **spread along the tube**: constant × √(OD² + ID²) / length².
///
/// Plain tube, pinned ends, joint centre to joint centre; yokes and a slip
/// joint bring it down. Wall less than half the diameter, positive length.
/// This is the figure to use. Source: Euler–Bernoulli beam.
pub fn critical_speed(
    tube: TubeConstant,
    outside: Quantity<Inch>,
    wall: Quantity<Inch>,
    length: Quantity<Inch>,
) -> Quantity<Rpm> {
    let (outside, wall, length) = (outside.value(), wall.value(), length.value());
    let inside = outside - 2.0 * wall;
    Quantity::new(tube.0 * (outside * outside + inside * inside).sqrt() / (length * length))
}

/// First critical speed with **all the mass at mid-span**: [`critical_speed`] × √48 / π².
///
/// A textbook simplification, 30 % low; kept so that a printed answer made this
/// way (5,800 rpm for a 4 ft, 3 in tube) can be recognised. Do not build to it.
pub fn critical_speed_mass_at_midspan(
    tube: TubeConstant,
    outside: Quantity<Inch>,
    wall: Quantity<Inch>,
    length: Quantity<Inch>,
) -> Quantity<Rpm> {
    critical_speed(tube, outside, wall, length) * (48.0_f64.sqrt() / (PI * PI))
}

/// Highest engine speed as a share of the critical speed (direct drive, so the shaft turns with the engine).
pub fn critical_share(highest: Quantity<Rpm>, critical: Quantity<Rpm>) -> Quantity<One> {
    Quantity::new(highest / critical)
}

/// Longest tube that keeps a speed at or below a share of its critical speed.
///
/// [`critical_speed`] solved for length: √(constant × √(OD² + ID²) × share / speed).
pub fn longest_tube(
    tube: TubeConstant,
    outside: Quantity<Inch>,
    wall: Quantity<Inch>,
    highest: Quantity<Rpm>,
    share: Quantity<One>,
) -> Quantity<Inch> {
    let at_one_inch = critical_speed(tube, outside, wall, Quantity::new(1.0));
    Quantity::new((at_one_inch.value() * share.value() / highest.value()).sqrt())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;
    use std::f64::consts::TAU;

    const STEEL: TubeConstant = TubeConstant(4.77e6);
    const USABLE_SHARE: Quantity<One> = Quantity::new(0.75);

    /// Pounds of force a slug times feet a second squared: 32.174 of gravity, so slugs and pounds meet.
    const POUNDS_IN_SLUG: f64 = GRAVITY / 12.0;

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    fn textbook_tube(modulus: f64, slugs_in3: f64) -> TubeConstant {
        tube_constant(Quantity::new(modulus), Quantity::new(slugs_in3 * POUNDS_IN_SLUG))
    }

    fn whip(tube: TubeConstant, outside: f64, wall: f64, length: f64) -> f64 {
        critical_speed(tube, inches(outside), inches(wall), inches(length)).value()
    }

    /// The lowest speed of a pinned beam cut into `pieces`, by inverse iteration on the differences.
    ///
    /// The fourth difference of a pinned beam is its second difference taken
    /// twice, so each turn solves two tridiagonal systems.
    fn whip_by_differences(modulus: f64, density: f64, outside: f64, wall: f64, length: f64, pieces: usize) -> f64 {
        let inside = outside - 2.0 * wall;
        let stiffness = modulus * PI / 64.0 * (outside.powi(4) - inside.powi(4));
        let mass = density / GRAVITY * PI / 4.0 * (outside.powi(2) - inside.powi(2));
        let step = length / pieces as f64;
        let mut shape = vec![1.0; pieces - 1];
        let mut growth = 1.0;
        for _ in 0..60 {
            let next = bend(&bend(&shape, step), step);
            growth = next.iter().fold(0.0_f64, |largest, y| largest.max(y.abs()));
            shape = next.iter().map(|y| y / growth).collect();
        }
        (stiffness / (mass * growth)).sqrt() * 60.0 / TAU
    }

    /// Solves −y″ = load with both ends at nought (elimination down, substitution up).
    fn bend(load: &[f64], step: f64) -> Vec<f64> {
        let mut upper = vec![0.0; load.len()];
        let mut deflection = vec![0.0; load.len()];
        for row in 0..load.len() {
            let (above, so_far) = if row == 0 { (0.0, 0.0) } else { (upper[row - 1], deflection[row - 1]) };
            let pivot = 2.0 - above;
            upper[row] = 1.0 / pivot;
            deflection[row] = (load[row] * step * step + so_far) / pivot;
        }
        for row in (0..load.len() - 1).rev() {
            deflection[row] += upper[row] * deflection[row + 1];
        }
        deflection
    }

    #[test]
    fn the_mass_at_mid_span_is_a_weight_on_a_spring() {
        let steel = textbook_tube(29e6, 0.008_83);
        let lumped = |tube| critical_speed_mass_at_midspan(tube, inches(3.0), inches(0.125), inches(48.0)).value();
        // The mid-span model from its own beam: √(48 E I / (m L³)).
        let inside: f64 = 2.75;
        let second_moment = PI / 64.0 * (81.0 - inside.powi(4));
        let mass = 0.008_83 / 12.0 * PI / 4.0 * (9.0 - inside.powi(2)) * 48.0;
        let spring_and_weight = (48.0 * 29e6 * second_moment / (mass * 48.0_f64.powi(3))).sqrt() * 60.0 / TAU;
        assert!(same(lumped(steel), spring_and_weight), "{} and {spring_and_weight}", lumped(steel));
    }

    proptest! {
        #![proptest_config(ProptestConfig::with_cases(64))]

        #[test]
        fn differences_along_the_tube_give_the_same_speed(outside in 1.5..5.0f64, thin in 0.01..0.45f64, length in 20.0..80.0f64) {
            let wall = outside * thin;
            let closed = whip(tube_constant(Quantity::new(30e6), Quantity::new(0.283)), outside, wall, length);
            let stepped = whip_by_differences(30e6, 0.283, outside, wall, length, 200);
            prop_assert!((closed / stepped - 1.0).abs() < 0.005, "{closed} and {stepped}");
        }

        #[test]
        fn longer_is_slower_and_wider_is_faster(outside in 1.5..5.0f64, length in 20.0..80.0f64, more in 0.1..5.0f64) {
            prop_assert!(whip(STEEL, outside, 0.083, length + more) < whip(STEEL, outside, 0.083, length));
            prop_assert!(whip(STEEL, outside + more, 0.083, length) > whip(STEEL, outside, 0.083, length));
            prop_assert!(same(whip(STEEL, outside, 0.083, 2.0 * length) * 4.0, whip(STEEL, outside, 0.083, length)));
        }

        #[test]
        fn the_longest_tube_sits_just_at_its_share(outside in 1.5..5.0f64, rpm in 2000.0..9000.0f64) {
            let longest = longest_tube(STEEL, inches(outside), inches(0.083), Quantity::new(rpm), USABLE_SHARE);
            let share = |length| critical_share(Quantity::new(rpm), critical_speed(STEEL, inches(outside), inches(0.083), length));
            prop_assert!(same(share(longest).value(), 0.75));
            prop_assert!(share(longest + inches(0.1)) > USABLE_SHARE && share(longest - inches(0.1)) < USABLE_SHARE);
        }
    }
}
