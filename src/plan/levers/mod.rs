//! Levers: what a shop can really change about a job, with the work, the parts and the way back.
//!
//! A lever sets facts: it fits another part, repairs one, or does what was left undone. What the
//! customer brought (the engine, the class, what the vehicle is for) is no lever. A set that only
//! works as a set is one lever.
//!
//! **Adding a lever** is one entry in its subject's file: code, name, what is done, minutes, parts,
//! the way back, what it sets, and `when` if more is wanted than that it would change something.
//! Every number here is a default from memory; the shop's own come in as [`Prices`].

mod case;
mod clutches;
mod control;
mod converter;
mod coolers;
mod gears;
mod mounting;
mod one_way;
mod order;
mod output;
mod paper;
mod prices;
mod pump;
mod safety;
mod speedometer;
mod threads;

pub use prices::{LeverPrice, Prices};

use crate::job::{Fact, FactId, FactSet, FactValue, Job};
use crate::quantity::{Cents, Quantity};
use crate::rules::Mark;
use serde_json::Value;
use std::fmt;
use std::sync::LazyLock;

/// Something a shop can really change.
pub struct Lever {
    /// Its name in the program and in the shop's price list, for ever: `linkage-nut`.
    pub code: &'static str,
    /// What it is, as one reads it in a list: `Fit the right linkage nut`.
    pub name: &'static str,
    /// What is done.
    pub work: &'static str,
    /// The labour it takes, as supplied.
    pub minutes: u32,
    /// What its parts cost, as supplied.
    pub parts: Cents,
    /// Is there a way back?
    pub undo: Undo,
    /// Could it be done on this job, as far as is known?
    when: fn(&Job) -> bool,
    /// What it makes of the facts.
    sets: fn(&Job, &mut Settings),
}

/// Is there a way back?
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Undo {
    /// Take it out again.
    Freely,
    /// Only with trouble.
    WithTrouble,
    /// Never.
    Never,
}

impl Undo {
    /// As people read it.
    pub const fn label(self) -> &'static str {
        match self {
            Self::Freely => "can be undone",
            Self::WithTrouble => "can be undone only with trouble",
            Self::Never => "can never be undone",
        }
    }
}

/// One fact a lever sets.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    /// Which fact.
    pub fact: FactId,
    /// What it becomes, as the job file writes it.
    pub value: Value,
    /// Is that only what is aimed at? It counts once it was measured, tried or signed.
    pub aimed: bool,
}

/// What one lever makes of the facts of one job.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Settings(Vec<Setting>);

impl Settings {
    /// Decides a fact.
    fn put<T: FactValue>(&mut self, fact: &Fact<T>, value: T) {
        self.0.push(Setting { fact: fact.id(), value: value.json(), aimed: false });
    }

    /// Aims at a value that has to be measured, tried or signed before it counts.
    fn aim<T: FactValue>(&mut self, fact: &Fact<T>, value: T) {
        self.0.push(Setting { fact: fact.id(), value: value.json(), aimed: true });
    }

    /// Aims at a number.
    fn measure<U>(&mut self, fact: &Fact<Quantity<U>>, value: f64)
    where
        Quantity<U>: FactValue,
    {
        self.aim(fact, Quantity::new(value));
    }

    /// Makes one fact what another is, when that is known.
    fn same<T: FactValue + Clone>(&mut self, fact: &Fact<T>, other: &Fact<T>) {
        if let Some(value) = other.value() {
            self.put(fact, value.clone());
        }
    }

    /// Says what a new part is like where the old one was known to be otherwise. Work on the new part may still
    /// change it.
    fn renew<T: FactValue>(&mut self, fact: &Fact<T>, value: T) {
        if fact.value().is_some_and(|held| *held != value) {
            self.put(fact, value);
        }
    }
}

/// Is this fact known to be this?
fn is<T: PartialEq>(fact: &Fact<T>, value: T) -> bool {
    fact.value() == Some(&value)
}

