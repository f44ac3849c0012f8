//! Quantities as a mechanic or a customer reads them.

use super::{Inch, One, Quantity, Unit};

impl<U: Unit> Quantity<U> {
    /// With so many decimals, then the unit: `0.060 in`, `708.3 turns/mile`.
    pub fn to_places(self, places: usize) -> String {
        with_unit::<U>(rounded(self.value(), places))
    }

    /// Whole, thousands marked, then the unit: `1,900 rpm`, `-5,460 rpm`.
    pub fn to_whole(self) -> String {
        let digits = rounded(self.value(), 0);
        let (sign, digits) = match digits.strip_prefix('-') {
            Some(digits) => ("-", digits),
            None => ("", digits.as_str()),
        };
        if !digits.bytes().all(|digit| digit.is_ascii_digit()) {
            return with_unit::<U>(format!("{sign}{digits}"));
        }
        let mut grouped = String::from(sign);
        for (place, digit) in digits.chars().enumerate() {
            if place > 0 && (digits.len() - place).is_multiple_of(3) {
                grouped.push(',');
            }
            grouped.push(digit);
        }
        with_unit::<U>(grouped)
    }
}

impl Quantity<Inch> {
    /// As drill and wrench sizes are written, `5/32 in` or `1-1/2 in`; `None` when it is no whole number of 64ths.
    pub fn to_fraction(self) -> Option<String> {
        let parts = self.value() * 64.0;
        // Beyond a thousand inches nobody writes fractions, and the parts stay exact below.
        if parts.fract() != 0.0 || parts.abs() > 64_000.0 {
            return None;
        }
        let sign = if parts < 0.0 { "-" } else { "" };
        let parts = parts.abs() as u32;
        let (whole, mut above, mut below) = (parts / 64, parts % 64, 64);
        while above.is_multiple_of(2) && below > 1 {
            (above, below) = (above / 2, below / 2);
        }
        Some(match (whole, above) {
            (whole, 0) => format!("{sign}{whole} in"),
            (0, above) => format!("{sign}{above}/{below} in"),
            (whole, above) => format!("{sign}{whole}-{above}/{below} in"),
        })
    }
}

impl Quantity<One> {
    /// A share in hundredths: 0.111 with one decimal is `11.1 %`.
    pub fn to_percent(self, places: usize) -> String {
        format!("{} %", rounded(self.value() * 100.0, places))
    }
}

/// A number with its unit, without the digits that only the machine sees: six digits, hundredths always, and no idle
/// noughts. `0.007087 in`, `75.4196 psi`, `2°`.
pub fn said(value: f64, symbol: &str) -> String {
    let places = match value.abs() {
        size if size < 1.0 => 6,
        size if size < 10.0 => 5,
        size if size < 100.0 => 4,
        size if size < 1000.0 => 3,
        _ => 2,
    };
    with_symbol(short(value, places), symbol)
}

/// A number with at most so many decimals and no idle noughts.
pub fn short(value: f64, places: usize) -> String {
    let printed = rounded(value, places);
    if printed.contains('.') { printed.trim_end_matches('0').trim_end_matches('.').to_owned() } else { printed }
}

fn with_unit<U: Unit>(number: String) -> String {
    with_symbol(number, U::SYMBOL)
}

/// A printed number with the symbol of its unit.
pub fn with_symbol(number: String, symbol: &str) -> String {
    match symbol {
        "" => number,
        "°" => format!("{number}°"),
        symbol => format!("{number} {symbol}"),
    }
}

/// Rounded for print, without the sign of a nought.
fn rounded(value: f64, places: usize) -> String {
    let printed = format!("{value:.places$}");
    let nought = printed.bytes().all(|sign| matches!(sign, b'-' | b'0' | b'.'));
    if nought { printed.trim_start_matches('-').to_owned() } else { printed }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::quantity::Rpm;
    use proptest::prelude::*;

    fn inches(value: f64) -> Quantity<Inch> {
        Quantity::new(value)
    }

    #[test]
    fn prints_what_a_bench_sheet_shows() {
        assert_eq!(inches(0.06).to_places(3), "0.060 in");
        assert_eq!(inches(-0.0004).to_places(3), "0.000 in", "no minus before a nought");
        assert_eq!(inches(-0.0006).to_places(3), "-0.001 in");
        assert_eq!(Quantity::<One>::new(2.48).to_places(2), "2.48");
        assert_eq!(Quantity::<One>::new(0.1116).to_percent(1), "11.2 %");
        for (value, printed) in [
            (0.0, "0 rpm"),
            (999.4, "999 rpm"),
            (999.6, "1,000 rpm"),
            (1900.0, "1,900 rpm"),
            (-5460.0, "-5,460 rpm"),
            (-0.2, "0 rpm"),
            (1_234_567.0, "1,234,567 rpm"),
            (f64::INFINITY, "inf rpm"),
        ] {
            assert_eq!(Quantity::<Rpm>::new(value).to_whole(), printed);
        }
    }

    #[test]
    fn a_converted_number_is_said_without_what_only_the_machine_sees() {
        for (value, symbol, printed) in [
            (0.18 / 25.4, "in", "0.007087 in"),
            (0.006 * 3.0, "in", "0.018 in"),
            (0.1 + 0.2, "", "0.3"),
            (520.0 / 6.894_757_293_168, "psi", "75.4196 psi"),
            (24.0 / 1.355_817_948_331_4, "lb-ft", "17.7015 lb-ft"),
            (2_798.333_333, "rpm", "2798.33 rpm"),
            (12_345.67, "", "12345.67"),
            (-2.0, "°", "-2°"),
            (-1e-17, "in", "0 in"),
            (100.0, "psi", "100 psi"),
            (1_000_000.0, "lb", "1000000 lb"),
        ] {
            assert_eq!(said(value, symbol), printed);
        }
    }

    #[test]
    fn fractions_come_only_from_whole_64ths() {
        for (value, printed) in [
            (0.15625, Some("5/32 in")),
            (1.5, Some("1-1/2 in")),
            (0.265_625, Some("17/64 in")),
            (2.0, Some("2 in")),
            (-0.75, Some("-3/4 in")),
            (0.0, Some("0 in")),
            (0.266, None),
            (0.1562, None),
            (f64::NAN, None),
        ] {
            assert_eq!(inches(value).to_fraction().as_deref(), printed, "{value}");
        }
    }

    proptest! {
        #[test]
        fn what_is_printed_reads_back(parts in -6400i32..6400, rpm in -1_000_000i32..1_000_000) {
            let length = inches(f64::from(parts) / 64.0);
            let printed = length.to_fraction().expect("a whole number of 64ths");
            prop_assert_eq!(Quantity::from_typed(&printed), Ok(length));
            let speed = Quantity::<Rpm>::new(rpm.into());
            prop_assert_eq!(Quantity::from_typed(&speed.to_whole()), Ok(speed));
        }
    }
}
