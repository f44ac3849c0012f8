//! Variants of a job: kept, withdrawn, made the job itself. What a customer chose of them is in `choose`.

use super::change::{current_revision, nothing_filled, open_ticket};
use super::form::{self, Field, one_line};
use super::weigh::Scales;
use super::write::Scene;
use super::{By, ChangeTicket, Command, Failure, Revised, Revision, Ticket};
use crate::job::{Kind, Sheet, fact_named};
use crate::plan::can_be_decided;
use crate::store;
use crate::store::variant::{self, Chosen, Kept};
use crate::ticket::{
    Action, Change, Contents, Edit, FactChange, Hand, Happening, Judgement, Problem, Source, Unmerged, changes, may,
    merge,
};
use jiff::Timestamp;
use serde::Serialize;
use sqlx::PgConnection;
use uuid::Uuid;

/// How many variants can stand side by side.
pub const MOST_VARIANTS: usize = 3;

const NAME: Field = Field { name: "name", label: "The variant's name", most: 60, needed: true };
/// More labour than any job takes.
const MOST_MINUTES: i32 = 60_000;

/// A variant as it stands.
#[derive(Clone, Debug)]
pub struct Variant {
    /// Which variant of the ticket, counted from 1.
    pub nth: i32,
    /// Which version of it.
    pub version: i32,
    /// What people call it.
    pub name: String,
    /// What would be changed, against the revision it was made from.
    pub edit: Edit,
    /// The revision it was made from.
    pub made_from: i32,
    /// The labour in minutes, when somebody said.
    pub minutes: Option<i32>,
    /// Whose name.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
    /// What it would come to now; why not, when it no longer fits.
    pub would: Result<Would, Unmerged>,
    /// Who chose it, newest first.
    pub chosen: Vec<Chosen>,
}

/// What a job would be.
#[derive(Clone, Debug)]
pub struct Would {
    /// What the revision would hold.
    pub contents: Contents,
    /// What the rules would say.
    pub judgement: Judgement,
    /// What would change, in words.
    pub changes: Vec<Change>,
}

/// The variants of a ticket that stand, each laid over the job as it is now.
pub(super) async fn variants(
    conn: &mut PgConnection,
    (shop, ticket): (Uuid, Uuid),
    current: &Revision,
    scales: &Scales,
) -> Result<Vec<Variant>, Failure> {
    let chosen = variant::chosen(conn, shop, ticket).await?;
    let mut variants = Vec::new();
    for kept in variant::latest(conn, shop, ticket).await?.into_iter().filter(|kept| !kept.withdrawn) {
        let would = would(conn, (shop, ticket), current, &kept, scales).await?;
        variants.push(Variant {
            chosen: chosen.iter().filter(|one| one.nth == kept.nth).cloned().collect(),
            nth: kept.nth,
            version: kept.version,
            name: kept.name,
            edit: kept.edit,
            made_from: kept.revision,
            minutes: kept.minutes,
            made_by: kept.made_by,
            at: kept.at,
            would,
        });
    }
    Ok(variants)
}

async fn would(
    conn: &mut PgConnection,
    (shop, ticket): (Uuid, Uuid),
    current: &Revision,
    kept: &Kept,
    scales: &Scales,
) -> Result<Result<Would, Unmerged>, Failure> {
    let base = store::revision::find(conn, shop, ticket, kept.revision).await?;
    let base = base.ok_or(Failure::NotFound("such version of this job"))?;
    let hand = Hand { by: kept.made_by.clone(), at: kept.at };
    let problems = found_out(&kept.edit);
    if !problems.is_empty() {
        return Ok(Err(Unmerged::Problems(problems)));
    }
    let edit = planned(&kept.edit, false);
    Ok(merge(&base.contents, &current.contents, &edit, &hand).map(|contents| Would {
        judgement: scales.weigh(&contents, current.number + 1, &current.judgement.silenced, kept.at).judgement,
        changes: changes(&current.contents, &contents),
        contents,
    }))
}

