//! One fact as a question on a form: its control, what stands in it, where that came from.

use crate::job::{Bound, Declaration, FactId, Kind};
use crate::ticket::{NOT_KNOWN, Origin};
use crate::web::form::FormState;
use serde_json::Value;

/// Answers that fit side by side on one hand's screen; longer lists become a menu.
const SIDE_BY_SIDE: usize = 3;

/// One fact as a question.
pub struct FactField {
    /// `group.leaf`.
    pub path: &'static str,
    /// The field's name in the form, and its id on the page: `f.group.leaf`.
    pub name: String,
    /// What it is called.
    pub label: &'static str,
    /// What the number means, after its unit.
    pub note: &'static str,
    /// How to find it out.
    pub how: &'static str,
    /// Why anybody wants to know.
    pub why: &'static str,
    /// What it is answered with.
    pub control: Control,
    /// What is wrong with what was typed; empty when nothing is.
    pub problem: String,
    /// Where the recorded value came from; empty while nothing is recorded.
    pub origin: String,
    /// The form's name for another source than the one of the whole form.
    pub source_name: String,
    /// How the value was learnt, when it differs from the form's own source.
    pub source: String,
    /// How many checks wait for it at this stage.
    pub waited_for: usize,
}

/// What a question is answered with.
pub enum Control {
    /// A few answers side by side.
    Side(Vec<Answer>),
    /// One of many, from a menu.
    Menu(Vec<Answer>),
    /// Something typed.
    Typed {
        /// What stands in the field.
        value: String,
        /// The kind of field: `text` or `date`.
        kind: &'static str,
        /// The keyboard a tablet brings up.
        keyboard: &'static str,
        /// The unit's symbol, shown beside the field.
        unit: &'static str,
        /// What is usual, in words; empty for most.
        usual: String,
    },
}

/// One answer of a list.
pub struct Answer {
    /// What the form sends; nothing for *not known yet*.
    pub value: String,
    /// As people read it.
    pub label: String,
    /// Is it the one that stands?
    pub chosen: bool,
}

/// The name under which a form sends this fact.
pub fn name_of(declaration: &Declaration) -> String {
    format!("f.{}", declaration.path)
}

/// The name under which a form sends how this one fact was learnt.
pub fn source_name_of(declaration: &Declaration) -> String {
    format!("s.{}", declaration.path)
}

/// A recorded value as its field shows it; reading it back gives the value.
pub fn as_typed(value: Option<&Value>) -> String {
    match value {
        None | Some(Value::Null) => String::new(),
        Some(Value::Bool(true)) => "yes".to_owned(),
        Some(Value::Bool(false)) => "no".to_owned(),
        Some(Value::String(text)) => text.clone(),
        // Never with an exponent, which nobody types.
        Some(Value::Number(number)) => number.as_f64().map_or_else(|| number.to_string(), |number| number.to_string()),
        Some(other) => other.to_string(),
    }
}

impl FactField {
    /// The question for a fact with what stands in the form.
    pub fn new(fact: FactId, form: &FormState, origin: Option<&Origin>, waited_for: usize) -> Self {
        let declaration = fact.declaration();
        let name = name_of(declaration);
        let source_name = source_name_of(declaration);
        Self {
            path: declaration.path,
            label: declaration.label,
            note: declaration.note,
            how: declaration.how,
            why: declaration.why,
            control: control(declaration, form.value(&name)),
            problem: form.problem(&name).to_owned(),
            origin: origin
                .map_or_else(String::new, |origin| format!("{}, written down by {}", origin.source.label(), origin.by)),
            source: form.value(&source_name).to_owned(),
            name,
            source_name,
            waited_for,
        }
    }

    /// Does anything stand in it, right or wrong?
    pub fn is_filled(&self) -> bool {
        match &self.control {
            Control::Side(answers) | Control::Menu(answers) => {
                answers.iter().any(|answer| answer.chosen && !answer.value.is_empty())
            }
            Control::Typed { value, .. } => !value.is_empty(),
        }
    }
}

