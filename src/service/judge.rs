//! The rule book's verdicts in the shape a ticket keeps.

use super::Book;
use crate::job::{FactSet, Job};
use crate::rules::house::HouseRule;
use crate::rules::{self, Due, Known};
use crate::ticket::{Found, Judgement, Severity, Silenced, Undecided};

/// Holds a job against the shop's rule book, and sets aside what the shop has set aside for this ticket.
///
/// What is kept with a revision are the words and limits of its day, so an old signature goes on
/// saying what was said then, whatever the book says later.
pub fn judge(job: &Job, book: &Book, silenced: &[Silenced]) -> Judgement {
    let verdicts = rules::judge(job, &book.limits);
    let mut judgement = Judgement {
        findings: verdicts.findings.iter().map(found).collect(),
        undecided: verdicts
            .undecided
            .iter()
            .map(|open| Undecided {
                code: open.rule.code.to_owned(),
                due: open.rule.due.code().to_owned(),
                needs: paths(&open.needs),
                own_title: String::new(),
            })
            .collect(),
        silenced: Vec::new(),
        limits: book.moved(),
        house: book.in_force(),
    };
    for rule in &book.house {
        match rule.condition.verdict(job, &verdicts.derived) {
            Known::Yes(true, facts) => judgement.findings.push(found_by_house(rule, &facts)),
            Known::Yes(false, _) => {}
            Known::Waits(needs) => judgement.undecided.push(Undecided {
                code: rule.code.clone(),
                due: rule.due.code().to_owned(),
                needs: paths(&needs),
                own_title: rule.title.clone(),
            }),
        }
    }
    // A rule that cannot be read any more has not passed.
    let lost = |code: &String| Undecided {
        code: code.clone(),
        due: Due::Intake.code().to_owned(),
        needs: Vec::new(),
        own_title: "A rule of this shop's own that can no longer be read".to_owned(),
    };
    judgement.undecided.extend(book.unreadable.iter().map(lost));
    judgement.silencing(silenced)
}

fn found(finding: &rules::Finding) -> Found {
    let rule = finding.rule;
    Found {
        code: rule.code.to_owned(),
        severity: severity(rule.severity),
        title: rule.title.to_owned(),
        shop: rule.shop.to_owned(),
        customer: rule.customer.unwrap_or_default().to_owned(),
        fix: rule.fix.to_owned(),
        basis: finding.basis(),
        customer_accepts: rule.customer_accepts,
        facts: paths(&finding.facts),
    }
}

fn found_by_house(rule: &HouseRule, facts: &FactSet) -> Found {
    Found {
        code: rule.code.clone(),
        severity: severity(rule.severity),
        title: rule.title.clone(),
        shop: rule.shop.clone(),
        customer: rule.customer.clone().unwrap_or_default(),
        fix: rule.fix.clone(),
        basis: format!("A rule of this shop's own, version {}: {}", rule.version, rule.condition.text()),
        customer_accepts: rule.customer_accepts,
        facts: paths(facts),
    }
}

const fn severity(of_rule: rules::Severity) -> Severity {
    match of_rule {
        rules::Severity::Stop => Severity::Stop,
        rules::Severity::Caution => Severity::Caution,
        rules::Severity::Note => Severity::Note,
    }
}

fn paths(facts: &FactSet) -> Vec<String> {
    facts.iter().map(|fact| fact.declaration().path.to_owned()).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::ThreadSystem;
    use crate::quantity::Quantity;
    use crate::rules::LimitId;

    #[test]
    fn a_finding_keeps_its_words_its_limits_and_the_facts_it_rests_on() {
        let mut job = Job::plain();
        job.threads.mount_hole.set(ThreadSystem::Metric);
        let judgement = judge(&job, &Book::default(), &[]);
        let found = judgement.findings.iter().find(|found| found.code == "THR-02").expect("the mount bolt is wrong");
        assert_eq!(found.severity, Severity::Stop);
        assert_eq!(found.facts, ["threads.mount_hole", "threads.mount_bolt"]);
        assert!(!found.shop.is_empty() && !found.customer.is_empty());
    }

    #[test]
    fn what_cannot_be_decided_says_what_it_waits_for() {
        let mut job = Job::plain();
        job.threads.mount_hole.forget();
        let judgement = judge(&job, &Book::default(), &[]);
        let open = judgement.undecided.iter().find(|open| open.code == "THR-02").expect("the hole is not known");
        assert_eq!((open.due.as_str(), open.needs.as_slice()), ("assembly", &["threads.mount_hole".to_owned()][..]));
    }

    #[test]
    fn a_finding_follows_the_limits_of_the_shop_and_names_them() {
        let mut job = Job::plain();
        job.bell.runout_in.set(Quantity::new(0.009));
        let found = |book: &Book| judge(&job, book, &[]).findings.into_iter().find(|found| found.code == "CSE-10");
        assert_eq!(found(&Book::default()), None);
        let mut book = Book::default();
        book.limits.set(LimitId::bell_runout, 0.008).expect("within its range");
        let basis = found(&book).expect("0.009 in is more than this shop allows").basis;
        assert!(basis.contains("bell bore runout 0.008 in (set by this shop; 0.01 in as supplied"), "{basis}");
    }
}
