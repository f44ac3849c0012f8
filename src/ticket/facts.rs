//! The facts of a ticket: the job, and where each known fact comes from.

use super::origin::{Origin, Source};
use crate::job::{Declaration, FactId, FactSet, Job, Refused, Sheet, fact_named, say};
use serde::de::{Deserialize, Deserializer};
use serde::ser::{Serialize, SerializeMap, Serializer};
use serde_json::Value;
use std::collections::BTreeMap;

/// What is said of a fact that has no value. A blank is never a pass.
pub const NOT_KNOWN: &str = "not known yet";

/// A known fact as it is stored: its value and where it comes from.
#[derive(Clone, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Entry {
    /// The value as a job file writes it.
    pub value: Value,
    /// Where it comes from.
    #[serde(flatten)]
    pub origin: Origin,
}

/// The facts of a ticket with their origins. Stored as `{path: {value, source, by, at}}`; the value of a reading that a
/// plan left to be taken anew is null.
#[derive(Clone, Debug, PartialEq)]
pub struct TicketFacts {
    job: Job,
    origins: BTreeMap<FactId, Origin>,
    /// Blank facts of which a plan said that they are to be measured, tried or signed anew.
    awaited: BTreeMap<FactId, Origin>,
    /// Facts that an older edition of the job file knew and this one does not: kept as they are.
    retired: BTreeMap<String, Entry>,
}

impl Default for TicketFacts {
    fn default() -> Self {
        Self { job: Job::unknown(), origins: BTreeMap::new(), awaited: BTreeMap::new(), retired: BTreeMap::new() }
    }
}

impl TicketFacts {
    /// The job, for rules and plans.
    pub const fn job(&self) -> &Job {
        &self.job
    }

    /// The value of a fact as a job file writes it, when known.
    pub fn value(&self, fact: FactId) -> Option<Value> {
        self.job.slot(fact).json()
    }

    /// Where a known fact comes from.
    pub fn origin(&self, fact: FactId) -> Option<&Origin> {
        self.origins.get(&fact)
    }

    /// A known fact's value with its origin.
    pub fn entry(&self, fact: FactId) -> Option<Entry> {
        Some(Entry { value: self.value(fact)?, origin: self.origins.get(&fact)?.clone() })
    }

    /// Every known fact, in registry order.
    pub fn known(&self) -> impl Iterator<Item = (FactId, Value, &Origin)> {
        self.origins.iter().filter_map(|(fact, origin)| Some((*fact, self.value(*fact)?, origin)))
    }

    /// Facts that have a value only because it is planned: nobody has done or seen it yet.
    pub fn planned(&self) -> FactSet {
        let planned = self.origins.iter().filter(|(_, origin)| origin.source == Source::Planned);
        planned.fold(FactSet::EMPTY, |all, (fact, _)| all.with(FactSet::of(*fact)))
    }

    /// What rests on nothing but a plan and has to be seen on the unit: readings that a plan left blank, and measurements
    /// that were only planned.
    pub fn to_be_seen(&self) -> impl Iterator<Item = FactId> {
        let planned = self
            .origins
            .iter()
            .filter(|(fact, origin)| origin.source == Source::Planned && fact.declaration().sheet == Sheet::Measured);
        self.awaited.keys().chain(planned.map(|(fact, _)| fact)).copied()
    }

    /// Facts of an older edition of the job file, by the name they had.
    pub const fn retired(&self) -> &BTreeMap<String, Entry> {
        &self.retired
    }

    /// The value of a fact in words, [`NOT_KNOWN`] when it has none.
    pub fn words(&self, fact: FactId) -> String {
        self.value(fact).map_or_else(|| NOT_KNOWN.to_owned(), |value| in_words(fact.declaration(), &value))
    }

    /// Writes a fact down, or makes it unknown again. One that a plan makes unknown is awaited until it is written down.
    ///
    /// # Errors
    /// [`Refused`] when the fact cannot have that value; it keeps what it held.
    pub fn write(&mut self, fact: FactId, value: Option<&Value>, origin: Origin) -> Result<(), Refused> {
        match value.filter(|value| !value.is_null()) {
            Some(value) => {
                self.job.slot_mut(fact).read(value, fact.declaration())?;
                self.awaited.remove(&fact);
                self.origins.insert(fact, origin);
            }
            None => {
                self.job.slot_mut(fact).read(&Value::Null, fact.declaration())?;
                self.origins.remove(&fact);
                if origin.source == Source::Planned {
                    self.awaited.insert(fact, origin);
                }
            }
        }
        Ok(())
    }
}

