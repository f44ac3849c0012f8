//! The receipt of an answer: its reference number, what was read and ticked, the proof. Made to be printed.

use super::customer::{PaperView, when};
use crate::service::{Receipt, Shop};
use crate::ticket::{Answer, Tick};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::frame::{Answer as PageAnswer, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::Zoned;

/// The page of a receipt.
#[derive(Template)]
#[template(path = "pages/receipt.html")]
pub struct ReceiptPage {
    /// The shop as it is called now, with the number to call.
    shop: Shop,
    reference: String,
    title: &'static str,
    /// What was signed or declined, on which job.
    what: String,
    name: String,
    when: String,
    how: String,
    /// Why it was declined; empty when it was signed.
    why: String,
    text: PaperView,
    accepted: Vec<Tick>,
    digest: String,
    intact: bool,
    /// The ticket, when a member of staff looks.
    staff: Option<i64>,
}

impl ReceiptPage {
    /// The page of this receipt; with the ticket's number for a member of staff.
    pub fn new(shop: Shop, receipt: Receipt, staff: Option<i64>) -> Self {
        let record = receipt.record;
        let signed = record.answer == Answer::Signed;
        let mut accepted = record.paper.ticks.clone();
        accepted.retain(|tick| record.accepted.contains(&tick.code));
        Self {
            shop,
            reference: receipt.reference,
            title: if signed { "Signed. Thank you." } else { "You said no" },
            what: format!("{}, job {}, version {}", record.paper.title, record.ticket, record.revision),
            when: record.at.parse::<Zoned>().map_or(record.at, |at| when(&at)),
            how: match record.witness {
                Some(witness) if staff.is_some() => format!("{}, before {witness}", record.channel.label()),
                _ => record.channel.label().to_owned(),
            },
            why: record.why.unwrap_or_default(),
            name: record.name,
            text: PaperView::new(&record.paper),
            accepted,
            digest: receipt.digest,
            intact: receipt.intact,
            staff,
        }
    }
}

/// `GET /receipts/{reference}`: the receipt for staff, to print for a customer at the counter.
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(reference): At<String>) -> PageAnswer {
    let receipt = state.service.receipt(&caller, &reference).await?;
    let shop = state.service.shop(caller.shop).await?;
    let ticket = receipt.record.ticket;
    page(&ReceiptPage::new(shop, receipt, Some(ticket)))
}
