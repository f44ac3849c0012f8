//! What is declared of a sum and of each of its inputs.

use super::given::Given;
use super::outcome::{Outcome, plain};
use crate::job::{Choice, Word};
use crate::quantity::{AtCelsius, One, Quantity, Unit, Unread, how_to_write};

/// One calculation on its own.
pub struct Sum {
    /// Its name in addresses, for ever: `turns-a-mile`.
    pub name: &'static str,
    /// As people read it.
    pub title: &'static str,
    /// What it is for, in a sentence or two.
    pub what: &'static str,
    /// What it wants to know, in the order it is asked.
    pub inputs: &'static [Input],
    /// How it is worked out.
    pub work: fn(&Given<'_>) -> Worked,
    /// What has to be said where work by this number can hurt somebody; empty where it cannot.
    pub care: &'static str,
}

/// What comes of the numbers given.
pub type Worked = Result<Outcome, Amiss>;

/// Why nothing comes of inputs that were each readable.
#[derive(Debug)]
pub enum Amiss {
    /// An input was asked for that is blank, or is declared otherwise; nothing a person can do wrong.
    Absent(&'static str),
    /// One input cannot be beside the others.
    Clash {
        /// The input.
        input: &'static str,
        /// A sentence: what was given, what is allowed.
        message: String,
    },
}

impl Amiss {
    /// This input cannot be beside the others.
    pub fn clash<T>(input: &'static str, message: impl Into<String>) -> Result<T, Self> {
        Err(Self::Clash { input, message: message.into() })
    }
}

/// One thing a sum wants to know.
pub struct Input {
    /// Its name in addresses and forms.
    pub name: &'static str,
    /// As people read it.
    pub label: &'static str,
    /// Where to find the number; may be empty.
    pub hint: &'static str,
    /// What it is and what it may be.
    pub kind: Kind,
    /// A value that goes with the other inputs' examples.
    pub example: &'static str,
    /// The fact of a job it is, so that a job can fill it in.
    pub fact: Option<&'static str>,
    /// Does the sum wait for it?
    pub needed: bool,
}

/// What an input is and what it may be. Bounds refuse what cannot exist or what the formula does not hold for.
pub enum Kind {
    /// A number with a unit.
    Number(Measure),
    /// A whole number.
    Count(u32, u32),
    /// A share, typed in per cent.
    Percent(f64, f64),
    /// One of several.
    Choice(fn() -> Vec<Word>),
    /// So many numbers of one kind.
    Numbers(Measure, usize, usize),
    /// So many rows of numbers that belong together: `2000 400; 3000 450`.
    Rows(&'static [Measure], usize, usize),
    /// A diameter, or a size as it stands on a sidewall.
    Tire,
    /// A month of a year: `2024-11`.
    Month,
}

/// A number's unit and bounds.
pub struct Measure {
    /// The unit's symbol.
    pub symbol: &'static str,
    /// What stands beside its field: the symbol, or the units that have to be typed with the number.
    pub beside: &'static str,
    /// Lowest and highest.
    pub bounds: (f64, f64),
    /// Reads what is typed into the unit.
    pub read: fn(&str) -> Result<f64, Unread>,
    /// How to write it.
    pub how: fn() -> String,
}

impl Measure {
    /// A number in the unit `U` from `low` to `high`.
    pub const fn of<U: Unit>(low: f64, high: f64) -> Self {
        Self { symbol: U::SYMBOL, beside: U::SYMBOL, bounds: (low, high), read: read::<U>, how: how_to_write::<U> }
    }
}

fn read<U: Unit>(typed: &str) -> Result<f64, Unread> {
    Quantity::<U>::from_typed(typed).map(Quantity::value)
}

/// `180 F`, `82 C`: into degrees Celsius. Without a unit it is refused.
fn read_temperature(typed: &str) -> Result<f64, Unread> {
    let wanted = || "a temperature with its unit, such as 180 F or 82 C".to_owned();
    let plain = typed.trim().to_uppercase().replace(['°', 'º'], "");
    let unread = || Unread::NotANumber { given: typed.trim().to_owned(), wanted: wanted() };
    let number = |bare: &str| Quantity::<One>::from_typed(bare).map(Quantity::value).map_err(|_| unread());
    match (plain.strip_suffix('F'), plain.strip_suffix('C')) {
        (Some(bare), _) => number(bare).map(|fahrenheit| (fahrenheit - 32.0) / 1.8),
        (_, Some(bare)) => number(bare),
        _ => Err(unread()),
    }
}

impl Input {
    const fn of(name: &'static str, label: &'static str, kind: Kind, example: &'static str) -> Self {
        Self { name, label, hint: "", kind, example, fact: None, needed: true }
    }

    /// A number in the unit `U` from `low` to `high`.
    pub const fn number<U: Unit>(
        name: &'static str,
        label: &'static str,
        (low, high): (f64, f64),
        example: &'static str,
    ) -> Self {
        Self::of(name, label, Kind::Number(Measure::of::<U>(low, high)), example)
    }

    /// A bare number, such as a ratio.
    pub const fn ratio(name: &'static str, label: &'static str, bounds: (f64, f64), example: &'static str) -> Self {
        Self::number::<One>(name, label, bounds, example)
    }

    /// A whole number.
    pub const fn count(
        name: &'static str,
        label: &'static str,
        (low, high): (u32, u32),
        example: &'static str,
    ) -> Self {
        Self::of(name, label, Kind::Count(low, high), example)
    }

