//! The shop's own rule book: what its jobs are judged by.

use super::Failure;
use crate::rules::house::{HouseRule, house_code};
use crate::rules::{LimitId, Limits};
use crate::store::{house_rule, limit};
use sqlx::PgConnection;
use uuid::Uuid;

/// What a shop judges its jobs by, besides the rules that are the same everywhere. Read anew, in the
/// same transaction, wherever something is judged: another instance may have changed it a moment ago.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Book {
    /// The numbers the rules compare with, as this shop has them.
    pub limits: Limits,
    /// The rules of its own that are in force.
    pub house: Vec<HouseRule>,
    /// Codes of rules in force that this version of the program cannot read: they decide nothing, and say so.
    pub unreadable: Vec<String>,
}

impl Book {
    /// The shop's book as it stands.
    pub(super) async fn load(conn: &mut PgConnection, shop: Uuid) -> Result<Self, Failure> {
        let mut book = Self::default();
        for moved in limit::moved(conn, shop).await? {
            // A number that a later version of the program no longer knows or allows is as supplied again.
            if let Some(limit) = LimitId::named(&moved.name) {
                book.limits.set(limit, moved.number).ok();
            }
        }
        for kept in house_rule::in_force(conn, shop).await? {
            match super::house_rule::readable(&kept) {
                Some(rule) => book.house.push(rule),
                None => book.unreadable.push(house_code(kept.nth)),
            }
        }
        Ok(book)
    }
}
