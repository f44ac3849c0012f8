//! What the ticket's page shows, built from what the service tells.

use super::TableTakenView;
use super::price::{self, PriceView};
use super::ruling::{AsideLine, aside_lines, book_since, findings};
use super::safety::reminders;
use super::stage::StageView;
use crate::service::{Caller, CustomerLink, LinkState, Receipt, TicketPage};
use crate::ticket::{Action, Answer, Approval, Happening, Purpose, Topic, WaitsFor, may};
use crate::web::facts::{SheetCard, sheet_cards};
use crate::web::findings::{Findings, wanted_facts};
use crate::web::moment::{day, moment, today, until};
use crate::web::pages::history::{Entry, entry};
use jiff::Timestamp;
use jiff::tz::TimeZone;

/// Which ticket a page belongs to: the head of every page about one.
pub struct Head {
    /// The number people use.
    pub number: i64,
    /// Whose unit it is.
    pub customer: String,
    /// The customer's telephone number.
    pub phone: String,
    /// What it came in, in plain words.
    pub vehicle: String,
    /// Its number plate; empty when there is none.
    pub plate: String,
}

impl Head {
    /// The head of this ticket's pages.
    pub fn new(page: &TicketPage) -> Self {
        Self {
            number: page.ticket.number,
            customer: page.customer.name.clone(),
            phone: page.customer.phone.clone(),
            vehicle: page.vehicle.words.clone(),
            plate: page.vehicle.plate.clone(),
        }
    }
}

/// Everything on the ticket's page.
pub struct TicketView {
    /// Which ticket.
    pub head: Head,
    /// The current revision's number.
    pub revision: i32,
    /// When it was made and by whom.
    pub revised: String,
    /// When the ticket was opened.
    pub opened: String,
    /// The number of the job it comes back from.
    pub comeback_of: Option<i64>,
    /// The same vehicle's other jobs.
    pub same_vehicle: Vec<i64>,
    /// What was asked for, in words: heading and text.
    pub words: Vec<(&'static str, String)>,
    /// Where the job stands and where it can go.
    pub stage: StageView,
    /// What can hurt somebody at this stage.
    pub safety: &'static [&'static str],
    /// Who can hold the next move; the one that does is marked.
    pub waits: Vec<WaitChoice>,
    /// The code of who holds the next move.
    pub waits_for: &'static str,
    /// What is promised.
    pub promise: PromiseView,
    /// What the rule book says.
    pub findings: Findings,
    /// What the shop has set aside for this job.
    pub aside: Vec<AsideLine>,
    /// What of the shop's book stands otherwise now than when the job was judged, in words; nothing once it is closed.
    pub book_since: Vec<String>,
    /// How many questions the checks due at this stage wait for.
    pub ask_next: usize,
    /// What is known.
    pub sheets: Vec<SheetCard>,
    /// The class table the class facts were taken from.
    pub class_table: Option<TableTakenView>,
    /// Is it raced, so that a class table matters?
    pub raced: bool,
    /// What it costs.
    pub price: PriceView,
    /// How the customer's answers stand: one sentence for each paper.
    pub approvals: Vec<ApprovalLine>,
    /// What the customer answered.
    pub signatures: Vec<SignatureLine>,
    /// The gates an owner passed.
    pub overrides: Vec<OverrideLine>,
    /// The customer's links.
    pub links: Vec<LinkLine>,
    /// What was noted.
    pub notes: Vec<Entry>,
    /// The latest of what happened.
    pub latest: Vec<Entry>,
    /// What the person may do.
    pub may: May,
}

/// What the person who looks may do here.
pub struct May {
    /// Is the job still open to changes?
    pub open: bool,
    /// Change the promise.
    pub promise: bool,
    /// Change the price.
    pub price: bool,
    /// Make and take back links.
    pub links: bool,
    /// Take the customer's answer at the counter.
    pub counter: bool,
    /// Correct the customer's and the vehicle's particulars.
    pub contact: bool,
    /// Bring back what is set aside.
    pub bring_back: bool,
}

/// One who can hold the next move.
pub struct WaitChoice {
    /// As forms send it.
    pub code: &'static str,
    /// As people read it.
    pub label: &'static str,
    /// Is it the one?
    pub chosen: bool,
}

/// What is promised.
pub struct PromiseView {
    /// The day as a form has it; empty without one.
    pub value: String,
    /// In words: `Fri 4 Dec 2026, in 9 days`, or that nothing is promised.
    pub words: String,
    /// Is it overdue?
    pub overdue: bool,
}

