//! Inches and millimetres: the two lengths on the bench, and the way between them.

use super::{Inch, Millimetre, Quantity, SquareInch, SquareMillimetre, Unit};

/// A unit of length, with the unit its squares are counted in.
pub trait Length: Unit {
    /// The unit of an area whose sides are in this unit.
    type Area: Unit;
    /// How many of this unit make one inch; exact.
    const IN_ONE_INCH: f64;
}

impl Length for Inch {
    type Area = SquareInch;
    const IN_ONE_INCH: f64 = 1.0;
}

impl Length for Millimetre {
    type Area = SquareMillimetre;
    const IN_ONE_INCH: f64 = 25.4;
}

impl<U: Length> Quantity<U> {
    /// The same length in inches.
    pub fn to_inches(self) -> Quantity<Inch> {
        Quantity::new(self.value() / U::IN_ONE_INCH)
    }

    /// The same length in millimetres.
    pub fn to_millimetres(self) -> Quantity<Millimetre> {
        Quantity::new(self.value() / U::IN_ONE_INCH * Millimetre::IN_ONE_INCH)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_inch_is_25_4_millimetres_exactly() {
        assert_eq!(Quantity::<Inch>::new(1.0).to_millimetres().value(), 25.4);
        assert_eq!(Quantity::<Millimetre>::new(25.4).to_inches().value(), 1.0);
        assert_eq!(Quantity::<Inch>::new(0.3125).to_millimetres().value(), 7.9375);
        assert_eq!(Quantity::<Inch>::new(0.31).to_inches().value(), 0.31);
    }
}
