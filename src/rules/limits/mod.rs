//! Every number inside a rule, by name: default, unit, how far to trust it, how far an owner may move it.
//!
//! A condition never holds a bare number. What it compares with stands in
//! [`table`], is shown with its mark wherever it is used, and can be moved by
//! the owner within the range given there, no further.

mod keyed;
mod table;

pub use table::{LimitId, Limits};

use crate::job::{FactValue, Kind};
use crate::quantity::{One, Quantity, Unit, Unread, said, with_symbol, written_down};
use std::fmt;

/// What is said about one limit.
#[derive(Debug)]
pub struct LimitDeclaration {
    /// Its name in the program, in settings and on signed revisions.
    pub name: &'static str,
    /// What the pages call it.
    pub label: &'static str,
    /// What it means: its doc comment.
    pub doc: &'static str,
    /// Its unit's symbol; empty for a bare ratio or a count.
    pub unit: &'static str,
    /// The number the program comes with.
    pub default: f64,
    /// How far the default can be trusted.
    pub mark: Mark,
    /// Lowest and highest number an owner may set; equal when it may not be moved.
    pub range: (f64, f64),
    /// Are only whole numbers allowed?
    pub whole: bool,
}

/// How far a number can be trusted, and where it comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Mark {
    /// A published standard, named.
    Standard(&'static str),
    /// A public maintenance manual, named.
    Manual(&'static str),
    /// Read in other public service text.
    LookedUp,
    /// What the trade does; no single source.
    CommonPractice,
    /// From memory, fairly sure.
    MemoryHigh,
    /// From memory, likely near.
    MemoryMedium,
    /// From memory, check it.
    MemoryLow,
    /// A choice of the shop.
    ShopSetting,
    /// Follows from physics or from the ratios.
    Derived,
}

impl fmt::Display for Mark {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Standard(name) => write!(f, "standard: {name}"),
            Self::Manual(name) => f.write_str(name),
            Self::LookedUp => f.write_str("looked up"),
            Self::CommonPractice => f.write_str("common practice"),
            Self::MemoryHigh => f.write_str("memory, high"),
            Self::MemoryMedium => f.write_str("memory, medium"),
            Self::MemoryLow => f.write_str("memory, low"),
            Self::ShopSetting => f.write_str("shop setting"),
            Self::Derived => f.write_str("derived"),
        }
    }
}

/// A number an owner wanted and may not have; says why in a whole sentence.
#[derive(Clone, Copy, Debug, PartialEq, thiserror::Error)]
pub struct OutOfRange {
    /// Which limit.
    pub limit: LimitId,
    /// What was given.
    pub given: f64,
}

impl fmt::Display for OutOfRange {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let LimitDeclaration { label, range: (low, high), whole, .. } = *self.limit.declaration();
        let given = self.limit.say(self.given);
        if low == high {
            write!(f, "The limit \"{label}\" is {} and cannot be moved; {given} was given.", self.limit.say(low))
        } else {
            let number = if whole { "a whole number" } else { "a number" };
            let (low, high) = (grouped(low), self.limit.say(high));
            write!(f, "The limit \"{label}\" takes {number} from {low} to {high}; {given} was given.")
        }
    }
}

/// A limit as it stood when a rule used it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct LimitUsed {
    /// Which limit.
    pub limit: LimitId,
    /// The number used.
    pub value: f64,
}

/// Prints the name, the number with its unit and the mark: `bell bore runout 0.01 in (memory, medium)`.
impl fmt::Display for LimitUsed {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} {}", self.limit.declaration().label, self.in_words())
    }
}

impl LimitUsed {
    /// The number with its unit and its mark: `0.01 in (memory, medium)`.
    pub fn in_words(&self) -> String {
        self.said_by(|number| self.limit.say(number))
    }

    /// The same with the numbers said another way.
    pub fn said_by(&self, say: impl Fn(f64) -> String) -> String {
        let LimitDeclaration { default, mark, .. } = *self.limit.declaration();
        let number = say(self.value);
        if self.value == default {
            format!("{number} ({mark})")
        } else {
            format!("{number} (set by this shop; {} as supplied: {mark})", say(default))
        }
    }
}

/// Large numbers with their thousands marked, `4,770,000`; the others as they are.
fn grouped(number: f64) -> String {
    if number.abs() >= 10_000.0 { Quantity::<One>::new(number).to_whole() } else { said(number, "") }
}

impl LimitId {
    /// A number as people read it, with the limit's unit.
    pub fn say(self, number: f64) -> String {
        with_symbol(grouped(number), self.declaration().unit)
    }

