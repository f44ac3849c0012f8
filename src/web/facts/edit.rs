//! What a sheet's form means: which facts somebody changed, from what to what, and how they know.
//!
//! A form shows everything on its sheet and sends all of it back. Only what differs from the revision the form was
//! made from is an edit; the rest must not be written again in another hand.

use super::field::{as_typed, name_of, source_name_of};
use crate::job::{Declaration, FactId, Sheet, fact_ids, read_text};
use crate::plan::steps::{filler, not_typed};
use crate::ticket::{Contents, Edit, FactChange, Source, Topic};
use crate::web::form::{Fields, Problem};

/// The form's name for how everything changed on it was learnt.
const SOURCE: &str = "source";

/// How facts of a sheet are usually learnt.
pub const fn default_source(sheet: Sheet) -> Source {
    match sheet {
        Sheet::Spec => Source::CustomerSaid,
        Sheet::Outside | Sheet::Inside | Sheet::Paper => Source::Looked,
        Sheet::Measured => Source::Measured,
    }
}

/// The texts that are written on a sheet.
pub const fn topics(sheet: Sheet) -> &'static [Topic] {
    match sheet {
        Sheet::Spec => &[Topic::Wants, Topic::Symptom],
        Sheet::Outside => &[Topic::Brought],
        _ => &[],
    }
}

/// A sheet's form as it is first shown: what is recorded.
pub fn held(sheet: Sheet, recorded: &Contents) -> Fields {
    let mut fields = Fields::default().with(SOURCE, default_source(sheet).code());
    for fact in on(sheet) {
        if let Some(value) = recorded.facts.value(fact) {
            fields.set(name_of(fact.declaration()), as_typed(Some(&value)));
        }
    }
    for topic in topics(sheet) {
        if let Some(wording) = recorded.words.on(*topic) {
            fields.set(topic.code(), wording.text.clone());
        }
    }
    fields
}

/// What was changed on a sheet's form that was made from `base`, and every field that cannot be read, in the order of
/// the sheet. Only a form without problems may be saved; the rest of one that has some can still be looked at.
pub fn edit_of(sheet: Sheet, typed: &Fields, base: &Contents) -> (Edit, Vec<Problem>) {
    let mut edit = Edit::default();
    let mut problems = Vec::new();
    let whole_form = typed.get(SOURCE).and_then(Source::typed).unwrap_or_else(|| default_source(sheet));
    for topic in topics(sheet) {
        let sent = typed.get(topic.code()).map(str::to_owned);
        let recorded = base.words.on(*topic).map_or("", |wording| wording.text.as_str());
        let sent = sent.filter(|sent| sent.trim().replace("\r\n", "\n") != recorded.trim());
        match topic {
            Topic::Wants => edit.wants = sent,
            Topic::Symptom => edit.symptom = sent,
            Topic::Brought => edit.brought = sent,
        }
    }
    for (path, _) in typed.starting("f.") {
        problems.extend(not_typed(path).map(|message| Problem { field: format!("f.{path}"), message }));
    }
    for fact in on(sheet) {
        let declaration = fact.declaration();
        let Some(sent) = typed.get(&name_of(declaration)) else { continue };
        match change(fact, declaration, sent, typed, base, whole_form) {
            Ok(Some(change)) => edit.facts.push(change),
            Ok(None) => {}
            Err(message) => problems.push(Problem { field: name_of(declaration), message }),
        }
    }
    (edit, problems)
}

fn change(
    fact: FactId,
    declaration: &Declaration,
    sent: &str,
    typed: &Fields,
    base: &Contents,
    whole_form: Source,
) -> Result<Option<FactChange>, String> {
    let recorded = base.facts.value(fact);
    let own_source = typed.get(&source_name_of(declaration)).and_then(Source::typed);
    let untouched = sent == as_typed(recorded.as_ref());
    let value =
        if untouched { recorded.clone() } else { read_text(sent, declaration).map_err(|error| error.message)? };
    let same = untouched || value == recorded;
    if same && own_source.is_none() || value.is_none() && recorded.is_none() {
        return Ok(None);
    }
    Ok(Some(FactChange { path: declaration.path.to_owned(), value, source: own_source.unwrap_or(whole_form) }))
}

/// The fields that carry an edit and nothing else: what is sent again after a conflict, so that a fact somebody else
/// changed meanwhile and this form only showed is not written back.
pub fn only_the_edit(edit: &Edit) -> Fields {
    let mut fields = Fields::default();
    for change in &edit.facts {
        fields.set(format!("f.{}", change.path), as_typed(change.value.as_ref()));
        fields.set(format!("s.{}", change.path), change.source.code());
    }
    for (topic, text) in [(Topic::Wants, &edit.wants), (Topic::Symptom, &edit.symptom), (Topic::Brought, &edit.brought)]
    {
        if let Some(text) = text {
            fields.set(topic.code(), text.clone());
        }
    }
    fields
}

