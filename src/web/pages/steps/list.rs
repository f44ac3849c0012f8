//! The list of a job's steps, phase by phase.

use super::state::{Done, Verdict, failed, locked, warnings};
use crate::plan::steps::{Phase, Step, steps};
use crate::service::TicketPage;
use crate::ticket::{Act, done};
use crate::web::findings::{FactLink, From, counted, fact_link};
use crate::web::frame::Frame;
use crate::web::pages::ticket::{Head, Now};
use askama::Template;
use uuid::Uuid;

/// The page of all steps.
#[derive(Template)]
#[template(path = "pages/steps.html")]
pub struct ListPage {
    frame: Frame,
    head: Head,
    /// Is the job still open to changes?
    open: bool,
    /// How far the work is, in words.
    summary: String,
    /// What was just done, in a sentence; empty when nothing was.
    did: String,
    /// The step that one tap takes back: code and place.
    undo: Option<(&'static str, i32)>,
    /// What is wrong with the order of the work.
    order: Vec<Verdict>,
    /// The step to do next: the first open one of the phase the job is in, or of a later one.
    next: Option<(&'static str, &'static str)>,
    /// What earlier phases have left open, in words; empty when nothing is.
    left: String,
    /// The first of it, where that leads.
    left_at: &'static str,
    phases: Vec<PhaseView>,
    /// Work that can be added by hand: code and name.
    more: Vec<(&'static str, &'static str)>,
}

/// One phase.
struct PhaseView {
    label: &'static str,
    id: &'static str,
    /// Done of all, in words.
    count: String,
    /// What is in sight. Of a phase the job has left without a word in its log, the hold points alone.
    items: Vec<Item>,
    /// The rest of such a phase, folded away.
    unlogged: Vec<Item>,
    /// Has the job left it?
    past: bool,
    /// Steps that may be part of the job.
    open: Vec<OpenStep>,
}

/// A step of the job.
struct Item {
    step: &'static Step,
    done: Option<Done>,
    /// It was added by hand.
    added: bool,
    /// It cannot be undone.
    for_good: bool,
    /// Why it may not be done yet; empty when it may.
    locked: String,
    /// What of it has to be put right before it can be done.
    failed: Vec<Verdict>,
    /// What to do first, or why it is too late; empty for most.
    warning: String,
    /// Ticked with one tap.
    one_tap: bool,
}

/// A step of which it is not known whether the job needs it.
struct OpenStep {
    step: &'static Step,
    waits: Vec<FactLink>,
}

/// How far the work is: `12 of 54 steps done`.
pub fn summary(page: &TicketPage) -> String {
    let (done, all) = progress(page, |_| true);
    format!("{done} of {all} steps done")
}

fn progress(page: &TicketPage, of: impl Fn(&Step) -> bool) -> (usize, usize) {
    let needed: Vec<_> = steps().filter(|step| of(step) && is_needed(page, step)).collect();
    (needed.iter().filter(|step| done(&page.log, step.code).is_some()).count(), needed.len())
}

/// Is it part of the job, or was it done all the same?
fn is_needed(page: &TicketPage, step: &Step) -> bool {
    let contents = &page.revision.contents;
    step.needed(contents.facts.job(), &contents.added).value() == Some(&true) || done(&page.log, step.code).is_some()
}

impl ListPage {
    /// The page, with what was just done.
    pub fn new(frame: Frame, page: &TicketPage, now: &Now, did: &str) -> Self {
        let phases: Vec<_> = Phase::ALL.into_iter().map(|phase| phase_view(phase, page, now)).collect();
        let items = || phases.iter().flat_map(|phase| &phase.items);
        let is_open = |item: &&Item| item.done.is_none();
        let ahead = phases.iter().filter(|phase| !phase.past).flat_map(|phase| &phase.items);
        let behind = || phases.iter().filter(|phase| phase.past);
        let left = || behind().flat_map(|phase| phase.items.iter().chain(&phase.unlogged)).filter(is_open);
        let holds = left().filter(|item| item.step.hold_point).count();
        let just = items().find(|item| item.step.code == did);
        let undo = just.and_then(|item| Some((item.step.code, item.done.as_ref().filter(|done| done.fresh)?.place)));
        let order = page.revision.judgement.findings.iter();
        let contents = &page.revision.contents;
        let job = contents.facts.job();
        let can_be_added = |step: &&Step| step.needed(job, &contents.added).value() != Some(&true);
        let only_hand = |step: &&Step| step.only_by_hand && !step.is_added(&contents.added);
        Self {
            head: Head::new(page),
            open: page.ticket.stage.open(),
            summary: summary(page),
            did: said(page, did),
            undo,
            order: order
                .filter(|found| found.facts.iter().any(|fact| fact.starts_with("order.")))
                .map(Verdict::of)
                .collect(),
            next: ahead.into_iter().find(is_open).map(|item| (item.step.code, item.step.title)),
            left: match (left().count(), holds) {
                (0, _) => String::new(),
                (all, 0) => format!("{} of earlier phases not logged", counted(all, "step")),
                (all, holds) => {
                    format!(
                        "{} of earlier phases not logged, {} among them",
                        counted(all, "step"),
                        counted(holds, "hold point")
                    )
                }
            },
            left_at: behind()
                .find(|phase| phase.items.iter().chain(&phase.unlogged).any(|item| is_open(&item)))
                .map_or("", |phase| phase.id),
            more: steps()
                .filter(|step| can_be_added(step) || only_hand(step))
                .filter_map(|step| Some((step.code, step.added_as?)))
                .collect(),
            phases,
            frame,
        }
    }

