//! Holes a bolt passes through: close, normal, loose.

use super::table::Drill;
use crate::quantity::{Inch, Length, Millimetre, Quantity};

/// How freely the bolt passes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    /// Holds the parts in place by the bolts.
    Close,
    /// The usual hole.
    Normal,
    /// Takes up holes that do not line up well.
    Loose,
}

impl Fit {
    /// From the smallest hole to the largest.
    pub const ALL: [Self; 3] = [Self::Close, Self::Normal, Self::Loose];

    /// Tolerance class of the hole (standard: ASME B18.2.8, ISO 273).
    pub const fn tolerance_class(self) -> &'static str {
        match self {
            Self::Close => "H12",
            Self::Normal => "H13",
            Self::Loose => "H14",
        }
    }
}

/// The three holes for one size of bolt.
#[derive(Clone, Copy, Debug)]
pub struct Holes<U: Length> {
    /// Size of the bolt: `5/16`, `M8`.
    pub size: &'static str,
    /// Its major diameter.
    pub major: Quantity<U>,
    close: Drill<U>,
    normal: Drill<U>,
    loose: Drill<U>,
    /// Largest hole that is still loose and not merely wrong, where it was read.
    pub loosest: Option<Quantity<U>>,
}

impl<U: Length> Holes<U> {
    /// The drill for a fit.
    pub const fn drill(&self, fit: Fit) -> Drill<U> {
        match fit {
            Fit::Close => self.close,
            Fit::Normal => self.normal,
            Fit::Loose => self.loose,
        }
    }
}

type Stamped = (&'static str, f64);

const fn drill<U: Length>(stamped: Stamped) -> Drill<U> {
    Drill { name: stamped.0, diameter: Quantity::new(stamped.1) }
}

const fn holes<U: Length>(size: &'static str, major: f64, drills: [Stamped; 3], loosest: Option<f64>) -> Holes<U> {
    Holes {
        size,
        major: Quantity::new(major),
        close: drill(drills[0]),
        normal: drill(drills[1]),
        loose: drill(drills[2]),
        loosest: match loosest {
            Some(most) => Some(Quantity::new(most)),
            None => None,
        },
    }
}

/// Inch bolts.
///
/// Standard: ASME B18.2.8; drills from a public fastener data package, the
/// normal ones and the limits of loose holes also looked up in the
/// machinists' handbook, 31st ed., table 1a.
pub const INCH: &[Holes<Inch>] = &[
    holes("1/4", 0.25, [("17/64", 0.265625), ("9/32", 0.28125), ("19/64", 0.296875)], Some(0.311)),
    holes("5/16", 0.3125, [("21/64", 0.328125), ("11/32", 0.34375), ("23/64", 0.359375)], Some(0.373)),
    holes("3/8", 0.375, [("25/64", 0.390625), ("13/32", 0.40625), ("27/64", 0.421875)], Some(0.438)),
    holes("7/16", 0.4375, [("29/64", 0.453125), ("15/32", 0.46875), ("31/64", 0.484375)], Some(0.500)),
    holes("1/2", 0.5, [("17/32", 0.53125), ("9/16", 0.5625), ("39/64", 0.609375)], Some(0.625)),
];

/// Metric bolts.
///
/// Standard: ISO 273; M12 normal and loose memory, high, and borne out by the
/// inch drills of the handbook. A public data package that prints 14 and 15 mm
/// for M12 is wrong.
pub const METRIC: &[Holes<Millimetre>] = &[
    holes("M6", 6.0, [("6.4 mm", 6.4), ("6.6 mm", 6.6), ("7 mm", 7.0)], None),
    holes("M8", 8.0, [("8.4 mm", 8.4), ("9 mm", 9.0), ("10 mm", 10.0)], None),
    holes("M10", 10.0, [("10.5 mm", 10.5), ("11 mm", 11.0), ("12 mm", 12.0)], None),
    holes("M12", 12.0, [("13 mm", 13.0), ("13.5 mm", 13.5), ("14.5 mm", 14.5)], None),
];

/// The holes for an inch bolt of this size, `5/16`.
pub fn inch(size: &str) -> Option<&'static Holes<Inch>> {
    INCH.iter().find(|row| row.size == size.trim())
}

/// The holes for a metric bolt of this size, `M8`.
pub fn metric(size: &str) -> Option<&'static Holes<Millimetre>> {
    METRIC.iter().find(|row| row.size.eq_ignore_ascii_case(size.trim()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_looser_fit_is_a_larger_hole_and_every_hole_passes_the_bolt() {
        fn sound<U: Length>(table: &[Holes<U>]) {
            for row in table {
                let [close, normal, loose] = Fit::ALL.map(|fit| row.drill(fit).diameter);
                assert!(row.major < close && close < normal && normal < loose, "{}", row.size);
                assert!(row.loosest.is_none_or(|most| most > loose), "{}", row.size);
                // No hole is so large that a washer of the usual kind falls in.
                assert!(loose.value() < 1.26 * row.major.value(), "{}", row.size);
            }
        }
        sound(INCH);
        sound(METRIC);
    }

    #[test]
    fn a_drill_is_worth_what_is_stamped_on_it() {
        for row in INCH {
            assert_eq!(Quantity::from_typed(row.size), Ok(row.major));
            for fit in Fit::ALL {
                assert_eq!(Quantity::from_typed(row.drill(fit).name), Ok(row.drill(fit).diameter));
            }
        }
        for row in METRIC {
            assert_eq!(row.size.trim_start_matches('M').parse(), Ok(row.major.value()));
            for fit in Fit::ALL {
                assert_eq!(Quantity::from_typed(row.drill(fit).name), Ok(row.drill(fit).diameter));
            }
        }
    }

    #[test]
    fn a_size_is_found_by_its_name_only() {
        assert_eq!(inch(" 3/8 ").map(|row| row.drill(Fit::Normal).name), Some("13/32"));
        assert_eq!(metric("m8").map(|row| row.drill(Fit::Close).name), Some("8.4 mm"));
        assert!(inch("M8").is_none() && metric("3/8").is_none());
    }
}
