//! What the rules say of a ticket, with what its own papers say laid over what is stored.
//!
//! A signature makes no new revision, yet it changes which version is signed, for how much, and whether permanent
//! work is agreed. So these facts are laid over the stored ones whenever something is judged or shown.

use super::change::counts;
use super::write::Scene;
use super::{Book, Failure, Judge, Revision, Ticket};
use crate::job::FactId;
use crate::quantity::Cents;
use crate::store::{revision, signature, ticket};
use crate::ticket::{Contents, Judgement, Silenced, Stage, TicketFacts, Trail, covers};
use jiff::Timestamp;
use serde_json::Value;
use sqlx::PgConnection;
use uuid::Uuid;

/// Judges contents for one ticket.
pub(super) struct Scales {
    /// The shop's book as it stands.
    pub(super) book: Book,
    judge: Judge,
    trail: Trail,
}

/// A stop that only a plan keeps from being found.
pub(super) struct OnlyPlanned {
    /// The rule's code.
    pub(super) code: String,
    /// What is wrong when it is true.
    pub(super) title: String,
}

/// What contents came to.
pub(super) struct Weighed {
    /// What the rules say.
    pub(super) judgement: Judgement,
    /// The digest of what a signature would cover.
    pub(super) covers: String,
    /// The facts with what the papers say laid over them.
    pub(super) facts: TicketFacts,
}

impl Scales {
    /// The scales for contents that belong to no ticket yet.
    pub(super) async fn new(conn: &mut PgConnection, shop: Uuid, judge: Judge) -> Result<Self, Failure> {
        Ok(Self { book: Book::load(conn, shop).await?, judge, trail: Trail::default() })
    }

    /// The scales for this ticket.
    pub(super) async fn of(
        conn: &mut PgConnection,
        shop: Uuid,
        judge: Judge,
        ticket: &Ticket,
    ) -> Result<Self, Failure> {
        let signed = signature::last_build(conn, shop, ticket.id).await?;
        let trail = Trail {
            versions: revision::covers(conn, shop, ticket.id).await?,
            signed: signed.map(|(version, cents)| (version, cents.map(Cents))),
            answer: ticket.build_answer.zip(ticket.build_covers.clone()),
        };
        Ok(Self { trail, ..Self::new(conn, shop, judge).await? })
    }

    /// What these contents come to as version `number`.
    pub(super) fn weigh(&self, contents: &Contents, number: i32, silenced: &[Silenced], at: Timestamp) -> Weighed {
        let bare = (self.judge)(contents.facts.job(), &self.book, silenced);
        let covers = covers(contents, &bare).to_string();
        let facts = self.trail.over(contents, number, &covers, at);
        Weighed { judgement: (self.judge)(facts.job(), &self.book, silenced), covers, facts }
    }

    /// The stops that are due by this stage and not found, but could not be ruled out if only what was seen on the unit
    /// counted. A plan promises a good reading; nothing irreversible is done on a promise.
    pub(super) fn only_planned(&self, revision: &Revision, stage: Stage) -> Vec<OnlyPlanned> {
        let facts = &revision.contents.facts;
        let unseen: Vec<FactId> = facts.to_be_seen().collect();
        if unseen.is_empty() {
            return Vec::new();
        }
        let mut seen = facts.job().clone();
        for fact in &unseen {
            // Every fact may be unknown.
            seen.slot_mut(*fact).read(&Value::Null, fact.declaration()).ok();
        }
        let open = (self.judge)(&seen, &self.book, &[]).undecided.into_iter();
        let open = open.filter(|open| stage.asks_for(&open.due));
        let open =
            open.filter(|open| unseen.iter().any(|fact| open.needs.iter().any(|path| path == fact.declaration().path)));
        open.filter_map(|open| {
            Some(OnlyPlanned { title: self.book.stop_named(&open.code)?.to_owned(), code: open.code })
        })
        .collect()
    }

    /// A stored revision as it stands by now: the papers laid over its facts, and what rests on them judged anew.
    pub(super) fn by_now(&self, mut revision: Revision) -> Revision {
        let covers = &revision.covers;
        revision.contents.facts = self.trail.over(&revision.contents, revision.number, covers, revision.made_at);
        let live = (self.judge)(revision.contents.facts.job(), &self.book, &revision.judgement.silenced);
        revision.judgement = revision.judgement.by_now(live);
        revision
    }
}

/// The revision as it stands by now.
pub(super) async fn by_now(scene: &mut Scene<'_>, ticket: &Ticket, revision: Revision) -> Result<Revision, Failure> {
    Ok(Scales::of(scene.conn, scene.shop, scene.judge, ticket).await?.by_now(revision))
}

/// Counts what stands open on a ticket anew, after the customer answered.
pub(super) async fn count_again(scene: &mut Scene<'_>, number: i64) -> Result<(), Failure> {
    let Some(ticket) = ticket::find(scene.conn, scene.shop, number).await? else { return Ok(()) };
    let Some(current) = revision::find(scene.conn, scene.shop, ticket.id, ticket.revision).await? else {
        return Ok(());
    };
    let current = by_now(scene, &ticket, current).await?;
    let counts = counts(&current.judgement, ticket.stage);
    Ok(ticket::set_counts(scene.conn, scene.shop, ticket.id, counts).await?)
}
