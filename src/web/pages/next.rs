//! What to ask next: the question that decides most, and the others that are due, in their order.

mod form;
mod view;

use crate::job::fact_named;
use crate::service::{self, Caller, ChangeTicket, Key, TicketPage, Who};
use crate::ticket::{Clash, Edit};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::facts::{Control, only_the_edit};
use crate::web::failure::Failure;
use crate::web::form::{Fields, FormState, Problem, Sent};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::moment::clock;
use crate::web::pages::conflict::{ConflictPage, theirs};
use crate::web::pages::ticket::{Head, Now, load};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use form::{Answered, Aside};
use serde::Deserialize;
use view::{First, Lists};

/// The page.
#[derive(Template)]
#[template(path = "pages/next.html")]
struct NextPage {
    frame: Frame,
    head: Head,
    form: FormState,
    /// The revision an answer is written over.
    base: i32,
    /// Where the job stands.
    stage: &'static str,
    /// What was just answered, and where it can be changed; empty when nothing was.
    saved: String,
    change: String,
    /// What was put aside, as the address carries it.
    skip: String,
    first: Option<First>,
    lists: Lists,
}

/// What the address asks for.
#[derive(Deserialize)]
pub struct Wish {
    /// What was put aside for now.
    #[serde(default)]
    skip: String,
    /// What is to be asked first.
    #[serde(default)]
    first: String,
    /// What was just answered.
    #[serde(default)]
    saved: String,
}

impl NextPage {
    fn new(frame: Frame, ticket: &TicketPage, form: FormState, aside: &Aside, first: &str) -> Self {
        let (first, lists) = view::lists(ticket, &form, aside, fact_named(first));
        Self {
            head: Head::new(ticket),
            base: ticket.revision.number,
            stage: ticket.ticket.stage.label(),
            saved: String::new(),
            change: String::new(),
            skip: aside.text(),
            first,
            lists,
            frame,
            form,
        }
    }

    /// The same, saying what was just written down.
    fn after(self, saved: &str, ticket: &TicketPage, now: &Now) -> Self {
        let Some(fact) = fact_named(saved) else { return self };
        let declaration = fact.declaration();
        let (time, words) = (clock(ticket.ticket.changed_at, &now.zone), ticket.revision.contents.facts.words(fact));
        Self {
            saved: format!("Saved {time}: {}: {words}.", declaration.label),
            change: view::sheet_address(ticket.ticket.number, declaration),
            ..self
        }
    }
}

/// `GET /tickets/{number}/next`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    Asked(wish): Asked<Wish>,
) -> Answer {
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    if !ticket.ticket.stage.open() {
        return on_to(&format!("/tickets/{number}"));
    }
    let aside = Aside::read(&wish.skip);
    let shown = NextPage::new(frame, &ticket, FormState::empty(), &aside, &wish.first);
    page(&shown.after(&wish.saved, &ticket, &now))
}

/// `POST /tickets/{number}/next`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<Answered>,
) -> Answer {
    let answered = sent.read.map_err(|_| Failure::Unreadable("the form's own fields were changed on the way"))?;
    let stage = state.service.ticket(&caller, number).await?.ticket.stage;
    let mut edit = match answered.edit(&sent.typed, stage) {
        Ok(edit) => edit,
        Err(problem) => return back(&state, &caller, number, &answered, sent.typed, vec![problem]).await,
    };
    for field in theirs(&sent.typed) {
        edit.facts.retain(|change| change.path != field);
    }
    let command = ChangeTicket { ticket: number, made_from: answered.base, edit: edit.clone() };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(_) => on_to(&answered.onward(number)),
        Err(service::Failure::Problems(of)) => {
            let problems =
                of.into_iter().map(|one| Problem { field: answered.field(), message: one.message }).collect();
            back(&state, &caller, number, &answered, sent.typed, problems).await
        }
        Err(service::Failure::Conflict(clashes)) => conflict(&state, &caller, number, &answered, &edit, clashes).await,
        Err(failure) => Err(failure.into()),
    }
}

/// The question again with what was typed and what to put right.
async fn back(
    state: &AppState,
    caller: &Caller,
    number: i64,
    answered: &Answered,
    typed: Fields,
    problems: Vec<Problem>,
) -> Answer {
    let (frame, ticket, _) = load(state, caller, number).await?;
    let form = FormState::back(typed, problems);
    let path = answered.fact.declaration().path;
    again(&NextPage { base: answered.base, ..NextPage::new(frame, &ticket, form, &answered.aside, path) })
}

/// Both answers, to choose from.
async fn conflict(
    state: &AppState,
    caller: &Caller,
    number: i64,
    answered: &Answered,
    edit: &Edit,
    clashes: Vec<Clash>,
) -> Answer {
    let (frame, ticket, now) = load(state, caller, number).await?;
    let carried = only_the_edit(edit)
        .with("base", ticket.revision.number.to_string())
        .with("ask", answered.fact.declaration().path)
        .with("skip", answered.aside.text());
    let action = format!("/tickets/{number}/next");
    ConflictPage::new(frame, Head::new(&ticket), action, clashes, &carried, &now.zone).answer()
}
