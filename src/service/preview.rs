//! What an edit would come to, before anybody saves it. Nothing is written.

use super::change::nothing_filled;
use super::weigh::{Scales, Weighed};
use super::{Caller, Failure, Revision, Service, Ticket};
use crate::store::{revision, signature, ticket};
use crate::ticket::{
    Action, Answer, Approval, Change, Contents, Edit, Hand, Judgement, Purpose, SignatureRecord, TickStanding,
    build_ticks, changes, merge, tick_standing,
};

/// A ticket as it would stand with an edit.
#[derive(Clone, Debug)]
pub struct Preview {
    /// The ticket as it stands.
    pub ticket: Ticket,
    /// The revision the form was made from.
    pub base: Revision,
    /// What the contents would be.
    pub contents: Contents,
    /// What would change, in words.
    pub changes: Vec<Change>,
    /// What the rules say now.
    pub before: Judgement,
    /// What they would say.
    pub after: Judgement,
    /// The customer's signature that would no longer hold, when it holds now.
    pub voided: Option<Voided>,
}

/// A signature that an edit would end.
#[derive(Clone, Debug)]
pub struct Voided {
    /// The revision that was signed.
    pub revision: i32,
    /// Who signed.
    pub name: String,
    /// Each tick: the same, changed, new, gone.
    pub ticks: Vec<TickStanding>,
}

impl Service {
    /// What saving this edit would do now, merged with what others saved since the form was made.
    ///
    /// # Errors
    /// As saving it would: [`Failure::Problems`], [`Failure::Conflict`], [`Failure::NotFound`].
    pub async fn preview(&self, caller: &Caller, number: i64, made_from: i32, edit: &Edit) -> Result<Preview, Failure> {
        self.weigh(caller, number, made_from, edit, true).await
    }

    /// What the rules say of a form that is still being filled in. Others' changes since are left aside: they are
    /// met when it is saved.
    ///
    /// # Errors
    /// [`Failure::Problems`] for what cannot be; [`Failure::NotFound`].
    pub async fn look(&self, caller: &Caller, number: i64, made_from: i32, edit: &Edit) -> Result<Preview, Failure> {
        self.weigh(caller, number, made_from, edit, false).await
    }

    async fn weigh(
        &self,
        caller: &Caller,
        number: i64,
        made_from: i32,
        edit: &Edit,
        with_others: bool,
    ) -> Result<Preview, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        nothing_filled(edit)?;
        let (shop, judge) = (caller.shop, self.judge);
        let (ticket, base, current, signed, scales) = self
            .read(|conn| {
                Box::pin(async move {
                    let ticket = ticket::find(conn, shop, number).await?.ok_or(Failure::NotFound("such ticket"))?;
                    let missing = || Failure::NotFound("such version of this job");
                    let base = revision::find(conn, shop, ticket.id, made_from).await?.ok_or_else(missing)?;
                    let current = revision::find(conn, shop, ticket.id, ticket.revision).await?.ok_or_else(missing)?;
                    let kept = signature::of_ticket(conn, shop, ticket.id).await?;
                    let build =
                        |kept: &signature::Kept| kept.purpose == Purpose::Build && kept.answer == Answer::Signed;
                    let signed = kept.into_iter().find(build);
                    let scales = Scales::of(conn, shop, judge, &ticket).await?;
                    Ok((ticket, base, current, signed, scales))
                })
            })
            .await?;
        let hand = Hand { by: caller.name.clone(), at: self.now() };
        let stands = if with_others { &current } else { &base };
        let contents = merge(&base.contents, &stands.contents, edit, &hand)?;
        let silenced = &current.judgement.silenced;
        let Weighed { judgement: after, covers, facts } =
            scales.weigh(&contents, ticket.revision + 1, silenced, hand.at);
        let latest = ticket.build_answer.zip(ticket.build_covers.as_deref());
        let holds = Approval::of_build(latest, &ticket.covers) == Approval::Signed;
        let ends = covers != ticket.covers;
        let voided = match signed.filter(|_| holds && ends) {
            None => None,
            Some(signed) => {
                let record: SignatureRecord =
                    serde_json::from_str(&signed.record).map_err(|error| Failure::Broken(Box::new(error)))?;
                let ticks = tick_standing(&record.paper.ticks, &build_ticks(&contents, &after));
                Some(Voided { revision: signed.revision, name: signed.name, ticks })
            }
        };
        Ok(Preview {
            changes: changes(&stands.contents, &contents),
            before: scales.by_now(stands.clone()).judgement,
            ticket,
            base: scales.by_now(base),
            contents: Contents { facts, ..contents },
            after,
            voided,
        })
    }
}
