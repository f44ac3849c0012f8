//! What the counter set's form means: which answers differ from what is recorded.

use crate::job::{FactId, read_text};
use crate::plan::{Question, counter_sections};
use crate::ticket::{Contents, Edit, FactChange, Source};
use crate::web::facts::{as_typed, default_source, name_of, source_name_of};
use crate::web::form::{Fields, Problem, Reader};
use serde_json::Value;

/// What was answered at the counter.
#[derive(Debug, Default)]
pub struct Answers {
    /// The answers that differ from what is recorded.
    pub edit: Edit,
    /// The answers that cannot be taken.
    pub problems: Vec<Problem>,
}

/// The form as it is first shown: what is recorded, and for the rest how it is usually learnt.
pub fn held(recorded: &Contents) -> Fields {
    let mut fields = Fields::default();
    for fact in questions().map(Question::fact) {
        let declaration = fact.declaration();
        let origin = recorded.facts.origin(fact);
        let source = origin.map_or_else(|| default_source(declaration.sheet), |origin| origin.source);
        fields.set(name_of(declaration), as_typed(recorded.facts.value(fact).as_ref()));
        fields.set(source_name_of(declaration), source.code());
    }
    fields
}

/// What was answered, against what the form was made from. A question that was not on the page changes nothing.
pub fn answers(typed: &Fields, base: &Contents) -> Answers {
    let mut answers = Answers::default();
    for question in questions() {
        let fact = question.fact();
        match answer(question, fact, typed, base) {
            Ok(Some(change)) => answers.edit.facts.push(change),
            Ok(None) => {}
            Err(message) => answers.problems.push(Problem { field: name_of(fact.declaration()), message }),
        }
    }
    answers
}

fn answer(question: &Question, fact: FactId, typed: &Fields, base: &Contents) -> Result<Option<FactChange>, String> {
    let declaration = fact.declaration();
    let Some(sent) = typed.get(&name_of(declaration)) else { return Ok(None) };
    let recorded = base.facts.value(fact);
    let value = if sent == as_typed(recorded.as_ref()) {
        recorded.clone()
    } else {
        read_text(sent, declaration).map_err(|error| error.message)?
    };
    if !question.no_counts && value == Some(Value::Bool(false)) && value != recorded {
        return Err(format!(
            "{} cannot be ruled out with the unit closed: answer yes, or leave it at not known yet.",
            declaration.label
        ));
    }
    if value.is_none() && recorded.is_none() {
        return Ok(None);
    }
    let source = typed.get(&source_name_of(declaration)).and_then(Source::typed);
    let source = source.unwrap_or_else(|| default_source(declaration.sheet));
    let known_so = base.facts.origin(fact).is_some_and(|origin| origin.source == source);
    if value == recorded && known_so {
        return Ok(None);
    }
    Ok(Some(FactChange { path: declaration.path.to_owned(), value, source }))
}

fn questions() -> impl Iterator<Item = &'static Question> {
    counter_sections().iter().flat_map(|section| section.questions)
}

/// What the person asks of the form.
#[derive(Debug, PartialEq, Eq)]
pub struct Wish {
    /// The revision the form was made from.
    pub base: i32,
    /// Is it only to be looked at, not written down?
    pub only_look: bool,
    /// Is the class to be taken from a table once this is written down?
    pub then_table: bool,
}

impl crate::web::form::Entry for Wish {
    fn read(reader: &mut Reader<'_>) -> Self {
        let base = reader.number("base").and_then(|number| i32::try_from(number).ok()).unwrap_or_default();
        let wanted = reader.fields().get("do");
        Self { base, only_look: wanted == Some("look"), then_table: wanted == Some("class_table") }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::fact_named;
    use crate::ticket::Origin;
    use jiff::Timestamp;
    use serde_json::json;

    fn recorded(facts: &[(&str, Value)]) -> Contents {
        let mut contents = Contents::default();
        for (path, value) in facts {
            let origin = Origin { source: Source::Measured, by: "Ada".into(), at: Timestamp::UNIX_EPOCH };
            contents.facts.write(fact_named(path).expect("a fact"), Some(value), origin).expect("allowed");
        }
        contents
    }

    #[test]
    fn a_form_sent_back_untouched_changes_nothing() {
        let contents = recorded(&[("bell.kind", json!("bolt_on")), ("vehicle.weight_lb", json!(3600.5))]);
        let answers = answers(&held(&contents), &contents);
        assert_eq!(answers.edit, Edit::default());
        assert!(answers.problems.is_empty());
    }

    #[test]
    fn an_answer_carries_its_source_and_a_new_source_alone_counts_too() {
        let contents = recorded(&[("vehicle.weight_lb", json!(3600))]);
        let typed = held(&contents)
            .with("f.engine.torque_lbft", "450")
            .with("s.vehicle.weight_lb", "customer_said")
            .with("f.bell.kind", "bolt_on");
        let answers = answers(&typed, &contents);
        let changed: Vec<_> = answers.edit.facts.iter().map(|one| (one.path.as_str(), one.source)).collect();
        assert_eq!(
            changed,
            [
                ("engine.torque_lbft", Source::CustomerSaid),
                ("vehicle.weight_lb", Source::CustomerSaid),
                ("bell.kind", Source::Looked)
            ]
        );
    }

    #[test]
    fn every_answer_that_cannot_be_taken_is_named_and_the_others_still_count() {
        let typed = Fields::default()
            .with("f.vehicle.tire_diameter_in", "0")
            .with("f.engine.torque_lbft", "plenty")
            .with("f.use.raced", "yes");
        let answers = answers(&typed, &Contents::default());
        let fields: Vec<_> = answers.problems.iter().map(|problem| problem.field.as_str()).collect();
        assert_eq!(fields, ["f.engine.torque_lbft", "f.vehicle.tire_diameter_in"]);
        assert!(answers.problems[0].message.contains("plenty"), "{}", answers.problems[0].message);
        assert_eq!(answers.edit.facts.len(), 1);
    }

    #[test]
    fn a_closed_unit_rules_out_no_coolant() {
        let ask = |answer| answers(&Fields::default().with("f.case.coolant_found", answer), &Contents::default());
        assert_eq!(ask("yes").edit.facts.len(), 1);
        assert_eq!(ask("no").problems.len(), 1);
        assert!(ask("").problems.is_empty());
        let looked_inside = recorded(&[("case.coolant_found", json!(false))]);
        assert!(answers(&held(&looked_inside), &looked_inside).problems.is_empty(), "the bench may have ruled it out");
    }

    #[test]
    fn an_answer_can_be_taken_back() {
        let contents = recorded(&[("use.raced", json!(true))]);
        let answers = answers(&held(&contents).with("f.use.raced", ""), &contents);
        assert_eq!(answers.edit.facts.len(), 1);
        assert_eq!(answers.edit.facts[0].value, None);
    }
}
