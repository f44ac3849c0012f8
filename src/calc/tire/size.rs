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
    /// `7.00-15`: the profile is not written.
    WithoutProfile {
        /// Section width.
        width: Quantity<Inch>,
        /// Section height as per cent of the width, as such tires were usually made.
        usual_profile: f64,
        /// Rim diameter.
        rim: Quantity<Inch>,
    },
    /// `185R14`: the width is in millimetres, and the profile is not written.
    MetricWithoutProfile {
        /// Section width.
        width: Quantity<Millimetre>,
        /// Rim diameter.
        rim: Quantity<Inch>,
    },
}

/// Section height of a radial without a written profile, as per cent of its width, as such tires were usually made
/// (memory, low).
pub(super) const USUAL_RADIAL: f64 = 82.0;

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
            Self::MetricWithoutProfile { width, rim } => (around(width.to_inches(), USUAL_RADIAL, rim), Trust::Guess),
        }
    }
}

fn around(width: Quantity<Inch>, profile: f64, rim: Quantity<Inch>) -> Quantity<Inch> {
    rim + width * (2.0 * profile / 100.0)
}

/// With two decimals, as it stands on the sidewall; with more only where there are more.
fn decimals(width: Quantity<Inch>) -> String {
    let two = format!("{:.2}", width.value());
    if two.parse() == Ok(width.value()) { two } else { width.value().to_string() }
}

/// Prints the size in one plain form, without make-up such as `P` or `ZR`, that reads back the same.
impl fmt::Display for Size {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Metric { width, profile, rim } => write!(f, "{}/{profile}R{}", width.value(), rim.value()),
            Self::Flotation { diameter, width, rim } => {
                write!(f, "{}x{}R{}", diameter.value(), decimals(*width), rim.value())
            }
            Self::WithoutProfile { width, rim, .. } => write!(f, "{}-{}", decimals(*width), rim.value()),
            Self::MetricWithoutProfile { width, rim } => write!(f, "{}R{}", width.value(), rim.value()),
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
