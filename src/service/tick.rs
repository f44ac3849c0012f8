//! Ticking the steps of the work, and adding work to a job by hand.

use super::change::{current_revision, fill_order, keep, open_ticket, revision};
use super::form::{self, Field, one_line, several_lines};
use super::move_stage::{OpenStops, standing};
use super::weigh::Scales;
use super::write::Scene;
use super::{By, Command, Failure, Revised, Revision, Ticket};
use crate::job::{Kind, read_text};
use crate::plan::steps::{OutOfTurn, Step, is_reading, out_of_turn, step_named, steps};
use crate::store::{signature, step as store};
use crate::ticket::{
    Act, Action, Change, Contents, Edit, FactChange, Happening, Logged, Problem, Source, UNDO, changes, done, in_words,
    merge, next_place, not_passed, unsigned,
};
use serde::{Deserialize, Serialize};
use serde_json::Map;
use std::collections::BTreeMap;

const INITIALS: Field = Field { name: "initials", label: "The initials", most: 5, needed: false };
const REASON: Field = Field { name: "reason", label: "The reason", most: 1000, needed: false };

/// A step done, or taken back.
#[derive(Clone, Debug, Serialize)]
pub struct TickStep {
    /// The ticket.
    pub ticket: i64,
    /// The step's code.
    pub step: String,
    /// Done or taken back.
    pub act: Act,
    /// The place at which the page showed it done: what is taken back or done again. None when it showed it open.
    pub over: Option<i32>,
    /// The initials put to it.
    pub initials: String,
    /// What was read, as typed, by the fact's path.
    pub typed: BTreeMap<String, String>,
    /// Why it is taken back or done again.
    pub reason: String,
    /// Was the warning about the order of the work read?
    pub knowing: bool,
}

/// What a tick came to.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Ticked {
    /// The step's place in the log; none when it is not done.
    pub place: Option<i32>,
    /// Did this tick change anything? A second tap on the same step does not.
    pub fresh: bool,
    /// Was something read at a hold point that must be put right first? The reading is kept, the step is not done.
    #[serde(default)]
    pub failed: bool,
}

impl Command for TickStep {
    type Answer = Ticked;
    const NAME: &'static str = "tick_step";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Ticked, Failure> {
        let step = step_named(&self.step).ok_or(Failure::NotFound("such step"))?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let mut log = store::log(scene.conn, scene.shop, ticket.id).await?;
        let stands = done(&log, step.code);
        let place = stands.map(|entry| entry.place);
        if place != self.over || (self.act == Act::Undone && place.is_none()) {
            return Ok(Ticked { place, fresh: false, failed: false });
        }
        let current = current_revision(scene, &ticket).await?;
        let mut entry = self.entry(scene, step, &log)?;
        let mut contents = current.contents.clone();
        match self.act {
            Act::Undone => self.may_take_back(scene, stands)?,
            Act::Done => contents = self.may_do(scene, step, &ticket, &current, &mut entry).await?,
        }
        let failed = self.act == Act::Done && fails(scene, step, &ticket, &current, &contents).await?;
        if failed && place.is_none() {
            let (revision, changes) = revised(scene, &ticket, &current, contents).await?;
            if let Some(revision) = revision {
                scene.happened(ticket.id, Happening::Revised { revision, changes }).await?;
            }
            return Ok(Ticked { place, fresh: true, failed });
        }
        if failed {
            entry = not_done_any_more(entry);
        }
        store::insert(scene.conn, scene.shop, ticket.id, scene.caller()?.staff, &entry).await?;
        log.push(entry.clone());
        fill_order(&mut contents, &log, &scene.hand());
        let (revision, changes) = revised(scene, &ticket, &current, contents).await?;
        let Logged { act, place, initials, reason, .. } = entry;
        let happened = Happening::Stepped { step: entry.step, act, place, initials, reason, revision, changes };
        scene.happened(ticket.id, happened).await?;
        Ok(Ticked { place: Some(place).filter(|_| act == Act::Done), fresh: true, failed })
    }
}

