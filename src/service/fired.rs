//! How often each rule has fired in this shop.

use super::{Caller, Failure, Service};
use crate::store::fired;
use crate::ticket::Action;
use std::collections::HashMap;

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
}