/// Is this fact known to be something else than this?
fn is_not<T: PartialEq>(fact: &Fact<T>, value: T) -> bool {
    fact.value().is_some_and(|held| *held != value)
}

impl Lever {
    /// How far the minutes and the parts price as supplied can be trusted.
    pub const MARK: Mark = Mark::MemoryLow;

    /// What it would make of this job; none when it cannot be done there or would change nothing that is known.
    pub fn on(&self, job: &Job) -> Option<Vec<Setting>> {
        if !(self.when)(job) {
            return None;
        }
        let mut settings = Settings::default();
        (self.sets)(job, &mut settings);
        if self.undo == Undo::Never {
            settings.put(&job.paper.permanent_mods, true);
        }
        // A value worked out from the job may be one that cannot be.
        if settings.0.iter().any(|set| (set.fact.declaration().check)(&set.value, set.fact.declaration()).is_err()) {
            return None;
        }
        let known = |set: &Setting| job.slot(set.fact).json().is_some_and(|held| held != set.value);
        let own = |set: &&Setting| set.fact != job.paper.permanent_mods.id();
        settings.0.iter().filter(own).any(known).then_some(settings.0)
    }

    /// The subject before the dash.
    pub fn subject(&self) -> &'static str {
        SUBJECTS.iter().find(|(_, levers)| levers.iter().any(|lever| lever.code == self.code)).map_or("", |(of, _)| of)
    }
}

impl fmt::Debug for Lever {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code)
    }
}

/// The facts a lever's settings touch.
pub fn touched(settings: &[Setting]) -> FactSet {
    settings.iter().fold(FactSet::EMPTY, |all, set| all.with(FactSet::of(set.fact)))
}

/// Every subject with its levers, in the order people meet them.
pub const SUBJECTS: &[(&str, &[Lever])] = &[
    ("Threads and linkage", threads::LEVERS),
    ("Case and bell", case::LEVERS),
    ("Pump", pump::LEVERS),
    ("One-way clutches", one_way::LEVERS),
    ("Clutches and bench readings", clutches::LEVERS),
    ("Control and trans brake", control::LEVERS),
    ("Gears and shafts", gears::LEVERS),
    ("Output, yoke and driveshaft", output::LEVERS),
    ("Speedometer", speedometer::LEVERS),
    ("Converter and flexplate", converter::LEVERS),
    ("Cooler, fluid and vent", coolers::LEVERS),
    ("Pan, dipstick and mount", mounting::LEVERS),
    ("Safety equipment", safety::LEVERS),
    ("Order of work", order::LEVERS),
    ("Papers", paper::LEVERS),
];

/// Every lever, in the order of their codes.
pub fn levers() -> &'static [&'static Lever] {
    static BY_CODE: LazyLock<Vec<&'static Lever>> = LazyLock::new(|| {
        let mut all: Vec<&'static Lever> = SUBJECTS.iter().flat_map(|(_, levers)| *levers).collect();
        all.sort_by_key(|lever| lever.code);
        all
    });
    &BY_CODE
}

/// The lever of this code.
pub fn lever_named(code: &str) -> Option<&'static Lever> {
    levers().iter().find(|lever| lever.code == code).copied()
}

/// Declares the levers of one subject.
macro_rules! lever_table {
    ($($code:literal $name:literal {
        work: $work:literal,
        minutes: $minutes:literal, parts: $parts:literal, undo: $undo:ident,
        $(when: $when:expr,)?
        sets: $sets:expr,
    })+) => {
        #[allow(unused_imports)]
        use super::{is, is_not};

        pub(super) const LEVERS: &[super::Lever] = &[$(super::Lever {
            code: $code,
            name: $name,
            work: $work,
            minutes: $minutes,
            parts: $crate::quantity::Cents($parts),
            undo: super::Undo::$undo,
            when: lever_table!(@when $($when)?),
            sets: $sets,
        }),+];
    };
    (@when $when:expr) => { $when };
    (@when) => { |_| true };
}
use lever_table;

#[cfg(test)]
mod tests;
