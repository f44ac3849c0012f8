//! Round shafts in torsion: stress at the surface, and torque from power.

use crate::quantity::{Horsepower, Inch, Megapascal, Millimetre, NewtonMetre, PoundFoot, Psi, Quantity, Rpm};
use std::f64::consts::{PI, TAU};

/// Foot-pounds a minute in one horsepower; definition.
const FOOT_POUNDS_A_MINUTE: f64 = 33_000.0;

/// Shear stress at the surface of a round shaft: 16 T D / (π (D⁴ − d⁴)), T in lb-in; bore nought for a solid one.
///
/// Elastic, away from notches and splines, bore smaller than the outside.
/// Source: strength of materials (civil-engineering formulas, p. 21).
pub fn stress(torque: Quantity<PoundFoot>, outside: Quantity<Inch>, bore: Quantity<Inch>) -> Quantity<Psi> {
    Quantity::new(torque.value() * 12.0 * per_torque(outside.value(), bore.value()))
}

/// The same in metric: N·m, mm, MPa.
pub fn stress_metric(
    torque: Quantity<NewtonMetre>,
    outside: Quantity<Millimetre>,
    bore: Quantity<Millimetre>,
) -> Quantity<Megapascal> {
    Quantity::new(torque.value() * 1000.0 * per_torque(outside.value(), bore.value()))
}

/// Torque at which the surface of a round shaft reaches a shear stress: [`stress`] solved for torque.
pub fn torque_at(stress: Quantity<Psi>, outside: Quantity<Inch>, bore: Quantity<Inch>) -> Quantity<PoundFoot> {
    Quantity::new(stress.value() / (12.0 * per_torque(outside.value(), bore.value())))
}

/// Surface stress for a torque of one, the torque counted in the unit of the diameters.
fn per_torque(outside: f64, bore: f64) -> f64 {
    16.0 * outside / (PI * (outside.powi(4) - bore.powi(4)))
}

/// Torque from power: hp × 33,000 / (2π rpm), that is 5,252 hp / rpm. Source: definition of the horsepower.
pub fn torque_from_power(power: Quantity<Horsepower>, speed: Quantity<Rpm>) -> Quantity<PoundFoot> {
    Quantity::new(power.value() * FOOT_POUNDS_A_MINUTE / (TAU * speed.value()))
}

/// Power at a torque and a speed: T × 2π rpm / 33,000.
pub fn power(torque: Quantity<PoundFoot>, speed: Quantity<Rpm>) -> Quantity<Horsepower> {
    Quantity::new(torque.value() * TAU * speed.value() / FOOT_POUNDS_A_MINUTE)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{integral, same};
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn stress_that_grows_with_the_radius_adds_up_to_the_torque(torque in 50.0..3000.0f64, outside in 0.5..3.0f64, part in 0.0..0.9f64) {
            let bore = outside * part;
            let surface = stress(Quantity::new(torque), Quantity::new(outside), Quantity::new(bore)).value();
            // Ring by ring: stress × radius × circumference.
            let ring = |radius: f64| surface * (radius / (outside / 2.0)) * radius * TAU * radius;
            let pound_inches = integral(bore / 2.0, outside / 2.0, 200, ring);
            prop_assert!((pound_inches / 12.0 / torque - 1.0).abs() < 1e-9);
            let back = torque_at(Quantity::new(surface), Quantity::new(outside), Quantity::new(bore));
            prop_assert!(same(back.value(), torque));
        }

        #[test]
        fn one_shaft_in_either_system_bears_the_same(torque in 50.0..3000.0f64, outside in 0.5..3.0f64, part in 0.0..0.9f64) {
            let [outside, bore] = [outside, outside * part].map(Quantity::<Inch>::new);
            let psi = stress(Quantity::new(torque), outside, bore).value();
            let metric = Quantity::new(torque * 1.355_817_948_331_4);
            let megapascals = stress_metric(metric, outside.to_millimetres(), bore.to_millimetres()).value();
            prop_assert!((megapascals / (psi * 6.894_757_293_168e-3) - 1.0).abs() < 1e-9);
        }

        #[test]
        fn power_and_torque_undo_each_other(hp in 10.0..2000.0f64, rpm in 500.0..9000.0f64) {
            let torque = torque_from_power(Quantity::new(hp), Quantity::new(rpm));
            prop_assert!(same(power(torque, Quantity::new(rpm)).value(), hp));
            // A horsepower is 745.699872 W.
            let watts = torque.to_newton_metres().value() * rpm * TAU / 60.0;
            prop_assert!((watts / (hp * 745.699_871_58) - 1.0).abs() < 1e-9);
        }
    }
}
