//! How long a dated safety label is good.

use jiff::ToSpan;
use jiff::civil::Date;

/// The last day a label is good: the end of its month, so many years later.
///
/// Years by the program the label names (memory, medium): a flexplate of 29.1 three, a transmission shield of 4.1 and a
/// flexplate shield of 30.1 five. The label and the issuer's current list come first. `None` past
/// the end of the calendar.
pub fn good_until(month_on_label: Date, years: i16) -> Option<Date> {
    Some(month_on_label.checked_add(i32::from(years).years()).ok()?.last_of_month())
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;
    use proptest::prelude::*;

    #[test]
    fn agrees_with_the_handbook_and_with_leap_years() {
        // Shop handbook: 2024-11 and five years is the end of November 2029.
        assert_eq!(good_until(date(2024, 11, 1), 5), Some(date(2029, 11, 30)));
        assert_eq!(good_until(date(2025, 2, 1), 3), Some(date(2028, 2, 29)));
        assert_eq!(good_until(date(2024, 2, 29), 3), Some(date(2027, 2, 28)));
        assert_eq!(good_until(date(9998, 1, 1), 5), None);
    }

    proptest! {
        #[test]
        fn the_day_within_the_month_does_not_matter(year in 1990i16..2090, month in 1i8..=12, day in 1i8..=28, years in 0i16..20) {
            let end = good_until(date(year, month, day), years).expect("on the calendar");
            prop_assert_eq!(Some(end), good_until(date(year, month, 1), years));
            prop_assert_eq!((end.year(), end.month()), (year + years, month));
            prop_assert_eq!(end.tomorrow().expect("a day").day(), 1);
        }
    }
}
