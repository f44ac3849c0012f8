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

fn with_unit<U: Unit>(number: String) -> String {
    if U::SYMBOL.is_empty() { number } else { format!("{number} {}", U::SYMBOL) }
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