    /// A share, typed in per cent.
    pub const fn percent(
        name: &'static str,
        label: &'static str,
        (low, high): (f64, f64),
        example: &'static str,
    ) -> Self {
        Self::of(name, label, Kind::Percent(low, high), example)
    }

    /// One of several.
    pub const fn choice(
        name: &'static str,
        label: &'static str,
        words: fn() -> Vec<Word>,
        example: &'static str,
    ) -> Self {
        Self::of(name, label, Kind::Choice(words), example)
    }

    /// One of the words of a job's choice.
    pub const fn choice_of<T: Choice>(name: &'static str, label: &'static str, example: &'static str) -> Self {
        Self::choice(name, label, || T::WORDS.to_vec(), example)
    }

    /// Yes or no.
    pub const fn yes_no(name: &'static str, label: &'static str, example: &'static str) -> Self {
        let words = || vec![Word { code: "yes", label: "Yes" }, Word { code: "no", label: "No" }];
        Self::choice(name, label, words, example)
    }

    /// From `least` to `most` numbers in the unit `U`.
    pub const fn numbers<U: Unit>(
        name: &'static str,
        label: &'static str,
        (low, high): (f64, f64),
        (least, most): (usize, usize),
        example: &'static str,
    ) -> Self {
        Self::of(name, label, Kind::Numbers(Measure::of::<U>(low, high), least, most), example)
    }

    /// From `least` to `most` rows, each of as many numbers as there are measures.
    pub const fn rows(
        name: &'static str,
        label: &'static str,
        measures: &'static [Measure],
        (least, most): (usize, usize),
        example: &'static str,
    ) -> Self {
        Self::of(name, label, Kind::Rows(measures, least, most), example)
    }

    /// A temperature, typed with its unit, since a bare number could be either scale.
    pub const fn temperature(
        name: &'static str,
        label: &'static str,
        bounds: (f64, f64),
        example: &'static str,
    ) -> Self {
        let how = || "a temperature with its unit, such as 180 F or 82 C".to_owned();
        let measure = Measure { symbol: AtCelsius::SYMBOL, beside: "F or C", bounds, read: read_temperature, how };
        Self::of(name, label, Kind::Number(measure), example)
    }

    /// A month of a year.
    pub const fn month(name: &'static str, label: &'static str, example: &'static str) -> Self {
        Self::of(name, label, Kind::Month, example)
    }

    /// A tire: a diameter, or a size as it stands on the sidewall.
    pub const fn tire(name: &'static str, label: &'static str, example: &'static str) -> Self {
        Self::of(name, label, Kind::Tire, example)
    }

    /// With a line on where to find it.
    pub const fn hint(mut self, hint: &'static str) -> Self {
        self.hint = hint;
        self
    }

    /// Which is this fact of a job.
    pub const fn fact(mut self, path: &'static str) -> Self {
        self.fact = Some(path);
        self
    }

    /// Of a part of which a job has no fact.
    pub const fn of_no_fact(mut self) -> Self {
        self.fact = None;
        self
    }

    /// Which may stay blank.
    pub const fn optional(mut self) -> Self {
        self.needed = false;
        self
    }

    /// What is typed in it as people read it: the label of a choice, and not its code.
    pub fn said<'a>(&self, typed: &'a str) -> &'a str {
        match &self.kind {
            Kind::Choice(words) => words().iter().find(|word| word.code == typed).map_or(typed, |word| word.label),
            _ => typed,
        }
    }

    /// The unit shown beside its field.
    pub const fn unit(&self) -> &'static str {
        match &self.kind {
            Kind::Number(measure) | Kind::Numbers(measure, ..) => measure.beside,
            Kind::Percent(..) => "%",
            Kind::Tire => "in",
            Kind::Rows(..) | Kind::Count(..) | Kind::Choice(_) | Kind::Month => "",
        }
    }

    /// What it may be, for a sentence.
    pub fn allowed(&self) -> String {
        let range = |low: f64, high: f64, unit: &str| {
            let space = if matches!(unit, "" | "°") { "" } else { " " };
            format!("from {} to {}{space}{unit}", plain(low), plain(high))
        };
        let of = |measure: &Measure| range(measure.bounds.0, measure.bounds.1, measure.symbol);
        match &self.kind {
            Kind::Number(measure) => of(measure),
            Kind::Count(low, high) => format!("a whole number {}", range(f64::from(*low), f64::from(*high), "")),
            Kind::Percent(low, high) => range(*low, *high, "%"),
            Kind::Choice(words) => words().iter().map(|word| word.label).collect::<Vec<_>>().join(", "),
            Kind::Numbers(measure, least, most) => {
                format!("{least} to {most} numbers with blanks between them, each {}", of(measure))
            }
            Kind::Rows(measures, least, most) => {
                let numbers = ["the first number", "the second", "the third"].iter().zip(*measures);
                let each: Vec<String> = numbers.map(|(nth, measure)| format!("{nth} {}", of(measure))).collect();
                let kind = if measures.len() == 2 { "pairs" } else { "rows of three numbers" };
                format!("{least} to {most} {kind} with a semicolon between them, {}", each.join(", "))
            }
            Kind::Month => "a year and a month from 1990 on, such as 2024-11".to_owned(),
            Kind::Tire => "a diameter from 10 to 60 in or a size such as 275/60R15".to_owned(),
        }
    }
}
