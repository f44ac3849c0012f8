//! One step: what is done and why, what is read with its limit and verdict, initials, and taking it back.

use super::state::{Done, Verdict, failed, locked, warnings};
use crate::job::{Declaration, Kind, read_text};
use crate::plan::steps::{Step, is_reading, limits_on};
use crate::service::{Caller, Revision, TicketPage};
use crate::ticket::{Edit, FactChange, Source, done};
use crate::web::facts::{Control, FactField, as_typed, name_of};
use crate::web::findings::{FactLink, From, fact_link};
use crate::web::form::{Fields, FormState, Problem};
use crate::web::frame::Frame;
use crate::web::pages::ticket::{Head, Now};
use askama::Template;
use uuid::Uuid;

/// The page of one step.
#[derive(Template)]
#[template(path = "pages/step.html")]
pub struct OnePage {
    frame: Frame,
    head: Head,
    step: &'static Step,
    open: bool,
    done: Option<Done>,
    for_good: bool,
    added: bool,
    locked: String,
    /// What of it has to be put right before it can be done.
    failed: Vec<Verdict>,
    /// What to do first, or why it is too late.
    warnings: Vec<Warning>,
    /// The facts it waits for, while it is not known whether the job needs it.
    waits: Vec<FactLink>,
    /// Does the job not need it?
    no_part: bool,
    fields: Vec<FactField>,
    look: Look,
    form: FormState,
}

/// What doing it now would spoil.
struct Warning {
    severity: &'static str,
    title: &'static str,
    means: &'static str,
    /// Code and title of the step to do first.
    first: Option<(&'static str, &'static str)>,
    fix: &'static str,
}

/// What the rules say of what was read.
#[derive(Template)]
#[template(path = "parts/step_look.html")]
pub struct Look {
    problems: Vec<Problem>,
    readings: Vec<Reading>,
}

/// One fact that is read.
struct Reading {
    label: &'static str,
    value: String,
    known: bool,
    limits: Vec<String>,
    found: Vec<Verdict>,
    /// Checks that touch it and still wait for something else.
    waiting: usize,
}

/// A step's form as it is first shown: what is known of what is read, and the initials of whoever is signed in.
pub fn held(step: &Step, page: &TicketPage, caller: &Caller) -> Fields {
    let mut fields = Fields::default().with("initials", initials(&caller.name));
    for fact in step.facts_read() {
        fields.set(name_of(fact.declaration()), as_typed(page.revision.contents.facts.value(fact).as_ref()));
    }
    fields
}

/// The first letters of a name, at most three.
fn initials(name: &str) -> String {
    name.split_whitespace().filter_map(|word| word.chars().next()).take(3).collect::<String>().to_uppercase()
}

/// What was read, as an edit, and every field that cannot be read.
pub fn edit_of(step: &Step, typed: &Fields) -> (Edit, Vec<Problem>) {
    let (mut edit, mut problems) = (Edit::default(), Vec::new());
    for fact in step.facts_read() {
        let declaration = fact.declaration();
        let name = name_of(declaration);
        let source = if matches!(declaration.kind, Kind::Number(_)) { Source::Measured } else { Source::Looked };
        match read_text(typed.get(&name).unwrap_or_default(), declaration) {
            Ok(None) => {}
            Ok(value) => edit.facts.push(FactChange { path: declaration.path.to_owned(), value, source }),
            Err(error) => problems.push(Problem { field: name, message: error.message }),
        }
    }
    (edit, problems)
}

impl Look {
    /// What the rules say of these readings.
    pub fn new(step: &Step, looked: &Revision, typed: &Fields, problems: Vec<Problem>, page: &TicketPage) -> Self {
        let readings = step.facts_read().map(|fact| {
            let declaration = fact.declaration();
            let path = declaration.path.to_owned();
            let known = typed.get(&name_of(declaration)).is_some_and(|text| is_read(step, declaration, text));
            let judgement = &looked.judgement;
            Reading {
                label: declaration.label,
                value: looked.contents.facts.words(fact),
                known,
                limits: limits_on(fact).into_iter().map(|limit| page.book.limits.used(limit).to_string()).collect(),
                found: judgement.findings.iter().filter(|found| found.facts.contains(&path)).map(Verdict::of).collect(),
                waiting: judgement.undecided.iter().filter(|open| open.needs.contains(&path)).count(),
            }
        });
        Self { readings: readings.collect(), problems }
    }

    fn summary(&self) -> String {
        let found: usize = self.readings.iter().map(|reading| reading.found.len()).sum();
        match found {
            0 if self.readings.iter().any(|reading| !reading.known) => "Not everything is read yet.".to_owned(),
            0 => "Nothing in the rule book speaks against what is read here.".to_owned(),
            1 => "One finding about what is read here.".to_owned(),
            _ => format!("{found} findings about what is read here."),
        }
    }
}

/// Does this text say what was read? What cannot be understood has not been read.
fn is_read(step: &Step, declaration: &Declaration, text: &str) -> bool {
    let value = read_text(text, declaration).ok().flatten();
    value.is_some_and(|value| !step.hold_point || is_reading(&value))
}

impl OnePage {
    /// The page; `looked` is the revision as it would be with what stands in the form.
    pub fn new(
        frame: Frame,
        page: &TicketPage,
        now: &Now,
        step: &'static Step,
        form: FormState,
        looked: &Revision,
    ) -> Self {
        let contents = &page.revision.contents;
        let needed = step.needed(contents.facts.job(), &contents.added);
        let waits_for = needed.waits_for();
        let waits = waits_for
            .iter()
            .map(|fact| fact_link(fact.declaration().path, &contents.facts, From::Ticket(page.ticket.number)));
        let mut typed = Fields::default();
        for fact in step.facts_read() {
            let name = name_of(fact.declaration());
            typed.set(name.clone(), form.value(&name));
        }
        let is_done = done(&page.log, step.code).is_some();
        Self {
            head: Head::new(page),
            open: page.ticket.stage.open(),
            done: Done::of(page, step, now),
            for_good: step.is_for_good(&contents.added),
            added: step.is_added(&contents.added),
            locked: locked(page, step),
            failed: failed(page, step),
            warnings: warnings(page, step)
                .into_iter()
                .map(|warning| Warning {
                    severity: warning.rule.severity.code(),
                    title: warning.rule.title,
                    means: warning.rule.shop,
                    first: warning.first.map(|first| (first.code, first.title)),
                    fix: warning.rule.fix,
                })
                .collect(),
            waits: waits.collect(),
            no_part: needed.value() == Some(&false) && !is_done,
            fields: step.facts_read().map(|fact| FactField::new(fact, &form, contents.facts.origin(fact), 0)).collect(),
            look: Look::new(step, looked, &typed, Vec::new(), page),
            step,
            form,
            frame,
        }
    }

    fn once(&self) -> Uuid {
        self.form.once
    }

    /// Can it be ticked now?
    fn can_tick(&self) -> bool {
        self.open && self.locked.is_empty() && !self.no_part && self.waits.is_empty()
    }
}

#[cfg(test)]
mod tests {
    use super::initials;

    #[test]
    fn initials_are_the_first_letters_of_a_name() {
        assert_eq!(initials("Juno Tessaly"), "JT");
        assert_eq!(initials("ada  maria van der linde"), "AMV");
        assert_eq!(initials(""), "");
    }
}
