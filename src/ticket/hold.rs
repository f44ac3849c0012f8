//! What keeps a step from counting as done: a signature that is missing, or a reading that did not pass.

use super::gate::{Gate, Standing};
use super::judgement::{Found, Judgement, Severity};
use crate::plan::steps::{Phase, SeenPaper, Step};

/// Why this step waits for the customer's signature, and what to do; none when no signature is missing.
///
/// An owner who passed the gate in writing lets the unit come apart. Nobody can let a signature be seen that is not
/// there, or let something be done for good that was not agreed.
pub fn unsigned(step: &Step, added: &[String], standing: &Standing) -> Option<String> {
    let passed = |gate: Gate| standing.overridden.contains(&gate);
    let (gate, why) = match step.sees {
        Some(SeenPaper::Teardown) => (Gate::IntakeAuthorised, "There is no signature yet."),
        Some(SeenPaper::Build) => (Gate::RevisionSigned, "There is no signature that holds."),
        None if step.is_for_good(added) => {
            (Gate::RevisionSigned, "This cannot be undone, so the customer signs before it is done.")
        }
        None if step.phase == Phase::Teardown && !passed(Gate::IntakeAuthorised) => {
            (Gate::IntakeAuthorised, "The customer allows it in writing before the unit comes apart.")
        }
        None => return None,
    };
    gate.closed_because(standing).map(|closed| format!("{why} {closed}"))
}

/// The stops that what was read at a hold point leads to: while one stands, the step is not done.
///
/// The order of the work has warnings of its own, which somebody can read and go on.
pub fn not_passed<'a>(step: &'a Step, judgement: &'a Judgement) -> impl Iterator<Item = &'a Found> {
    let is_read = |found: &Found| found.facts.iter().any(|fact| step.reads.contains(&fact.as_str()));
    let is_order = |found: &Found| found.facts.iter().any(|fact| fact.starts_with("order."));
    judgement.of(Severity::Stop).filter(move |found| step.hold_point && is_read(found) && !is_order(found))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::plan::steps::{step_named, steps};
    use crate::ticket::Approval::{self, Missing, Signed};

    fn standing(intake: Approval, build: Approval, overridden: &[Gate]) -> Standing {
        let (open_stops, only_planned) = (Vec::new(), Vec::new());
        Standing { intake, build, open_stops, only_planned, overridden: overridden.to_vec() }
    }

    fn waits(code: &str, standing: &Standing) -> bool {
        unsigned(step_named(code).expect("a step"), &[], standing).is_some()
    }

    #[test]
    fn everything_of_the_teardown_and_seeing_its_paper_waits_for_the_authorisation() {
        let (not_yet, signed) = (standing(Missing, Missing, &[]), standing(Signed, Missing, &[]));
        for step in steps().filter(|step| step.phase == Phase::Teardown) {
            assert!(waits(step.code, &not_yet) && !waits(step.code, &signed), "{}", step.code);
        }
        assert!(waits("IN-08", &not_yet) && !waits("IN-08", &signed));
        assert!(!waits("IN-07", &not_yet) && !waits("WA-01", &not_yet));
    }

    #[test]
    fn an_owner_lets_it_come_apart_but_can_make_no_signature_seen() {
        let passed = standing(Missing, Missing, &[Gate::IntakeAuthorised, Gate::RevisionSigned]);
        assert!(!waits("TD-02", &passed));
        assert!(waits("IN-08", &passed) && waits("MC-01", &passed) && waits("MC-02", &passed));
        let signed = standing(Signed, Signed, &[]);
        assert!(!waits("MC-01", &signed) && !waits("MC-02", &signed));
    }
}
