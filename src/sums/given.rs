//! What was typed into a sum, read and handed to its formula; and what comes back.

use super::declaration::{Amiss, Input, Kind, Measure, Sum};
use super::outcome::Outcome;
use crate::calc::tire::{Size, Trust};
use crate::job::Choice;
use crate::quantity::{Inch, One, Quantity, Unit, cut};
use crate::rules::Limits;
use jiff::civil::Date;

/// What came of a sum.
#[derive(Debug)]
pub struct Answer {
    /// The result, once everything is there and readable.
    pub outcome: Option<Outcome>,
    /// Inputs that are still needed.
    pub needs: Vec<&'static str>,
    /// Inputs that cannot be taken, each with a sentence.
    pub wrong: Vec<Wrong>,
}

/// An input that cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wrong {
    /// Its name.
    pub input: &'static str,
    /// Names the field, what was given and what is allowed.
    pub message: String,
}

/// A tire as it was given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Tire {
    /// Its diameter.
    pub diameter: Quantity<Inch>,
    /// How far to trust it, when it follows from a size.
    pub trust: Option<Trust>,
}

/// An input that was read.
enum Read {
    Number(f64),
    Count(u32),
    Word(&'static str),
    Numbers(Vec<f64>),
    Rows(Vec<Vec<f64>>),
    Tire(Tire),
    Month(Date),
}

/// Two numbers that belong together, such as a point of a curve.
pub type Pair<A, B> = (Quantity<A>, Quantity<B>);

/// The inputs of one sum, read, and the shop's limits.
pub struct Given<'a> {
    read: Vec<(&'static Input, Read)>,
    limits: &'a Limits,
}

/// More than this is no number and no list of a few.
const LONGEST: usize = 400;

/// More than this is no table.
const LONGEST_ROWS: usize = 1200;

impl Sum {
    /// Works it out from what was typed: `typed` gives each input's text, blank for none.
    pub fn answer(&'static self, typed: impl Fn(&str) -> String, limits: &Limits) -> Answer {
        let mut given = Given { read: Vec::new(), limits };
        let (mut needs, mut wrong) = (Vec::new(), Vec::new());
        for input in self.inputs {
            let text = typed(input.name);
            match (text.trim(), input.needed) {
                ("", true) => needs.push(input.name),
                ("", false) => {}
                (text, _) => match input.read(text) {
                    Ok(read) => given.read.push((input, read)),
                    Err(message) => wrong.push(Wrong { input: input.name, message }),
                },
            }
        }
        let outcome = if needs.is_empty() && wrong.is_empty() {
            match (self.work)(&given) {
                Ok(outcome) => Some(outcome),
                Err(Amiss::Absent(input)) => {
                    needs.push(input);
                    None
                }
                Err(Amiss::Clash { input, message }) => {
                    wrong.push(Wrong { input, message });
                    None
                }
            }
        } else {
            None
        };
        Answer { outcome, needs, wrong }
    }

    /// The input of this name.
    pub fn input(&self, name: &str) -> Option<&'static Input> {
        self.inputs.iter().find(|input| input.name == name)
    }
}

