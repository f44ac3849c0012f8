//! The people who work here: the owner adds them and shuts them out.

use crate::service::{self, AddStaff, DisableStaff, Key, Staff as Person, Who};
use crate::ticket::Role;
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Nothing, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use uuid::Uuid;

#[derive(Template)]
#[template(path = "pages/people.html")]
struct People {
    frame: Frame,
    people: Vec<Person>,
    form: FormState,
    roles: &'static [Role],
    added: String,
}

impl People {
    async fn of(state: &AppState, frame: Frame, form: FormState, added: String) -> Result<Self, Failure> {
        let people = state.service.staff(&frame.caller).await?;
        Ok(Self { frame, people, form, roles: Role::ALL, added })
    }

    /// Switching oneself off would lock the owner out of the page that could undo it.
    fn can_switch_off(&self, person: &Person) -> bool {
        !person.disabled && person.id != self.frame.caller.staff
    }
}

/// Who was just added.
#[derive(serde::Deserialize)]
pub struct Done {
    added: Option<String>,
}

/// A new member of staff as the form gives them; absent while no role was chosen.
pub struct Newcomer(Option<AddStaff>);

impl Entry for Newcomer {
    fn read(reader: &mut Reader<'_>) -> Self {
        let name = reader.needed_line("name", "The name", 60, "Enter the name they will sign in with.");
        let role = reader.one_of("role", "Choose what they do here.", Role::from_code);
        let password = reader.secret("password", "Choose a first password of 15 characters or more.");
        Self(role.map(|role| AddStaff { name, role, password }))
    }
}

/// `GET /staff`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, Asked(done): Asked<Done>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let added = done.added.unwrap_or_default().chars().take(60).collect();
    let form = FormState::holding(Fields::default().with("role", Role::Technician.code()));
    page(&People::of(&state, frame, form, added).await?)
}

/// `POST /staff`
pub async fn add(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<Newcomer>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let newcomer = match sent.read {
        Ok(Newcomer(newcomer)) => newcomer.ok_or(Failure::NotFound)?,
        Err(problems) => return ask_again(&state, frame, sent.typed, problems).await,
    };
    let name = newcomer.name.clone();
    match state.service.add_staff(&caller, Key(sent.once), newcomer).await {
        Ok(_) => on_to(&format!("/staff?added={}", crate::web::extract::escaped(&name))),
        Err(service::Failure::Problems(problems)) => ask_again(&state, frame, sent.typed, problems_of(problems)).await,
        Err(failure) => Err(failure.into()),
    }
}

/// `POST /staff/{id}/off`
pub async fn switch_off(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(staff): At<Uuid>,
    sent: Sent<Nothing>,
) -> Answer {
    if staff == caller.staff {
        let why = "You cannot switch yourself off; another owner has to do that.";
        return Err(Failure::Refused(why.to_owned()));
    }
    state.service.write(Who::Staff(caller), Key(sent.once), DisableStaff { staff }).await?;
    on_to("/staff")
}

async fn ask_again(state: &AppState, frame: Frame, mut typed: Fields, problems: Vec<Problem>) -> Answer {
    typed.set("password", "");
    again(&People::of(state, frame, FormState::back(typed, problems), String::new()).await?)
}