    /// Is it a share, which beside a result is read in per cent?
    pub const fn is_share(self) -> bool {
        matches!(
            self,
            Self::critical_near
                | Self::critical_at
                | Self::speedometer_error
                | Self::stall_off_label
                | Self::fill_least
                | Self::fill_most
                | Self::torque_off
        )
    }

    /// What an owner may set, `0.004 to 0.015 in`; none when it cannot be moved.
    pub fn range_in_words(self) -> Option<String> {
        let LimitDeclaration { range: (low, high), whole, .. } = *self.declaration();
        let kind = if whole { ", whole numbers" } else { "" };
        (low != high).then(|| format!("{} to {}{kind}", grouped(low), self.say(high)))
    }

    /// The limit of this name, if there is one.
    pub fn named(name: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|limit| limit.declaration().name == name)
    }
}

impl Limits {
    /// Moves one limit.
    ///
    /// # Errors
    /// [`OutOfRange`] when the number lies outside the range, or is broken where a whole one is wanted.
    pub fn set(&mut self, limit: LimitId, number: f64) -> Result<(), OutOfRange> {
        let LimitDeclaration { range: (low, high), whole, .. } = *limit.declaration();
        if !(low..=high).contains(&number) || (whole && number.fract() != 0.0) {
            return Err(OutOfRange { limit, given: number });
        }
        self.put(limit, number);
        Ok(())
    }

    /// Every limit that does not stand as supplied.
    pub fn moved(&self) -> impl Iterator<Item = LimitUsed> {
        let used = LimitId::ALL.iter().map(|limit| self.used(*limit));
        used.filter(|used| used.value != used.limit.declaration().default)
    }

    /// A limit as a rule uses it now.
    pub fn used(&self, limit: LimitId) -> LimitUsed {
        LimitUsed { limit, value: self.get(limit) }
    }
}

/// A type that a limit can have.
trait LimitNumber: FactValue + Copy {
    const UNIT: &'static str = match Self::KIND {
        Kind::Number(symbol) => symbol,
        _ => "",
    };
    const WHOLE: bool = matches!(Self::KIND, Kind::Count);
    fn made(number: f64) -> Self;
    fn bare(self) -> f64;
    fn typed(text: &str) -> Result<f64, Unread>;
}

impl LimitNumber for u32 {
    fn made(number: f64) -> Self {
        number as Self
    }
    fn bare(self) -> f64 {
        f64::from(self)
    }
    fn typed(text: &str) -> Result<f64, Unread> {
        Quantity::<One>::from_typed(text).map(Quantity::value)
    }
}

impl<U: Unit> LimitNumber for Quantity<U> {
    fn made(number: f64) -> Self {
        Self::new(number)
    }
    fn bare(self) -> f64 {
        self.value()
    }
    fn typed(text: &str) -> Result<f64, Unread> {
        // One typed in another unit is moved to the number it was meant to be.
        Self::from_typed(text).map(|typed| written_down(typed.value()))
    }
}

