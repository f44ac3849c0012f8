//! A job from its JSON: everything wrong with it at once, and nothing half read.

use super::error::{JobError, allowed_in_file, given};
use super::nearest::{nearest, nearest_fact, nearest_group, nearest_path};
use super::{Declaration, FactId, FactSet, GROUPS, Job, Kind, fact_named};
use crate::quantity::cut;
use serde::Deserialize;
use serde::de::{MapAccess, Visitor};
use serde_json::Value;
use serde_json::value::RawValue;
use std::collections::HashSet;
use std::fmt;

impl Job {
    /// Reads a job file: `{"bell": {"kind": "bolt_on"}}`. A fact that is absent or null is unknown.
    ///
    /// # Errors
    /// Every name that is not known, every value that cannot be, every name given twice, each with its line.
    pub fn from_json(text: &str) -> Result<Self, Vec<JobError>> {
        // Some editors put a byte-order mark in front of everything they save.
        let text = text.strip_prefix('\u{feff}').unwrap_or(text);
        let whole: &RawValue = serde_json::from_str(text).map_err(|error| vec![broken(text, &error)])?;
        let mut reader = Reader { lines: Lines::of(text), job: Self::unknown(), errors: Vec::new() };
        reader.read_job(whole);
        if reader.errors.is_empty() { Ok(reader.job) } else { Err(reader.errors) }
    }

    /// The same, from a value that was parsed already.
    ///
    /// # Errors
    /// As [`Job::from_json`], without lines.
    pub fn from_value(value: &Value) -> Result<Self, Vec<JobError>> {
        let read = Self::from_json(&value.to_string());
        read.map_err(|errors| errors.into_iter().map(|error| JobError { line: None, ..error }).collect())
    }

    /// Writes values down by their dotted names; null makes a fact unknown. All of them, or none.
    ///
    /// # Errors
    /// As [`Job::from_json`], without lines; the job is then as it was.
    pub fn apply<'a>(&mut self, changes: impl IntoIterator<Item = (&'a str, &'a Value)>) -> Result<(), Vec<JobError>> {
        let mut changed = self.clone();
        let mut written = FactSet::EMPTY;
        let mut errors = Vec::new();
        for (path, value) in changes {
            let Some(fact) = fact_named(path) else {
                errors.push(unknown_fact(path, nearest_path(path), &path.into()));
                continue;
            };
            if written.contains(fact) {
                errors.push(twice(path, given(&value.to_string())));
            }
            written = written.with(FactSet::of(fact));
            errors.extend(changed.write(fact, value).err());
        }
        if !errors.is_empty() {
            return Err(errors);
        }
        *self = changed;
        Ok(())
    }

    /// The job as a job file: only what is known, groups and facts in registry order.
    pub fn to_json(&self) -> Value {
        let mut groups = serde_json::Map::new();
        for fact in super::fact_ids() {
            let Some(value) = self.slot(fact).json() else { continue };
            let Some((group, leaf)) = fact.declaration().path.split_once('.') else { continue };
            groups.entry(group).or_insert_with(|| Value::Object(serde_json::Map::new()))[leaf] = value;
        }
        Value::Object(groups)
    }

    fn write(&mut self, fact: FactId, value: &Value) -> Result<(), JobError> {
        let declaration = fact.declaration();
        self.slot_mut(fact)
            .read(value, declaration)
            .map_err(|refused| cannot_be(declaration, given(&value.to_string()), refused.allowed))
    }
}

struct Reader<'a> {
    lines: Lines<'a>,
    job: Job,
    errors: Vec<JobError>,
}

