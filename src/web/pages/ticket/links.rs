//! Links with which the customer reads and signs: made, shown once, taken back.

use super::{Head, load, or_back};
use crate::service::{Key, MakeLink, RevokeLink, Who};
use crate::ticket::Purpose;
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::failure::Failure;
use crate::web::form::{Entry, Reader, Sent};
use crate::web::frame::{Answer, Frame, on_to, page};
use crate::web::moment::moment;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use qrcode::render::svg;
use qrcode::{EcLevel, QrCode};
use uuid::Uuid;

/// The page that shows a new link, this once.
#[derive(Template)]
#[template(path = "pages/link_made.html")]
struct LinkMadePage {
    frame: Frame,
    head: Head,
    /// What the link is for.
    paper: &'static str,
    /// The link; absent when it was shown before.
    address: Option<String>,
    until: String,
    /// The link as a code to scan, as a picture in an address.
    picture: String,
    /// The customer's number as a telephone takes it.
    phone: String,
    email: String,
    /// What goes with the link.
    message: String,
    subject: String,
}

/// What a link is wanted for.
pub struct LinkSent {
    purpose: Purpose,
}

impl Entry for LinkSent {
    fn read(reader: &mut Reader<'_>) -> Self {
        let ask = "Choose what the customer is to sign: the teardown authorisation or the build summary.";
        Self { purpose: reader.one_of("purpose", ask, Purpose::from_code).unwrap_or(Purpose::Intake) }
    }
}

/// A link is taken back; its address says which.
pub struct RevokeSent;

impl Entry for RevokeSent {
    fn read(_: &mut Reader<'_>) -> Self {
        Self
    }
}

/// `POST /tickets/{number}/links`
///
/// Answers with the link itself and not with the way to another page: the link is a secret that is kept nowhere.
pub async fn make(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<LinkSent>,
) -> Answer {
    let LinkSent { purpose } = match sent.read {
        Ok(wanted) => wanted,
        Err(problems) => return super::back(&state, &caller, number, sent.typed, problems).await,
    };
    let wanted = MakeLink { ticket: number, purpose, days: None };
    let made = match state.service.make_link(&caller, Key(sent.once), wanted).await {
        Ok(made) => made,
        Err(failure) => return or_back(&state, &caller, number, sent.typed, failure).await,
    };
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    let address = made.pass.map(|pass| state.site.link(&format!("/c/{pass}")));
    let shop = &frame.shop.name;
    let message = address.as_ref().map_or_else(String::new, |address| {
        format!("Hello, this is {shop}. Please read and sign for your job {number} here: {address}")
    });
    page(&LinkMadePage {
        paper: purpose.label(),
        until: moment(made.expires_at, &now.zone),
        picture: address.as_deref().map(picture).transpose()?.unwrap_or_default(),
        phone: ticket.customer.phone.chars().filter(|sign| sign.is_ascii_digit() || *sign == '+').collect(),
        email: ticket.customer.email.clone(),
        subject: format!("{shop}: job {number}, please read and sign"),
        head: Head::new(&ticket),
        message,
        address,
        frame,
    })
}

/// `POST /tickets/{number}/links/{id}/revoke`
pub async fn revoke(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At((number, link)): At<(i64, Uuid)>,
    sent: Sent<RevokeSent>,
) -> Answer {
    let command = RevokeLink { ticket: number, link };
    match state.service.write(Who::Staff(caller.clone()), Key(sent.once), command).await {
        Ok(()) => on_to(&format!("/tickets/{number}?saved=link")),
        Err(failure) => or_back(&state, &caller, number, sent.typed, failure).await,
    }
}

/// A code to scan, as a picture that needs no second request.
fn picture(text: &str) -> Result<String, Failure> {
    let code = QrCode::with_error_correction_level(text, EcLevel::M)
        .map_err(|error| Failure::Fault(format!("no code for a link of {} letters: {error}", text.len())))?;
    let drawn = code.render::<svg::Color<'_>>().quiet_zone(true).build();
    Ok(format!("data:image/svg+xml;base64,{}", STANDARD.encode(drawn)))
}