impl Given<'_> {
    /// The shop's limits.
    pub const fn limits(&self) -> &Limits {
        self.limits
    }

    fn find(&self, name: &'static str) -> Option<&Read> {
        self.read.iter().find(|(input, _)| input.name == name).map(|(_, read)| read)
    }

    /// A number in the unit it was declared with.
    pub fn number<U: Unit>(&self, name: &'static str) -> Result<Quantity<U>, Amiss> {
        self.maybe(name).ok_or(Amiss::Absent(name))
    }

    /// A number that may be left blank.
    pub fn maybe<U: Unit>(&self, name: &'static str) -> Option<Quantity<U>> {
        let (input, read) = self.read.iter().find(|(input, _)| input.name == name)?;
        let own = match &input.kind {
            Kind::Number(measure) => measure.symbol,
            Kind::Percent(..) => One::SYMBOL,
            _ => return None,
        };
        match read {
            Read::Number(number) if own == U::SYMBOL => Some(Quantity::new(*number)),
            _ => None,
        }
    }

    /// A whole number.
    pub fn count(&self, name: &'static str) -> Result<u32, Amiss> {
        match self.find(name) {
            Some(Read::Count(count)) => Ok(*count),
            _ => Err(Amiss::Absent(name)),
        }
    }

    /// The code of the answer chosen.
    pub fn word(&self, name: &'static str) -> Result<&'static str, Amiss> {
        match self.find(name) {
            Some(Read::Word(code)) => Ok(code),
            _ => Err(Amiss::Absent(name)),
        }
    }

    /// The answer chosen among a job's words.
    pub fn chosen<T: Choice>(&self, name: &'static str) -> Result<T, Amiss> {
        let code = self.word(name)?;
        let place = T::WORDS.iter().position(|word| word.code == code);
        place.map(|place| T::ALL[place]).ok_or(Amiss::Absent(name))
    }

    /// Was yes chosen?
    pub fn yes(&self, name: &'static str) -> Result<bool, Amiss> {
        self.word(name).map(|code| code == "yes")
    }

    /// A list of numbers in the unit they were declared with.
    pub fn numbers<U: Unit>(&self, name: &'static str) -> Result<Vec<Quantity<U>>, Amiss> {
        match self.find(name) {
            Some(Read::Numbers(numbers)) => Ok(numbers.iter().copied().map(Quantity::new).collect()),
            _ => Err(Amiss::Absent(name)),
        }
    }

    /// Rows of two numbers in the units they were declared with.
    pub fn pairs<A: Unit, B: Unit>(&self, name: &'static str) -> Result<Vec<Pair<A, B>>, Amiss> {
        let rows = self.rows_of(name, &[A::SYMBOL, B::SYMBOL])?;
        Ok(rows.map(|row| (Quantity::new(row[0]), Quantity::new(row[1]))).collect())
    }

    /// Rows of three numbers, all in one unit.
    pub fn triples<U: Unit>(&self, name: &'static str) -> Result<Vec<[Quantity<U>; 3]>, Amiss> {
        let rows = self.rows_of(name, &[U::SYMBOL; 3])?;
        Ok(rows.map(|row| [row[0], row[1], row[2]].map(Quantity::new)).collect())
    }

    fn rows_of(&self, name: &'static str, symbols: &[&str]) -> Result<impl Iterator<Item = &Vec<f64>>, Amiss> {
        let found = self.read.iter().find(|(input, _)| input.name == name);
        match found.map(|(input, read)| (&input.kind, read)) {
            Some((Kind::Rows(measures, ..), Read::Rows(rows)))
                if measures.iter().map(|measure| measure.symbol).eq(symbols.iter().copied()) =>
            {
                Ok(rows.iter())
            }
            _ => Err(Amiss::Absent(name)),
        }
    }

    /// The first day of a month.
    pub fn month(&self, name: &'static str) -> Result<Date, Amiss> {
        match self.find(name) {
            Some(Read::Month(first)) => Ok(*first),
            _ => Err(Amiss::Absent(name)),
        }
    }

    /// A tire.
    pub fn tire(&self, name: &'static str) -> Result<Tire, Amiss> {
        match self.find(name) {
            Some(Read::Tire(tire)) => Ok(*tire),
            _ => Err(Amiss::Absent(name)),
        }
    }
}

