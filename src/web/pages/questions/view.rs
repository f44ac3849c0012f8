//! The counter set as a page: the questions that apply, and beside them what the rules say so far.

use crate::job::{FactId, Job, fact_named};
use crate::plan::{comes_up, counter_sections};
use crate::ticket::{Contents, Judgement, Source, Stage};
use crate::web::facts::{Answer, Control, FactField, default_source, source_name_of};
use crate::web::findings::{FactLink, Findings, From};
use crate::web::form::FormState;
use std::collections::BTreeSet;

/// What stands where nobody has said how a thing is known.
const CHOOSE: &str = "Choose";

/// One section with its questions.
pub struct Section {
    /// Its place in the set, counted from 1.
    pub number: u8,
    /// A few words.
    pub title: &'static str,
    /// The questions that apply or are answered.
    pub questions: Vec<Asked>,
}

impl Section {
    /// Can answers of it be taken from one of the shop's class tables?
    pub fn asks_for_the_class(&self) -> bool {
        self.questions.iter().any(|asked| asked.field.path == "use.raced")
    }
}

/// One question.
pub struct Asked {
    /// In words for the customer.
    pub words: &'static str,
    /// Its field.
    pub field: FactField,
    /// How it may have been learnt.
    pub sources: Vec<Answer>,
    /// What is wrong with how it is said to be known; empty for most.
    pub source_problem: String,
    /// Does it still apply? One that does not is shown only because it is answered.
    pub applies: bool,
}

impl Asked {
    /// The question with these words for a fact, with what stands in the form; a "no" is offered only where it counts.
    pub fn new(words: &'static str, fact: FactId, form: &FormState, recorded: &Contents, no_counts: bool) -> Self {
        let mut field = FactField::new(fact, form, recorded.facts.origin(fact), 0);
        if !no_counts {
            leave_out_no(&mut field.control);
        }
        let source_problem = form.problem(&field.source_name).to_owned();
        Self { words, sources: sources(form, fact), source_problem, field, applies: true }
    }

    /// The same with nothing said of how it is known until somebody says it.
    #[must_use]
    pub fn without_a_usual_source(mut self, form: &FormState) -> Self {
        let typed = Source::typed(form.value(&self.field.source_name)).map(Source::code);
        let nobody = Answer { value: String::new(), label: CHOOSE.to_owned(), chosen: typed.is_none() };
        let said =
            self.sources.into_iter().map(|source| Answer { chosen: typed == Some(source.value.as_str()), ..source });
        self.sources = std::iter::once(nobody).chain(said).collect();
        self
    }
}

/// The sections of a form for the job so far. A section with nothing to ask is left out.
pub fn sections(form: &FormState, job: &Job, recorded: &Contents) -> Vec<Section> {
    let section = |section: &crate::plan::Section| {
        let questions = section.questions.iter().filter_map(|question| {
            let asked = Asked::new(question.words, question.fact(), form, recorded, question.no_counts);
            let applies = question.applies(job);
            (applies || asked.field.is_filled()).then_some(Asked { applies, ..asked })
        });
        Section { number: section.number, title: section.title, questions: questions.collect() }
    };
    let mut sections: Vec<_> = counter_sections().iter().map(section).collect();
    sections.retain(|section| !section.questions.is_empty());
    sections
}

/// How many of the questions shown are answered, and how many there are.
pub fn progress(sections: &[Section]) -> (usize, usize) {
    let all = || sections.iter().flat_map(|section| &section.questions);
    (all().filter(|asked| asked.field.is_filled()).count(), all().count())
}

/// A "no" that is already recorded stays, or the form would take it back.
fn leave_out_no(control: &mut Control) {
    if let Control::Side(answers) | Control::Menu(answers) = control {
        answers.retain(|answer| answer.value != "no" || answer.chosen);
    }
}

fn sources(form: &FormState, fact: FactId) -> Vec<Answer> {
    let declaration = fact.declaration();
    let typed = Source::typed(form.value(&source_name_of(declaration)));
    let chosen = typed.unwrap_or_else(|| default_source(declaration.sheet));
    let answer = |source: &Source| Answer {
        value: source.code().to_owned(),
        label: source.label().to_owned(),
        chosen: *source == chosen,
    };
    Source::TYPED.iter().filter(|source| **source != Source::ShopSetting || **source == chosen).map(answer).collect()
}

/// What the rules say so far. Facts lead to their question on this page, and nowhere when there is none: leaving the
/// page would lose what is typed.
pub fn findings(judgement: &Judgement, contents: &Contents, sections: &[Section]) -> Findings {
    let here: BTreeSet<&str> =
        sections.iter().flat_map(|section| &section.questions).map(|asked| asked.field.path).collect();
    let mut findings = Findings::new(judgement, &contents.facts, Stage::Intake, From::Ticket(0));
    findings.beside = true;
    let lead = |link: &mut FactLink| {
        let path = path_of(link);
        link.href = if here.contains(path) { format!("#f.{path}") } else { String::new() };
    };
    findings.groups.iter_mut().flat_map(|group| &mut group.items).flat_map(|item| &mut item.facts).for_each(lead);
    findings.now.iter_mut().flat_map(|waiting| &mut waiting.needs).for_each(lead);
    findings.later.iter_mut().flat_map(|waiting| &mut waiting.needs).for_each(lead);
    leave_out_what_waits_its_turn(&mut findings, contents.facts.job());
    findings.wanted.iter_mut().for_each(|wanted| lead(&mut wanted.fact));
    findings
}

