//! The piston of a rotating clutch: line pressure, the head of the fluid that turns with it, release springs.

use super::clutch::{Pack, capacity};
use crate::quantity::{Inch, PoundFoot, PoundForce, PoundPerCubicInch, Quantity, Rpm};

/// Standard gravity in inches a second, each second: 9.80665 m/s² (standard, exact) over 0.0254.
const GRAVITY: f64 = 9.806_65 / 0.025_4;

/// Mass of a cubic inch of automatic-transmission fluid at working heat (memory, medium: 0.80 to 0.87 kg/l).
pub const FLUID: Quantity<PoundPerCubicInch> = Quantity::new(0.0300);

/// The ring of fluid behind a piston that turns with its drum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct RotatingPiston {
    /// Radius of the piston's outer seal.
    pub outer: Quantity<Inch>,
    /// Radius of its inner seal.
    pub inner: Quantity<Inch>,
    /// Radius at which the fluid's surface stands: where it is fed, or runs off; no more than the inner seal's for a
    /// full ring.
    pub surface: Quantity<Inch>,
}

/// Force of the turning fluid on the piston: π/2 × density / g × ω² × [(outer⁴ − lower⁴)/2 − surface² × (outer² − lower²)].
///
/// `lower` is the inner seal or the fluid's surface, whichever is further out:
/// inside of it there is no fluid. The fluid turns with the drum, as it does
/// behind a piston; it adds to line pressure while applied and is all that is
/// left after release. Outer above inner, neither below nought. Source: pressure
/// ½ × density × ω² × (r² − surface²) in a liquid that turns as one, any text on
/// fluid mechanics, added up over the piston.
pub fn head_force(
    piston: &RotatingPiston,
    fluid: Quantity<PoundPerCubicInch>,
    speed: Quantity<Rpm>,
) -> Quantity<PoundForce> {
    let turning = speed.value() * std::f64::consts::TAU / 60.0;
    Quantity::new(fluid.value() / GRAVITY * turning * turning * shape(piston))
}

/// Force a head makes for one unit of density × ω².
fn shape(piston: &RotatingPiston) -> f64 {
    let (outer, surface) = (piston.outer.value(), piston.surface.value());
    let lower = piston.inner.value().max(surface);
    if lower >= outer {
        return 0.0;
    }
    // The difference of the fourth powers taken apart, which keeps thin rings exact.
    let squares = (outer - lower) * (outer + lower);
    std::f64::consts::FRAC_PI_2 * squares * ((outer.powi(2) + lower.powi(2)) / 2.0 - surface.powi(2))
}

/// Speed at which the head alone overcomes the release springs, so that a released clutch drags unless it drains.
///
/// √(springs / (density × shape of the ring)); infinite where no fluid stays. Springs at the released length.
pub fn self_apply_speed(
    piston: &RotatingPiston,
    fluid: Quantity<PoundPerCubicInch>,
    springs: Quantity<PoundForce>,
) -> Quantity<Rpm> {
    let turning = (springs.value() * GRAVITY / (fluid.value() * shape(piston))).sqrt();
    Quantity::new(turning * 60.0 / std::f64::consts::TAU)
}

/// Force of a set of coil springs: count × tested × (free − height) / (free − tested height).
///
/// One spring weighed at one height tells its rate; coil springs are straight
/// from free to solid. Nought at or beyond the free height. Heights below free. Source: Hooke.
pub fn spring_force(
    count: u32,
    free: Quantity<Inch>,
    tested_at: Quantity<Inch>,
    tested: Quantity<PoundForce>,
    height: Quantity<Inch>,
) -> Quantity<PoundForce> {
    let pressed = ((free - height) / (free - tested_at)).max(0.0);
    tested * (f64::from(count) * pressed)
}