impl<'a> Reader<'a> {
    fn read_job(&mut self, whole: &'a RawValue) {
        let groups = match pairs(whole) {
            Ok(groups) => groups,
            Err(why) => {
                let allowed = "an object of groups, such as {\"bell\": {\"kind\": \"bolt_on\"}}".to_owned();
                let message = format!("A job cannot be {}; it must be {allowed}.", why.unwrap_or_else(|| short(whole)));
                return self.refuse(
                    whole,
                    JobError { path: String::new(), given: given(whole.get()), allowed, message, line: None },
                );
            }
        };
        let mut seen = HashSet::new();
        for (name, value) in &groups {
            if !seen.insert(name.as_str()) {
                self.refuse(value, twice(name, given(value.get())));
            }
            match GROUPS.iter().find(|(group, _)| group == name) {
                Some((group, declarations)) => self.read_group(group, declarations, value),
                None => self.refuse(value, unknown_group(name)),
            }
        }
    }

    fn read_group(&mut self, group: &'static str, declarations: &[Declaration], value: &'a RawValue) {
        if value.get() == "null" {
            return;
        }
        let leaves = match pairs(value) {
            Ok(leaves) => leaves,
            Err(why) => {
                let allowed = format!("an object of its facts: {}", leaf_names(declarations));
                let stood = why.unwrap_or_else(|| short(value));
                let message = format!("{group} cannot be {stood}; it must be an object of facts, in braces.");
                return self.refuse(
                    value,
                    JobError { path: group.into(), given: given(value.get()), allowed, message, line: None },
                );
            }
        };
        let mut seen = HashSet::new();
        for (name, value) in &leaves {
            let path = format!("{group}.{name}");
            if !seen.insert(name.as_str()) {
                self.refuse(value, twice(&path, given(value.get())));
            }
            match fact_named(&path) {
                Some(fact) => self.read_fact(fact, value),
                None => {
                    self.refuse(value, unknown_fact(&path, nearest_fact(group, name), &Value::from(cut(name, 200))))
                }
            }
        }
    }

    fn read_fact(&mut self, fact: FactId, raw: &'a RawValue) {
        let declaration = fact.declaration();
        // No fact is a list or an object: one is refused unread, however deep it goes. What else does not parse is
        // a number beyond what a computer holds or half a character.
        let nested = raw.get().starts_with(['{', '[']);
        let parsed = if nested { None } else { serde_json::from_str::<Value>(raw.get()).ok() };
        let read = match parsed {
            Some(value) => self.job.write(fact, &value),
            None => Err(cannot_be(declaration, given(raw.get()), allowed_in_file(declaration))),
        };
        if let Err(error) = read {
            self.refuse(raw, error);
        }
    }

    fn refuse(&mut self, at: &RawValue, error: JobError) {
        let line = self.lines.line_of(at.get());
        self.errors.push(JobError { line: Some(line), ..error });
    }
}

fn broken(text: &str, error: &serde_json::Error) -> JobError {
    let why = error.to_string();
    let allowed = "one JSON object, such as {\"bell\": {\"kind\": \"bolt_on\"}}".to_owned();
    let message = if text.trim().is_empty() {
        format!("There is nothing to read here; a job is {allowed}.")
    } else {
        format!("This is not JSON that can be read: {why}.")
    };
    let line = error.line().max(1);
    let stood = text.lines().nth(line - 1).unwrap_or_default();
    JobError { path: String::new(), given: Value::String(cut(stood.trim(), 200)), allowed, message, line: Some(line) }
}

fn unknown_group(name: &str) -> JobError {
    let name = cut(name, 200);
    let groups: Vec<_> = GROUPS.iter().map(|(group, _)| *group).collect();
    let allowed = format!("a group of the job file: {}", groups.join(", "));
    let message = match (fact_named(&name), name.split_once('.')) {
        (Some(_), Some((group, leaf))) => {
            format!("\"{name}\" is written with a dot; nest it instead: {{\"{group}\": {{\"{leaf}\": ...}}}}.")
        }
        (_, dotted) => {
            let near = if dotted.is_some() { nearest_path(&name) } else { nearest_group(&name) };
            format!("There is no group \"{name}\"{}.", or_nearest(near))
        }
    };
    JobError { given: Value::from(name.as_str()), path: name, allowed, message, line: None }
}

