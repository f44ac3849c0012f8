//! The last page of the intake: tag on the unit, receipt in the customer's hand, teardown signed.

use crate::ticket::{Action, Answer as Said, Purpose};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::findings::{Findings, From};
use crate::web::frame::{Answer, Frame, page};
use crate::web::pages::questions::leave_out_what_waits_its_turn;
use crate::web::pages::ticket::{Head, load};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use uuid::Uuid;

#[derive(Template)]
#[template(path = "pages/hand_off.html")]
struct HandOffPage {
    frame: Frame,
    head: Head,
    once: Uuid,
    answer: Option<Said>,
    purpose: &'static str,
    may_send: bool,
    may_sign: bool,
    findings: Findings,
    /// Whom somebody who may do neither can ask.
    ask: String,
}

/// `GET /tickets/{number}/intake/done`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    let (frame, ticket, _) = load(&state, &caller, number).await?;
    let (facts, judgement) = (&ticket.revision.contents.facts, &ticket.revision.judgement);
    let mut findings = Findings::new(judgement, facts, ticket.ticket.stage, From::Ticket(number));
    leave_out_what_waits_its_turn(&mut findings, facts.job());
    page(&HandOffPage {
        head: Head::new(&ticket),
        once: Uuid::now_v7(),
        answer: ticket.ticket.intake_answer,
        purpose: Purpose::Intake.code(),
        may_send: frame.may(Action::ManageLinks),
        may_sign: frame.may(Action::CounterSign),
        findings,
        ask: Action::CounterSign.whose(),
        frame,
    })
}
