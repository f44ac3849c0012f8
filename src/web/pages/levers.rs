//! What changes cost: every lever with its labour and parts, read by all who work here, set by the owner.

mod one;

pub use one::{send, show_one};

use super::clearing::hours;
use crate::plan::levers::{Lever, LeverPrice, Prices, SUBJECTS};
use crate::service::LABOUR_HOUR;
use crate::web::access::Staff;
use crate::web::frame::{Answer, Frame, page};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;

/// The page of all levers.
#[derive(Template)]
#[template(path = "pages/levers.html")]
struct LeversPage {
    frame: Frame,
    /// What an hour costs.
    hour: String,
    /// Has the shop set that?
    hour_own: bool,
    groups: Vec<(&'static str, Vec<Row>)>,
    all: usize,
    own: usize,
}

/// One lever with what it costs here.
pub struct Row {
    /// Its code in addresses.
    pub code: &'static str,
    /// What it is.
    pub name: &'static str,
    /// What is done.
    pub work: &'static str,
    /// The way back.
    pub undo: &'static str,
    /// Its labour here.
    pub labour: String,
    /// Its parts here.
    pub parts: String,
    /// Labour and parts together.
    pub cost: String,
    /// Did the shop set it?
    pub own: bool,
}

impl Row {
    /// A lever at these prices.
    pub fn new(lever: &Lever, prices: &Prices) -> Self {
        let LeverPrice { minutes, parts } = prices.of(lever);
        Self {
            code: lever.code,
            name: lever.name,
            work: lever.work,
            undo: lever.undo.label(),
            labour: hours(minutes),
            parts: parts.to_string(),
            cost: prices.cost(lever).to_string(),
            own: prices.own.contains_key(lever.code),
        }
    }
}

/// `GET /levers`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff) -> Answer {
    let frame = Frame::of(&state, &caller).await?;
    let shop = state.service.lever_prices(&caller, None).await?;
    let rows = |levers: &[Lever]| levers.iter().map(|lever| Row::new(lever, &shop.prices)).collect();
    page(&LeversPage {
        frame,
        hour: shop.prices.hour.to_string(),
        hour_own: shop.set.iter().any(|set| set.name == LABOUR_HOUR && set.cents.is_some()),
        groups: SUBJECTS.iter().map(|(subject, levers)| (*subject, rows(levers))).collect(),
        all: SUBJECTS.iter().map(|(_, levers)| levers.len()).sum(),
        own: shop.prices.own.len(),
    })
}
