//! Cross joints of a driveshaft: the angle they stand, and how unevenly they turn.

use crate::quantity::{Degree, One, Quantity, RadianPerSecondSquared, Rpm};
use std::f64::consts::TAU;

/// Largest joint angle that keeps the angular acceleration under a limit: asin(√limit / ω).
///
/// Approximate peak ω² sin²β, at most 2.3 % under the exact one to 12°. `None` when the
/// limit is not reached at any angle (a shaft that hardly turns). 400 rad/s²
/// reproduces the quiet-running table quoted from the joint guide (6.5° at
/// 1,700 rpm), 1,000 rad/s² the widely used one (5.8° at 3,000 rpm; memory, high).
pub fn angle_limit(limit: Quantity<RadianPerSecondSquared>, speed: Quantity<Rpm>) -> Option<Quantity<Degree>> {
    let sine = limit.value().sqrt() / radians_per_second(speed);
    (sine < 1.0).then(|| Quantity::new(sine.asin().to_degrees()))
}

/// Peak angular acceleration of the driven side of one joint: ω² sin²β (approximate, see [`angle_limit`]).
pub fn peak_acceleration(speed: Quantity<Rpm>, angle: Quantity<Degree>) -> Quantity<RadianPerSecondSquared> {
    let omega = radians_per_second(speed);
    let sine = angle.value().to_radians().sin();
    Quantity::new(omega * omega * sine * sine)
}

/// Slowest and fastest of the driven side as a share of the driving side: cos β and 1 / cos β.
///
/// Source: geometry of one cross joint. Angle below 90°.
pub fn speed_range(angle: Quantity<Degree>) -> (Quantity<One>, Quantity<One>) {
    let cosine = angle.value().to_radians().cos();
    (Quantity::new(cosine), Quantity::new(1.0 / cosine))
}

/// Unevenness of one joint, (fastest − slowest) / mean speed in: tan β × sin β.
///
/// A supplier keeps it at or below 0.0027, which is 2.98°. Source: geometry.
pub fn unevenness(angle: Quantity<Degree>) -> Quantity<One> {
    let angle = angle.value().to_radians();
    Quantity::new(angle.tan() * angle.sin())
}

fn radians_per_second(speed: Quantity<Rpm>) -> f64 {
    speed.value() * TAU / 60.0
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    #[test]
    fn a_shaft_that_stands_bends_freely() {
        assert_eq!(angle_limit(Quantity::new(400.0), Quantity::new(0.0)), None);
        assert_eq!(angle_limit(Quantity::new(400.0), Quantity::new(190.0)), None, "20 rad/s is the limit at 90°");
        assert!(angle_limit(Quantity::new(400.0), Quantity::new(192.0)).is_some());
    }

    #[test]
    fn the_joint_formulas_come_out_of_the_turning_joint() {
        for degrees in [1.0, 3.0, 6.0, 12.0_f64] {
            let (cosine, tenth) = (degrees.to_radians().cos(), TAU / 40_000.0);
            // Driven angle against driving angle, stepped round half a turn.
            let driven = |angle: f64| (angle.sin() * cosine).atan2(angle.cos());
            let speed = |angle: f64| (driven(angle + tenth) - driven(angle - tenth)) / (2.0 * tenth);
            let turns = (0..20_000).map(|step| (f64::from(step) - 9_999.5) * tenth * 0.999);
            let (mut slowest, mut fastest, mut sharpest) = (f64::MAX, 0.0_f64, 0.0_f64);
            for angle in turns {
                slowest = slowest.min(speed(angle));
                fastest = fastest.max(speed(angle));
                sharpest = sharpest.max((speed(angle + tenth) - speed(angle - tenth)) / (2.0 * tenth));
            }
            let (low, high) = speed_range(Quantity::new(degrees));
            assert!((slowest - low.value()).abs() < 1e-6 && (fastest - high.value()).abs() < 1e-6, "{degrees}°");
            let uneven = unevenness(Quantity::new(degrees)).value();
            assert!((fastest - slowest - uneven).abs() < 2e-6, "{degrees}°: {uneven}");
            // At one radian a second, the approximate peak is at most 2.3 % under the true one.
            let peak = peak_acceleration(Quantity::new(60.0 / TAU), Quantity::new(degrees)).value();
            assert!(sharpest / peak >= 1.0 - 1e-4 && sharpest / peak < 1.023, "{degrees}°: {}", sharpest / peak);
        }
    }

    proptest! {
        #[test]
        fn the_limit_angle_brings_just_the_limit(limit in 50.0..2000.0f64, rpm in 1000.0..9000.0f64) {
            let angle = angle_limit(Quantity::new(limit), Quantity::new(rpm)).expect("fast enough to have a limit");
            prop_assert!(same(peak_acceleration(Quantity::new(rpm), angle).value(), limit));
            let faster = angle_limit(Quantity::new(limit), Quantity::new(rpm + 100.0)).expect("faster still");
            prop_assert!(faster < angle);
        }
    }
}
