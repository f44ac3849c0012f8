//! One reading in a line, as sheet and history tell it.

use crate::plan::sheet::{Read, Scale, measurement_named};
use crate::service::Reading;
use crate::web::moment::{day, moment};
use jiff::tz::TimeZone;

/// One reading.
pub struct Line {
    /// The ticket it was taken on.
    pub ticket: i64,
    /// What it came to, with its unit.
    pub said: String,
    /// What was typed, reading by reading, with the spread when there were several.
    pub typed: String,
    /// What was said of it on that day.
    pub verdict: String,
    /// What it was held against on that day; empty for nothing.
    pub held_against: String,
    /// What was in the unit; empty for most.
    pub fitted: String,
    /// With what; says so when nobody wrote it down.
    pub instrument: String,
    /// That the instrument was past its date; empty when it was not.
    pub past_due: String,
    /// What was chosen by it; empty for nothing.
    pub chosen: String,
    /// Who and when.
    pub who: String,
    /// That it was struck, why and by whom; empty for most.
    pub struck: String,
    /// Which reading of its measurement it is.
    pub turn: i32,
}

impl Line {
    /// The line of a reading.
    pub fn of(reading: &Reading, zone: &TimeZone) -> Self {
        let (scale, asked) = measurement_named(&reading.measurement)
            .map_or((Scale::Length, 1), |measurement| (measurement.scale, measurement.readings));
        let typed: Vec<_> = reading.taken.iter().map(as_typed).collect();
        let apart = match typed.len() {
            1 if asked > 1 => "; one reading has no spread".to_owned(),
            1 => String::new(),
            _ => format!("; {} apart at the most", scale.say(reading.spread)),
        };
        let fitted: Vec<_> = reading.fitted.iter().map(as_typed).collect();
        Self {
            ticket: reading.ticket,
            said: scale.say(reading.number),
            typed: format!("read {}{apart}", typed.join(", ")),
            verdict: reading.verdict.clone(),
            held_against: reading.held_against.clone(),
            fitted: if fitted.is_empty() { String::new() } else { format!("fitted then: {}", fitted.join(", ")) },
            instrument: if reading.instrument.is_some() {
                format!("with {}", reading.instrument_name)
            } else {
                "nobody wrote down with which instrument".to_owned()
            },
            past_due: past_due(reading),
            chosen: reading.chosen.as_ref().map_or_else(String::new, |chosen| {
                let fits = if chosen.fits { "" } else { ", which does not fit" };
                format!("{} was chosen, to leave {}{fits} ({})", chosen.part, chosen.leaves, chosen.made_by)
            }),
            who: format!("{}, {}", reading.made_by, moment(reading.at, zone)),
            struck: reading.struck.as_ref().map_or_else(String::new, |struck| {
                let at = moment(struck.at, zone);
                format!("Struck out by {}, {at}: {}", struck.made_by, struck.reason)
            }),
            turn: reading.turn,
        }
    }
}

/// What is said for ever of a reading that was taken with an instrument past its date.
pub fn past_due(reading: &Reading) -> String {
    match (reading.past_due, reading.due) {
        (false, _) => String::new(),
        (true, Some(due)) => {
            format!("Taken with an instrument past its calibration date: it was good through {}.", day(due))
        }
        (true, None) => "Taken with an instrument past its calibration date.".to_owned(),
    }
}

fn as_typed(read: &Read) -> String {
    if read.typed.ends_with(|sign: char| sign.is_ascii_digit() || sign == '.') {
        format!("{} {}", read.typed, read.unit)
    } else {
        read.typed.clone()
    }
}