/// How one paper stands with the customer.
pub struct ApprovalLine {
    /// Which paper.
    pub paper: &'static str,
    /// As addresses spell it.
    pub purpose: &'static str,
    /// `signed`, `missing`, `void` or `declined`.
    pub code: &'static str,
    /// In words.
    pub words: &'static str,
}

/// One answer of the customer.
pub struct SignatureLine {
    /// Which paper and version, what was answered.
    pub what: String,
    /// By whom, when, where.
    pub who: String,
    /// Why it was declined.
    pub why: String,
    /// The receipt's reference.
    pub reference: String,
    /// Does it still hold?
    pub standing: &'static str,
    /// What was ticked, in the words that were shown.
    pub ticks: Vec<String>,
    /// SHA-256 over the record.
    pub digest: String,
}

/// One gate an owner passed.
pub struct OverrideLine {
    /// The gate.
    pub gate: &'static str,
    /// Why.
    pub reason: String,
    /// Who, when, on which version.
    pub who: String,
    /// Does it still hold?
    pub holds: bool,
}

/// One link of the customer.
pub struct LinkLine {
    /// Its key.
    pub id: String,
    /// What it is for and which version it shows.
    pub what: String,
    /// Who made it, when, until when it opens.
    pub made: String,
    /// What it still does, in words.
    pub state: String,
    /// Can it be taken back?
    pub open: bool,
}

/// The time it is and how the shop writes it.
#[derive(Clone)]
pub struct Now {
    /// The moment.
    pub at: Timestamp,
    /// The shop's zone.
    pub zone: TimeZone,
}

/// How many happenings the ticket's own page shows.
const LATEST: usize = 6;

impl TicketView {
    /// The page of this ticket for this person.
    pub fn new(page: &TicketPage, caller: &Caller, now: &Now) -> Self {
        let (ticket, zone) = (&page.ticket, &now.zone);
        let can = |action| may(caller.role, action);
        let contents = &page.revision.contents;
        let judgement = &page.revision.judgement;
        let entries = |of: &dyn Fn(&Happening) -> bool, most: usize| {
            let fitting = page.history.iter().filter(|event| of(&event.happened));
            fitting.take(most).map(|event| entry(event, zone)).collect::<Vec<_>>()
        };
        Self {
            head: Head::new(page),
            revision: ticket.revision,
            revised: format!("{}, {}", page.revision.made_by, moment(page.revision.made_at, zone)),
            opened: moment(ticket.opened_at, zone),
            comeback_of: page.comeback_of,
            same_vehicle: page.same_vehicle.clone(),
            words: [Topic::Wants, Topic::Symptom, Topic::Brought]
                .into_iter()
                .filter_map(|topic| Some((topic.label(), contents.words.on(topic)?.text.clone())))
                .collect(),
            stage: StageView::new(page, caller),
            safety: reminders(ticket.stage),
            waits: WaitsFor::ALL
                .iter()
                .map(|one| WaitChoice { code: one.code(), label: one.label(), chosen: *one == ticket.waits_for })
                .collect(),
            waits_for: ticket.waits_for.code(),
            promise: promise(page, now),
            findings: findings(page, caller),
            aside: aside_lines(judgement, zone),
            book_since: book_since(page),
            ask_next: wanted_facts(judgement, ticket.stage),
            sheets: sheet_cards(contents, judgement, ticket.stage, zone),
            class_table: TableTakenView::of(page, zone),
            raced: contents.facts.job().usage.raced.value() == Some(&true),
            price: price::shown(&page.revision.contents, zone),
            approvals: approvals(page),
            signatures: page.receipts.iter().map(|receipt| signature(receipt, page, zone)).collect(),
            overrides: overrides(page, zone),
            links: page.links.iter().map(|link| link_line(link, zone)).collect(),
            notes: entries(&|happened| matches!(happened, Happening::Noted { .. }), usize::MAX),
            latest: entries(&|happened| !matches!(happened, Happening::Noted { .. }), LATEST),
            may: May {
                open: ticket.stage.open(),
                promise: can(Action::ChangePromise),
                price: can(Action::ChangePrice),
                links: can(Action::ManageLinks),
                counter: can(Action::CounterSign),
                contact: can(Action::ChangeContact),
                bring_back: ticket.stage.open() && can(Action::SetAside),
            },
        }
    }
}

impl TicketView {
    /// Does the work go on past a gate that an owner passed?
    pub fn is_overridden(&self) -> bool {
        self.overrides.iter().any(|passed| passed.holds)
    }
}

