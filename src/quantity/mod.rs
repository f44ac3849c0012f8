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
/// Prints the shortest number that reads back the same, then the unit.
impl<U: Unit> fmt::Display for Quantity<U> {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if U::SYMBOL.is_empty() { write!(f, "{}", self.value) } else { write!(f, "{} {}", self.value, U::SYMBOL) }
    }
}