fn unknown_fact(path: &str, near: Option<&str>, given: &Value) -> JobError {
    let path = cut(path, 200);
    let group = path.split('.').next().unwrap_or_default();
    let allowed = match GROUPS.iter().find(|(name, _)| *name == group) {
        Some((_, declarations)) => format!("a fact of the group {group}: {}", leaf_names(declarations)),
        None => "a fact's name, group and leaf with a dot between".to_owned(),
    };
    let message = format!("There is no fact \"{path}\"{}.", or_nearest(near));
    JobError { path, given: given.clone(), allowed, message, line: None }
}

fn cannot_be(declaration: &Declaration, given: Value, allowed: String) -> JobError {
    let path = declaration.path.to_owned();
    let meant = match (declaration.kind, &given) {
        (Kind::Choice(words), Value::String(word)) => nearest(word, words.iter().map(|word| word.code)),
        _ => None,
    };
    let stood = cut(&given.to_string(), 60);
    let message = format!("{path} cannot be {stood}; it must be {allowed}{}.", or_nearest(meant));
    JobError { path, given, allowed, message, line: None }
}

fn twice(path: &str, given: Value) -> JobError {
    let path = cut(path, 200);
    let message = format!("\"{path}\" is given twice; nothing is guessed, so keep only the right one.");
    JobError { path, given, allowed: "each name once".to_owned(), message, line: None }
}

fn or_nearest(near: Option<&str>) -> String {
    near.map(|name| format!("; the nearest known name is \"{name}\"")).unwrap_or_default()
}

fn leaf_names(declarations: &[Declaration]) -> String {
    let leaves: Vec<_> =
        declarations.iter().filter_map(|fact| fact.path.split_once('.')).map(|(_, leaf)| leaf).collect();
    leaves.join(", ")
}

fn short(raw: &RawValue) -> String {
    cut(raw.get(), 60)
}

/// The members of an object in the order they stand, doubles kept.
struct Pairs<'a>(Vec<(String, &'a RawValue)>);

impl<'de> Deserialize<'de> for Pairs<'de> {
    fn deserialize<D: serde::Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        struct Members;
        impl<'de> Visitor<'de> for Members {
            type Value = Pairs<'de>;
            fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str("an object")
            }
            fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Pairs<'de>, A::Error> {
                let mut members = Vec::new();
                while let Some(member) = map.next_entry()? {
                    members.push(member);
                }
                Ok(Pairs(members))
            }
        }
        deserializer.deserialize_map(Members)
    }
}

/// The members of an object; refused with what stands there instead, when that needs saying in other words.
fn pairs(raw: &RawValue) -> Result<Vec<(String, &RawValue)>, Option<String>> {
    if !raw.get().starts_with('{') {
        return Err(None);
    }
    let pairs: Result<Pairs<'_>, _> = serde_json::from_str(raw.get());
    pairs.map(|pairs| pairs.0).map_err(|_| Some("an object with a name that is no text".to_owned()))
}

/// Finds line numbers; places are asked for mostly in the order they stand.
struct Lines<'a> {
    text: &'a str,
    counted_to: usize,
    line: usize,
}

impl<'a> Lines<'a> {
    fn of(text: &'a str) -> Self {
        Self { text, counted_to: 0, line: 1 }
    }

    /// The line on which a part of the text starts.
    fn line_of(&mut self, part: &str) -> usize {
        let start = (part.as_ptr() as usize).saturating_sub(self.text.as_ptr() as usize).min(self.text.len());
        if start < self.counted_to {
            (self.counted_to, self.line) = (0, 1);
        }
        self.line += self.text.as_bytes()[self.counted_to..start].iter().filter(|byte| **byte == b'\n').count();
        self.counted_to = start;
        self.line
    }
}

#[cfg(test)]
mod tests;
