//! The paper both sides sign when a unit is handed over: what came in, how it looked, the shop's terms.

use super::customer::{PaperView, when};
use crate::service::{Receipt, Shop, TicketPage};
use crate::ticket::{Answer, Paper, Purpose};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::frame::{Answer as PageAnswer, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::tz::TimeZone;

/// The receipt of a unit that was handed over.
#[derive(Template)]
#[template(path = "pages/intake_receipt.html")]
pub struct IntakeReceiptPage {
    shop: Shop,
    number: i64,
    customer: String,
    phone: String,
    vehicle: String,
    plate: String,
    opened: String,
    promised: String,
    text: PaperView,
    /// Did the shop write terms of its own? If not, there are lines to write them on.
    has_terms: bool,
    /// What the customer accepts with the teardown.
    accepts: Vec<String>,
    /// How it was signed already; empty when it was not.
    signed: String,
}

const TERMS: &str = "Our terms for the teardown";

impl IntakeReceiptPage {
    /// The receipt of this ticket, with the teardown paper's text.
    pub fn new(shop: Shop, ticket: &TicketPage, paper: &Paper) -> Self {
        let zone = TimeZone::get(&shop.zone).unwrap_or(TimeZone::UTC);
        let moment = |at: jiff::Timestamp| when(&at.to_zoned(zone.clone()));
        let mut text = PaperView::new(paper);
        let asked = |receipt: &&Receipt| receipt.purpose == Purpose::Intake && receipt.record.answer == Answer::Signed;
        let signed = ticket.receipts.iter().find(asked).map(|receipt| {
            format!("Signed by {} on {}. Receipt {}.", receipt.record.name, moment(receipt.at), receipt.reference)
        });
        text.blocks.retain(|block| block.heading != "What we do not know yet");
        Self {
            number: ticket.ticket.number,
            customer: ticket.customer.name.clone(),
            phone: ticket.customer.phone.clone(),
            vehicle: ticket.vehicle.words.clone(),
            plate: ticket.vehicle.plate.clone(),
            opened: moment(ticket.ticket.opened_at),
            promised: ticket.ticket.promised.map(|day| day.strftime("%B %-d, %Y").to_string()).unwrap_or_default(),
            has_terms: text.blocks.iter().any(|block| block.heading == TERMS),
            accepts: paper.ticks.iter().map(|tick| tick.text.clone()).collect(),
            signed: signed.unwrap_or_default(),
            text,
            shop,
        }
    }
}

/// `GET /tickets/{number}/receipt`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> PageAnswer {
    let ticket = state.service.ticket(&caller, number).await?;
    let paper = state.service.paper(&caller, number, Purpose::Intake).await?;
    let shop = state.service.shop(caller.shop).await?;
    page(&IntakeReceiptPage::new(shop, &ticket, &paper))
}
