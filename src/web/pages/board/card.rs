//! One job on the board, in the words of the shop.

use crate::service::Line;
use crate::ticket::{Answer, Stage, WaitsFor, Way};
use crate::web::moment::{day, until};
use jiff::civil::Date;
use uuid::Uuid;

/// One job on the board.
#[derive(Clone, Debug)]
pub struct Card {
    /// The number on the tag.
    pub number: i64,
    /// Whose it is.
    pub customer: String,
    /// The customer's telephone number.
    pub phone: String,
    /// What it came in.
    pub vehicle: String,
    /// The plate, or nothing.
    pub plate: String,
    /// Where it stands.
    pub stage: Stage,
    /// Who holds the next move.
    pub waits_for: WaitsFor,
    /// What is promised, in words.
    pub promise: String,
    /// How far away that is; empty when nothing is promised.
    pub until: String,
    /// Is the promise broken already?
    pub late: bool,
    /// How many stops are open.
    pub stops: i32,
    /// How many cautions.
    pub cautions: i32,
    /// How many checks cannot be decided though the stage asks for them.
    pub questions: i32,
    /// What the customer has signed and what not.
    pub signed: &'static str,
    /// Is a signature missing that the work will ask for?
    pub unsigned: bool,
    /// Does it come back from an earlier job?
    pub comeback: bool,
    /// The stage that one tap leads to.
    pub next: Option<Stage>,
    /// Names the sending of that tap, so that two taps count as one.
    pub once: Uuid,
}

impl Card {
    /// The card of a line on the day it is.
    pub fn new(line: Line, today: Date) -> Self {
        let (signed, unsigned) = signed(&line);
        // A promise ends with the hand-over.
        let open = line.stage.open() && line.stage < Stage::AfterCare;
        let late = open && line.promised.is_some_and(|promised| promised < today);
        let promise = match line.promised {
            None if open => "No day promised".to_owned(),
            None => String::new(),
            Some(promised) if open => format!("Promised for {}", day(promised)),
            Some(promised) => format!("Was promised for {}", day(promised)),
        };
        Self {
            number: line.number,
            stops: line.open_stops,
            cautions: line.open_cautions,
            questions: line.open_questions,
            promise,
            until: line.promised.filter(|_| open).map(|promised| until(promised, today)).unwrap_or_default(),
            late,
            signed,
            unsigned,
            comeback: line.comeback,
            next: line.stage.moves().into_iter().find(|(_, way)| *way == Way::Forward).map(|(stage, _)| stage),
            once: Uuid::now_v7(),
            stage: line.stage,
            waits_for: line.waits_for,
            customer: line.customer,
            phone: line.phone,
            vehicle: line.vehicle,
            plate: line.plate,
        }
    }
}

/// What is signed, and whether something is missing that the work asks for.
fn signed(line: &Line) -> (&'static str, bool) {
    if !line.stage.open() {
        return ("", false);
    }
    let counter = line.stage <= Stage::Spec;
    match (line.build_answer, line.intake_answer) {
        (Some(Answer::Signed), _) if line.build_current => ("Signed: the current version", false),
        (Some(Answer::Declined), _) if line.build_current => ("The customer declined the current version", true),
        (Some(Answer::Signed), _) => ("Signed an older version; the current one is not signed", true),
        (Some(Answer::Declined), _) => ("The customer declined an older version; the current one is not signed", true),
        (None, Some(Answer::Declined)) => ("The customer declined the teardown", true),
        (None, Some(Answer::Signed)) if counter => ("Teardown signed", false),
        // While the unit comes apart nobody knows yet what will be built.
        (None, Some(Answer::Signed)) => ("Build not signed yet", line.stage > Stage::Teardown),
        (None, None) => ("Nothing signed yet", true),
    }
}

#[cfg(test)]
pub mod tests {
    use super::*;
    use jiff::Timestamp;
    use jiff::civil::date;

    /// A plain job on the board.
    pub fn line(number: i64) -> Line {
        Line {
            number,
            stage: Stage::Teardown,
            waits_for: WaitsFor::Us,
            promised: None,
            customer: "Rosa Lee".into(),
            phone: "(555) 010-4477".into(),
            vehicle: "Blue pickup".into(),
            plate: "AB-12".into(),
            revision: 1,
            open_stops: 0,
            open_cautions: 0,
            open_questions: 0,
            intake_answer: None,
            build_answer: None,
            build_current: false,
            comeback: false,
            changed_at: Timestamp::UNIX_EPOCH,
        }
    }

    #[test]
    fn a_promise_is_late_from_the_day_after() {
        let today = date(2026, 11, 25);
        for (promised, late, words) in
            [(date(2026, 11, 25), false, "today"), (date(2026, 11, 24), true, "1 day overdue")]
        {
            let card = Card::new(Line { promised: Some(promised), ..line(7) }, today);
            assert_eq!((card.late, card.until.as_str()), (late, words));
        }
        let closed = Card::new(Line { promised: Some(date(2026, 1, 2)), stage: Stage::Closed, ..line(7) }, today);
        assert!(!closed.late, "what is finished is late no more");
        assert_eq!(closed.until, "");
        let handed_over =
            Card::new(Line { promised: Some(date(2026, 1, 2)), stage: Stage::AfterCare, ..line(7) }, today);
        assert!(!handed_over.late, "nor is what the customer has back");
        assert_eq!(Card::new(line(7), today).promise, "No day promised");
    }

    #[test]
    fn a_signature_on_an_older_version_does_not_read_as_signed() {
        let today = date(2026, 11, 25);
        let told = |stage, intake, build, current| {
            let line = Line { stage, intake_answer: intake, build_answer: build, build_current: current, ..line(7) };
            let card = Card::new(line, today);
            (card.signed, card.unsigned)
        };
        let (yes, no) = (Some(Answer::Signed), Some(Answer::Declined));
        use Stage::{Quote, Spec, Teardown};
        let older = "Signed an older version; the current one is not signed";
        for (stage, intake, build, current, words, missing) in [
            (Quote, yes, yes, true, "Signed: the current version", false),
            (Quote, yes, yes, false, older, true),
            (Spec, yes, yes, false, older, true),
            (Quote, yes, no, true, "The customer declined the current version", true),
            (Spec, yes, None, false, "Teardown signed", false),
            (Teardown, yes, None, false, "Build not signed yet", false),
            (Quote, yes, None, false, "Build not signed yet", true),
            (Spec, no, None, false, "The customer declined the teardown", true),
            (Quote, None, None, true, "Nothing signed yet", true),
        ] {
            assert_eq!(told(stage, intake, build, current), (words, missing), "at {}", stage.label());
        }
    }

    #[test]
    fn one_tap_leads_on_and_never_back() {
        let today = date(2026, 11, 25);
        for (stage, next) in [
            (Stage::Intake, Some(Stage::Spec)),
            (Stage::Parts, Some(Stage::Machining)),
            (Stage::AfterCare, Some(Stage::Closed)),
            (Stage::Closed, None),
            (Stage::Declined, None),
        ] {
            assert_eq!(Card::new(Line { stage, ..line(7) }, today).next, next, "{}", stage.label());
        }
    }
}