fn control(declaration: &Declaration, typed: &str) -> Control {
    let listed = |answers: Vec<(String, String)>| {
        let known = answers.iter().any(|(value, _)| value == typed);
        let unknown = Answer { value: String::new(), label: sentence(NOT_KNOWN), chosen: !known };
        let answers: Vec<_> = answers
            .into_iter()
            .map(|(value, label)| Answer { chosen: value == typed, value, label: sentence(&label) })
            .chain([unknown])
            .collect();
        if answers.len() <= SIDE_BY_SIDE + 1 { Control::Side(answers) } else { Control::Menu(answers) }
    };
    let written = |kind, keyboard, unit, usual| Control::Typed { value: typed.to_owned(), kind, keyboard, unit, usual };
    match (declaration.kind, declaration.bound) {
        (Kind::YesNo, _) => listed(vec![("yes".into(), "yes".into()), ("no".into(), "no".into())]),
        (Kind::Choice(words), _) => {
            listed(words.iter().map(|word| (word.code.to_owned(), word.label.to_owned())).collect())
        }
        (Kind::Count, Bound::OneOf(numbers)) => {
            listed(numbers.iter().map(|number| (number.to_string(), number.to_string())).collect())
        }
        (Kind::Count, Bound::OneOfOrWhole(numbers)) => {
            let usual: Vec<_> = numbers.iter().map(f64::to_string).collect();
            written("text", "numeric", "", format!("usual: {}", usual.join(", ")))
        }
        (Kind::Count | Kind::Year, _) => written("text", "numeric", "", String::new()),
        (Kind::Number(symbol), _) => written("text", "decimal", symbol, String::new()),
        (Kind::Date, _) => written("date", "", "", String::new()),
        (Kind::Text, _) => written("text", "text", "", String::new()),
    }
}

/// With a capital at its start.
fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters.next().map_or_else(String::new, |first| first.to_uppercase().chain(letters).collect())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{fact_ids, random_value, read_text};
    use crate::web::form::Fields;

    /// What a field shows is what the counter could have typed.
    #[test]
    fn every_fact_reads_back_from_its_own_field() {
        let mut seed = 7_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            seed >> 11
        };
        for fact in fact_ids() {
            let declaration = fact.declaration();
            // Chance also draws numbers no gauge has as many digits for.
            let values: Vec<_> = (0..40).map(|_| random_value(declaration, &mut next)).collect();
            let mut read_back = 0;
            for value in values.iter().filter(|value| as_typed(Some(value)).len() < 18) {
                let read = read_text(&as_typed(Some(value)), declaration).unwrap_or_else(|error| panic!("{error}"));
                // A field drops the blanks around a text, as the counter would.
                let kept = value.as_str().map_or(value.clone(), |text| Value::from(text.trim()));
                assert_eq!(read, Some(kept), "{}", declaration.path);
                read_back += 1;
            }
            assert!(read_back > 5, "{}", declaration.path);
        }
    }

    #[test]
    fn a_blank_shows_as_not_known_never_as_an_answer() {
        for fact in fact_ids() {
            let field = FactField::new(fact, &FormState::empty(), None, 0);
            assert!(!field.is_filled(), "{}", field.path);
            if let Control::Side(answers) | Control::Menu(answers) = &field.control {
                let chosen: Vec<_> = answers.iter().filter(|answer| answer.chosen).collect();
                assert_eq!(chosen.len(), 1, "{}", field.path);
                assert_eq!(chosen[0].label, "Not known yet");
            }
        }
    }

    #[test]
    fn what_was_typed_stays_even_when_it_cannot_be() {
        let fact = crate::job::fact_named("bell.runout_in").expect("a fact");
        let form = FormState::holding(Fields::default().with("f.bell.runout_in", "four thou"));
        let field = FactField::new(fact, &form, None, 0);
        assert!(matches!(&field.control, Control::Typed { value, unit: "in", .. } if value == "four thou"));
    }
}
