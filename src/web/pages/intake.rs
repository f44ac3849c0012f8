//! The first page of the intake: who brings what, and what they want. Ends in a ticket.

mod form;
mod view;

use crate::service::{self, Caller, Key, Returning, Who};
use crate::ticket::Action;
use crate::web::access::Staff;
use crate::web::failure::Failure;
use crate::web::form::{Fields, FormState, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use form::Wish;
use uuid::Uuid;
use view::{Known, LoosePart, earlier, loose_parts};

#[derive(Template)]
#[template(path = "pages/intake.html")]
struct IntakePage {
    frame: Frame,
    form: FormState,
    /// The people found, when somebody was looked for.
    found: Option<Vec<Known>>,
    parts: Vec<LoosePart>,
    earlier: Vec<String>,
    may_promise: bool,
}

impl IntakePage {
    async fn new(
        state: &AppState,
        caller: &Caller,
        form: FormState,
        found: Option<Vec<Known>>,
    ) -> Result<Self, Failure> {
        let frame = Frame::of(state, caller).await?;
        let may_promise = frame.may(Action::ChangePromise);
        Ok(Self { parts: loose_parts(&form), earlier: earlier(&form), frame, form, found, may_promise })
    }

    fn is_known(&self) -> bool {
        !self.form.value("customer").is_empty()
    }

    fn is_known_vehicle(&self) -> bool {
        !self.form.value("known_vehicle").is_empty()
    }
}

/// `GET /intake`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    page(&IntakePage::new(&state, &caller, FormState::empty(), None).await?)
}

/// `POST /intake`
pub async fn send(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<Wish>) -> Answer {
    let typed = sent.typed;
    let (typed, found) = match sent.read {
        Err(problems) => {
            return again(&IntakePage::new(&state, &caller, FormState::back(typed, problems), None).await?);
        }
        Ok(Wish::Open(take_in)) => {
            return match state.service.write(Who::Staff(caller.clone()), Key(sent.once), *take_in).await {
                Ok(taken_in) => on_to(&format!("/tickets/{}/intake", taken_in.ticket)),
                Err(service::Failure::Problems(problems)) => {
                    let form = FormState::back(typed, problems_of(problems));
                    again(&IntakePage::new(&state, &caller, form, None).await?)
                }
                Err(failure) => Err(failure.into()),
            };
        }
        Ok(Wish::LookUp(find)) => {
            let found = state.service.returning(&caller, &find).await?;
            (typed, Some(Known::from_found(&found)))
        }
        Ok(Wish::This(customer, vehicle)) => (chosen(&state, &caller, typed, customer, vehicle).await?, None),
        Ok(Wish::Somebody) => (form::for_somebody_new(typed), None),
    };
    page(&IntakePage::new(&state, &caller, FormState::holding(typed), found).await?)
}

/// The form with the one who was found in it. Whoever is no longer found is left to be typed.
async fn chosen(
    state: &AppState,
    caller: &Caller,
    typed: Fields,
    customer: Uuid,
    vehicle: Option<Uuid>,
) -> Result<Fields, Failure> {
    let found = state.service.returning(caller, typed.get("find").unwrap_or_default()).await?;
    let theirs: Vec<&Returning> = found.iter().filter(|one| one.customer.id == customer).collect();
    let this = theirs.iter().find(|one| Some(one.vehicle_id) == vehicle).or_else(|| theirs.first());
    Ok(this.map_or_else(|| typed.clone(), |one| form::filled_in(typed.clone(), one, vehicle)))
}
