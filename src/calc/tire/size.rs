//! Tire sizes as written on the sidewall, and the diameter that follows from them.

use crate::quantity::{Inch, Millimetre, Quantity};
use std::fmt;

/// A size as read from the sidewall.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Size {
    /// `275/60R15`: section width, profile in per cent of the width, rim.
    Metric {
        /// Section width.
        width: Quantity<Millimetre>,
        /// Section height as per cent of the width.
        profile: f64,
        /// Rim diameter.
        rim: Quantity<Inch>,
    },
    /// `31x10.50R15` and slicks, `28.0/9.0-15`: diameter, width, rim.
    Flotation {
        /// Outside diameter.
        diameter: Quantity<Inch>,
        /// Section width.
        width: Quantity<Inch>,
        /// Rim diameter.
        rim: Quantity<Inch>,
    },
    /// `7.00-15` in inches or `185R14` in millimetres: the profile is not written.
    WithoutProfile {
        /// Section width.
        width: Quantity<Inch>,
        /// Section height as per cent of the width, as such tires were usually made.
        usual_profile: f64,
        /// Rim diameter.
        rim: Quantity<Inch>,
    },
}

/// How far a diameter reckoned from the size can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trust {
    /// Follows from the size; the tire itself may differ by half an inch.
    Nominal,
    /// Rests on a profile that is not written on the tire (memory, low): measure.
    Guess,
}

impl Size {
    /// Outside diameter, not loaded: rim + 2 × width × profile / 100 (metric), or as written (flotation).
    ///
    /// Source: ISO 4000-1 in inches (memory, high); the rest by the notation itself.
    pub fn diameter(&self) -> (Quantity<Inch>, Trust) {
        match *self {
            Self::Metric { width, profile, rim } => (around(width.to_inches(), profile, rim), Trust::Nominal),
            Self::Flotation { diameter, .. } => (diameter, Trust::Nominal),
            Self::WithoutProfile { width, usual_profile, rim } => (around(width, usual_profile, rim), Trust::Guess),
        }
    }
}

fn around(width: Quantity<Inch>, profile: f64, rim: Quantity<Inch>) -> Quantity<Inch> {
    rim + width * (2.0 * profile / 100.0)
}

/// Prints the size in one plain form, without make-up such as `P` or `ZR`.
impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Metric { width, profile, rim } => write!(f, "{}/{profile}R{}", width.value(), rim.value()),
            Self::Flotation { diameter, width, rim } => {
                write!(f, "{}x{:.2}R{}", diameter.value(), width.value(), rim.value())
            }
            Self::WithoutProfile { width, rim, .. } => write!(f, "{:.2}-{}", width.value(), rim.value()),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn size(typed: &str) -> Size {
        typed.parse().unwrap_or_else(|unread| panic!("{unread}"))
    }

    #[test]
    fn a_profile_that_is_not_written_is_a_guess_and_says_so() {
        assert_eq!(size("275/60R15").diameter().1, Trust::Nominal);
        for (typed, near) in [("7.00-15", 28.0), ("6.50-16", 28.0), ("7.75-14", 26.9), ("185R14", 26.0)] {
            let (diameter, trust) = size(typed).diameter();
            assert_eq!(trust, Trust::Guess, "{typed}");
            assert!((diameter.value() - near).abs() < 0.6, "{typed}: {diameter}");
        }
    }

    proptest! {
        #[test]
        fn the_tread_stands_two_sidewalls_outside_the_rim(width in 14u32..50, profile in 5u32..20, rim in 12u32..24) {
            let (width, profile) = (width * 10 + 5, profile * 5);
            // In hundredths of a millimetre, whole numbers: rim × 25.4 and two heights.
            let hundredths = rim * 2540 + 2 * width * profile;
            let reckoned = size(&format!("{width}/{profile}R{rim}")).diameter().0;
            prop_assert!(same(reckoned.to_millimetres().value(), f64::from(hundredths) / 100.0));
        }
    }
}