impl TickStep {
    fn entry(&self, scene: &Scene<'_>, step: &Step, log: &[Logged]) -> Result<Logged, Failure> {
        let mut problems = Vec::new();
        let initials = one_line(INITIALS, &self.initials, &mut problems);
        let reason = several_lines(REASON, &self.reason, &mut problems);
        if self.act == Act::Done && step.hold_point && initials.is_empty() {
            problems.push(Problem::new("initials", "The work stops here until somebody puts initials to it."));
        }
        form::none(problems)?;
        Ok(Logged {
            place: next_place(log),
            step: step.code.to_owned(),
            act: self.act,
            initials,
            typed: Map::new(),
            reason,
            fills: None,
            by: scene.caller()?.name.clone(),
            at: scene.now,
        })
    }

    fn may_take_back(&self, scene: &Scene<'_>, stands: Option<&Logged>) -> Result<(), Failure> {
        let fresh = stands.is_some_and(|entry| scene.now.duration_since(entry.at) <= UNDO);
        if fresh || !self.reason.trim().is_empty() {
            return Ok(());
        }
        let message = "Write down why this step counts as not done; it stays on the ticket. A slip can be taken back \
                       without a word only in the first half minute.";
        Err(Failure::problem("reason", message))
    }

    /// The contents with what was read while doing it, when it may be done now.
    async fn may_do(
        &self,
        scene: &mut Scene<'_>,
        step: &'static Step,
        ticket: &Ticket,
        current: &Revision,
        entry: &mut Logged,
    ) -> Result<Contents, Failure> {
        let added = &current.contents.added;
        let scales = Scales::of(scene.conn, scene.shop, scene.judge, ticket).await?;
        let by_now = scales.by_now(current.clone());
        let job = by_now.contents.facts.job();
        belongs(step, &by_now)?;
        let passed = signature::passed(scene.conn, scene.shop, ticket.id).await?;
        let standing = standing(ticket, &OpenStops::of(ticket, &by_now, &scales), &passed);
        if let Some(why) = unsigned(step, added, &standing) {
            return Err(Failure::problem("signature", why));
        }
        if step.is_for_good(added) {
            named(step, &by_now.contents)?;
        }
        let (edit, mut problems) = self.read(step, entry);
        let place = u32::try_from(entry.place).unwrap_or_default();
        if !self.knowing {
            let warnings = out_of_turn(job, added, step, place);
            problems.extend(warnings.iter().map(|warning| Problem::new("knowing", sentence(step, warning))));
        }
        form::none(problems)?;
        entry.fills = step.fills(added).map(|fact| fact.declaration().path.to_owned());
        Ok(merge(&current.contents, &current.contents, &edit, &scene.hand())?)
    }

    /// What was read, and what cannot be.
    fn read(&self, step: &Step, entry: &mut Logged) -> (Edit, Vec<Problem>) {
        let (mut edit, mut problems) = (Edit::default(), Vec::new());
        for fact in step.facts_read() {
            let declaration = fact.declaration();
            let text = self.typed.get(declaration.path).map_or("", |text| text.trim());
            let source = match declaration.kind {
                Kind::Number(_) => Source::Measured,
                _ => Source::Looked,
            };
            match read_text(text, declaration) {
                Ok(None) if step.hold_point => {
                    let message = format!("{}: the work stops here until this is written down.", declaration.label);
                    problems.push(Problem::new(declaration.path, message));
                }
                Ok(None) => {}
                Ok(Some(value)) if step.hold_point && !is_reading(&value) => {
                    let message = format!(
                        "{}: \u{201c}{}\u{201d} is no reading, and the work stops here until there is one. Try it now and \
                         write down what you find.",
                        declaration.label,
                        in_words(declaration, &value)
                    );
                    problems.push(Problem::new(declaration.path, message));
                }
                Ok(value) => {
                    entry.typed.insert(declaration.path.to_owned(), text.into());
                    edit.facts.push(FactChange { path: declaration.path.to_owned(), value, source });
                }
                Err(error) => problems.push(Problem::new(declaration.path, error.message)),
            }
        }
        (edit, problems)
    }
}

/// Would what was read at a hold point have to be put right first?
async fn fails(
    scene: &mut Scene<'_>,
    step: &Step,
    ticket: &Ticket,
    current: &Revision,
    contents: &Contents,
) -> Result<bool, Failure> {
    if !step.hold_point || step.reads.is_empty() {
        return Ok(false);
    }
    let scales = Scales::of(scene.conn, scene.shop, scene.judge, ticket).await?;
    let weighed = scales.weigh(contents, ticket.revision + 1, &current.judgement.silenced, scene.now);
    Ok(not_passed(step, &weighed.judgement).next().is_some())
}

