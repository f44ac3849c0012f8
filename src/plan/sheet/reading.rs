//! A number as it was read off an instrument and typed: read in the shop's own unit, and doubted when it cannot be right.
//!
//! Nothing is set right silently. What cannot be is refused; what is unlikely is asked about, with what it would be if
//! the point had slipped or another unit was meant.

use super::Measurement;
use super::scale::{Habit, Scale, Written};
use crate::quantity::{
    Degree, Inch, PoundFoot, Psi, Quantity, Rpm, SecondPerQuart, Unit, Unread, Volt, number_and_unit, said, short,
    written_down,
};

/// A number that was read.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Read {
    /// In the scale's own unit.
    pub value: f64,
    /// As it was typed.
    pub typed: String,
    /// The symbol of the unit it was meant in.
    pub unit: String,
}

/// What was perhaps meant.
#[derive(Clone, Debug, PartialEq)]
pub struct Meant {
    /// How that is typed: `0.012 in`.
    pub typed: String,
    /// What would be wrong with what was typed: `millimeters were read`, `the point slipped by one place`.
    pub because: String,
}

/// A number that was not taken.
#[derive(Clone, Debug, PartialEq)]
pub struct Bad {
    /// Why, in whole sentences: what was given, what is usual, what to do.
    pub message: String,
    /// What was perhaps meant, likeliest first.
    pub meant: Vec<Meant>,
    /// Can it be true all the same? Then it is taken when somebody says so.
    pub possible: bool,
}

/// The most characters that are looked at: no gauge shows more.
const LONGEST: usize = 40;

/// Reads a number as typed for this measurement; `sure` takes what is unlikely but possible.
///
/// # Errors
/// [`Bad`] when it cannot be read, cannot be, or lies outside what is likely and nobody said that it is so.
pub fn read(measurement: &Measurement, typed: &str, habit: Habit, sure: bool) -> Result<Read, Bad> {
    let scale = measurement.scale;
    let typed = typed.trim();
    if typed.chars().count() > LONGEST {
        return Err(refused(format!("{}: that is too long for a reading. Type the number alone.", measurement.label)));
    }
    let (bare, value, unit) = in_own_unit(scale, typed, habit.of(scale))
        .map_err(|unread| refused(format!("{}: {unread}.", measurement.label)))?;
    if measurement.likely.holds(value) || (sure && measurement.possible.holds(value)) {
        return Ok(Read { value, typed: typed.to_owned(), unit });
    }
    Err(doubted(measurement, typed, bare, value))
}

/// The size of a part of a set: a length above nought and below an inch.
///
/// # Errors
/// A sentence that begins with `label`.
pub fn read_size(label: &str, typed: &str, habit: Habit) -> Result<f64, String> {
    let typed = typed.trim();
    if typed.chars().count() > LONGEST {
        return Err(format!("{label}: that is too long for a size."));
    }
    let unit = habit.of(Scale::Length);
    let (_, value, _) = in_own_unit(Scale::Length, typed, unit).map_err(|unread| format!("{label}: {unread}."))?;
    if (0.0..1.0).contains(&value) {
        return Ok(value);
    }
    Err(format!(
        "{label}: \u{201c}{typed}\u{201d} is {}, and no part of these sets is that thick. Write it like 0.084, 84 thou or \
         2.1 mm.",
        Scale::Length.say(value)
    ))
}

fn refused(message: String) -> Bad {
    Bad { message, meant: Vec::new(), possible: false }
}

/// The bare number, the number in the scale's own unit, and the unit it was meant in.
fn in_own_unit(scale: Scale, typed: &str, habit: Written) -> Result<(f64, f64, String), Unread> {
    let wanted = how_to_write(scale, habit);
    if typed.is_empty() {
        return Err(Unread::Empty { wanted });
    }
    let (bare, unit) = number_and_unit(typed, scale.symbol(), &wanted)?;
    let written = if unit.is_empty() { format!("{typed} {}", habit.suffix) } else { typed.to_owned() };
    let value = own_value(scale, &written).map_err(|unread| match unread {
        Unread::OtherUnit { unit, .. } => Unread::OtherUnit { given: typed.to_owned(), unit, wanted },
        other => other,
    })?;
    Ok((bare, value, if unit.is_empty() { habit.symbol.to_owned() } else { unit }))
}