/// Torque a pack in a turning drum can hold: its [`capacity`] with the head added to the piston's force.
pub fn capacity_turning(pack: &Pack, head: Quantity<PoundForce>) -> Quantity<PoundFoot> {
    capacity(&Pack { springs: pack.springs - head, ..*pack })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all, integral, same};
    use proptest::prelude::*;

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    fn piston(outer: f64, inner: f64, surface: f64) -> RotatingPiston {
        RotatingPiston { outer: inches(outer), inner: inches(inner), surface: inches(surface) }
    }

    fn head(piston: &RotatingPiston, rpm: f64) -> f64 {
        head_force(piston, FLUID, Quantity::new(rpm)).value()
    }

    #[test]
    fn agrees_with_the_same_ring_in_metric_units() {
        // 830.4 kg/m³ (0.0300 lb/in³), 4,000 rpm, seals at 2.80 and 1.60 in, fed at 1.00 in; SI throughout, by midpoints in Python.
        let source = "pressure added up over the piston in SI units, computed apart";
        let row = |what, computed, published, within| Check { source, what, computed, published, within };
        let drum = piston(2.80, 1.60, 1.00);
        all(&[
            row("full ring, lbf", head(&drum, 4000.0), 474.9, 0.05),
            row("fed at the middle, lbf", head(&piston(2.80, 1.60, 2.20), 4000.0), 96.4, 0.05),
            row(
                "springs of 250 lbf overcome, rpm",
                self_apply_speed(&drum, FLUID, Quantity::new(250.0)).value(),
                2902.0,
                0.5,
            ),
        ]);
    }

    #[test]
    fn where_no_fluid_stays_nothing_pushes() {
        let empty = piston(2.8, 1.6, 2.8);
        assert_eq!(head(&empty, 7000.0), 0.0);
        assert_eq!(self_apply_speed(&empty, FLUID, Quantity::new(250.0)).value(), f64::INFINITY);
        assert_eq!(head(&piston(2.8, 1.6, 1.0), 0.0), 0.0, "nor at rest");
    }

    #[test]
    fn springs_weighed_at_one_height_tell_every_other() {
        let force = |height| spring_force(16, inches(1.80), inches(1.20), Quantity::new(30.0), inches(height)).value();
        assert!(same(force(1.20), 480.0) && same(force(1.50), 240.0) && same(force(1.35), 360.0));
        assert_eq!([force(1.80), force(1.95)], [0.0, 0.0], "loose springs do not pull");
    }

    #[test]
    fn a_turning_pack_holds_more_by_its_head() {
        let pack = Pack {
            friction: Quantity::new(0.13),
            plates: 6,
            pressure: Quantity::new(150.0),
            piston: Quantity::new(13.5),
            springs: Quantity::new(250.0),
            mean_radius: Quantity::new(2.5),
        };
        let still = capacity(&pack).value();
        assert!(same(capacity_turning(&pack, Quantity::new(0.0)).value(), still));
        // 1,775 lbf hold 577 lb-ft, so 100 more hold 100/1,775 of it more.
        assert!(same(capacity_turning(&pack, Quantity::new(100.0)).value(), still * 1875.0 / 1775.0));
    }

    proptest! {
        #[test]
        fn rings_of_pressure_add_up_to_it(inner in 0.5..3.0f64, width in 0.1..3.0f64, surface in 0.0..6.0f64, rpm in 1.0..9000.0f64) {
            let outer = inner + width;
            let drum = piston(outer, inner, surface);
            let turning = rpm * std::f64::consts::TAU / 60.0;
            let pressure = |r: f64| FLUID.value() / GRAVITY * turning * turning * (r * r - surface * surface) / 2.0;
            let lower = inner.max(surface).min(outer);
            let rings = integral(lower, outer, 200, |r| pressure(r) * std::f64::consts::TAU * r);
            prop_assert!((head(&drum, rpm) - rings).abs() <= 1e-9 * rings.abs().max(1e-3), "{rings}");
        }

        #[test]
        fn it_grows_with_the_square_of_speed_and_never_pulls(inner in 0.5..3.0f64, width in 0.1..3.0f64, surface in 0.0..6.0f64, rpm in 1.0..9000.0f64) {
            let drum = piston(inner + width, inner, surface);
            prop_assert!(head(&drum, rpm) >= 0.0);
            prop_assert!(same(head(&drum, 2.0 * rpm), 4.0 * head(&drum, rpm)));
            prop_assert!(same(head(&drum, -rpm), head(&drum, rpm)), "either way round");
            if head(&drum, rpm) < 1e-6 {
                return Ok(());
            }
            let springs = head_force(&drum, FLUID, Quantity::new(rpm));
            prop_assert!(same(self_apply_speed(&drum, FLUID, springs).value(), rpm), "there springs and head are even");
        }
    }
}
