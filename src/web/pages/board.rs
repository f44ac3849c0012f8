//! The board: what is where, what waits for whom, what is promised when.

use crate::web::access::Staff;
use crate::web::frame::{Answer, Frame, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

#[derive(Template)]
#[template(path = "pages/board.html")]
struct Board {
    frame: Frame,
}

/// `GET /`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    page(&Board { frame: Frame::of(&state, &caller).await? })
}
