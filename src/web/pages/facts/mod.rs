//! Facts of one sheet: written down with the findings beside them, looked over as a plain list of changes, saved as a
//! new version.

mod diff;
mod form;

use crate::job::Sheet;
use crate::service::{self, Caller, ChangeTicket, Key, Who};
use crate::ticket::{Clash, Edit, Topic};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::facts::{Doubt, doubts, edit_of, held, name_of, only_the_edit};
use crate::web::failure::Failure;
use crate::web::findings::Findings;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::pages::conflict::{ConflictPage, theirs};
use crate::web::pages::ticket::{Head, load, problems};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use diff::DiffPage;
use form::{Ground, SheetForm, findings};

/// A sheet's form as it is sent. Its facts are read against the revision it was made from.
pub struct SheetSent {
    /// That revision.
    base: i32,
    step: Step,
}

/// What the person wants with the form.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Step {
    /// See what the rule book says so far.
    Look,
    /// See what would change.
    Show,
    /// Save it.
    Save,
    /// Go on writing.
    Edit,
}

impl Entry for SheetSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let step = match reader.fields().get("do") {
            Some("save") => Step::Save,
            Some("look") => Step::Look,
            Some("edit") => Step::Edit,
            _ => Step::Show,
        };
        Self { base: reader.number("base").and_then(|base| i32::try_from(base).ok()).unwrap_or_default(), step }
    }
}

/// What the script puts beside the form.
#[derive(Template)]
#[template(path = "parts/look.html")]
struct Look {
    problems: Vec<Problem>,
    /// Numbers that hardly can be.
    doubts: Vec<Doubt>,
    findings: Findings,
}

/// Which sheet an address names.
fn sheet_of(code: &str) -> Result<Sheet, Failure> {
    Sheet::from_code(code).ok_or(Failure::NotFound)
}

/// `GET /tickets/{number}/facts/{sheet}`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, sheet)): At<(i64, String)>,
) -> Answer {
    let sheet = sheet_of(&sheet)?;
    let (frame, ticket, _) = load(&state, &caller, number).await?;
    if !ticket.ticket.stage.open() {
        return on_to(&format!("/tickets/{number}"));
    }
    let form = FormState::holding(held(sheet, &ticket.revision.contents));
    page(&SheetForm::new(frame, Head::new(&ticket), sheet, &Ground::of_ticket(&ticket), form))
}

/// `POST /tickets/{number}/facts/{sheet}`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, sheet)): At<(i64, String)>,
    sent: Sent<SheetSent>,
) -> Answer {
    let writing = Writing::new(&state, &caller, number, sheet_of(&sheet)?, sent.typed, &sent.read).await?;
    let step = sent.read.map_or(Step::Show, |read| read.step);
    match step {
        Step::Look | Step::Edit => writing.form(Vec::new()).await,
        _ if !writing.problems.is_empty() => writing.form(Vec::new()).await,
        Step::Show => writing.diff().await,
        Step::Save => writing.save(Key(sent.once)).await,
    }
}

/// `POST /tickets/{number}/facts/{sheet}/look`: the findings alone, for the script. Changes nothing.
pub async fn look(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, sheet)): At<(i64, String)>,
    sent: Sent<SheetSent>,
) -> Answer {
    let sheet = sheet_of(&sheet)?;
    let mut writing = Writing::new(&state, &caller, number, sheet, sent.typed, &sent.read).await?;
    match state.service.look(&caller, number, writing.base, &writing.edit).await {
        Ok(preview) => {
            let found = findings(sheet, &Ground::of_preview(&preview));
            page(&Look { problems: writing.problems, doubts: writing.doubts, findings: found })
        }
        Err(service::Failure::Problems(of)) => {
            writing.problems.extend(problems(of));
            let (_, ticket, _) = load(&state, &caller, number).await?;
            let found = findings(sheet, &Ground::of_ticket(&ticket));
            page(&Look { problems: writing.problems, doubts: writing.doubts, findings: found })
        }
        Err(failure) => Err(failure.into()),
    }
}

/// A form on its way: who sends it, what it was made from, what it changes.
struct Writing<'a> {
    state: &'a AppState,
    caller: &'a Caller,
    number: i64,
    sheet: Sheet,
    base: i32,
    typed: Fields,
    edit: Edit,
    problems: Vec<Problem>,
    doubts: Vec<Doubt>,
}

