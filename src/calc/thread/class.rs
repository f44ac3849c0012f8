//! Limits of Unified threads in the usual classes: bolt 2A, nut 2B.
//!
//! A worn, plated or wrong thread is told by its diameters against these. They
//! hold for engagement of about one bolt diameter.

use super::Form;
use crate::quantity::{Inch, Quantity};

/// Smallest and largest.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Smallest that passes.
    pub least: Quantity<Inch>,
    /// Largest that passes.
    pub most: Quantity<Inch>,
}

impl Limits {
    /// Whether a reading lies on or between the limits, all of them to the ten-thousandth that the standard prints.
    pub fn take(&self, reading: Quantity<Inch>) -> bool {
        let printed = |size: Quantity<Inch>| (size.value() * 1e4).round();
        (printed(self.least)..=printed(self.most)).contains(&printed(reading))
    }

    fn below(most: Quantity<Inch>, tolerance: f64) -> Self {
        Self { least: most - Quantity::new(tolerance), most }
    }

    fn above(least: Quantity<Inch>, tolerance: f64) -> Self {
        Self { least, most: least + Quantity::new(tolerance) }
    }
}

/// Room left between bolt and nut of basic size: 0.3 × the bolt's pitch-diameter tolerance.
///
/// Source: ASME B1.1 (formula memory, high; agrees with the printed limits).
pub fn allowance(form: &Form<Inch>) -> Quantity<Inch> {
    Quantity::new(0.3 * bolt_pitch_tolerance(form))
}

/// Outside diameter of a 2A bolt: d − allowance, tolerance 0.06 P^⅔. Source as for [`allowance`].
pub fn bolt_major(form: &Form<Inch>) -> Limits {
    Limits::below(form.major - allowance(form), 0.06 * form.pitch.value().powf(2.0 / 3.0))
}

/// Pitch diameter of a 2A bolt: d2 − allowance, tolerance 0.0015 (d^⅓ + √d) + 0.015 P^⅔ in inches. Source as for [`allowance`].
pub fn bolt_pitch_diameter(form: &Form<Inch>) -> Limits {
    Limits::below(form.pitch_diameter() - allowance(form), bolt_pitch_tolerance(form))
}

/// Pitch diameter of a 2B nut: from d2 up, 1.3 × the bolt's tolerance. Source as for [`allowance`].
pub fn nut_pitch_diameter(form: &Form<Inch>) -> Limits {
    Limits::above(form.pitch_diameter(), 1.3 * bolt_pitch_tolerance(form))
}

/// Bore of a 2B nut: from D1 up, tolerance 0.25 P − 0.4 P² for 1/4 in and larger. Source as for [`allowance`].
///
/// `None` for smaller sizes, which follow another rule.
pub fn nut_bore(form: &Form<Inch>) -> Option<Limits> {
    let pitch = form.pitch.value();
    (form.major.value() >= 0.25).then(|| Limits::above(form.internal_minor(), 0.25 * pitch - 0.4 * pitch * pitch))
}

/// Class 2A over an engagement of one diameter, in inches.
fn bolt_pitch_tolerance(form: &Form<Inch>) -> f64 {
    let (major, pitch) = (form.major.value(), form.pitch.value());
    0.0015 * (major.cbrt() + major.sqrt()) + 0.015 * pitch.powf(2.0 / 3.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::thread::table::UNIFIED;
    use proptest::prelude::*;

    #[test]
    fn a_2a_bolt_always_goes_into_a_2b_nut_and_never_rattles_free() {
        for row in UNIFIED {
            let (bolt, nut) = (bolt_pitch_diameter(&row.form), nut_pitch_diameter(&row.form));
            assert!(bolt.most < nut.least, "{}", row.name);
            assert!((nut.most - bolt.least).value() < 0.25 * row.form.pitch.value(), "{}", row.name);
            assert!(bolt_major(&row.form).least > row.form.pitch_diameter(), "{}", row.name);
            assert!(nut_bore(&row.form).is_none_or(|bore| bore.most < bolt_major(&row.form).least), "{}", row.name);
            assert_eq!(nut_bore(&row.form).is_none(), row.name.starts_with("10-"), "{}", row.name);
        }
    }

    #[test]
    fn limits_take_their_own_ends_and_nothing_beyond() {
        let limits = Limits { least: Quantity::new(0.24), most: Quantity::new(0.25) };
        for (reading, taken) in [(0.24, true), (0.25, true), (0.245, true), (0.2399, false), (0.2501, false)] {
            assert_eq!(limits.take(Quantity::new(reading)), taken, "{reading}");
        }
    }

    proptest! {
        #[test]
        fn a_larger_or_coarser_thread_has_more_tolerance(major in 0.2..1.0f64, per_inch in 10.0..32.0f64, more in 1.05..1.5f64) {
            let tolerance = |major, per_inch| bolt_pitch_tolerance(&Form::unified(major, per_inch));
            prop_assert!(tolerance(major * more, per_inch) > tolerance(major, per_inch));
            prop_assert!(tolerance(major, per_inch / more) > tolerance(major, per_inch));
        }
    }
}
