//! The board: what is where, what waits for whom, what is promised when.

use super::{Caller, Failure, Line, Service};
use crate::store::board;
use crate::ticket::{Action, Stage, WaitsFor};

/// More open jobs than a small shop ever has on its floor.
const MOST: i64 = 500;

impl Service {
    /// The open tickets, the earliest promise first.
    ///
    /// # Errors
    /// [`Failure::Busy`] when the database cannot be reached.
    pub async fn board(
        &self,
        caller: &Caller,
        stage: Option<Stage>,
        waits_for: Option<WaitsFor>,
    ) -> Result<Vec<Line>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(async move { Ok(board::open(conn, shop, stage, waits_for, MOST).await?) })).await
    }
}