/// The entry of a step that was done, was tried again and did not pass: it is taken back.
fn not_done_any_more(entry: Logged) -> Logged {
    let why = if entry.reason.is_empty() { "Tried again, and it did not pass.".to_owned() } else { entry.reason };
    Logged { act: Act::Undone, fills: None, reason: why, ..entry }
}

/// Is the step part of the job?
fn belongs(step: &Step, revision: &Revision) -> Result<(), Failure> {
    let needed = step.needed(revision.contents.facts.job(), &revision.contents.added);
    let message = match needed.value() {
        Some(true) => return Ok(()),
        Some(false) => format!(
            "{} is no part of this job, as far as its facts say. Work can be added by hand at the end of the list of steps.",
            step.title
        ),
        None => {
            let waits: Vec<_> = needed.waits_for().iter().map(|fact| fact.declaration().label).collect();
            format!("It is not known yet whether this job needs the step. Find out first: {}.", waits.join("; "))
        }
    };
    Err(Failure::problem("step", message))
}

/// Does the paper that the customer signed say that this will be done?
fn named(step: &Step, contents: &Contents) -> Result<(), Failure> {
    if contents.for_good().iter().any(|line| line.step == Some(step.code)) {
        return Ok(());
    }
    let message = format!(
        "This cannot be undone, and what the customer signed does not name it: as far as the facts go, nothing is left \
         to be changed here, or it is not known yet. Look at the unit and write down what you see, or add {} to the job \
         by hand; then the customer signs for it.",
        step.title
    );
    Err(Failure::problem("signature", message))
}

/// What a warning says, and what to do instead.
pub(super) fn sentence(step: &Step, warning: &OutOfTurn) -> String {
    let OutOfTurn { rule, first } = warning;
    match first {
        Some(first) => format!("Do this first: {} ({}). Otherwise: {}", first.title, first.code, rule.shop),
        None => format!("It is too late for {} now. {} {}", step.title, rule.shop, rule.fix),
    }
}

/// A new revision when the contents changed.
async fn revised(
    scene: &mut Scene<'_>,
    ticket: &Ticket,
    current: &Revision,
    contents: Contents,
) -> Result<(Option<i32>, Vec<Change>), Failure> {
    let changes = changes(&current.contents, &contents);
    if changes.is_empty() {
        return Ok((None, changes));
    }
    let next = revision(scene, Some(ticket), contents, &current.judgement.silenced).await?;
    keep(scene, ticket, &next).await?;
    Ok((Some(next.number), changes))
}

/// Work added to a job by hand, or taken off it again.
#[derive(Clone, Debug, Serialize)]
pub struct AddWork {
    /// The ticket.
    pub ticket: i64,
    /// The step's code.
    pub step: String,
    /// Added, or taken off?
    pub add: bool,
}

impl Command for AddWork {
    type Answer = Revised;
    const NAME: &'static str = "add_work";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Revised, Failure> {
        let step = step_named(&self.step).filter(|step| step.added_as.is_some());
        let step = step.ok_or(Failure::NotFound("such work"))?;
        let ticket = open_ticket(scene, self.ticket).await?;
        let log = store::log(scene.conn, scene.shop, ticket.id).await?;
        if !self.add && done(&log, step.code).is_some() {
            let message =
                format!("{} is done, so it cannot be taken off the job. Take the step back first.", step.title);
            return Err(Failure::problem("step", message));
        }
        // It was ticked as a trial; what is added now has to be signed for first and ticked after.
        if self.add && done(&log, step.code).is_some_and(|entry| entry.fills.is_none()) {
            let message = format!(
                "{} is ticked already, from before this work was added. Take that tick back first: what cannot be undone \
                 is ticked after the customer has signed for it.",
                step.title
            );
            return Err(Failure::problem("step", message));
        }
        let current = current_revision(scene, &ticket).await?;
        let mut contents = current.contents.clone();
        let is_added =
            |one: &&Step| if one.code == step.code { self.add } else { one.is_added(&current.contents.added) };
        contents.added = steps().filter(is_added).map(|step| step.code.to_owned()).collect();
        fill_order(&mut contents, &log, &scene.hand());
        let (number, changes) = revised(scene, &ticket, &current, contents).await?;
        if let Some(revision) = number {
            scene.happened(ticket.id, Happening::Revised { revision, changes: changes.clone() }).await?;
        }
        Ok(Revised { revision: number.unwrap_or(ticket.revision), changes })
    }
}
