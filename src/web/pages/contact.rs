//! Correcting whose unit it is and what it came in.

use crate::service::{self, ChangeContact, Key, Person, VehicleWords, Who};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::form::{Entry, Fields, FormState, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::pages::ticket::Head;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

#[derive(Template)]
#[template(path = "pages/contact.html")]
struct ContactPage {
    frame: Frame,
    head: Head,
    form: FormState,
}

/// The particulars as they are sent.
pub struct ContactSent {
    person: Person,
    vehicle: VehicleWords,
}

impl Entry for ContactSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let person = person(reader);
        let ask = "Enter the vehicle in plain words; a unit alone is \u{201c}unit on a pallet\u{201d}.";
        let vehicle = VehicleWords {
            words: reader.needed_line("vehicle", "Vehicle in plain words", 200, ask),
            plate: reader.line("plate", "Plate", 20),
        };
        Self { person, vehicle }
    }
}

/// A person's particulars as a form gives them, with every slip in them told at once.
pub fn person(reader: &mut Reader<'_>) -> Person {
    let person = Person {
        name: reader.needed_line("name", "The name", 100, "Write the customer's name."),
        phone: reader.needed_line("phone", "The phone number", 40, "Write a phone number, to call when it is ready."),
        email: reader.line("email", "The mail address", 200),
    };
    for slip in person.slips() {
        reader.wrong(slip.field, slip.message);
    }
    person
}

/// `GET /tickets/{number}/contact`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let ticket = state.service.ticket(&caller, number).await?;
    let held = Fields::default()
        .with("name", &ticket.customer.name)
        .with("phone", &ticket.customer.phone)
        .with("email", &ticket.customer.email)
        .with("vehicle", &ticket.vehicle.words)
        .with("plate", &ticket.vehicle.plate);
    page(&ContactPage { frame, head: Head::new(&ticket), form: FormState::holding(held) })
}

/// `POST /tickets/{number}/contact`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<ContactSent>,
) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let head = Head::new(&state.service.ticket(&caller, number).await?);
    let done = match sent.read {
        Ok(ContactSent { person, vehicle }) => {
            let change = ChangeContact { ticket: number, person, vehicle };
            state.service.write(Who::Staff(caller), Key(sent.once), change).await
        }
        Err(problems) => return again(&ContactPage { frame, head, form: FormState::back(sent.typed, problems) }),
    };
    match done {
        Ok(()) => on_to(&format!("/tickets/{number}?saved=contact")),
        Err(service::Failure::Problems(problems)) => {
            again(&ContactPage { frame, head, form: FormState::back(sent.typed, problems_of(problems)) })
        }
        Err(failure) => Err(failure.into()),
    }
}