/// The edit as it is written: what was only planned says so, whoever typed it. What the customer chose to have, and
/// nothing that would have to be seen on the unit, is what they said.
fn planned(edit: &Edit, chosen_by_customer: bool) -> Edit {
    // A number that came with the choice nobody heard from them.
    let asked_for = |path: &str| {
        let said = fact_named(path).map(|fact| fact.declaration());
        said.is_some_and(|said| said.sheet == Sheet::Spec && !matches!(said.kind, Kind::Number(_)))
    };
    let source = |path: &str| match chosen_by_customer && asked_for(path) {
        true => Source::CustomerSaid,
        false => Source::Planned,
    };
    let fact = |change: &FactChange| FactChange { source: source(&change.path), ..change.clone() };
    Edit { facts: edit.facts.iter().map(fact).collect(), ..edit.clone() }
}

/// Facts of an edit that are found out on the unit: nobody can plan them.
fn found_out(edit: &Edit) -> Vec<Problem> {
    let found = |change: &&FactChange| fact_named(&change.path).is_some_and(|fact| !can_be_decided(fact));
    edit.facts.iter().filter(found).map(|change| Problem::new(&change.path, cannot_be_planned(&change.path))).collect()
}

/// Why this fact is nothing to try out.
pub fn cannot_be_planned(path: &str) -> String {
    let label = fact_named(path).map_or(path, |fact| fact.declaration().label);
    format!("{label}: this is found out on the unit or stands in the papers, so it cannot be planned here.")
}

/// Keeps a variant: a new one, or a new version of one that stands.
#[derive(Clone, Debug, Serialize)]
pub struct KeepVariant {
    /// The ticket.
    pub ticket: i64,
    /// Which variant gets a new version; none for a new variant.
    pub nth: Option<i32>,
    /// The revision the form showed.
    pub made_from: i32,
    /// What people call it.
    pub name: String,
    /// The labour in minutes, when somebody said.
    pub minutes: Option<i32>,
    /// What would be changed.
    pub edit: Edit,
}

impl Command for KeepVariant {
    type Answer = i32;
    const NAME: &'static str = "keep_variant";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<i32, Failure> {
        if self.edit.price.is_some() {
            scene.must(Action::ChangePrice)?;
        }
        nothing_filled(&self.edit)?;
        form::none(found_out(&self.edit))?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let mut problems = Vec::new();
        let name = one_line(NAME, &self.name, &mut problems);
        form::none(problems)?;
        if self.minutes.is_some_and(|minutes| !(0..=MOST_MINUTES).contains(&minutes)) {
            return Err(Failure::problem("hours", "The hours have to be 0 or more, and 1000 at most."));
        }
        let latest = variant::latest(scene.conn, scene.shop, ticket.id).await?;
        let others: Vec<&Kept> = latest.iter().filter(|kept| !kept.withdrawn && Some(kept.nth) != self.nth).collect();
        if self.nth.is_none() && others.len() >= MOST_VARIANTS {
            let names: Vec<_> = others.iter().map(|kept| kept.name.as_str()).collect();
            let names = names.join(", ");
            let message = format!("Three variants are kept already: {names}. Withdraw one, then keep this one.");
            return Err(Failure::problem("name", message));
        }
        if others.iter().any(|kept| kept.name.to_lowercase() == name.to_lowercase()) {
            return Err(Failure::problem(
                "name",
                format!("There is a variant called {name} already. Name it otherwise."),
            ));
        }
        let (nth, version) = match self.nth {
            None => (latest.iter().map(|kept| kept.nth).max().unwrap_or(0) + 1, 1),
            Some(nth) => (nth, standing(&latest, nth)?.version + 1),
        };
        let current = current_revision(scene, &ticket).await?;
        let base = store::revision::find(scene.conn, scene.shop, ticket.id, self.made_from).await?;
        let base = base.ok_or(Failure::NotFound("such version of this job"))?;
        // It has to fit the job as it stands now; from then on it counts as made from that.
        let mut edit = planned(&self.edit, false);
        let merged = merge(&base.contents, &current.contents, &edit, &scene.hand())?;
        if changes(&current.contents, &merged).is_empty() {
            return Err(Failure::problem(
                "name",
                "Nothing is different from the job as it stands. Change something first.",
            ));
        }
        let names_prices = may(scene.caller()?.role, Action::ChangePrice);
        if let Some(nth) = self.nth.filter(|_| !names_prices) {
            // Whoever may not touch the price leaves it as it was kept.
            edit.price.clone_from(&standing(&latest, nth)?.edit.price);
        }
        let kept =
            row(scene, Kept { nth, version, name: name.clone(), edit, minutes: self.minutes, ..blank(&ticket) })?;
        variant::insert(scene.conn, scene.shop, ticket.id, &kept).await?;
        scene.happened(ticket.id, Happening::VariantKept { name, version }).await?;
        Ok(nth)
    }
}

