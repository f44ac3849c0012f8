//! What is printed for one job.

use crate::command::wrap::paragraph;
use crate::job::{FactSet, Job, JobError};
use crate::plan::steps::{Phase, Step, checklist};
use crate::rules::{DerivedId, Severity, Verdicts};
use serde::Serialize;
use serde_json::{Map, Value};
use std::fmt::Write as _;

/// One job as a JSON object; the names and their order are a contract.
#[derive(Serialize)]
struct Report {
    findings: Vec<FindingReport>,
    undecided: Vec<UndecidedReport>,
    clear: usize,
    derived: Map<String, Value>,
    /// The steps this job needs, in the order of the work; a step that cannot be decided yet is not among them.
    steps: Vec<&'static str>,
}

#[derive(Serialize)]
struct FindingReport {
    code: &'static str,
    severity: &'static str,
    title: &'static str,
    due: &'static str,
    customer_accepts: bool,
    shop: &'static str,
    customer: Option<&'static str>,
    fix: &'static str,
    basis: String,
    facts: Map<String, Value>,
}

#[derive(Serialize)]
struct UndecidedReport {
    code: &'static str,
    due: &'static str,
    needs: Vec<&'static str>,
}

#[derive(Serialize)]
struct Refusal<'a> {
    errors: &'a [JobError],
}

/// One job's verdicts as JSON, without a line end.
pub fn json(job: &Job, verdicts: &Verdicts) -> serde_json::Result<String> {
    let findings = verdicts.findings.iter().map(|finding| FindingReport {
        code: finding.rule.code,
        severity: finding.rule.severity.code(),
        title: finding.rule.title,
        due: finding.rule.due.code(),
        customer_accepts: finding.rule.customer_accepts,
        shop: finding.rule.shop,
        customer: finding.rule.customer,
        fix: finding.rule.fix,
        basis: finding.basis(),
        facts: facts(job, finding.facts),
    });
    let undecided = verdicts.undecided.iter().map(|open| UndecidedReport {
        code: open.rule.code,
        due: open.rule.due.code(),
        needs: paths(open.needs),
    });
    serde_json::to_string(&Report {
        findings: findings.collect(),
        undecided: undecided.collect(),
        clear: verdicts.clear,
        derived: derived(verdicts),
        steps: needed(job).map(|step| step.code).collect(),
    })
}

/// What was wrong with a job that could not be read, as JSON.
pub fn refusal_json(errors: &[JobError]) -> serde_json::Result<String> {
    serde_json::to_string(&Refusal { errors })
}

/// One job's verdicts for people.
pub fn text(place: &str, job: &Job, verdicts: &Verdicts) -> String {
    let mut out = String::new();
    let count = |severity| verdicts.findings.iter().filter(|finding| finding.rule.severity == severity).count();
    let heading = format!(
        "{place}: {}, {}, {}; {} cannot be decided yet; {} clear",
        counted(count(Severity::Stop), "stop"),
        counted(count(Severity::Caution), "caution"),
        counted(count(Severity::Note), "note"),
        verdicts.undecided.len(),
        verdicts.clear
    );
    paragraph(&mut out, "", &heading);
    for severity in [Severity::Stop, Severity::Caution, Severity::Note] {
        for finding in verdicts.findings.iter().filter(|finding| finding.rule.severity == severity) {
            let rule = finding.rule;
            let word = severity.code().to_uppercase();
            out.push('\n');
            paragraph(&mut out, &format!("  {word:<8} {}  ", rule.code), rule.title);
            paragraph(&mut out, "           ", rule.shop);
            paragraph(&mut out, "           To do: ", rule.fix);
            paragraph(&mut out, "           Basis: ", &finding.basis());
            paragraph(&mut out, "           Facts: ", &told(job, finding.facts));
            if rule.customer_accepts {
                paragraph(&mut out, "           ", "The customer has to accept this.");
            }
        }
    }
    if !verdicts.undecided.is_empty() {
        out.push_str("\n  Cannot be decided yet, and what would have to be known:\n");
        for open in &verdicts.undecided {
            let needs = paths(open.needs).join(", ");
            paragraph(&mut out, &format!("           {} ({}): ", open.rule.code, open.rule.due.code()), &needs);
        }
    }
    told_steps(&mut out, job);
    let numbers = derived(verdicts);
    if !numbers.is_empty() {
        out.push_str("\n  Worked out:\n");
        for (path, value) in numbers {
            // Writing to a string cannot fail.
            writeln!(out, "           {path} = {value}").ok();
        }
    }
    out
}

/// The steps this job surely needs.
fn needed(job: &Job) -> impl Iterator<Item = &'static Step> {
    checklist(job).into_iter().filter(|due| due.applies.value() == Some(&true)).map(|due| due.step)
}

fn told_steps(out: &mut String, job: &Job) {
    out.push_str("\n  Steps of this job:\n");
    let mut phase: Option<Phase> = None;
    for step in needed(job) {
        if phase != Some(step.phase) {
            phase = Some(step.phase);
            paragraph(out, "    ", step.phase.label());
        }
        let hold = if step.hold_point { "HOLD" } else { "" };
        paragraph(out, &format!("      {hold:<4} {}  ", step.code), step.text);
    }
    let open: Vec<_> = checklist(job).into_iter().filter(|due| due.applies.value().is_none()).collect();
    if !open.is_empty() {
        paragraph(out, "    ", "May be needed, once it is known");
        for due in open {
            paragraph(out, &format!("           {}  ", due.step.code), &paths(due.applies.waits_for()).join(", "));
        }
    }
}

fn counted(count: usize, what: &str) -> String {
    format!("{count} {what}{}", if count == 1 { "" } else { "s" })
}

fn facts(job: &Job, set: FactSet) -> Map<String, Value> {
    set.iter().filter_map(|fact| Some((fact.declaration().path.to_owned(), job.slot(fact).json()?))).collect()
}

fn told(job: &Job, set: FactSet) -> String {
    let said = set.iter().filter_map(|fact| Some(format!("{} {}", fact.declaration().path, job.say(fact)?)));
    said.collect::<Vec<_>>().join(", ")
}

fn paths(set: FactSet) -> Vec<&'static str> {
    set.iter().map(|fact| fact.declaration().path).collect()
}

fn derived(verdicts: &Verdicts) -> Map<String, Value> {
    DerivedId::ALL
        .iter()
        .filter_map(|number| Some((number.declaration().path.to_owned(), verdicts.derived.get(*number).0?)))
        .collect()
}
