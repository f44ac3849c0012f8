//! Lengths, torques, speeds, pressures, money: numbers that know their unit.
//!
//! A [`Quantity`] carries its unit in its type, so that inches never meet
//! millimetres unseen. The stored number is always in the unit of the type;
//! conversion happens only through the named functions.

mod length;
mod metric;
mod money;
mod print;
mod spelling;
mod typed;
mod unit;
mod words;

pub use length::Length;
pub use money::Cents;
pub use print::{said, short, with_symbol};
pub use spelling::how_to_write;
pub use typed::{Unread, cut, number_and_unit};
pub use unit::{
    AtCelsius, Celsius, CubicInch, Degree, Diameter, Hertz, Horsepower, Inch, InchMercury, Kilogram,
    KilogramPerCubicMetre, KilojoulePerKilogramCelsius, Kilowatt, Megapascal, Mile, MilePerHour, Millimetre, Minute,
    Newton, NewtonMetre, One, PoundFoot, PoundForce, PoundMass, PoundPerCubicInch, Psi, Quart, RadianPerSecondSquared,
    Rpm, Second, SecondPerQuart, SquareInch, SquareMillimetre, TurnPerMile, Unit, Volt,
};
pub use words::{parts_in_one, unit_in_words, unit_named};

use std::fmt;
use std::marker::PhantomData;

/// A finite number in the unit `U`.
pub struct Quantity<U> {
    value: f64,
    unit: PhantomData<U>,
}

impl<U> Quantity<U> {
    /// Takes a number that is already in the unit `U`.
    pub const fn new(value: f64) -> Self {
        Self { value, unit: PhantomData }
    }

    /// The bare number, in the unit `U`.
    pub const fn value(self) -> f64 {
        self.value
    }

    /// The size without its sign.
    pub const fn abs(self) -> Self {
        Self::new(self.value.abs())
    }
}

impl<U> Clone for Quantity<U> {
    fn clone(&self) -> Self {
        *self
    }
}
impl<U> Copy for Quantity<U> {}
/// To the last digit, and so is order: a rule is its expression as it is written, and whoever works it out elsewhere has to
/// come to the same, at the very limit too.
impl<U> PartialEq for Quantity<U> {
    fn eq(&self, other: &Self) -> bool {
        self.value == other.value
    }
}
impl<U> PartialOrd for Quantity<U> {
    fn partial_cmp(&self, other: &Self) -> Option<std::cmp::Ordering> {
        self.value.partial_cmp(&other.value)
    }
}
impl<U> std::ops::Add for Quantity<U> {
    type Output = Self;
    fn add(self, other: Self) -> Self {
        Self::new(self.value + other.value)
    }
}
impl<U> std::ops::Sub for Quantity<U> {
    type Output = Self;
    fn sub(self, other: Self) -> Self {
        Self::new(self.value - other.value)
    }
}
impl<U> std::ops::Mul<f64> for Quantity<U> {
    type Output = Self;
    fn mul(self, factor: f64) -> Self {
        Self::new(self.value * factor)
    }
}
/// Two quantities of one unit divide to a bare ratio.
impl<U> std::ops::Div for Quantity<U> {
    type Output = f64;
    fn div(self, other: Self) -> f64 {
        self.value / other.value
    }
}
impl<U: Unit> fmt::Debug for Quantity<U> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}
/// Prints what [`said`] says.
impl<U: Unit> fmt::Display for Quantity<U> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&said(self.value, U::SYMBOL))
    }
}

/// A number as it is written down: to a millionth of its unit. What was converted or worked out has more digits than
/// anybody read or meant.
pub fn written_down(value: f64) -> f64 {
    // Numbers so large that a double has hardly such digits stay as they are.
    if value.abs() < 1e6 { (value * 1e6).round() / 1e6 } else { value }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_written_down_keeps_a_millionth() {
        assert_eq!(written_down(0.18 / 25.4), 0.007_087);
        assert_eq!(written_down(0.457_2 / 25.4), 0.018);
        assert_eq!(written_down(5.2 * 100.0 / 6.894_757_293_168), 75.419_624);
        for exact in [0.0, 0.0001, 0.018, 2800.0, -0.25, 1.0 / 64.0, 1e300] {
            assert_eq!(written_down(exact), exact);
        }
    }
}