/// What is wanted most, without what another answer may yet make needless.
pub fn leave_out_what_waits_its_turn(findings: &mut Findings, job: &Job) {
    findings.wanted.retain(|wanted| fact_named(path_of(&wanted.fact)).is_none_or(|fact| comes_up(job, fact)));
}

/// The path of the fact a link of the ticket's page leads to.
fn path_of(link: &FactLink) -> &str {
    link.href.rsplit_once("#f.").map_or("", |(_, path)| path)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::ticket::Undecided;
    use crate::web::form::Fields;
    use serde_json::json;

    fn job(path: &str, value: serde_json::Value) -> Job {
        let mut job = Job::unknown();
        let fact = fact_named(path).expect("a fact");
        job.slot_mut(fact).read(&value, fact.declaration()).expect("allowed");
        job
    }

    fn paths(sections: &[Section]) -> Vec<&'static str> {
        sections.iter().flat_map(|section| &section.questions).map(|asked| asked.field.path).collect()
    }

    #[test]
    fn what_no_longer_applies_stays_as_long_as_it_is_answered() {
        let recorded = Contents::default();
        let form = FormState::holding(Fields::parse(b"f.bell.kind=integral&f.bell.ring_holes=8&f.pump.holes="));
        let shown = sections(&form, &job("bell.kind", json!("integral")), &recorded);
        assert!(paths(&shown).contains(&"bell.ring_holes"), "typed things stay");
        assert!(!paths(&shown).contains(&"pump.holes"));
        let asked =
            shown.iter().flat_map(|section| &section.questions).find(|asked| asked.field.path == "bell.ring_holes");
        assert!(!asked.expect("it is there").applies);
    }

    #[test]
    fn every_question_can_be_left_at_not_known_yet() {
        let shown = sections(&FormState::empty(), &job("use.raced", json!(true)), &Contents::default());
        for asked in shown.iter().flat_map(|section| &section.questions) {
            match &asked.field.control {
                Control::Side(answers) | Control::Menu(answers) => {
                    let unknown = answers.iter().find(|answer| answer.value.is_empty()).expect(asked.field.path);
                    assert!(unknown.chosen && unknown.label == "Not known yet", "{}", asked.field.path);
                }
                Control::Typed { value, .. } => assert_eq!(value, ""),
            }
        }
        assert_eq!(progress(&shown).0, 0);
    }

    #[test]
    fn a_closed_unit_is_not_asked_for_a_no() {
        let shown = sections(&FormState::empty(), &Job::unknown(), &Contents::default());
        let asked =
            shown.iter().flat_map(|section| &section.questions).find(|asked| asked.field.path == "case.coolant_found");
        let Some(Control::Side(answers)) = asked.map(|asked| &asked.field.control) else {
            panic!("yes or not known yet")
        };
        assert_eq!(answers.iter().map(|answer| answer.value.as_str()).collect::<Vec<_>>(), ["yes", ""]);
    }

    #[test]
    fn a_fact_leads_to_its_question_or_nowhere_but_never_off_the_page() {
        let judgement = Judgement {
            undecided: vec![Undecided {
                code: "X-01".into(),
                due: "intake".into(),
                needs: vec!["use.raced".into(), "engine.dowels".into(), "pump.holes".into()],
                own_title: String::new(),
            }],
            ..Judgement::default()
        };
        let shown = sections(&FormState::empty(), &Job::unknown(), &Contents::default());
        let findings = findings(&judgement, &Contents::default(), &shown);
        let hrefs: Vec<_> = findings.now[0].needs.iter().map(|need| need.href.as_str()).collect();
        assert_eq!(hrefs, ["#f.use.raced", "", ""]);
        let wanted: Vec<_> = findings.wanted.iter().map(|wanted| wanted.fact.href.as_str()).collect();
        assert_eq!(wanted, ["#f.use.raced", ""], "the holes are asked for once the bell is known to be bolted on");
    }

    #[test]
    fn what_is_seen_is_looked_at_and_what_is_told_is_marked_as_told() {
        let shown = sections(&FormState::empty(), &Job::unknown(), &Contents::default());
        let source = |path: &str| {
            let asked = shown.iter().flat_map(|section| &section.questions).find(|asked| asked.field.path == path);
            asked.and_then(|asked| asked.sources.iter().find(|source| source.chosen)).map(|source| source.value.clone())
        };
        assert_eq!(source("engine.torque_lbft").as_deref(), Some("customer_said"));
        assert_eq!(source("bell.kind").as_deref(), Some("looked"));
    }
}
