//! A stage that cannot be entered yet: what is missing, what to do, and the owner's way past with a written reason.

use crate::ticket::{Action, Gate, Override, Refusal, Stage, Way};
use crate::web::form::{Fields, FormState};
use crate::web::frame::Frame;
use crate::web::pages::ticket::Head;
use askama::Template;
use uuid::Uuid;

/// The page that says what is missing.
#[derive(Template)]
#[template(path = "pages/gate.html")]
pub struct GatePage {
    frame: Frame,
    head: Head,
    from: Stage,
    to: Stage,
    missing: Vec<Refusal>,
    /// The gates an owner could pass.
    gates: Vec<ClosedGate>,
    /// Does the move itself need a reason?
    wants_reason: bool,
    owner: bool,
    /// Was a reason for passing sent already?
    form_sent: bool,
    form: FormState,
}

/// A gate an owner could pass.
struct ClosedGate {
    label: &'static str,
    /// The form's name for the reason.
    field: String,
}

/// The start of the names under which reasons for passing gates are sent.
const PASS: &str = "pass.";

/// The gates an owner passes with this form.
pub fn overrides(typed: &Fields) -> Vec<Override> {
    typed
        .starting(PASS)
        .filter_map(|(gate, reason)| Some(Override { gate: Gate::from_code(gate)?, reason: reason.to_owned() }))
        .collect()
}

impl GatePage {
    /// What stands between two stages.
    pub fn new(frame: Frame, head: Head, (from, to): (Stage, Stage), missing: Vec<Refusal>, typed: Fields) -> Self {
        let owner = frame.may(Action::OverrideGate);
        let form_sent = typed.starting(PASS).next().is_some();
        let mut gates: Vec<Gate> = missing.iter().filter_map(|refusal| refusal.gate).collect();
        // A gate whose reason was good enough stays on the form beside those whose was not.
        gates.extend(overrides(&typed).into_iter().map(|passed| passed.gate));
        gates.sort_unstable();
        gates.dedup();
        Self {
            gates: gates
                .into_iter()
                .map(|gate| ClosedGate { label: gate.label(), field: format!("{PASS}{}", gate.code()) })
                .collect(),
            wants_reason: from.way_to(to).is_some_and(|way| way != Way::Forward),
            form_sent,
            form: FormState::holding(typed),
            frame,
            head,
            from,
            to,
            missing,
            owner,
        }
    }

    fn once(&self) -> Uuid {
        Uuid::now_v7()
    }
}
