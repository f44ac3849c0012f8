//! What the rule book said of the job: what counts, what the shop set aside, and what of the shop's book has changed since.

use crate::service::{Caller, HouseSince, LimitSince, TicketPage};
use crate::ticket::{Judgement, Severity, Silenced};
use crate::web::findings::{Findings, From};
use crate::web::moment::moment;
use jiff::tz::TimeZone;

/// One finding that is set aside.
pub struct AsideLine {
    /// How bad it is.
    pub severity: Severity,
    /// The rule's code.
    pub code: String,
    /// A few words.
    pub title: String,
    /// What it means.
    pub means: String,
    /// Why it is set aside.
    pub reason: String,
    /// Who set it aside, and when.
    pub who: String,
    /// Does the customer's paper say so?
    pub told: bool,
}

/// What the rule book found, with a way to set aside what this person may.
pub fn findings(page: &TicketPage, caller: &Caller) -> Findings {
    let (ticket, revision) = (&page.ticket, &page.revision);
    let from = From::Ticket(ticket.number);
    let findings = Findings::new(&revision.judgement, &revision.contents.facts, ticket.stage, from);
    if ticket.stage.open() { findings.offering_aside(ticket.number, caller.role) } else { findings }
}

/// What the shop has set aside for this job.
pub fn aside_lines(judgement: &Judgement, zone: &TimeZone) -> Vec<AsideLine> {
    judgement.silenced.iter().map(|silenced| aside(silenced, zone)).collect()
}

fn aside(silenced: &Silenced, zone: &TimeZone) -> AsideLine {
    let found = &silenced.found;
    AsideLine {
        severity: found.severity,
        code: found.code.clone(),
        title: found.title.clone(),
        means: found.shop.clone(),
        reason: silenced.reason.clone(),
        who: format!("{}, {}", silenced.by, moment(silenced.at, zone)),
        told: found.is_told(),
    }
}

/// What of the shop's book stands otherwise now than when the job was judged, in words; nothing once it is closed.
pub fn book_since(page: &TicketPage) -> Vec<String> {
    if !page.ticket.stage.open() {
        return Vec::new();
    }
    let (book, judgement) = (&page.book, &page.revision.judgement);
    let limits = book.limits_since(judgement).into_iter().map(limit_since);
    let house = book.house_since(judgement).into_iter().map(|since| house_since(&since, &book.unreadable));
    limits.chain(house).collect()
}

fn limit_since(since: LimitSince) -> String {
    let LimitSince { limit, was, now } = since;
    format!("{}: {} then, {} now", limit.declaration().label, limit.say(was), limit.say(now))
}

fn house_since(since: &HouseSince, unreadable: &[String]) -> String {
    let HouseSince { code, was, now } = since;
    let said =
        |version: &Option<i32>, none: &str| version.map_or(none.to_owned(), |version| format!("version {version}"));
    let no_longer = if unreadable.contains(code) { "cannot be read" } else { "not in force" };
    format!("{code}, a rule of this shop's own: {} then, {} now", said(was, "not in force"), said(now, no_longer))
}
