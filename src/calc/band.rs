//! A brake band around a drum: what its servo pulls with, and what it holds, which depends on the way the drum pulls.
//!
//! One end of the band is anchored, the other is pulled by the servo. Where the
//! drum drags the band toward the anchor it tightens the band by itself; where
//! it drags the other way it loosens it. The same band holds far less then.

use crate::quantity::{Degree, Inch, One, PoundFoot, PoundForce, Psi, Quantity, SquareInch};

/// A band on its drum.
#[derive(Clone, Copy, Debug)]
pub struct Band {
    /// Friction of the lining on the drum, in fluid.
    pub friction: Quantity<One>,
    /// Angle over which the lining lies on the drum; more than a turn for a double wrap.
    pub wrap: Quantity<Degree>,
    /// Radius of the drum.
    pub drum_radius: Quantity<Inch>,
}

/// What pulls the band.
#[derive(Clone, Copy, Debug)]
pub struct Servo {
    /// Pressure on its piston.
    pub pressure: Quantity<Psi>,
    /// Area the pressure stands on.
    pub piston: Quantity<SquareInch>,
    /// Force of its return spring, applied.
    pub spring: Quantity<PoundForce>,
    /// How often the lever multiplies the piston's force: 1 for a straight pin.
    pub lever: Quantity<One>,
}

/// Which way the drum drags the band.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Drag {
    /// Toward the anchor: the band tightens itself.
    TowardAnchor,
    /// Toward the servo: the band loosens itself.
    TowardServo,
}

/// Force on the servo's end of the band: (pressure × piston − spring) × lever.
///
/// Pounds, square inches. Exact for the sizes given, without the friction of the servo. Negative when the spring is the
/// stronger: the band is not applied at all.
pub fn apply_force(servo: &Servo) -> Quantity<PoundForce> {
    Quantity::new((servo.pressure.value() * servo.piston.value() - servo.spring.value()) * servo.lever.value())
}

/// How often the pull at the tight end exceeds that at the slack one: e^(friction × wrap), the wrap in radians.
///
/// A thin band that lies on all around and slips or is about to. Source: belt (capstan) equation, any machine-design text.
pub fn tension_ratio(band: &Band) -> Quantity<One> {
    Quantity::new((band.friction.value() * band.wrap.value().to_radians()).exp())
}

/// Pull at the anchor for a pull at the servo's end: force × or / [`tension_ratio`].
///
/// Toward the anchor that is the tight end, toward the servo the slack one.
pub fn anchor_force(band: &Band, force: Quantity<PoundForce>, drag: Drag) -> Quantity<PoundForce> {
    let ratio = tension_ratio(band).value();
    match drag {
        Drag::TowardAnchor => force * ratio,
        Drag::TowardServo => force * (1.0 / ratio),
    }
}

/// Torque the band holds: |pull at the anchor − pull at the servo| × drum radius / 12.
///
/// Toward the anchor force × (e^(friction × wrap) − 1) × radius, toward the servo force × (1 − e^(−friction × wrap)) ×
/// radius. Inches in, pound-feet out; a force above nought. Source: belt equation.
pub fn torque(band: &Band, force: Quantity<PoundForce>, drag: Drag) -> Quantity<PoundFoot> {
    let pull = (anchor_force(band, force, drag) - force).abs();
    Quantity::new(pull.value() * band.drum_radius.value() / 12.0)
}

/// Highest pressure on the lining, at the tight end: pull there / (radius × width).
///
/// Source: balance of a short piece of the band, any machine-design text.
pub fn lining_pressure(
    tight: Quantity<PoundForce>,
    drum_radius: Quantity<Inch>,
    width: Quantity<Inch>,
) -> Quantity<Psi> {
    Quantity::new(tight.value() / (drum_radius.value() * width.value()))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn band(friction: f64, wrap: f64, radius: f64) -> Band {
        Band { friction: Quantity::new(friction), wrap: Quantity::new(wrap), drum_radius: Quantity::new(radius) }
    }

    fn holds(band: &Band, force: f64, drag: Drag) -> f64 {
        torque(band, Quantity::new(force), drag).value()
    }

    #[test]
    fn a_servo_whose_spring_is_the_stronger_does_not_pull() {
        let servo = |pressure: f64, spring: f64| Servo {
            pressure: Quantity::new(pressure),
            piston: Quantity::new(4.0),
            spring: Quantity::new(spring),
            lever: Quantity::new(2.5),
        };
        assert_eq!(apply_force(&servo(100.0, 60.0)).value(), 850.0);
        assert_eq!(apply_force(&servo(15.0, 60.0)).value(), 0.0);
        assert!(apply_force(&servo(14.0, 60.0)).value() < 0.0);
    }

    proptest! {
        #[test]
        fn friction_added_up_piece_by_piece_comes_to_the_same(friction in 0.02..0.3f64, wrap in 20.0..700.0f64, radius in 1.0..6.0f64, force in 10.0..3000.0f64) {
            let band = band(friction, wrap, radius);
            // Along the band from the servo each piece of angle rubs with friction × pull × angle: it adds or takes away.
            let pieces = 4000;
            let piece = wrap.to_radians() / f64::from(pieces);
            for (drag, sign) in [(Drag::TowardAnchor, 1.0), (Drag::TowardServo, -1.0)] {
                let (mut pull, mut rubbed) = (force, 0.0);
                for _ in 0..pieces {
                    // The pull in the middle of the piece.
                    let rub = friction * piece * pull / (1.0 - sign * friction * piece / 2.0);
                    rubbed += rub * radius / 12.0;
                    pull += sign * rub;
                }
                prop_assert!((rubbed / holds(&band, force, drag) - 1.0).abs() < 1e-5);
                prop_assert!((pull / anchor_force(&band, Quantity::new(force), drag).value() - 1.0).abs() < 1e-5);
            }
        }

        #[test]
        fn one_way_it_holds_more_by_just_the_ratio_of_its_pulls(friction in 0.02..0.3f64, wrap in 20.0..700.0f64, force in 10.0..3000.0f64) {
            let band = band(friction, wrap, 3.0);
            let (tight, loose) = (holds(&band, force, Drag::TowardAnchor), holds(&band, force, Drag::TowardServo));
            prop_assert!(same(tight, loose * tension_ratio(&band).value()) && tight > loose);
            // Loosening itself it never holds more than the force at the drum's rim, however far it is wrapped.
            prop_assert!(loose < force * 3.0 / 12.0);
            prop_assert!(same(holds(&band, 2.0 * force, Drag::TowardServo), 2.0 * loose));
        }

        #[test]
        fn the_pressure_on_the_lining_carries_the_pull(force in 10.0..3000.0f64, radius in 1.0..6.0f64, width in 0.5..4.0f64) {
            let pressure = lining_pressure(Quantity::new(force), Quantity::new(radius), Quantity::new(width)).value();
            // Half a turn at one pressure stands on the projected area and is held by both ends.
            prop_assert!(same(pressure * 2.0 * radius * width, 2.0 * force));
        }
    }
}