fn own_value(scale: Scale, written: &str) -> Result<f64, Unread> {
    fn of<U: Unit>(written: &str) -> Result<f64, Unread> {
        Quantity::<U>::from_typed(written).map(Quantity::value)
    }
    match scale {
        Scale::Length => of::<Inch>(written),
        Scale::Angle => of::<Degree>(written),
        Scale::Pressure => of::<Psi>(written),
        Scale::Torque => of::<PoundFoot>(written),
        Scale::Voltage => of::<Volt>(written),
        Scale::Flow => of::<SecondPerQuart>(written),
        Scale::Speed => of::<Rpm>(written),
    }
}

/// What to type, for a hint or a message.
pub fn how_to_write(scale: Scale, habit: Written) -> String {
    let example = match (scale, habit.symbol) {
        (Scale::Length, "thou") => "12, or 0.012 in, or 0.30 mm",
        (Scale::Length, "mm") => "0.30, or 0.012 in, or 12 thou",
        (Scale::Length, _) => "0.012, or 12 thou, or 5/32, or 0.30 mm",
        (Scale::Torque, "N-m") => "24, or 18 lb-ft",
        (Scale::Torque, _) => "18, or 24 N-m",
        (Scale::Pressure, "bar") => "5.2, or 75 psi",
        (Scale::Pressure, _) => "75, or 5.2 bar",
        (Scale::Angle, _) => "2 or 2.5",
        (Scale::Voltage, _) => "12.4",
        (Scale::Flow, _) => "15",
        (Scale::Speed, _) => "2800",
    };
    format!("a number in {} such as {example}", habit.name)
}

/// Why a number outside what is likely is not taken as it stands.
fn doubted(measurement: &Measurement, typed: &str, bare: f64, value: f64) -> Bad {
    let (scale, label) = (measurement.scale, measurement.label);
    let (likely, possible) = (measurement.likely, measurement.possible);
    let can_be = possible.holds(value);
    let meant = meant(measurement, bare, value);
    let says = |value: f64| scale.say(value);
    let usual = format!("{} to {}", says(likely.from), says(likely.to));
    let given = format!("\u{201c}{typed}\u{201d} is {}", exactly(scale, value));
    let why = if value < 0.0 && possible.from >= 0.0 {
        format!(
            "{label} cannot be below nought, and {given}. Set the instrument to nought again, see which way it counts, \
             and read once more."
        )
    } else if !can_be {
        format!("{label}: {given}, which cannot be. It can be {} to {}.", says(possible.from), says(possible.to))
    } else if value > likely.to {
        format!("{label}: {given}, far more than there ever is ({usual}). Read it again.")
    } else {
        format!("{label}: {given}, far less than there ever is ({usual}). Read it again.")
    };
    let perhaps = match meant.first() {
        Some(first) => format!(" Perhaps {}: {}?", first.because, first.typed),
        None => String::new(),
    };
    Bad { message: format!("{why}{perhaps}"), meant, possible: can_be }
}

/// As the sheet says it, or with as many digits as it takes to say no other number: `5.2 psi`, and not `5 psi`.
fn exactly(scale: Scale, value: f64) -> String {
    let short = scale.say(value);
    let same = own_value(scale, &short).is_ok_and(|read| written_down(read) == written_down(value));
    if same { short } else { said(value, scale.symbol()) }
}

/// What would be likely: the same digits in another unit, or with the point one to three places off.
fn meant(measurement: &Measurement, bare: f64, value: f64) -> Vec<Meant> {
    let (scale, likely) = (measurement.scale, measurement.likely);
    let mut found: Vec<(f64, Meant)> = Vec::new();
    let mut note = |value: f64, meant: Meant| {
        // What no instrument could show was not meant either, though nought is usual.
        let shows = value.abs() >= scale.step() && value >= likely.to / 100.0;
        if shows && likely.holds(value) && !found.iter().any(|(known, _)| (known - value).abs() < scale.step() / 10.0) {
            found.push((value, meant));
        }
    };
    for unit in scale.units() {
        let typed = format!("{} {}", short(bare, 6), unit.symbol);
        if let Ok(value) = own_value(scale, &format!("{} {}", short(bare, 6), unit.suffix)) {
            note(value, Meant { typed, because: format!("{} were read", unit.name) });
        }
    }
    for (places, factor) in [(1, 10.0), (2, 100.0), (3, 1000.0)] {
        for value in [value / factor, value * factor] {
            let because = match places {
                1 => "the point slipped by one place".to_owned(),
                places => format!("the point slipped by {places} places"),
            };
            note(value, Meant { typed: exactly(scale, value), because });
        }
    }
    found.into_iter().map(|(_, meant)| meant).collect()
}

#[cfg(test)]
mod tests;
