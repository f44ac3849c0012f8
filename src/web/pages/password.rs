//! Changing one's own password.

use crate::service::{self, ChangePassword, Key};
use crate::web::access::Staff;
use crate::web::form::{Entry, Fields, FormState, Problem, Reader, Sent, problems_of};
use crate::web::frame::{Answer, Frame, again, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

#[derive(Template)]
#[template(path = "pages/password.html")]
struct PasswordPage {
    frame: Frame,
    form: FormState,
    done: bool,
}

impl Entry for ChangePassword {
    fn read(reader: &mut Reader<'_>) -> Self {
        Self {
            present: reader.secret("present", "Enter the password you have now."),
            new: reader.secret("new", "Choose a new password of 15 characters or more."),
        }
    }
}

/// `GET /me/password`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    page(&PasswordPage { frame: Frame::of(&state, &caller).await?, form: FormState::empty(), done: false })
}

/// `POST /me/password`
pub async fn change(State(state): State<AppState>, Staff(caller): Staff, sent: Sent<ChangePassword>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let change = match sent.read {
        Ok(change) => change,
        Err(problems) => return ask_again(frame, problems),
    };
    match state.service.change_password(&caller, Key(sent.once), change).await {
        Ok(()) => page(&PasswordPage { frame, form: FormState::empty(), done: true }),
        Err(service::Failure::Problems(problems)) => ask_again(frame, problems_of(problems)),
        Err(failure) => Err(failure.into()),
    }
}

/// Passwords are the one thing that is not kept: they never travel back into a page.
fn ask_again(frame: Frame, problems: Vec<Problem>) -> Answer {
    again(&PasswordPage { frame, form: FormState::back(Fields::default(), problems), done: false })
}
