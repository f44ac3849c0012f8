//! Rules of the shop's own: the list, one rule with its versions and trial, writing it.

mod form;
mod view;

pub use form::{Draft, TurnSent};

use crate::job::{Declaration, facts};
use crate::plan::steps::FROM_PAPERS;
use crate::rules::house::LONGEST;
use crate::service::{self, Caller, Key, SwitchHouseRule, Version, Who};
use crate::ticket::Action;
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::failure::Failure;
use crate::web::form::{FormState, Problem, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::moment::zone;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use form::{Heard, hear, held};
use view::{One, Row, Tried, rows};

#[derive(Template)]
#[template(path = "pages/house_rules.html")]
struct ListPage {
    frame: Frame,
    rules: Vec<Row>,
}

impl ListPage {
    const fn writes(&self) -> bool {
        self.frame.may(Action::ManageRules)
    }
}

#[derive(Template)]
#[template(path = "pages/house_rule.html")]
struct RulePage {
    frame: Frame,
    rule: One,
    trial: Option<Tried>,
    form: FormState,
}

impl RulePage {
    const fn writes(&self) -> bool {
        self.frame.may(Action::ManageRules)
    }
}

#[derive(Template)]
#[template(path = "pages/house_rule_form.html")]
struct FormPage {
    frame: Frame,
    form: FormState,
    /// The rule that gets a new version: its number and code; none for a new rule.
    of: Option<(i32, String)>,
    heard: Heard,
    longest: usize,
}

impl FormPage {
    /// The facts a condition may name.
    fn facts() -> impl Iterator<Item = &'static Declaration> {
        facts().iter().copied().filter(|fact| !FROM_PAPERS.contains(&fact.path))
    }
}

/// What a condition was understood as, for the script.
#[derive(Template)]
#[template(path = "parts/condition_heard.html")]
struct HeardPart {
    heard: Heard,
}

/// `GET /house-rules`
pub async fn list(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let rules = rows(&state.service.house_rules(&caller).await?);
    page(&ListPage { frame, rules })
}

/// `GET /house-rules/{nth}`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(nth): At<i32>) -> Answer {
    page(&rule_page(&state, &caller, nth, FormState::empty()).await?)
}

async fn versions(state: &AppState, caller: &Caller, nth: i32) -> Result<Vec<Version>, Failure> {
    let mut versions = state.service.house_rules(caller).await?;
    versions.retain(|version| version.nth == nth);
    if versions.is_empty() { Err(Failure::NotFound) } else { Ok(versions) }
}

async fn rule_page(state: &AppState, caller: &Caller, nth: i32, form: FormState) -> Result<RulePage, Failure> {
    let versions = versions(state, caller, nth).await?;
    let trial = state.service.house_trial(caller, nth, versions[0].version).await?;
    let frame = Frame::of(state, caller).await?;
    let zone = zone(&frame.shop.zone);
    let trial = trial.map(|trial| Tried::new(&trial, &zone));
    Ok(RulePage { rule: One::new(&versions, &zone), trial, frame, form })
}

/// `GET /house-rules/new`
pub async fn fresh(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    page(&FormPage { frame, form: FormState::empty(), of: None, heard: Heard::default(), longest: LONGEST })
}

/// `GET /house-rules/{nth}/edit`
pub async fn edit(State(state): State<AppState>, Staff(caller): Staff, At(nth): At<i32>) -> Answer {
    let newest = versions(&state, &caller, nth).await?.swap_remove(0);
    let frame = Frame::of(&state, &caller).await?;
    let (form, heard) = (FormState::holding(held(&newest)), hear(&newest.condition));
    page(&FormPage { frame, form, of: Some((nth, service::house_code(nth))), heard, longest: LONGEST })
}

/// `POST /house-rules`
pub async fn write_new(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<Draft>) -> Answer {
    write(&state, &caller, None, sent).await
}

/// `POST /house-rules/{nth}`
pub async fn write_next(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(nth): At<i32>,
    sent: Sent<Draft>,
) -> Answer {
    write(&state, &caller, Some(nth), sent).await
}

async fn write(state: &AppState, caller: &Caller, nth: Option<i32>, sent: Sent<Draft>) -> Answer {
    let only_look = sent.typed.get("do") == Some("look");
    let problems = match sent.read {
        Ok(_) | Err(_) if only_look => Vec::new(),
        Err(problems) => problems,
        Ok(draft) => {
            let wanted = draft.of(nth);
            match state.service.write(Who::Staff(caller.clone()), Key(sent.once), wanted).await {
                Ok(written) => return on_to(&format!("/house-rules/{}", written.nth)),
                Err(service::Failure::Problems(problems)) => problems_of(problems),
                Err(failure) => return Err(failure.into()),
            }
        }
    };
    let heard = hear(sent.typed.get("condition").unwrap_or_default());
    let frame = Frame::of(state, caller).await?;
    let of = nth.map(|nth| (nth, service::house_code(nth)));
    let shown = FormPage { frame, form: FormState::back(sent.typed, problems), of, heard, longest: LONGEST };
    if shown.form.is_wrong() { again(&shown) } else { page(&shown) }
}

/// `POST /house-rules/look`: what the condition is understood as so far, for the script. Changes nothing.
pub async fn look(Staff(_): Staff, sent: Sent<Draft>) -> Answer {
    page(&HeardPart { heard: hear(sent.typed.get("condition").unwrap_or_default()) })
}

/// `POST /house-rules/{nth}/try`
pub async fn try_out(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(nth): At<i32>,
    sent: Sent<TurnSent>,
) -> Answer {
    let Ok(turn) = sent.read else { return on_to(&format!("/house-rules/{nth}")) };
    let done = state.service.try_house_rule(&caller, Key(sent.once), nth, turn.version).await;
    back(&state, &caller, nth, done).await
}

/// `POST /house-rules/{nth}/switch`
pub async fn switch(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(nth): At<i32>,
    sent: Sent<TurnSent>,
) -> Answer {
    let Ok(turn) = sent.read else { return on_to(&format!("/house-rules/{nth}")) };
    let command = SwitchHouseRule { nth, version: turn.version, on: turn.on };
    let done = state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await;
    back(&state, &caller, nth, done).await
}

/// The rule again, with what stood in the way if something did.
async fn back(state: &AppState, caller: &Caller, nth: i32, done: Result<(), service::Failure>) -> Answer {
    match done {
        Ok(()) => on_to(&format!("/house-rules/{nth}")),
        Err(service::Failure::Problems(problems)) => {
            let problems: Vec<Problem> = problems_of(problems);
            let form = FormState::back(crate::web::form::Fields::default(), problems);
            again(&rule_page(state, caller, nth, form).await?)
        }
        Err(failure) => Err(failure.into()),
    }
}
