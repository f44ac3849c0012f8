//! The owner's first page: the shop's name, their own name and password. Opened once, by the link of the first start.

use crate::service::{self, Key, SetUp};
use crate::web::access::Device;
use crate::web::extract::At;
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

#[derive(Template)]
#[template(path = "pages/setup.html")]
struct SetUpPage {
    form: FormState,
    pass: String,
}

impl Entry for SetUp {
    fn read(reader: &mut Reader<'_>) -> Self {
        Self {
            shop: reader.needed_line("shop", "The shop's name", 100, "Enter the shop's name, as customers know it."),
            phone: reader.needed_line("phone", "The shop's phone", 40, "Enter the number that customers call."),
            zone: reader.needed_line(
                "zone",
                "The time zone",
                60,
                "Enter the shop's time zone, such as America/Denver.",
            ),
            name: reader.needed_line("name", "Your name", 60, "Enter the name you want to sign in with."),
            password: reader.secret("password", "Choose a password of 15 characters or more."),
        }
    }
}

/// `GET /setup/{pass}`
pub async fn show(State(state): State<AppState>, At(pass): At<String>) -> Answer {
    if !state.service.setup_opens(&pass).await? {
        return Err(Failure::NotFound);
    }
    page(&SetUpPage { form: FormState::holding(Fields::default().with("zone", "America/Denver")), pass })
}

/// `POST /setup/{pass}`
pub async fn set_up(
    State(state): State<AppState>,
    Device(device): Device,
    At(pass): At<String>,
    sent: Sent<SetUp>,
) -> Answer {
    let wanted = match sent.read {
        Ok(wanted) => wanted,
        Err(problems) => return ask_again(sent.typed, problems, pass),
    };
    match state.service.set_up(&pass, Key(sent.once), wanted, &device).await {
        Ok(()) => on_to("/sign-in"),
        Err(service::Failure::Problems(problems)) => ask_again(sent.typed, problems_of(problems), pass),
        Err(service::Failure::LinkClosed) => Err(Failure::NotFound),
        Err(failure) => Err(failure.into()),
    }
}

fn ask_again(mut typed: Fields, problems: Vec<Problem>, pass: String) -> Answer {
    typed.set("password", "");
    again(&SetUpPage { form: FormState::back(typed, problems), pass })
}
