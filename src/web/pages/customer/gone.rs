//! A link that no longer takes an answer: what happened, and whom to call.

use crate::service::{LinkPage, LinkState, Shop};
use crate::ticket::{Answer, Purpose};
use askama::Template;

/// The page of a link that is closed.
#[derive(Template)]
#[template(path = "pages/customer_gone.html")]
pub struct GonePage {
    shop: Shop,
    title: &'static str,
    happened: &'static str,
    next: &'static str,
    /// The receipt's reference with where to read it; empty when nothing was answered here.
    reference: String,
    receipt: String,
}

impl GonePage {
    /// Why this link is closed; nothing while it is open.
    pub fn new(page: &LinkPage, token: &str) -> Option<Self> {
        let (title, happened, next) = match (&page.state, page.purpose) {
            (LinkState::Open, _) => return None,
            (LinkState::Used { answer: Answer::Signed, .. }, _) => (
                "You have signed this",
                "The shop has your signature. This link has done its work.",
                "Keep the receipt number. Call the shop if something is not right.",
            ),
            (LinkState::Used { answer: Answer::Declined, .. }, _) => (
                "You said no to this",
                "The shop has your answer and stops here. This link has done its work.",
                "Keep the receipt number. The shop will call you, or you can call them.",
            ),
            (LinkState::Revoked, _) => (
                "The shop took this link back",
                "It can no longer be read or signed here.",
                "Call the shop. They can send you the right one.",
            ),
            (LinkState::Superseded, Purpose::Build) => (
                "There is a newer version",
                "The job changed after this link was sent, or you have signed it another way. What this page showed no \
                 longer counts.",
                "Look for a newer link from the shop, or call them.",
            ),
            (LinkState::Superseded, Purpose::Intake) => (
                "The shop already has your yes",
                "You have let the shop open the unit. Nothing more is needed here.",
                "Call the shop if you did not do that.",
            ),
            (LinkState::Finished, _) => (
                "This job is finished",
                "There is nothing left to sign here.",
                "Call the shop if you have a question about it.",
            ),
            (LinkState::Expired, _) => (
                "This link is too old",
                "For your safety, links stop working after a while. Nothing was signed here.",
                "Call the shop. They can send you a new one.",
            ),
        };
        let reference = match &page.state {
            LinkState::Used { reference, .. } => reference.clone(),
            _ => String::new(),
        };
        Some(Self { shop: page.shop.clone(), title, happened, next, reference, receipt: format!("/c/{token}/receipt") })
    }
}
