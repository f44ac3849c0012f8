//! What units are called in a sentence, their own and those that a shop meets elsewhere.

use super::spelling;

/// A unit's symbol and its name in a sentence: "a number of inches".
const NAMES: &[(&str, &str)] = &[
    ("in", "inches"),
    ("mm", "millimeters"),
    ("diameters", "bolt diameters"),
    ("in²", "square inches"),
    ("lb-ft", "pound-feet"),
    ("lbf", "pounds of force"),
    ("lb", "pounds"),
    ("kg", "kilograms"),
    ("rpm", "revolutions a minute"),
    ("psi", "pounds a square inch"),
    ("inHg", "inches of mercury"),
    ("°", "degrees"),
    ("qt", "quarts"),
    ("s", "seconds"),
    ("min", "minutes"),
    ("s/qt", "seconds a quart"),
    ("mi", "miles"),
    ("mph", "miles an hour"),
    ("V", "volts"),
    ("kW", "kilowatts"),
    ("°C", "degrees Celsius"),
    ("N", "newtons"),
    ("MPa", "megapascals"),
    ("in³", "cubic inches"),
    ("kg/m³", "kilograms a cubic meter"),
];

/// Units no fact is kept in: their names, and how they are written.
const ELSEWHERE: &[(&str, &[&str])] = &[
    ("centimeters", &["cm", "centimeter", "centimeters", "centimetre", "centimetres"]),
    ("meters", &["m", "meter", "meters", "metre", "metres"]),
    ("feet", &["ft", "foot", "feet", "'"]),
    ("newton-meters", &["nm", "n m", "n-m", "n·m", "newton-meters", "newton-metres"]),
    ("pound-inches", &["in-lb", "in lb", "in-lbs", "in lbs", "inch-pounds", "inch pounds"]),
    ("horsepower", &["hp", "bhp", "horsepower"]),
    ("tons", &["t", "ton", "tons", "tonne", "tonnes"]),
    ("bar", &["bar"]),
    ("kilopascals", &["kpa"]),
    ("liters", &["l", "liter", "liters", "litre", "litres"]),
    ("gallons", &["gal", "gallon", "gallons"]),
    ("pints", &["pt", "pint", "pints"]),
    ("hours", &["h", "hr", "hrs", "hour", "hours"]),
    ("kilometers an hour", &["km/h", "kmh", "kph"]),
    ("kilometers", &["km", "kilometer", "kilometers", "kilometre", "kilometres"]),
    ("degrees Fahrenheit", &["°f", "f", "fahrenheit"]),
];

/// The name of the unit with this symbol; none for a bare ratio.
pub fn unit_in_words(symbol: &str) -> Option<&'static str> {
    NAMES.iter().find(|(own, _)| *own == symbol).map(|(_, name)| *name)
}

/// How many of the unit `written`, in lower case, make one of the unit with this symbol: 1 for another way to write
/// it, 1000 for its thousandths; none for a unit that would have to be converted.
pub fn parts_in_one(written: &str, symbol: &str) -> Option<f64> {
    let found = spelling::find_by_symbol(written, symbol)?;
    Some(found.over).filter(|over| found.times == 1.0 && [1.0, 1000.0].contains(over))
}

/// The name of the unit that `written`, in lower case, usually means.
pub fn unit_named(written: &str) -> Option<&'static str> {
    let is = |symbol: &str| !written.is_empty() && parts_in_one(written, symbol) == Some(1.0);
    let own = NAMES.iter().find(|(symbol, _)| is(symbol)).map(|(_, name)| *name);
    let elsewhere = || ELSEWHERE.iter().find(|(_, spellings)| spellings.contains(&written)).map(|(name, _)| *name);
    own.or_else(elsewhere)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn another_unit_is_told_from_the_own_one() {
        for (written, symbol) in [("in", "in"), ("\"", "in"), ("ft-lb", "lb-ft"), ("lbs", "lb"), ("", "in")] {
            assert_eq!(parts_in_one(written, symbol), Some(1.0), "{written}");
        }
        for (written, symbol, name) in [
            ("mm", "in", "millimeters"),
            ("ft", "in", "feet"),
            ("in", "mm", "inches"),
            ("nm", "lb-ft", "newton-meters"),
            ("in-lb", "lb-ft", "pound-inches"),
            ("kg", "lb", "kilograms"),
            ("km/h", "mph", "kilometers an hour"),
            ("kpa", "psi", "kilopascals"),
            ("l", "qt", "liters"),
        ] {
            assert_eq!(parts_in_one(written, symbol), None, "{written}");
            assert_eq!(unit_named(written), Some(name));
        }
        assert_eq!(parts_in_one("thou", "in"), Some(1000.0));
        for nothing in ["", "or so", ":1"] {
            assert_eq!(unit_named(nothing), None, "{nothing}");
        }
    }
}
