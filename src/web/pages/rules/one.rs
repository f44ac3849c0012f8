//! One rule, whole; or why there is none of this code.

use super::fired_on;
use crate::rules::told::{Named, Says, Section, Told, named, told};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::frame::{Answer, Frame, on_to, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use axum::http::StatusCode;
use axum::response::IntoResponse;

/// The page of one rule.
#[derive(Template)]
#[template(path = "pages/rule.html")]
struct RulePage {
    frame: Frame,
    told: &'static Told,
    sections: Vec<Section>,
    fired: String,
    /// The newest jobs it fired on.
    jobs: Vec<i64>,
    before: Option<&'static Told>,
    after: Option<&'static Told>,
}

/// The page of a code that no rule has.
#[derive(Template)]
#[template(path = "pages/rule_none.html")]
struct NonePage {
    frame: Frame,
    code: String,
    /// Why it was taken out; empty when it never was in.
    retired: &'static str,
    near: Vec<&'static Told>,
}

/// `GET /rules/{code}`
pub async fn show_one(State(state): State<AppState>, Staff(caller): Staff, At(code): At<String>) -> Answer {
    let none = |frame, retired, near| NonePage { frame, code: code.trim().chars().take(40).collect(), retired, near };
    match named(&code) {
        Named::Rule(one) => {
            let frame = Frame::of(&state, &caller).await?;
            let limits = state.service.limits(&caller, None).await?.book.limits;
            let fired = state.service.fired(&caller).await?;
            let place = told().iter().position(|other| std::ptr::eq(one, other)).unwrap_or_default();
            page(&RulePage {
                frame,
                sections: one.sections(&limits),
                fired: fired_on(fired.get(one.rule.code)),
                jobs: state.service.fired_on(&caller, one.rule.code).await?,
                before: place.checked_sub(1).and_then(|place| told().get(place)),
                after: told().get(place + 1),
                told: one,
            })
        }
        Named::House(nth) => on_to(&format!("/house-rules/{nth}")),
        Named::Retired(gone) => page(&none(Frame::of(&state, &caller).await?, gone.reason, Vec::new())),
        Named::Nothing(near) => {
            let near = told().iter().filter(|told| near.contains(&told.rule.code)).collect();
            let shown = page(&none(Frame::of(&state, &caller).await?, "", near))?;
            Ok((StatusCode::NOT_FOUND, shown).into_response())
        }
    }
}
