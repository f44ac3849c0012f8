//! The board: what is where, what waits for whom, what is promised when; and the search.

mod card;
mod view;

use crate::service::Line;
use crate::ticket::Action;
use crate::web::access::Staff;
use crate::web::extract::Asked;
use crate::web::frame::{Answer, Frame, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use card::Card;
use view::{Board, Query};

#[derive(Template)]
#[template(path = "pages/board.html")]
struct BoardPage {
    frame: Frame,
    board: Board,
    may_move: bool,
}

/// `GET /`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, Asked(query): Asked<Query>) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let cards = |lines: Vec<Line>| lines.into_iter().map(|line| Card::new(line, frame.today())).collect();
    let q = query.q.trim();
    let board = if q.is_empty() {
        Board::open(cards(state.service.board(&caller, None, None).await?), &query.only)
    } else {
        Board::found(cards(state.service.search(&caller, q).await?), q.to_owned())
    };
    page(&BoardPage { board, may_move: frame.may(Action::MoveStage), frame })
}