fn on(sheet: Sheet) -> impl Iterator<Item = FactId> {
    fact_ids().filter(move |fact| fact.declaration().sheet == sheet && filler(*fact).is_none())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::{fact_named, random_job};
    use crate::ticket::Origin;
    use jiff::Timestamp;
    use serde_json::json;

    fn recorded(facts: &[(&str, serde_json::Value)]) -> Contents {
        let mut contents = Contents::default();
        for (path, value) in facts {
            let origin = Origin { source: Source::CustomerSaid, by: "Ada".into(), at: Timestamp::UNIX_EPOCH };
            let fact = fact_named(path).expect("a fact");
            contents.facts.write(fact, Some(value), origin).expect("allowed");
        }
        contents
    }

    /// Any job, however odd its numbers: a form that is only looked at must not write in another hand.
    #[test]
    fn a_form_sent_back_untouched_changes_nothing() {
        let mut seed = 11_u64;
        let mut next = || {
            seed = seed.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1);
            seed >> 11
        };
        for _ in 0..60 {
            let job = random_job(&mut next);
            let facts: Vec<_> =
                fact_ids().filter_map(|fact| Some((fact.declaration().path, job.slot(fact).json()?))).collect();
            let contents = recorded(&facts);
            for sheet in Sheet::ALL {
                let edit = edit_of(sheet, &held(sheet, &contents), &contents);
                assert_eq!(edit, (Edit::default(), Vec::new()), "{}", sheet.label());
            }
        }
    }

    #[test]
    fn a_changed_fact_carries_the_forms_source_and_a_confirmed_one_its_own() {
        let contents = recorded(&[("bell.kind", json!("bolt_on")), ("bell.ring_holes", json!(8))]);
        let typed =
            held(Sheet::Outside, &contents).with("f.bell.kind", "integral").with("s.bell.ring_holes", "measured");
        let (edit, _) = edit_of(Sheet::Outside, &typed, &contents);
        let changed: Vec<_> =
            edit.facts.iter().map(|change| (change.path.as_str(), change.source, change.value.clone())).collect();
        assert_eq!(
            changed,
            [
                ("bell.kind", Source::Looked, Some(json!("integral"))),
                ("bell.ring_holes", Source::Measured, Some(json!(8)))
            ]
        );
    }

    #[test]
    fn a_fact_can_be_made_unknown_again_but_a_blank_is_no_change_by_itself() {
        let contents = recorded(&[("bell.kind", json!("bolt_on"))]);
        let typed = held(Sheet::Outside, &contents).with("f.bell.kind", "").with("f.bell.ring_holes", "");
        let (edit, _) = edit_of(Sheet::Outside, &typed, &contents);
        assert_eq!(edit.facts.len(), 1);
        assert_eq!(edit.facts[0].value, None);
    }

    #[test]
    fn what_the_program_fills_is_not_asked_and_not_taken() {
        let contents = recorded(&[("order.final_wash", json!(4)), ("paper.customer_parts", json!(true))]);
        let form = held(Sheet::Paper, &contents);
        assert!(form.get("f.order.final_wash").is_none() && form.get("f.paper.customer_parts").is_some());
        let forged = form.with("f.order.final_wash", "2").with("f.paper.signed_version", "9");
        let (edit, problems) = edit_of(Sheet::Paper, &forged, &contents);
        let fields: Vec<_> = problems.iter().map(|problem| problem.field.as_str()).collect();
        assert_eq!((edit, fields), (Edit::default(), vec!["f.order.final_wash", "f.paper.signed_version"]));
    }

    #[test]
    fn every_unreadable_field_is_named_at_once() {
        let contents = Contents::default();
        let typed =
            held(Sheet::Measured, &contents).with("f.bell.runout_in", "-1").with("f.bench.front_end_play_in", "x");
        let (edit, problems) = edit_of(Sheet::Measured, &typed, &contents);
        assert_eq!(edit, Edit::default());
        assert_eq!(problems.len(), 2, "{problems:?}");
        assert!(problems[0].message.contains("\"-1\""), "{}", problems[0].message);
    }

    #[test]
    fn after_a_conflict_only_the_edit_is_sent_again() {
        let base = recorded(&[("bell.kind", json!("bolt_on")), ("bell.ring_holes", json!(8))]);
        let typed = held(Sheet::Outside, &base).with("f.bell.kind", "integral");
        let (edit, _) = edit_of(Sheet::Outside, &typed, &base);
        // Somebody else found other holes meanwhile; the form still shows eight.
        let now = recorded(&[("bell.kind", json!("bolt_on")), ("bell.ring_holes", json!(6))]);
        let (again, _) = edit_of(Sheet::Outside, &only_the_edit(&edit), &now);
        assert_eq!(again, edit);
    }
}
