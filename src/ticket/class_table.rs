//! What a class asks for, as the shop typed it once from the rulebook for all of its tickets.

use super::facts::TicketFacts;
use super::merge::{Edit, FactChange};
use super::origin::Source;
use crate::job::{FactId, Job, Refused, fact_ids, fact_named};
use jiff::civil::Date;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeMap;

/// One class of one rulebook.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct ClassTable {
    /// The year on the rulebook's cover.
    pub year: i16,
    /// Whose rulebook it is.
    pub body: String,
    /// The class.
    pub class: String,
    /// What it asks for: facts of the group `class_table` but the year, path and value. What the book does not say, or
    /// nobody has read, is left out; it stays unknown on the tickets.
    pub asks: BTreeMap<String, Value>,
}

/// How a table's year lies to an event.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Age {
    /// Of the event's year, or a later one.
    Current,
    /// From a book before the event's year.
    Older,
    /// The event's day is not known.
    Unknown,
}

/// The fact that holds the table's year.
const YEAR: &str = "class_table.year";

/// The facts a table speaks of besides its year, in the order of the job file.
pub fn class_facts() -> impl Iterator<Item = FactId> {
    fact_ids().filter(|fact| {
        let path = fact.declaration().path;
        path.starts_with("class_table.") && path != YEAR
    })
}

impl ClassTable {
    /// `2027, Tin Bridge Timing, class A`, whether the class was typed as `A` or as `Class A`.
    pub fn name(&self) -> String {
        let says_class = self.class.split_whitespace().any(|word| word.eq_ignore_ascii_case("class"));
        let word = if says_class { "" } else { "class " };
        format!("{}, {}, {word}{}", self.year, self.body, self.class)
    }

    /// The table as facts of a job of which nothing else is known.
    ///
    /// # Errors
    /// The path of the first thing that is no fact of a class table or cannot be, with why.
    pub fn as_job(&self) -> Result<Job, (String, Option<Refused>)> {
        let mut job = Job::unknown();
        let year = Value::from(self.year);
        for (path, value) in self.asks.iter().map(|(path, value)| (path.as_str(), value)).chain([(YEAR, &year)]) {
            let fact = fact_named(path).filter(|_| path.starts_with("class_table."));
            let fact = fact.ok_or_else(|| (path.to_owned(), None))?;
            let read = job.slot_mut(fact).read(value, fact.declaration());
            read.map_err(|refused| (path.to_owned(), Some(refused)))?;
        }
        Ok(job)
    }

    /// What it says to one of its facts.
    pub fn value(&self, fact: FactId) -> Option<&Value> {
        self.asks.get(fact.declaration().path)
    }

    /// The edit that brings all of it into a ticket: what the table leaves open becomes unknown there, too, so that
    /// nothing of another class stays behind.
    pub fn edit(&self) -> Edit {
        let change = |path: &str, value| FactChange { path: path.to_owned(), value, source: Source::ShopSetting };
        let own = class_facts().map(|fact| change(fact.declaration().path, self.value(fact).cloned()));
        let facts = [change(YEAR, Some(Value::from(self.year)))].into_iter().chain(own).collect();
        Edit { facts, ..Edit::default() }
    }

    /// The facts of a ticket that no longer say what the table says.
    pub fn departures(&self, facts: &TicketFacts) -> Vec<FactId> {
        let Ok(table) = self.as_job() else { return Vec::new() };
        let of_table = fact_named(YEAR).into_iter().chain(class_facts());
        of_table.filter(|fact| table.slot(*fact).json() != facts.value(*fact)).collect()
    }

    /// Is it from a book before the event's year?
    pub fn age(&self, event: Option<Date>) -> Age {
        match event {
            None => Age::Unknown,
            Some(day) if self.year < day.year() => Age::Older,
            Some(_) => Age::Current,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ticket::{Contents, Hand, merge};
    use jiff::Timestamp;
    use jiff::civil::date;
    use serde_json::json;

    fn table() -> ClassTable {
        let asks = [("class_table.shield_s", json!(10.99)), ("class_table.brake_allowed", json!(true))];
        ClassTable {
            year: 2027,
            body: "Tin Bridge Timing".into(),
            class: "A".into(),
            asks: asks.map(|(path, value)| (path.to_owned(), value)).into(),
        }
    }

    fn taken(table: &ClassTable, before: &Contents) -> Contents {
        let hand = Hand { by: "Ada".into(), at: Timestamp::UNIX_EPOCH };
        merge(before, before, &table.edit(), &hand).expect("a table always fits")
    }

    #[test]
    fn a_class_is_called_a_class_once() {
        let name = |class: &str| ClassTable { class: class.into(), ..table() }.name();
        assert_eq!(name("A"), "2027, Tin Bridge Timing, class A");
        assert_eq!(name("class A"), "2027, Tin Bridge Timing, class A");
        assert_eq!(name("Stock Class"), "2027, Tin Bridge Timing, Stock Class");
        assert_eq!(name("Classic"), "2027, Tin Bridge Timing, class Classic");
    }

    #[test]
    fn a_table_is_too_old_from_new_years_day_of_the_next_year_on() {
        assert_eq!(table().age(Some(date(2027, 12, 31))), Age::Current);
        assert_eq!(table().age(Some(date(2028, 1, 1))), Age::Older);
        assert_eq!(table().age(Some(date(2026, 5, 1))), Age::Current);
        assert_eq!(table().age(None), Age::Unknown, "a blank never reads as current");
    }

    #[test]
    fn a_table_brings_in_all_it_says_and_nothing_of_another_class_stays() {
        let mut other = table();
        other.asks.insert("class_table.shield_always".into(), json!(true));
        let contents = taken(&table(), &taken(&other, &Contents::default()));
        let words = |path: &str| contents.facts.words(fact_named(path).expect("a fact"));
        assert_eq!(words("class_table.shield_s"), "10.99 s");
        assert_eq!(words("class_table.brake_allowed"), "yes");
        assert_eq!(words("class_table.year"), "2027");
        assert_eq!(words("class_table.shield_always"), "not known yet", "left open is not a no");
        assert!(contents.facts.known().all(|(_, _, origin)| origin.source == Source::ShopSetting));
    }

    #[test]
    fn what_was_changed_by_hand_afterward_is_named() {
        let mut contents = taken(&table(), &Contents::default());
        assert!(table().departures(&contents.facts).is_empty());
        let mut by_hand = table();
        by_hand.asks.insert("class_table.shield_s".into(), json!(11));
        by_hand.asks.insert("class_table.stick_s".into(), json!(10.99));
        contents = taken(&by_hand, &contents);
        let named: Vec<_> = table().departures(&contents.facts).iter().map(|fact| fact.declaration().path).collect();
        assert_eq!(named, ["class_table.shield_s", "class_table.stick_s"]);
    }

    #[test]
    fn only_facts_of_a_class_that_can_be_are_taken() {
        for (path, value) in [("bell.kind", json!("bolt_on")), ("class_table.shield_s", json!(-1))] {
            let mut wrong = table();
            wrong.asks.insert(path.to_owned(), value);
            assert_eq!(wrong.as_job().expect_err("refused").0, path);
        }
        assert!(table().as_job().is_ok());
        assert_eq!(class_facts().count(), 10);
    }
}