/// A value in the words a person would use.
pub fn in_words(declaration: &Declaration, value: &Value) -> String {
    if value.is_null() { NOT_KNOWN.to_owned() } else { say(value, declaration) }
}

impl Serialize for TicketFacts {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        let mut map = serializer.serialize_map(None)?;
        for (fact, value, origin) in self.known() {
            map.serialize_entry(fact.declaration().path, &Entry { value, origin: origin.clone() })?;
        }
        for (fact, origin) in &self.awaited {
            map.serialize_entry(fact.declaration().path, &Entry { value: Value::Null, origin: origin.clone() })?;
        }
        for (path, entry) in &self.retired {
            map.serialize_entry(path, entry)?;
        }
        map.end()
    }
}

impl<'de> Deserialize<'de> for TicketFacts {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        let mut facts = Self::default();
        for (path, entry) in BTreeMap::<String, Entry>::deserialize(deserializer)? {
            let written = fact_named(&path)
                .is_some_and(|fact| facts.write(fact, Some(&entry.value), entry.origin.clone()).is_ok());
            if !written {
                facts.retired.insert(path, entry);
            }
        }
        Ok(facts)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    fn origin() -> Origin {
        Origin { source: Source::Looked, by: "Ada".into(), at: jiff::Timestamp::UNIX_EPOCH }
    }

    fn fact(path: &str) -> FactId {
        fact_named(path).expect("a fact of the job file")
    }

    #[test]
    fn facts_come_back_from_storage_as_they_were() {
        let mut facts = TicketFacts::default();
        facts.write(fact("bell.kind"), Some(&json!("bolt_on")), origin()).expect("allowed");
        facts.write(fact("bell.runout_in"), Some(&json!(0.0035)), origin()).expect("allowed");
        let stored = serde_json::to_value(&facts).expect("facts are JSON");
        assert_eq!(stored["bell.kind"]["source"], "looked");
        assert_eq!(serde_json::from_value::<TicketFacts>(stored).expect("reads back"), facts);
    }

    #[test]
    fn a_reading_that_a_plan_left_blank_is_awaited_until_somebody_takes_it() {
        let planned = || Origin { source: Source::Planned, ..origin() };
        let (runout, kind) = (fact("bell.runout_in"), fact("bell.kind"));
        let mut facts = TicketFacts::default();
        let awaited = |facts: &TicketFacts| facts.to_be_seen().collect::<Vec<_>>();
        facts.write(runout, Some(&json!(0.012)), origin()).expect("allowed");
        facts.write(kind, Some(&json!("bolt_on")), planned()).expect("allowed");
        assert_eq!(awaited(&facts), [], "a part may be planned");
        facts.write(runout, None, origin()).expect("allowed");
        assert_eq!(awaited(&facts), [], "taken back by hand it is unknown and no more");
        facts.write(runout, None, planned()).expect("allowed");
        assert_eq!(awaited(&facts), [runout]);
        let stored = serde_json::to_value(&facts).expect("facts are JSON");
        facts = serde_json::from_value(stored).expect("reads back");
        assert_eq!((awaited(&facts), facts.value(runout), facts.origin(runout)), (vec![runout], None, None));
        facts.write(runout, Some(&json!(0.002)), planned()).expect("allowed");
        assert_eq!(awaited(&facts), [runout], "a planned number is no reading");
        facts.write(runout, Some(&json!(0.002)), origin()).expect("allowed");
        assert_eq!(awaited(&facts), []);
    }

    #[test]
    fn a_fact_of_an_older_edition_is_kept_not_dropped() {
        let stored =
            json!({"bell.colour": {"value": "grey", "source": "looked", "by": "Ada", "at": "2026-01-02T03:04:05Z"}});
        let facts: TicketFacts = serde_json::from_value(stored.clone()).expect("reads");
        assert_eq!(facts.known().count(), 0);
        assert_eq!(serde_json::to_value(&facts).expect("facts are JSON"), stored);
    }

    #[test]
    fn an_impossible_value_leaves_the_fact_as_it_was() {
        let mut facts = TicketFacts::default();
        let tire = fact("vehicle.tire_diameter_in");
        facts.write(tire, Some(&json!(28.5)), origin()).expect("allowed");
        assert!(facts.write(tire, Some(&json!(0)), origin()).is_err());
        assert_eq!(facts.words(tire), "28.5 in");
        facts.write(tire, None, origin()).expect("unknown is always allowed");
        assert_eq!(facts.words(tire), NOT_KNOWN);
        assert!(facts.origin(tire).is_none());
    }
}
