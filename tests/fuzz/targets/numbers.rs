//! Numbers with units, and tire sizes.

use crate::is_said;
use endplay::calc::tire::Size;
use endplay::quantity::{
    Celsius, CubicInch, Degree, Inch, MilePerHour, Millimetre, NewtonMetre, One, PoundFoot, PoundForce, Psi, Quantity,
    Quart, Rpm, SecondPerQuart, TurnPerMile, Unit, Volt,
};

/// A number typed into a field of each unit.
pub fn quantity(text: &str) {
    of::<Inch>(text);
    of::<Millimetre>(text);
    of::<One>(text);
    of::<Degree>(text);
    of::<Rpm>(text);
    of::<PoundFoot>(text);
    of::<NewtonMetre>(text);
    of::<PoundForce>(text);
    of::<Psi>(text);
    of::<Volt>(text);
    of::<Quart>(text);
    of::<Celsius>(text);
    of::<CubicInch>(text);
    of::<MilePerHour>(text);
    of::<SecondPerQuart>(text);
    of::<TurnPerMile>(text);
    if let Ok(length) = Quantity::<Inch>::from_typed(text)
        && let Some(fraction) = length.to_fraction()
    {
        assert_eq!(Quantity::from_typed(&fraction), Ok(length), "{text} prints {fraction}");
    }
}

fn of<U: Unit>(text: &str) {
    match Quantity::<U>::from_typed(text) {
        Ok(read) => {
            assert!(read.value().is_finite(), "{text}");
            // What is printed is cut to what a person reads, and that reads back as what it says.
            let printed = read.to_string();
            let again = Quantity::<U>::from_typed(&printed).map(|again| again.to_string());
            assert_eq!(again.as_ref(), Ok(&printed), "{text} prints {printed}");
        }
        Err(unread) => is_said(&unread.to_string()),
    }
}

/// A tire size.
pub fn tire(text: &str) {
    match text.parse::<Size>() {
        Ok(size) => {
            let printed = size.to_string();
            assert_eq!(printed.parse(), Ok(size), "{text} prints {printed}");
        }
        Err(unread) => is_said(&unread.to_string()),
    }
}
