//! The shop's limits: anybody who works here may read them, the owner moves them.

use super::form::{self, Field, several_lines};
use super::write::Scene;
use super::{Book, By, Caller, Command, Failure, LimitChange, Service};
use crate::rules::LimitId;
use crate::store::limit;
use crate::ticket::{Action, Change, Happening, Problem};
use serde::Serialize;

const REASON: Field = Field { name: "reason", label: "The reason", most: 1000, needed: true };

/// How many changes a page shows.
const HISTORY: i64 = 200;

/// The shop's limits with what was changed about them.
#[derive(Clone, Debug)]
pub struct ShopLimits {
    /// The limits as they stand.
    pub book: Book,
    /// The latest changes, newest first.
    pub changes: Vec<LimitChange>,
}

impl Service {
    /// The limits as they stand, with the latest changes of this one, or of all.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn limits(&self, caller: &Caller, only: Option<LimitId>) -> Result<ShopLimits, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let (shop, name) = (caller.shop, only.map(|limit| limit.declaration().name));
        self.read(|conn| {
            Box::pin(async move {
                let book = Book::load(conn, shop).await?;
                Ok(ShopLimits { book, changes: limit::changes(conn, shop, name, HISTORY).await? })
            })
        })
        .await
    }
}

/// A limit moved by the owner. What was judged before stays as it was judged.
#[derive(Clone, Debug, Serialize)]
pub struct ChangeLimit {
    /// The limit's name.
    pub limit: String,
    /// The turn of the latest change the form knew of; 0 when there was none.
    pub made_from: i32,
    /// The number wanted, in the limit's unit; none: back to as supplied.
    pub number: Option<f64>,
    /// Why. Never empty.
    pub reason: String,
}

impl Command for ChangeLimit {
    type Answer = ();
    const NAME: &'static str = "change_limit";
    const BY: By = By::Staff(Action::ChangeLimits);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let limit = LimitId::named(&self.limit).ok_or(Failure::NotFound("such limit"))?;
        let said = limit.declaration();
        let book = Book::load(scene.conn, scene.shop).await?;
        let stands = book.limits.get(limit);
        let latest = limit::changes(scene.conn, scene.shop, Some(said.name), 1).await?.pop();
        let turn = latest.as_ref().map_or(0, |latest| latest.turn);
        let wanted = self.number.unwrap_or(said.default);
        let mut problems = Vec::new();
        if let Some(latest) = latest.filter(|_| turn != self.made_from) {
            let message = format!(
                "{} moved this limit while you were writing: it is {} now. Send yours again if you still want it.",
                latest.made_by,
                limit.say(stands)
            );
            problems.push(Problem::new("number", message));
        } else if let Err(refused) = book.limits.clone().set(limit, wanted) {
            problems.push(Problem::new("number", refused.to_string()));
        } else if wanted == stands {
            let message = format!("The limit is {} already, so there is nothing to change.", limit.say(stands));
            problems.push(Problem::new("number", message));
        }
        let reason = several_lines(REASON, &self.reason, &mut problems);
        form::none(problems)?;
        let caller = scene.caller()?;
        let change = LimitChange {
            name: said.name.to_owned(),
            turn: turn + 1,
            number: self.number,
            reason: reason.clone(),
            made_by: caller.name.clone(),
            at: scene.now,
        };
        let staff = caller.staff;
        limit::insert(scene.conn, scene.shop, staff, &change).await?;
        let change = Change {
            field: said.name.to_owned(),
            label: said.label.to_owned(),
            from: limit.say(stands),
            to: limit.say(wanted),
        };
        scene.happened_in_shop(Happening::LimitChanged { change, reason }).await
    }
}
