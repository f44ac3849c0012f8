//! How much thread has to be engaged: does the bolt break, or does the hole strip?
//!
//! A bolt in an aluminum case should break before the case strips. The areas
//! are those of basic sizes; a worn hole or a bolt at its lower limit holds
//! some tenths less, so the lengths here are the least and never the aim.

use super::Form;
use super::tension::{System, clamp, load};
use crate::quantity::{One, Quantity};
use std::f64::consts::PI;

/// Shear strength as a share of tensile strength, 0.5 (as the thread standard FED-STD-H28 reckons; memory, high).
///
/// Tests of ductile metals give 0.55 to 0.65, so this errs to the safe side.
pub const SHEAR_SHARE: Quantity<One> = Quantity::new(0.5);

/// Area that shears when the **bolt's** threads strip: π D1 × 0.75 of the engaged length.
///
/// From π n L D1 (1/(2n) + (d2 − D1) / √3) at basic sizes. Source: FED-STD-H28, appendix B (memory, high).
pub fn bolt_shear_area<U: System>(form: &Form<U>, engaged: Quantity<U>) -> Quantity<U::Area> {
    let across = form.pitch_diameter() - form.internal_minor();
    ring(form.internal_minor(), across, form, engaged)
}

/// Area that shears when the **hole's** threads strip: π d × 0.875 of the engaged length.
///
/// From π n L d (1/(2n) + (d − d2) / √3) at basic sizes. Source as for [`bolt_shear_area`].
pub fn hole_shear_area<U: System>(form: &Form<U>, engaged: Quantity<U>) -> Quantity<U::Area> {
    ring(form.major, form.major - form.pitch_diameter(), form, engaged)
}

/// On a cylinder of `diameter`, metal stands half a pitch wide at the pitch line and grows by 2/√3 for `across` of diameter / 2.
fn ring<U: System>(
    diameter: Quantity<U>,
    across: Quantity<U>,
    form: &Form<U>,
    engaged: Quantity<U>,
) -> Quantity<U::Area> {
    let share = 0.5 + across / form.pitch / 3.0_f64.sqrt();
    Quantity::new(PI * diameter.value() * engaged.value() * share)
}

/// What gives first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Gives {
    /// The bolt breaks: it tells, and the case is whole.
    BoltBreaks,
    /// The bolt's own threads strip.
    BoltStrips,
    /// The threads in the case strip: the case needs an insert.
    HoleStrips,
}

/// What gives first, and at what load.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Weakest<U: System> {
    /// What gives.
    pub gives: Gives,
    /// At this pull on the bolt.
    pub at: Quantity<U::Force>,
}

/// Strengths of the two metals.
#[derive(Clone, Copy, Debug)]
pub struct Metals<U: System> {
    /// Tensile strength of the bolt.
    pub bolt: Quantity<U::Stress>,
    /// Tensile strength of the metal the hole is tapped in.
    pub hole: Quantity<U::Stress>,
}

/// Pulls a bolt until something gives.
///
/// Loads: stress area × tensile for the bolt; shear area × [`SHEAR_SHARE`] × tensile for either thread. Equal loads
/// count as the worse of the two.
pub fn weakest<U: System>(form: &Form<U>, engaged: Quantity<U>, metals: Metals<U>) -> Weakest<U> {
    let shear = |area: Quantity<U::Area>, tensile: Quantity<U::Stress>| {
        Quantity::new(area.value() * tensile.value() * SHEAR_SHARE.value())
    };
    let hole = Weakest { gives: Gives::HoleStrips, at: shear(hole_shear_area(form, engaged), metals.hole) };
    let thread = Weakest { gives: Gives::BoltStrips, at: shear(bolt_shear_area(form, engaged), metals.bolt) };
    let breaks = Weakest { gives: Gives::BoltBreaks, at: load(form, metals.bolt) };
    [thread, breaks].into_iter().fold(hole, |least, other| if other.at < least.at { other } else { least })
}

/// Least engagement with which the bolt breaks before either thread strips.
pub fn least_engagement<U: System>(form: &Form<U>, metals: Metals<U>) -> Quantity<U> {
    let pull = load(form, metals.bolt).value() / SHEAR_SHARE.value();
    let one = Quantity::new(1.0);
    let in_hole = pull / (hole_shear_area(form, one).value() * metals.hole.value());
    let on_bolt = pull / (bolt_shear_area(form, one).value() * metals.bolt.value());
    Quantity::new(in_hole.max(on_bolt))
}