/// No longer offers a variant.
#[derive(Clone, Debug, Serialize)]
pub struct WithdrawVariant {
    /// The ticket.
    pub ticket: i64,
    /// Which variant.
    pub nth: i32,
}

impl Command for WithdrawVariant {
    type Answer = ();
    const NAME: &'static str = "withdraw_variant";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        let latest = variant::latest(scene.conn, scene.shop, ticket.id).await?;
        let kept = standing(&latest, self.nth)?;
        withdraw(scene, &ticket, kept).await?;
        scene.happened(ticket.id, Happening::VariantWithdrawn { name: kept.name.clone() }).await
    }
}

/// Makes a variant the job itself: a new revision, which then has to be signed.
#[derive(Clone, Debug, Serialize)]
pub struct ApplyVariant {
    /// The ticket.
    pub ticket: i64,
    /// Which variant.
    pub nth: i32,
    /// The version that was seen.
    pub version: i32,
    /// The price that was shown with it, in words.
    pub shown_total: String,
}

impl Command for ApplyVariant {
    type Answer = Revised;
    const NAME: &'static str = "apply_variant";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        let ticket = open_ticket(scene, self.ticket).await?;
        let latest = variant::latest(scene.conn, scene.shop, ticket.id).await?;
        let kept = standing(&latest, self.nth)?;
        if kept.version != self.version {
            let message = format!("The variant {} was changed meanwhile. Read it again, then apply it.", kept.name);
            return Err(Failure::problem("variants", message));
        }
        form::none(found_out(&kept.edit))?;
        let current = current_revision(scene, &ticket).await?;
        let scales = Scales::of(scene.conn, scene.shop, scene.judge, &ticket).await?;
        if let Ok(would) = would(scene.conn, (scene.shop, ticket.id), &current, kept, &scales).await? {
            let total = would.contents.price().cloned().unwrap_or_default().total_in_words();
            if total != self.shown_total {
                let message = format!(
                    "The price of {} was {} on the page and would be {total} by now, so nothing was changed. Read it \
                     again, then apply it.",
                    kept.name, self.shown_total
                );
                return Err(Failure::problem("variants", message));
            }
        }
        let chosen = variant::chosen(scene.conn, scene.shop, ticket.id).await?;
        let by_customer = chosen.iter().any(|one| (one.nth, one.version) == (kept.nth, kept.version));
        let edit = planned(&kept.edit, by_customer);
        let change = ChangeTicket { ticket: self.ticket, made_from: kept.revision, edit };
        let revised = change.carry_out(scene).await?;
        withdraw(scene, &ticket, kept).await?;
        let applied = Happening::VariantApplied { name: kept.name.clone(), revision: revised.revision };
        scene.happened(ticket.id, applied).await?;
        Ok(revised)
    }
}

/// The variant of this number, if it is still offered.
fn standing(latest: &[Kept], nth: i32) -> Result<&Kept, Failure> {
    let kept = latest.iter().find(|kept| kept.nth == nth).ok_or(Failure::NotFound("such variant"))?;
    if kept.withdrawn {
        return Err(Failure::problem("variants", format!("The variant {} is no longer offered.", kept.name)));
    }
    Ok(kept)
}

async fn withdraw(scene: &mut Scene<'_>, ticket: &Ticket, kept: &Kept) -> Result<(), Failure> {
    let gone = Kept { version: kept.version + 1, withdrawn: true, ..kept.clone() };
    let gone = row(scene, gone)?;
    Ok(variant::insert(scene.conn, scene.shop, ticket.id, &gone).await?)
}

/// A version in the hand of whoever writes now.
fn row(scene: &Scene<'_>, kept: Kept) -> Result<Kept, Failure> {
    let caller = scene.caller()?;
    Ok(Kept { staff_id: caller.staff, made_by: caller.name.clone(), at: scene.now, ..kept })
}

fn blank(ticket: &Ticket) -> Kept {
    Kept {
        nth: 0,
        version: 0,
        revision: ticket.revision,
        name: String::new(),
        edit: Edit::default(),
        minutes: None,
        withdrawn: false,
        staff_id: Uuid::nil(),
        made_by: String::new(),
        at: Timestamp::UNIX_EPOCH,
    }
}
