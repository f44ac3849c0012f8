//! The shop's own particulars.

use crate::service::{self, ChangeShop, Key, Who};
use crate::web::access::Staff;
use crate::web::extract::Asked;
use crate::web::form::{Entry, Fields, FormState, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

#[derive(Template)]
#[template(path = "pages/shop.html")]
struct ShopPage {
    frame: Frame,
    form: FormState,
    done: bool,
}

/// Was it just saved?
#[derive(serde::Deserialize)]
pub struct Done {
    saved: Option<String>,
}

impl Entry for ChangeShop {
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
            teardown_terms: reader.words("teardown_terms", "The terms for the teardown", 4000),
            not_covered: reader.words("not_covered", "What is not covered", 4000),
        }
    }
}

/// `GET /shop`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, Asked(done): Asked<Done>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let shop = &frame.shop;
    let held = Fields::default().with("shop", &shop.name).with("phone", &shop.phone).with("zone", &shop.zone);
    let held = held.with("teardown_terms", &shop.teardown_terms).with("not_covered", &shop.not_covered);
    page(&ShopPage { frame, form: FormState::holding(held), done: done.saved.is_some() })
}

/// `POST /shop`
pub async fn change(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<ChangeShop>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let done = match sent.read {
        Ok(change) => state.service.write(Who::Staff(caller), Key(sent.once), change).await,
        Err(problems) => return again(&ShopPage { frame, form: FormState::back(sent.typed, problems), done: false }),
    };
    match done {
        Ok(()) => on_to("/shop?saved=1"),
        Err(service::Failure::Problems(problems)) => {
            let form = FormState::back(sent.typed, problems_of(problems));
            again(&ShopPage { frame, form, done: false })
        }
        Err(failure) => Err(failure.into()),
    }
}
