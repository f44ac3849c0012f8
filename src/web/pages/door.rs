//! Signing in and out.

use crate::service;
use crate::web::access::{Device, Staff};
use crate::web::cookie;
use crate::web::extract::Asked;
use crate::web::failure::Failure;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent};
use crate::web::frame::{Answer, again, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use axum::http::{HeaderName, HeaderValue, header};
use axum::response::IntoResponse;

#[derive(Template)]
#[template(path = "pages/sign_in.html")]
struct SignInPage {
    form: FormState,
    shop: String,
}

/// Where to go after signing in.
#[derive(serde::Deserialize)]
pub struct After {
    next: Option<String>,
}

/// Name and password.
pub struct Names {
    name: String,
    password: String,
    next: String,
}

impl Entry for Names {
    fn read(reader: &mut Reader<'_>) -> Self {
        Self {
            name: reader.needed_line("name", "Your name", 100, "Enter the name you sign in with."),
            password: reader.secret("password", "Enter your password."),
            next: reader.fields().get("next").unwrap_or_default().to_owned(),
        }
    }
}

/// `GET /sign-in`
pub async fn show(State(state): State<AppState>, Asked(after): Asked<After>) -> Answer {
    let next = after.next.unwrap_or_default();
    page(&SignInPage { form: FormState::holding(Fields::default().with("next", next)), shop: shop(&state).await? })
}

/// `POST /sign-in`
pub async fn sign_in(State(state): State<AppState>, Device(device): Device, sent: Sent<Names>) -> Answer {
    let names = match sent.read {
        Ok(names) => names,
        Err(problems) => return ask_again(&state, sent.typed, problems).await,
    };
    let shop = state.service.first_shop().await?.ok_or(Failure::NotFound)?;
    match state.service.sign_in(shop.shop_id, &names.name, &names.password, &device).await {
        Ok(signed_in) => {
            let mut response = on_to(local(&names.next))?;
            let line = cookie::hand_over(&signed_in.pass.to_string(), &state.site);
            response.headers_mut().insert(header::SET_COOKIE, line);
            Ok(response)
        }
        Err(service::Failure::NotLetIn(sentence)) => {
            ask_again(&state, sent.typed, vec![Problem { field: "name".to_owned(), message: sentence }]).await
        }
        Err(failure) => Err(failure.into()),
    }
}

/// `POST /sign-out`
pub async fn sign_out(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    state.service.sign_out(&caller).await?;
    let clear = (HeaderName::from_static("clear-site-data"), HeaderValue::from_static("\"cache\", \"storage\""));
    let mut response = on_to("/sign-in")?;
    response.headers_mut().insert(header::SET_COOKIE, cookie::take_back(&state.site));
    response.headers_mut().insert(clear.0, clear.1);
    Ok(response.into_response())
}

async fn ask_again(state: &AppState, mut typed: Fields, problems: Vec<Problem>) -> Answer {
    // A password never travels back into a page.
    typed.set("password", "");
    again(&SignInPage { form: FormState::back(typed, problems), shop: shop(state).await? })
}

async fn shop(state: &AppState) -> Result<String, Failure> {
    let shop = state.service.first_shop().await?;
    Ok(shop.filter(|shop| shop.set_up).map_or_else(|| "Endplay".to_owned(), |shop| shop.name))
}

/// An address within this shop, or the board: a link from outside must not lead away after the password is typed.
fn local(next: &str) -> &str {
    let inside = next.starts_with('/') && !next.starts_with("//") && !next.contains(['\\', '\r', '\n', '\t']);
    if inside && next.is_ascii() { next } else { "/" }
}

#[cfg(test)]
mod tests {
    use super::local;

    #[test]
    fn signing_in_leads_only_to_own_pages() {
        assert_eq!(local("/tickets/1042?saved=1"), "/tickets/1042?saved=1");
        for elsewhere in ["", "//evil.example", "https://evil.example", "/\\evil.example", "/a\r\nX: y", "tickets/1"] {
            assert_eq!(local(elsewhere), "/", "{elsewhere:?}");
        }
    }
}
