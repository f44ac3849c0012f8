//! One question's answer as it is sent, and what was put aside for now.

use crate::job::{FactId, fact_named, read_text};
use crate::plan::counter_question;
use crate::ticket::{Edit, FactChange, Source, Stage};
use crate::web::extract::escaped;
use crate::web::facts::{name_of, source_name_of};
use crate::web::form::{Entry, Fields, Problem, Reader};
use serde_json::Value;

/// What was put aside, in that order. It is kept in the address alone.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Aside(Vec<FactId>);

/// An answer on its way.
pub struct Answered {
    /// The revision the page showed.
    pub base: i32,
    /// What was asked.
    pub fact: FactId,
    /// What was put aside before.
    pub aside: Aside,
}

impl Aside {
    /// Reads it from an address; names that are no facts are left out.
    pub fn read(text: &str) -> Self {
        let mut aside = Self::default();
        for fact in text.split(',').filter_map(fact_named) {
            aside = aside.and(fact);
        }
        aside
    }

    /// The same with this one put aside, behind all others.
    #[must_use]
    pub fn and(&self, fact: FactId) -> Self {
        let others = self.0.iter().copied().filter(|other| *other != fact);
        Self(others.chain([fact]).collect())
    }

    /// Its place among those put aside, if it is one.
    pub fn place(&self, fact: FactId) -> Option<usize> {
        self.0.iter().position(|other| *other == fact)
    }

    /// As the address carries it.
    pub fn text(&self) -> String {
        self.0.iter().map(|fact| fact.declaration().path).collect::<Vec<_>>().join(",")
    }
}

impl Answered {
    /// What the answer changes.
    ///
    /// # Errors
    /// When there is no answer, or it is none that can be taken at this stage.
    pub fn edit(&self, typed: &Fields, stage: Stage) -> Result<Edit, Problem> {
        let declaration = self.fact.declaration();
        let sent = typed.get(&self.field()).unwrap_or_default();
        let value = read_text(sent, declaration).map_err(|error| self.problem(error.message))?;
        let Some(value) = value else {
            let ask = format!("{} has no answer yet. Answer it, or press “Cannot be known yet”.", declaration.label);
            return Err(self.problem(ask));
        };
        if value == Value::Bool(false) && !no_counts(self.fact, stage) {
            let message =
                format!("{} cannot be ruled out with the unit closed. Answer yes, or go on.", declaration.label);
            return Err(self.problem(message));
        }
        // Here each answer stands alone, so no usual source speaks for it: that would be a guess.
        let field = source_name_of(declaration);
        let source = typed.get(&field).and_then(Source::typed).ok_or_else(|| Problem {
            message: format!("Choose how you know it ({}), then press the answer again.", declaration.label),
            field,
        })?;
        let change = FactChange { path: declaration.path.to_owned(), value: Some(value), source };
        Ok(Edit { facts: vec![change], ..Edit::default() })
    }

    /// The form's field of the answer.
    pub fn field(&self) -> String {
        name_of(self.fact.declaration())
    }

    /// Where to go on once it is saved.
    pub fn onward(&self, number: i64) -> String {
        format!("/tickets/{number}/next?skip={}&saved={}", escaped(&self.aside.text()), self.fact.declaration().path)
    }

    fn problem(&self, message: String) -> Problem {
        Problem { field: self.field(), message }
    }
}

impl Entry for Answered {
    fn read(reader: &mut Reader<'_>) -> Self {
        let base = reader.number("base").and_then(|number| i32::try_from(number).ok()).unwrap_or_default();
        let aside = Aside::read(reader.fields().get("skip").unwrap_or_default());
        let fact = reader.one_of("ask", "It is not known which question this answers.", fact_named);
        // A fact stands in for the missing one; what is read with problems is not used.
        let fact = fact.unwrap_or_else(|| crate::job::Job::unknown().usage.kind.id());
        Self { base, fact, aside }
    }
}

/// May "no" be answered? Some things only a unit taken apart can rule out.
pub fn no_counts(fact: FactId, stage: Stage) -> bool {
    stage >= Stage::Teardown || counter_question(fact).is_none_or(|question| question.no_counts)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fact(path: &str) -> FactId {
        fact_named(path).expect("a fact")
    }

    fn edit(path: &str, typed: &[(&str, &str)], stage: Stage) -> Result<Edit, Problem> {
        let typed = typed.iter().fold(Fields::default(), |all, (name, value)| all.with(name, *value));
        Answered { base: 1, fact: fact(path), aside: Aside::default() }.edit(&typed, stage)
    }

    #[test]
    fn what_is_put_aside_again_goes_to_the_end() {
        let aside = Aside::read("use.raced,bell.kind,no.such,use.raced");
        assert_eq!(aside.text(), "bell.kind,use.raced");
        assert_eq!(aside.and(fact("bell.kind")).text(), "use.raced,bell.kind");
        assert_eq!(Aside::read("").text(), "");
    }

    #[test]
    fn an_answer_is_one_change_with_its_source() {
        let typed = [("f.engine.torque_lbft", "450"), ("s.engine.torque_lbft", "measured"), ("f.use.raced", "yes")];
        let edit = edit("engine.torque_lbft", &typed, Stage::Intake).expect("an answer");
        assert_eq!(edit.facts.len(), 1, "only what was asked");
        assert_eq!((edit.facts[0].path.as_str(), edit.facts[0].source), ("engine.torque_lbft", Source::Measured));
    }

    #[test]
    fn no_answer_and_a_wrong_one_are_told_at_the_field() {
        for typed in ["", "  ", "plenty", "-1"] {
            let problem = edit("engine.torque_lbft", &[("f.engine.torque_lbft", typed)], Stage::Intake);
            assert_eq!(problem.expect_err(typed).field, "f.engine.torque_lbft");
        }
    }

    #[test]
    fn a_closed_unit_rules_nothing_out_and_an_open_one_does() {
        let typed = [("f.case.coolant_found", "no"), ("s.case.coolant_found", "looked")];
        let ask = |stage| edit("case.coolant_found", &typed, stage);
        assert!(ask(Stage::Intake).is_err());
        assert!(ask(Stage::Teardown).is_ok());
    }

    #[test]
    fn nobody_is_said_to_have_measured_what_nobody_said_was_measured() {
        for source in ["", "log", "nobody"] {
            let typed = [("f.bench.front_end_play_in", "0.012"), ("s.bench.front_end_play_in", source)];
            for typed in [&typed[..], &typed[..1]] {
                let problem = edit("bench.front_end_play_in", typed, Stage::Assembly).expect_err("no source");
                assert_eq!(problem.field, "s.bench.front_end_play_in", "{source:?}");
                assert!(problem.message.starts_with("Choose how you know it"), "{}", problem.message);
            }
        }
    }
}
