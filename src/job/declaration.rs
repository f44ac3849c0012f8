//! What is said about a fact: its name, kind, unit, sheet, bounds, how to tell, why it matters.

use super::value::Refused;
use serde_json::{Value, json};

/// The place of a fact in the registry; stable within one build only, never stored.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FactId(pub(crate) u16);

/// Everything said about one fact.
#[derive(Debug)]
pub struct Declaration {
    /// `group.leaf`, as the job file spells it.
    pub path: &'static str,
    /// What the pages call it, a few words.
    pub label: &'static str,
    /// Where it is asked.
    pub sheet: Sheet,
    /// What kind of value it takes.
    pub kind: Kind,
    /// What the value may be.
    pub bound: Bound,
    /// What the number means, after its unit; empty for most.
    pub note: &'static str,
    /// How a new hand finds it out.
    pub how: &'static str,
    /// Why anybody wants to know.
    pub why: &'static str,
    /// The harmless value of the plain job.
    pub plain: Plain,
    /// May the fact have this value, as the job file writes it?
    pub check: fn(&Value, &Declaration) -> Result<(), Refused>,
}

/// The paper a fact belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Sheet {
    /// What is wanted and what it goes into.
    Spec,
    /// Seen with the unit closed.
    Outside,
    /// Seen once it is apart.
    Inside,
    /// Read off an instrument.
    Measured,
    /// Done, signed, counted.
    Paper,
}

/// The kinds of value.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Kind {
    /// True or false.
    YesNo,
    /// One word of a list.
    Choice(&'static [Word]),
    /// A whole number of things.
    Count,
    /// A measured or given number with its unit's symbol.
    Number(&'static str),
    /// A calendar day.
    Date,
    /// A calendar year.
    Year,
    /// Free words, compared letter by letter.
    Text,
}

/// One word of a choice.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Word {
    /// As the job file spells it.
    pub code: &'static str,
    /// As people read it.
    pub label: &'static str,
}

/// What a number may be. Bounds refuse only what cannot exist, never the merely unusual.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Bound {
    /// Any finite number.
    Any,
    /// Zero or more.
    NotNegative,
    /// More than zero.
    Positive,
    /// One of these numbers.
    OneOf(&'static [f64]),
    /// One of these usual numbers, or another whole number.
    OneOfOrWhole(&'static [f64]),
}

/// A plain value: harmless by itself, so that examples need to name only what matters.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Plain {
    /// Left unknown.
    Unknown,
    /// Yes or no.
    YesNo(bool),
    /// A number.
    Number(f64),
    /// A word of the list, or a text.
    Word(&'static str),
}

impl Plain {
    /// As the job file writes it; null when left unknown.
    pub fn json(self) -> Value {
        match self {
            Self::Unknown => Value::Null,
            Self::YesNo(yes) => json!(yes),
            Self::Number(number) => super::value::number_json(number),
            Self::Word(word) => json!(word),
        }
    }
}

impl Sheet {
    /// Every sheet, in the order of the work.
    pub const ALL: [Self; 5] = [Self::Spec, Self::Outside, Self::Inside, Self::Measured, Self::Paper];

    /// As addresses and forms spell it.
    pub const fn code(self) -> &'static str {
        match self {
            Self::Spec => "spec",
            Self::Outside => "outside",
            Self::Inside => "inside",
            Self::Measured => "measured",
            Self::Paper => "paper",
        }
    }

    /// As people read it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Spec => "Use and build",
            Self::Outside => "Outside, unit closed",
            Self::Inside => "Inside, unit apart",
            Self::Measured => "Measured",
            Self::Paper => "Done and agreed",
        }
    }

    /// The sheet of this code.
    pub fn from_code(code: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sheet| sheet.code() == code)
    }
}