    fn once(&self) -> Uuid {
        Uuid::now_v7()
    }
}

fn said(page: &TicketPage, did: &str) -> String {
    let last = page.log.iter().rev().find(|entry| entry.step == did);
    let Some(step) = steps().find(|step| step.code == did) else { return String::new() };
    match last.map(|entry| (entry.act, entry.place)) {
        Some((Act::Done, place)) => format!("Done: {}, place {place} in the log.", step.title),
        Some((Act::Undone, _)) => format!("Taken back: {}. What was read stays on its sheet.", step.title),
        None if step.is_added(&page.revision.contents.added) => {
            format!("Added: {}.", step.added_as.unwrap_or(step.title))
        }
        None => format!("Taken off: {}.", step.added_as.unwrap_or(step.title)),
    }
}

fn phase_view(phase: Phase, page: &TicketPage, now: &Now) -> PhaseView {
    let contents = &page.revision.contents;
    let job = contents.facts.job();
    let of_phase = || steps().filter(move |step| step.phase == phase);
    let open = of_phase().filter(|step| !is_needed(page, step)).filter_map(|step| {
        let needed = step.needed(job, &contents.added);
        let waits = needed.waits_for();
        let link = |path| fact_link(path, &contents.facts, From::Ticket(page.ticket.number));
        let waits: Vec<_> = waits.iter().map(|fact| link(fact.declaration().path)).collect();
        (!waits.is_empty() && !step.only_by_hand).then_some(OpenStep { step, waits })
    });
    let (done, all) = progress(page, |step| step.phase == phase);
    let past = page.ticket.stage.phase().is_some_and(|current| phase < current);
    let items = of_phase().filter(|step| is_needed(page, step)).map(|step| item(step, page, now));
    let (items, unlogged) = items.partition(|item| !past || done > 0 || item.step.hold_point);
    PhaseView {
        label: phase.label(),
        id: phase.letters(),
        count: format!("{done} of {all} done"),
        items,
        unlogged,
        past,
        open: open.collect(),
    }
}

fn item(step: &'static Step, page: &TicketPage, now: &Now) -> Item {
    let added = &page.revision.contents.added;
    let done = Done::of(page, step, now);
    let warning = match (&done, warnings(page, step).first()) {
        (None, Some(warning)) => match warning.first {
            Some(first) => format!("First: {} ({}).", first.title, first.code),
            None => format!("{} {}", warning.rule.shop, warning.rule.fix),
        },
        _ => String::new(),
    };
    let for_good = step.is_for_good(added);
    let locked = locked(page, step);
    Item {
        step,
        done,
        added: step.is_added(added),
        for_good,
        one_tap: !step.hold_point && !for_good && warning.is_empty() && locked.is_empty(),
        locked,
        failed: failed(page, step),
        warning,
    }
}
