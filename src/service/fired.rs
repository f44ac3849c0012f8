//! How often each rule has fired in this shop.

use super::{Caller, Failure, Service};
use crate::store::fired;
use crate::ticket::Action;
use std::collections::HashMap;

/// How many tickets are named.
const NEWEST: i64 = 12;

impl Service {
    /// On how many tickets of this shop each rule has fired, at whatever version, set aside or not. A code that is
    /// missing has never fired.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn fired(&self, caller: &Caller) -> Result<HashMap<String, i64>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        let counts = self.read(|conn| Box::pin(async move { Ok(fired::counts(conn, shop).await?) })).await?;
        Ok(counts.into_iter().map(|fired| (fired.code, fired.tickets)).collect())
    }

    /// The numbers of the newest tickets of this shop on which the rule of this code has fired, newest first.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn fired_on(&self, caller: &Caller, code: &'static str) -> Result<Vec<i64>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(async move { Ok(fired::newest(conn, shop, code, NEWEST).await?) })).await
    }
}