/// Torque at which the weakest part gives, by the short form K × d × F.
///
/// No better than the scatter of K, so keep well under it.
pub fn torque_at_failure<U: System>(
    form: &Form<U>,
    engaged: Quantity<U>,
    metals: Metals<U>,
    factor: Quantity<One>,
) -> Quantity<U::Torque> {
    super::tension::torque(factor, form, weakest(form, engaged, metals).at)
}

/// How often the load at which the weakest part gives exceeds the load a torque makes.
pub fn reserve<U: System>(
    form: &Form<U>,
    engaged: Quantity<U>,
    metals: Metals<U>,
    factor: Quantity<One>,
    torque: Quantity<U::Torque>,
) -> Quantity<One> {
    Quantity::new(weakest(form, engaged, metals).at / clamp(factor, form, torque))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use crate::quantity::Millimetre;
    use proptest::prelude::*;

    fn millimetres(value: f64) -> Quantity<Millimetre> {
        Quantity::new(value)
    }

    /// A class 8.8 bolt in a cast case of 240 MPa.
    fn in_a_case() -> Metals<Millimetre> {
        Metals { bolt: Quantity::new(800.0), hole: Quantity::new(240.0) }
    }

    #[test]
    fn one_and_a_half_diameters_of_aluminum_hold_what_a_strong_bolt_bears() {
        // The shop's rule of thumb, 1.5 diameters, against the sum.
        for (major, pitch) in [(6.0, 1.0), (8.0, 1.25), (10.0, 1.5), (12.0, 1.75)] {
            let form = Form::metric(major, pitch);
            let least = least_engagement(&form, in_a_case()) / form.major;
            assert!((1.25..1.5).contains(&least), "M{major}: {least}");
        }
        let form = Form::metric(10.0, 1.5);
        assert_eq!(weakest(&form, millimetres(10.0), in_a_case()).gives, Gives::HoleStrips);
        assert_eq!(weakest(&form, millimetres(15.0), in_a_case()).gives, Gives::BoltBreaks);
        let in_steel = Metals { hole: Quantity::new(1200.0), ..in_a_case() };
        assert_eq!(weakest(&form, millimetres(4.0), in_steel).gives, Gives::BoltStrips);
    }

    proptest! {
        #[test]
        fn the_areas_are_those_of_the_drawn_thread(major in 4.0..20.0f64, part in 0.08..0.2f64, turns in 2u32..20) {
            // Turn by turn: at a radius r the bolt's metal is P/2 + 2 tan 30° (r2 − r) wide, the hole's the other way round.
            let pitch = major * part;
            let form = Form::metric(major, pitch);
            let (tangent, engaged) = (30.0_f64.to_radians().tan(), millimetres(pitch * f64::from(turns)));
            let [outer, middle, inner] = [form.major, form.pitch_diameter(), form.internal_minor()].map(|d| d.value() / 2.0);
            let bolt_width = pitch / 2.0 + 2.0 * tangent * (middle - inner);
            let hole_width = pitch / 2.0 + 2.0 * tangent * (outer - middle);
            let turned = f64::from(turns);
            prop_assert!(same(bolt_shear_area(&form, engaged).value(), 2.0 * PI * inner * bolt_width * turned));
            prop_assert!(same(hole_shear_area(&form, engaged).value(), 2.0 * PI * outer * hole_width * turned));
        }

        #[test]
        fn just_over_the_least_engagement_the_bolt_breaks_and_just_under_a_thread_strips(
            major in 4.0..20.0f64, bolt in 400.0..1300.0f64, hole in 150.0..1300.0f64,
        ) {
            let form = Form::metric(major, 0.14 * major);
            let metals = Metals { bolt: Quantity::new(bolt), hole: Quantity::new(hole) };
            let least = least_engagement(&form, metals);
            prop_assert_eq!(weakest(&form, least * 1.001, metals).gives, Gives::BoltBreaks);
            prop_assert_ne!(weakest(&form, least * 0.999, metals).gives, Gives::BoltBreaks);
        }

        #[test]
        fn the_torque_at_failure_leaves_no_reserve(k in 0.1..0.3f64, engaged in 3.0..30.0f64) {
            let form = Form::metric(10.0, 1.5);
            let at = torque_at_failure(&form, millimetres(engaged), in_a_case(), Quantity::new(k));
            let left = |torque| reserve(&form, millimetres(engaged), in_a_case(), Quantity::new(k), torque).value();
            prop_assert!(same(left(at), 1.0) && same(left(at * 0.5), 2.0));
        }
    }
}