/// Declares the limits: what it means, field, what pages call it, type, default, mark, range.
macro_rules! limits {
    ($($(#[doc = $doc:literal])+ $name:ident $label:literal: $type:ty = $default:literal, $mark:expr, $low:literal to $high:literal;)+) => {
        /// The numbers the rules compare with, as this shop has them.
        #[derive(Clone, Debug, PartialEq)]
        pub struct Limits {
            $($(#[doc = $doc])+ pub $name: $type,)+
        }

        /// Which limit: the name of its field.
        #[allow(non_camel_case_types)]
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum LimitId {
            $($(#[doc = $doc])+ $name,)+
        }

        /// As the program comes.
        impl Default for Limits {
            fn default() -> Self {
                Self { $($name: <$type as super::LimitNumber>::made($default as f64),)+ }
            }
        }

        impl Limits {
            /// The bare number, in the limit's unit.
            pub fn get(&self, limit: LimitId) -> f64 {
                match limit {
                    $(LimitId::$name => super::LimitNumber::bare(self.$name),)+
                }
            }

            /// Writes a number without asking whether it is allowed.
            pub(in crate::rules) fn put(&mut self, limit: LimitId, number: f64) {
                match limit {
                    $(LimitId::$name => self.$name = super::LimitNumber::made(number),)+
                }
            }
        }

        impl LimitId {
            /// Every limit, in the order of the table.
            pub const ALL: &'static [Self] = &[$(Self::$name),+];

            /// Reads a number as somebody types it for this limit. Whether it is allowed is another question.
            ///
            /// # Errors
            /// [`Unread`](crate::quantity::Unread) says what to write.
            pub fn read(self, typed: &str) -> Result<f64, crate::quantity::Unread> {
                match self {
                    $(Self::$name => <$type as super::LimitNumber>::typed(typed),)+
                }
            }

            /// What is said about this limit.
            pub fn declaration(self) -> &'static super::LimitDeclaration {
                static DECLARATIONS: &[super::LimitDeclaration] = &[$(super::LimitDeclaration {
                    name: stringify!($name),
                    label: $label,
                    doc: concat!($($doc),+),
                    unit: <$type as super::LimitNumber>::UNIT,
                    default: $default as f64,
                    mark: $mark,
                    range: ($low as f64, $high as f64),
                    whole: <$type as super::LimitNumber>::WHOLE,
                }),+];
                &DECLARATIONS[self as usize]
            }
        }
    };
}
use limits;

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_limit_says_what_it_is_and_lies_within_its_own_range() {
        for limit in LimitId::ALL {
            let said = limit.declaration();
            assert!(said.doc.trim().ends_with('.') && said.doc.len() > 30, "{}: {}", said.name, said.doc);
            assert!(!said.label.is_empty() && said.label.len() <= 60, "{}", said.name);
            let (low, high) = said.range;
            assert!(low <= said.default && said.default <= high, "{}", said.name);
            assert_eq!(Limits::default().get(*limit), said.default, "{}", said.name);
            assert_eq!(LimitId::named(said.name), Some(*limit));
            if said.whole {
                assert!([low, high, said.default].iter().all(|number| number.fract() == 0.0), "{}", said.name);
            }
        }
    }

    #[test]
    fn an_owner_moves_a_limit_to_the_edge_of_its_range_and_no_further() {
        for limit in LimitId::ALL {
            let (low, high) = limit.declaration().range;
            for edge in [low, high] {
                let mut limits = Limits::default();
                assert_eq!(limits.set(*limit, edge), Ok(()));
                assert_eq!(limits.get(*limit), edge);
            }
            for beyond in [low - 1.0, high + 1.0, low - 1e-6, high + 1e-6, f64::NAN] {
                let mut limits = Limits::default();
                assert!(limits.set(*limit, beyond).is_err(), "{limit:?} took {beyond}");
                assert_eq!(limits, Limits::default());
            }
        }
    }

    #[test]
    fn a_refused_number_is_answered_with_what_is_allowed() {
        let refused = Limits::default().set(LimitId::bell_runout, 5.0).unwrap_err().to_string();
        assert_eq!(refused, "The limit \"bell bore runout\" takes a number from 0.004 to 0.015 in; 5 in was given.");
        let metric = Limits::default().set(LimitId::bell_runout, 0.1 / 25.4).unwrap_err().to_string();
        assert!(metric.ends_with("; 0.003937 in was given."), "{metric}");
    }

    #[test]
    fn a_typed_number_is_read_in_the_limits_own_unit() {
        assert_eq!(LimitId::bell_runout.read(" 8 thou "), Ok(0.008));
        assert_eq!(LimitId::dowels.read("2"), Ok(2.0));
        assert!(LimitId::bell_runout.read("4 qt").is_err());
        assert_eq!(LimitId::bell_runout.read("0.2 mm"), Ok(0.007_874));
        assert_eq!(LimitId::bell_runout.read("0.1016 mm"), Ok(0.004), "the least an owner may set");
        assert_eq!(LimitId::bell_runout.say(0.008), "0.008 in");
        assert_eq!(LimitId::tube_steel.say(4_770_000.0), "4,770,000");
        assert_eq!(LimitId::tube_steel.range_in_words().as_deref(), Some("4,300,000 to 4,900,000"));
        assert_eq!(LimitId::heavy_trailer.say(9999.0), "9999 lb");
        let mut limits = Limits::default();
        assert_eq!(limits.moved().count(), 0);
        limits.set(LimitId::bell_runout, 0.008).unwrap();
        assert_eq!(limits.moved().collect::<Vec<_>>(), [LimitUsed { limit: LimitId::bell_runout, value: 0.008 }]);
    }

    #[test]
    fn a_limit_is_shown_with_its_mark_and_says_when_the_shop_moved_it() {
        let mut limits = Limits::default();
        assert_eq!(limits.used(LimitId::bell_runout).to_string(), "bell bore runout 0.01 in (memory, medium)");
        limits.set(LimitId::bell_runout, 0.008).unwrap();
        let moved = "bell bore runout 0.008 in (set by this shop; 0.01 in as supplied: memory, medium)";
        assert_eq!(limits.used(LimitId::bell_runout).to_string(), moved);
    }
}