impl Input {
    fn read(&'static self, text: &str) -> Result<Read, String> {
        let longest = if matches!(self.kind, Kind::Rows(..)) { LONGEST_ROWS } else { LONGEST };
        if text.len() > longest {
            return Err(self.refusal(text));
        }
        match &self.kind {
            Kind::Number(measure) => self.number_of(measure, text).map(Read::Number),
            Kind::Count(low, high) => {
                let number = Quantity::<One>::from_typed(text).map_err(|_| self.refusal(text))?.value();
                let whole = number.fract() == 0.0 && number >= f64::from(*low) && number <= f64::from(*high);
                if whole { Ok(Read::Count(number as u32)) } else { Err(self.refusal(text)) }
            }
            Kind::Percent(low, high) => {
                let bare = text.strip_suffix('%').unwrap_or(text);
                let number = Quantity::<One>::from_typed(bare).map_err(|_| self.refusal(text))?.value();
                let within = (*low..=*high).contains(&number);
                if within { Ok(Read::Number(number / 100.0)) } else { Err(self.refusal(text)) }
            }
            Kind::Choice(words) => {
                let meant = text.to_lowercase();
                let word = words().into_iter().find(|word| {
                    word.code == text || word.code.to_lowercase() == meant || word.label.to_lowercase() == meant
                });
                word.map(|word| Read::Word(word.code)).ok_or_else(|| self.refusal(text))
            }
            Kind::Numbers(measure, least, most) => {
                let parts: Vec<&str> =
                    text.split([' ', ';', '\n', '\t', '\r']).filter(|part| !part.is_empty()).collect();
                if !(*least..=*most).contains(&parts.len()) {
                    return Err(self.refusal(text));
                }
                let numbers = parts.into_iter().map(|part| self.number_of(measure, part));
                numbers.collect::<Result<_, _>>().map(Read::Numbers)
            }
            Kind::Rows(measures, least, most) => {
                let lines: Vec<&str> = text.split([';', '\n']).map(str::trim).filter(|line| !line.is_empty()).collect();
                if !(*least..=*most).contains(&lines.len()) {
                    return Err(self.refusal(text));
                }
                let row = |line: &&str| {
                    let parts: Vec<&str> = line.split([' ', '\t', '\r']).filter(|part| !part.is_empty()).collect();
                    if parts.len() != measures.len() {
                        return Err(self.refusal(line));
                    }
                    measures.iter().zip(parts).map(|(measure, part)| self.number_of(measure, part)).collect()
                };
                lines.iter().map(row).collect::<Result<_, _>>().map(Read::Rows)
            }
            Kind::Month => month_of(text).map(Read::Month).ok_or_else(|| self.refusal(text)),
            Kind::Tire => self.tire_of(text).map(Read::Tire),
        }
    }

    fn number_of(&self, measure: &Measure, text: &str) -> Result<f64, String> {
        let number = (measure.read)(text).map_err(|unread| format!("{}: {unread}.", self.label))?;
        let (low, high) = measure.bounds;
        if (low..=high).contains(&number) { Ok(number) } else { Err(self.refusal(text)) }
    }

    fn tire_of(&self, text: &str) -> Result<Tire, String> {
        let within = |diameter: Quantity<Inch>| (10.0..=60.0).contains(&diameter.value());
        let tire = match (Quantity::<Inch>::from_typed(text), text.parse::<Size>()) {
            (Ok(diameter), _) => Tire { diameter, trust: None },
            (_, Ok(size)) => {
                let (diameter, trust) = size.diameter();
                Tire { diameter, trust: Some(trust) }
            }
            (Err(_), Err(unread)) => return Err(format!("{}: {unread}.", self.label)),
        };
        if within(tire.diameter) { Ok(tire) } else { Err(self.refusal(text)) }
    }

    fn refusal(&self, given: &str) -> String {
        format!("{} cannot be “{}”: it must be {}.", self.label, cut(given, 60), self.allowed())
    }
}

/// `2024-11`, or `11/2024` as labels have it.
fn month_of(text: &str) -> Option<Date> {
    let (year, month) = match (text.split_once('-'), text.split_once('/')) {
        (Some((year, month)), None) | (None, Some((month, year))) => (year, month),
        _ => return None,
    };
    let digits = |part: &str| part.bytes().all(|digit| digit.is_ascii_digit());
    if year.len() != 4 || !(1..=2).contains(&month.len()) || !digits(year) || !digits(month) {
        return None;
    }
    Date::new(year.parse().ok()?, month.parse().ok()?, 1).ok().filter(|first| (1990..2200).contains(&first.year()))
}
