//! Who may ask for an address, checked before its handler is reached.

use super::failure::Failure;
use super::site::AppState;
use super::{cookie, extract};
use crate::service::{self, Caller};
use crate::ticket::{Action, may};
use axum::extract::{FromRequestParts, Request, State};
use axum::http::request::Parts;
use axum::http::{Method, header};
use axum::middleware::Next;
use axum::response::{IntoResponse, Redirect, Response};

/// Who may ask for an address.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Access {
    /// Anybody. Addresses that hold a secret check it themselves.
    Anyone,
    /// Staff whose role may do this.
    Staff(Action),
}

/// The member of staff who asks. Only addresses with [`Access::Staff`] have one.
pub struct Staff(pub Caller);

impl<S: Send + Sync> FromRequestParts<S> for Staff {
    type Rejection = Failure;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Failure> {
        let caller = parts.extensions.get::<Caller>().cloned();
        caller.map(Self).ok_or_else(|| Failure::Fault("a page for staff stands in the table as open to all".to_owned()))
    }
}

/// Whoever asks: the member of staff, when one is signed in.
pub struct Anybody(pub Option<Caller>);

impl FromRequestParts<AppState> for Anybody {
    type Rejection = Failure;

    async fn from_request_parts(parts: &mut Parts, state: &AppState) -> Result<Self, Failure> {
        caller(state, cookie::read(&parts.headers, &state.site)).await.map(Self)
    }
}

/// Lets staff through whose role may do this; shows the others the way in, or why not.
pub async fn staff_only(
    State((state, action)): State<(AppState, Action)>,
    mut request: Request,
    next: Next,
) -> Response {
    let secret = cookie::read(request.headers(), &state.site);
    let only_looks = matches!(*request.method(), Method::GET | Method::HEAD);
    let caller = match caller(&state, secret).await {
        Ok(Some(caller)) => caller,
        Ok(None) if only_looks => return way_in(&request),
        Ok(None) => return Failure::SignInFirst.into_response(),
        Err(failure) => return failure.into_response(),
    };
    if let Err(failure) = admitted(&state, &caller, action, only_looks).await {
        return Failure::from(failure).into_response();
    }
    request.extensions_mut().insert(caller);
    next.run(request).await
}

/// A refusal is kept in the shop's history, but for somebody who only looked: looking changes nothing, ever.
async fn admitted(state: &AppState, caller: &Caller, action: Action, only_looks: bool) -> Result<(), service::Failure> {
    match may(caller.role, action) {
        true => Ok(()),
        false if only_looks => Err(service::Failure::NotAllowed(action)),
        false => state.service.admit(caller, action).await,
    }
}

/// To the sign-in page, and from there back to what was asked for.
fn way_in(request: &Request) -> Response {
    let path = request.uri().path_and_query().map_or("/", |path| path.as_str());
    let to = if path == "/" { "/sign-in".to_owned() } else { format!("/sign-in?next={}", extract::escaped(path)) };
    Redirect::to(&to).into_response()
}

async fn caller(state: &AppState, secret: Option<String>) -> Result<Option<Caller>, Failure> {
    let Some(secret) = secret else { return Ok(None) };
    match state.service.signed_in(&secret).await {
        Ok(caller) => Ok(Some(caller)),
        Err(service::Failure::SignedOut) => Ok(None),
        Err(failure) => Err(failure.into()),
    }
}

/// What the browser calls itself, for the record of who did what from where.
pub struct Device(pub String);

impl<S: Send + Sync> FromRequestParts<S> for Device {
    type Rejection = Failure;

    async fn from_request_parts(parts: &mut Parts, _: &S) -> Result<Self, Failure> {
        let agent = parts.headers.get(header::USER_AGENT).and_then(|agent| agent.to_str().ok());
        Ok(Self(agent.unwrap_or("not named").to_owned()))
    }
}
