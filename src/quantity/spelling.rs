//! The ways a unit is written by hand, and what each is worth.

use super::Unit;

/// What a written unit is worth in the field's own: × `times` / `over`, each exact as far as the units are.
#[derive(Clone, Copy)]
pub(super) struct Spelling {
    pub(super) times: f64,
    pub(super) over: f64,
}

/// A field's symbol; spellings; times; over.
type Row = (&'static str, &'static [&'static str], f64, f64);

/// Lower case throughout: typed text is lowered before it is looked up.
///
/// Inch 25.4 mm, pound 0.45359237 kg, mile 1.609344 km, gallon 231 in³ (all
/// exact, standard); pound-force foot 1.3558179483314 N·m; psi 6.894757293168 kPa.
const ROWS: &[Row] = &[
    ("in", &["in", "inch", "inches", "\""], 1.0, 1.0),
    ("in", &["thou", "thousandth", "thousandths"], 1.0, 1000.0),
    ("in", &["mm"], 1.0, 25.4),
    ("mm", &["mm", "millimeter", "millimeters", "millimetre", "millimetres"], 1.0, 1.0),
    ("mm", &["in", "inch", "inches", "\""], 25.4, 1.0),
    ("diameters", &["d", "diameter", "diameters"], 1.0, 1.0),
    ("in²", &["in²", "in2", "sq in", "square inch", "square inches"], 1.0, 1.0),
    ("lb-ft", &["lb-ft", "lb ft", "lbft", "lb·ft", "lbs-ft", "lbs ft", "ft-lb", "ft lb", "ftlb"], 1.0, 1.0),
    ("lb-ft", &["ft-lbs", "ft lbs", "ftlbs", "foot-pounds", "foot pounds", "pound-feet", "pound feet"], 1.0, 1.0),
    ("lb-ft", &["in-lb", "in lb", "in-lbs", "in lbs", "inch-pounds", "inch pounds"], 1.0, 12.0),
    ("lb-ft", &["nm", "n m", "n·m", "n-m"], 1.0, 1.355_817_948_331_4),
    ("lbf", &["lbf", "lb", "lbs", "pound", "pounds"], 1.0, 1.0),
    ("lb", &["lb", "lbs", "pound", "pounds"], 1.0, 1.0),
    ("lb", &["kg"], 1.0, 0.453_592_37),
    ("kg", &["kg", "kilogram", "kilograms"], 1.0, 1.0),
    ("kg", &["lb", "lbs", "pound", "pounds"], 0.453_592_37, 1.0),
    ("rpm", &["rpm", "r/min"], 1.0, 1.0),
    ("psi", &["psi"], 1.0, 1.0),
    ("psi", &["kpa"], 1.0, 6.894_757_293_168),
    ("psi", &["bar"], 100.0, 6.894_757_293_168),
    ("inHg", &["inhg", "in hg", "in-hg", "\" hg", "\"hg"], 1.0, 1.0),
    ("°", &["°", "deg", "degree", "degrees"], 1.0, 1.0),
    ("qt", &["qt", "qts", "quart", "quarts"], 1.0, 1.0),
    ("qt", &["l", "liter", "liters", "litre", "litres"], 1.0, 0.946_352_946),
    ("s", &["s", "sec", "secs", "second", "seconds"], 1.0, 1.0),
    ("min", &["min", "mins", "minute", "minutes"], 1.0, 1.0),
    ("s/qt", &["s/qt", "s", "sec", "seconds"], 1.0, 1.0),
    ("mi", &["mi", "mile", "miles"], 1.0, 1.0),
    ("mi", &["km"], 1.0, 1.609_344),
    ("mph", &["mph"], 1.0, 1.0),
    ("mph", &["km/h", "kmh", "kph"], 1.0, 1.609_344),
    ("V", &["v", "volt", "volts"], 1.0, 1.0),
    ("kW", &["kw"], 1.0, 1.0),
    ("hp", &["hp", "bhp", "horsepower"], 1.0, 1.0),
    ("N·m", &["nm", "n m", "n-m", "n·m", "newton-meters", "newton-metres"], 1.0, 1.0),
    ("N·m", &["lb-ft", "lb ft", "lbft", "ft-lb", "ft lb", "ft-lbs", "ft lbs"], 1.355_817_948_331_4, 1.0),
    ("°C", &["°c", "c", "deg c", "celsius"], 1.0, 1.0),
    ("", &[":1", "x"], 1.0, 1.0),
];

/// Units in which thousands are usual, so that `1,900` means one thing only.
const IN_THOUSANDS: &[&str] = &["rpm", "lb-ft", "lbf", "lb", "psi", "mi"];

/// What `written` is worth in the unit `U`; nothing written is `U` itself.
pub(super) fn find<U: Unit>(written: &str) -> Option<Spelling> {
    find_by_symbol(written, U::SYMBOL)
}

/// The same for the unit with this symbol.
pub(super) fn find_by_symbol(written: &str, symbol: &str) -> Option<Spelling> {
    if written.is_empty() || written == symbol.to_lowercase() {
        return Some(Spelling { times: 1.0, over: 1.0 });
    }
    ROWS.iter()
        .find(|(own, spellings, ..)| *own == symbol && spellings.contains(&written))
        .map(|&(_, _, times, over)| Spelling { times, over })
}

/// Whether `1,900` is read as nineteen hundred.
pub(super) fn groups_thousands(symbol: &str) -> bool {
    IN_THOUSANDS.contains(&symbol)
}

/// What to type in a field of the unit `U`, for a message or a hint.
pub fn how_to_write<U: Unit>() -> String {
    match U::SYMBOL {
        "in" => "inches such as 0.031, 5/32, 1-1/2 or 31 thou, or millimeters such as 4 mm".to_owned(),
        "mm" => "millimeters such as 8.5, or inches such as 5/16 in".to_owned(),
        "" => "a plain number such as 3.73".to_owned(),
        symbol => {
            format!("a number in {symbol}, such as {}", if groups_thousands(symbol) { "120" } else { "5 or 2.5" })
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::*;

    #[test]
    fn every_unit_reads_what_it_prints() {
        fn reads<U: Unit>() {
            let printed = Quantity::<U>::new(1.5).to_string();
            assert_eq!(Quantity::<U>::from_typed(&printed), Ok(Quantity::new(1.5)), "{printed}");
            assert!(!how_to_write::<U>().is_empty());
        }
        reads::<Inch>();
        reads::<Millimetre>();
        reads::<Diameter>();
        reads::<SquareInch>();
        reads::<PoundFoot>();
        reads::<PoundForce>();
        reads::<PoundMass>();
        reads::<Kilogram>();
        reads::<Rpm>();
        reads::<Psi>();
        reads::<InchMercury>();
        reads::<Degree>();
        reads::<Quart>();
        reads::<Second>();
        reads::<Minute>();
        reads::<SecondPerQuart>();
        reads::<Mile>();
        reads::<MilePerHour>();
        reads::<Volt>();
        reads::<Kilowatt>();
        reads::<Celsius>();
        reads::<AtCelsius>();
        reads::<Newton>();
        reads::<NewtonMetre>();
        reads::<Megapascal>();
        reads::<Horsepower>();
        reads::<CubicInch>();
        reads::<KilogramPerCubicMetre>();
        reads::<KilojoulePerKilogramCelsius>();
        reads::<One>();
    }

    #[test]
    fn rows_are_lower_case_and_no_spelling_means_two_things_in_one_field() {
        for (index, (symbol, spellings, ..)) in ROWS.iter().enumerate() {
            for spelling in *spellings {
                assert_eq!(*spelling, spelling.to_lowercase());
                let twice =
                    ROWS[index + 1..].iter().any(|(other, also, ..)| other == symbol && also.contains(spelling));
                assert!(!twice, "{spelling} stands twice under {symbol}");
            }
        }
    }

    #[test]
    fn conversions_agree_with_the_definitions() {
        let worth = |spelling: Option<Spelling>| spelling.map_or(f64::NAN, |found| found.times / found.over);
        // A quart is 57.75 in³; a liter holds a cube of 10 cm.
        let liter_in_quarts = (10.0_f64 / 2.54).powi(3) / 57.75;
        assert!((worth(find::<Quart>("l")) / liter_in_quarts - 1.0).abs() < 1e-12);
        // A pound-force is 0.45359237 kg × 9.80665 m/s²; a foot is 0.3048 m, an inch 0.0254 m.
        let pound_force = 0.453_592_37 * 9.806_65;
        assert!((worth(find::<PoundFoot>("nm")) * pound_force * 0.3048 - 1.0).abs() < 1e-12);
        let pascals = pound_force / (0.0254 * 0.0254);
        assert!((worth(find::<Psi>("kpa")) * pascals / 1000.0 - 1.0).abs() < 1e-12);
        assert!((worth(find::<Psi>("bar")) * pascals / 100_000.0 - 1.0).abs() < 1e-12);
    }
}
