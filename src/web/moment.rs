//! Days and times as the shop reads them, in the shop's own zone.

use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;

/// The shop's zone; UTC when the name it was set up with is not known on this machine.
pub fn zone(name: &str) -> TimeZone {
    TimeZone::get(name).unwrap_or(TimeZone::UTC)
}

/// `3 Nov 2026, 14:32`.
pub fn moment(at: Timestamp, zone: &TimeZone) -> String {
    at.to_zoned(zone.clone()).strftime("%-d %b %Y, %H:%M").to_string()
}

/// `14:32`.
pub fn clock(at: Timestamp, zone: &TimeZone) -> String {
    at.to_zoned(zone.clone()).strftime("%H:%M").to_string()
}

/// `Tue 3 Nov 2026`.
pub fn day(date: Date) -> String {
    date.strftime("%a %-d %b %Y").to_string()
}

/// The day it is in the shop.
pub fn today(now: Timestamp, zone: &TimeZone) -> Date {
    now.to_zoned(zone.clone()).date()
}

/// How far a promised day is away, in words: `today`, `in 3 days`, `2 days overdue`.
pub fn until(promised: Date, today: Date) -> String {
    let days = (promised - today).get_days();
    match days {
        0 => "today".to_owned(),
        1 => "tomorrow".to_owned(),
        -1 => "1 day overdue".to_owned(),
        ..0 => format!("{} days overdue", -days),
        _ => format!("in {days} days"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use jiff::civil::date;

    #[test]
    fn a_promise_says_how_far_away_it_is() {
        let today = date(2026, 11, 25);
        for (promised, words) in [
            (date(2026, 11, 25), "today"),
            (date(2026, 11, 26), "tomorrow"),
            (date(2026, 12, 2), "in 7 days"),
            (date(2026, 11, 24), "1 day overdue"),
            (date(2026, 10, 26), "30 days overdue"),
        ] {
            assert_eq!(until(promised, today), words);
        }
    }

    #[test]
    fn times_are_told_in_the_shops_zone() {
        let at: Timestamp = "2026-11-03T03:04:00Z".parse().expect("a time");
        assert_eq!(moment(at, &zone("America/Denver")), "2 Nov 2026, 20:04");
        assert_eq!(clock(at, &zone("nowhere at all")), "03:04");
        assert_eq!(today(at, &zone("America/Denver")), date(2026, 11, 2));
    }
}
