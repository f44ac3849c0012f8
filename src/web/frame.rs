//! What stands around every page of the staff: the shop, who is signed in, what they may open.

use super::failure::Failure;
use super::site::AppState;
use crate::service::{Caller, Shop};
use crate::ticket::{Action, may};
use askama::Template;
use axum::http::{StatusCode, header};
use axum::response::{Html, IntoResponse, Response};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff::tz::TimeZone;

/// What a handler answers.
pub type Answer = Result<Response, Failure>;

/// The frame of a page for staff.
pub struct Frame {
    /// The shop.
    pub shop: Shop,
    /// Who is signed in.
    pub caller: Caller,
    zone: TimeZone,
    now: Timestamp,
}

impl Frame {
    /// The frame for this person.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn of(state: &AppState, caller: &Caller) -> Result<Self, Failure> {
        let shop = state.service.shop(caller.shop).await?;
        let zone = TimeZone::get(&shop.zone).unwrap_or(TimeZone::UTC);
        Ok(Self { shop, caller: caller.clone(), zone, now: state.service.now() })
    }

    /// May the person do this? For what a page offers; the use case decides for itself.
    pub const fn may(&self, action: Action) -> bool {
        may(self.caller.role, action)
    }

    /// May they run the shop?
    pub const fn runs_the_shop(&self) -> bool {
        self.may(Action::ManageShop)
    }

    /// May they move the limits of the rule book?
    pub const fn moves_limits(&self) -> bool {
        self.may(Action::ChangeLimits)
    }

    /// May they take units in?
    pub const fn takes_in(&self) -> bool {
        self.may(Action::TakeIn)
    }

    /// Today, in the shop.
    pub fn today(&self) -> Date {
        self.now.to_zoned(self.zone.clone()).date()
    }
}

/// A page as an answer.
///
/// # Errors
/// When it cannot be written, which is a fault of ours.
pub fn page(template: &impl Template) -> Answer {
    Ok(Html(template.render()?).into_response())
}

/// A page that asks again: the form comes back with what is wrong.
///
/// # Errors
/// As [`page`].
pub fn again(template: &impl Template) -> Answer {
    Ok((StatusCode::UNPROCESSABLE_ENTITY, Html(template.render()?)).into_response())
}

/// On to another page after something was done.
///
/// # Errors
/// Never; the type is that of a handler.
pub fn on_to(path: &str) -> Answer {
    let line = axum::http::HeaderValue::try_from(path).map_err(|_| Failure::NotFound)?;
    Ok((StatusCode::SEE_OTHER, [(header::LOCATION, line)]).into_response())
}