impl<'a> Writing<'a> {
    async fn new(
        state: &'a AppState,
        caller: &'a Caller,
        number: i64,
        sheet: Sheet,
        typed: Fields,
        read: &Result<SheetSent, Vec<Problem>>,
    ) -> Result<Self, Failure> {
        let base = read.as_ref().map_or(0, |read| read.base);
        let recorded = state.service.revision(caller, number, base).await?;
        let (mut edit, problems) = edit_of(sheet, &typed, &recorded.contents);
        for field in theirs(&typed) {
            edit.facts.retain(|change| change.path != field);
            for (topic, text) in [
                (Topic::Wants, &mut edit.wants),
                (Topic::Symptom, &mut edit.symptom),
                (Topic::Brought, &mut edit.brought),
            ] {
                text.take_if(|_| topic.code() == field);
            }
        }
        let doubts = doubts(&edit.facts, &recorded.contents, &typed);
        Ok(Self { state, caller, number, sheet, base, typed, edit, problems, doubts })
    }

    fn address(&self) -> String {
        format!("/tickets/{}/facts/{}", self.number, self.sheet.code())
    }

    /// The form again, with the findings as they would be.
    async fn form(mut self, more: Vec<Problem>) -> Answer {
        self.problems.extend(more);
        let (frame, ticket, _) = load(self.state, self.caller, self.number).await?;
        let head = Head::new(&ticket);
        let looked = self.state.service.look(self.caller, self.number, self.base, &self.edit).await;
        let wrong = !self.problems.is_empty();
        let form = FormState::back(self.typed, self.problems);
        let shown = match &looked {
            Ok(preview) => SheetForm::new(frame, head, self.sheet, &Ground::of_preview(preview), form),
            Err(_) => SheetForm::new(frame, head, self.sheet, &Ground::of_ticket(&ticket), form),
        };
        if wrong { again(&shown) } else { page(&shown) }
    }

    /// What saving would change.
    async fn diff(self) -> Answer {
        match self.state.service.preview(self.caller, self.number, self.base, &self.edit).await {
            Ok(preview) => {
                let (frame, ticket, _) = load(self.state, self.caller, self.number).await?;
                page(&DiffPage::new(frame, Head::new(&ticket), self.sheet, preview, self.doubts, &self.typed))
            }
            Err(failure) => self.otherwise(failure).await,
        }
    }

    async fn save(self, key: Key) -> Answer {
        let ticket = format!("/tickets/{}", self.number);
        let command = ChangeTicket { ticket: self.number, made_from: self.base, edit: self.edit.clone() };
        match self.state.service.write(Who::Staff(self.caller.clone()), key, command).await {
            Ok(revised) if revised.changes.is_empty() => on_to(&format!("{ticket}?saved=same")),
            Ok(_) => on_to(&format!("{ticket}?saved=facts")),
            Err(failure) => self.otherwise(failure).await,
        }
    }

    async fn otherwise(self, failure: service::Failure) -> Answer {
        match failure {
            service::Failure::Problems(of) => {
                let more = problems(of).into_iter().map(at_its_field).collect();
                self.form(more).await
            }
            service::Failure::Conflict(clashes) => self.conflict(clashes).await,
            other => Err(other.into()),
        }
    }

    /// Both values, to choose from. Only the edit is carried on, over what stands now.
    async fn conflict(self, clashes: Vec<Clash>) -> Answer {
        let (frame, ticket, now) = load(self.state, self.caller, self.number).await?;
        let carried = only_the_edit(&self.edit)
            .with("base", ticket.revision.number.to_string())
            .with("source", self.typed.get("source").unwrap_or_default())
            .with("do", "save");
        let besides = |path: &str| clashes.iter().all(|clash| clash.field != path);
        let kept: Vec<_> = self
            .edit
            .facts
            .iter()
            .filter(|change| besides(&change.path))
            .filter_map(|change| crate::job::fact_named(&change.path))
            .map(|fact| fact.declaration().label.to_owned())
            .collect();
        ConflictPage::new(frame, Head::new(&ticket), self.address(), clashes, &carried, &now.zone).beside(kept).answer()
    }
}

/// A fact's problem stands at the fact's field.
fn at_its_field(problem: Problem) -> Problem {
    match crate::job::fact_named(&problem.field) {
        Some(fact) => Problem { field: name_of(fact.declaration()), ..problem },
        None => problem,
    }
}