fn promise(page: &TicketPage, now: &Now) -> PromiseView {
    let today = today(now.at, &now.zone);
    match page.ticket.promised {
        None => PromiseView { value: String::new(), words: "No day promised.".into(), overdue: false },
        Some(promised) if !page.ticket.stage.open() => {
            PromiseView { value: promised.to_string(), words: day(promised), overdue: false }
        }
        Some(promised) => PromiseView {
            value: promised.to_string(),
            words: format!("{}, {}", day(promised), until(promised, today)),
            overdue: promised < today,
        },
    }
}

fn approvals(page: &TicketPage) -> Vec<ApprovalLine> {
    let line = |purpose: Purpose, approval| {
        let (code, words) = match (purpose, approval) {
            (_, Approval::Signed) => ("signed", "Signed, and it holds for what stands now."),
            (Purpose::Intake, Approval::Missing | Approval::Void) => {
                ("missing", "Not signed. The unit may not be taken apart.")
            }
            (Purpose::Build, Approval::Missing) => ("missing", "The current version is not signed."),
            (Purpose::Build, Approval::Void) => {
                ("void", "Signed earlier, but what was signed has changed since. That signature no longer holds.")
            }
            (_, Approval::Declined) => ("declined", "Declined."),
        };
        ApprovalLine { paper: purpose.label(), purpose: purpose.code(), code, words }
    };
    vec![line(Purpose::Intake, page.standing.intake), line(Purpose::Build, page.standing.build)]
}

fn signature(receipt: &Receipt, page: &TicketPage, zone: &TimeZone) -> SignatureLine {
    let record = &receipt.record;
    let latest = |purpose: Purpose| page.receipts.iter().find(|other| other.record.paper.purpose == purpose);
    let is_latest = latest(record.paper.purpose).is_some_and(|newest| newest.reference == receipt.reference);
    let approval = match record.paper.purpose {
        Purpose::Intake => page.standing.intake,
        Purpose::Build => page.standing.build,
    };
    let at_counter = record.witness.as_ref().map_or_else(
        || record.channel.label().to_lowercase(),
        |witness| format!("{}, before {witness}", record.channel.label().to_lowercase()),
    );
    SignatureLine {
        what: format!("{}, version {}: {}", record.paper.title, record.revision, record.answer.label().to_lowercase()),
        who: format!("{}, {}, {at_counter}", record.name, moment(receipt.at, zone)),
        why: record.why.clone().unwrap_or_default(),
        reference: receipt.reference.to_string(),
        standing: match (record.answer, is_latest, approval) {
            (_, false, _) => "Replaced by a later answer.",
            (Answer::Signed, true, Approval::Signed) => "Holds.",
            (Answer::Signed, true, _) => "No longer holds: what was signed has changed since.",
            (Answer::Declined, true, Approval::Declined) => "Stands.",
            (Answer::Declined, true, _) => "What was declined has changed since; ask again.",
        },
        ticks: record
            .paper
            .ticks
            .iter()
            .filter(|tick| record.accepted.contains(&tick.code))
            .map(|tick| tick.text.clone())
            .collect(),
        digest: receipt.digest.to_string(),
    }
}

fn overrides(page: &TicketPage, zone: &TimeZone) -> Vec<OverrideLine> {
    page.passed
        .iter()
        .map(|passed| OverrideLine {
            gate: passed.gate.label(),
            reason: passed.reason.clone(),
            who: format!("{}, {}, version {}", passed.made_by, moment(passed.at, zone), passed.revision),
            holds: page.standing.overridden.contains(&passed.gate),
        })
        .collect()
}

fn link_line(link: &CustomerLink, zone: &TimeZone) -> LinkLine {
    let state = match &link.state {
        LinkState::Open => "Open: the customer can read and answer.".to_owned(),
        LinkState::Used { answer, reference } => {
            format!("Used: {}, receipt {reference}.", answer.label().to_lowercase())
        }
        LinkState::Revoked => "Taken back.".to_owned(),
        LinkState::Superseded => "Replaced: what it shows no longer stands, or was signed another way.".to_owned(),
        LinkState::Finished => "Closed: the job is finished.".to_owned(),
        LinkState::Expired => "Too old.".to_owned(),
    };
    LinkLine {
        id: link.id.to_string(),
        what: format!("{}, version {}", link.purpose.label(), link.revision),
        made: format!(
            "made by {}, {}; opens until {}",
            link.made_by,
            moment(link.made_at, zone),
            moment(link.expires_at, zone)
        ),
        open: link.state == LinkState::Open,
        state,
    }
}
