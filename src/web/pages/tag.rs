//! The tag that is tied to the unit: its number large, and a square code that opens the ticket for staff. It holds
//! no secret: whoever finds it learns a number and an address that asks for a password.

use super::customer::when;
use crate::service::{Shop, TicketPage};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::failure::Failure;
use crate::web::frame::{Answer, page};
use crate::web::qr::drawing;
use crate::web::site::{AppState, Site};
use askama::Template;
use axum::extract::State;
use jiff::tz::TimeZone;

/// The tag.
#[derive(Template)]
#[template(path = "pages/tag.html")]
pub struct TagPage {
    shop: Shop,
    number: i64,
    customer: String,
    vehicle: String,
    plate: String,
    opened: String,
    /// The same address in letters, for a torn code.
    address: String,
    code: String,
}

impl TagPage {
    /// The tag of this ticket.
    pub fn new(shop: Shop, ticket: &TicketPage, site: &Site) -> Option<Self> {
        let number = ticket.ticket.number;
        let address = site.link(&format!("/tickets/{number}"));
        let zone = TimeZone::get(&shop.zone).unwrap_or(TimeZone::UTC);
        Some(Self {
            code: drawing(&address, &format!("Code that opens job {number}"))?,
            number,
            customer: ticket.customer.name.clone(),
            vehicle: ticket.vehicle.words.clone(),
            plate: ticket.vehicle.plate.clone(),
            opened: when(&ticket.ticket.opened_at.to_zoned(zone)),
            address,
            shop,
        })
    }
}

/// `GET /tickets/{number}/tag`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    let ticket = state.service.ticket(&caller, number).await?;
    let shop = state.service.shop(caller.shop).await?;
    let tag = TagPage::new(shop, &ticket, &state.site);
    page(&tag.ok_or_else(|| Failure::Fault("the address is too long for a code".to_owned()))?)
}
