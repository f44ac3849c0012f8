//! Two versions of a ticket side by side: what differs, where each value came from, what the rule book said.

use super::ticket::{Head, load};
use crate::job::fact_named;
use crate::service::Revision;
use crate::ticket::{Change, Contents, Found, Severity};
use crate::web::access::Staff;
use crate::web::extract::{Asked, At};
use crate::web::findings::counted;
use crate::web::frame::{Answer, Frame, page};
use crate::web::moment::moment;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::tz::TimeZone;
use serde::Deserialize;

/// The page of two versions.
#[derive(Template)]
#[template(path = "pages/compare.html")]
struct ComparePage {
    frame: Frame,
    head: Head,
    from: Version,
    to: Version,
    rows: Vec<Row>,
    sides: [Side; 2],
}

/// One version's heading.
struct Version {
    number: i32,
    made: String,
}

/// One thing that differs.
struct Row {
    label: String,
    from: String,
    to: String,
    from_origin: String,
    to_origin: String,
}

/// What the rule book said about one version.
struct Side {
    number: i32,
    findings: Vec<Mark>,
    /// How many checks could not be decided.
    undecided: String,
}

/// One finding of one version.
struct Mark {
    severity: Severity,
    title: String,
    code: String,
    /// Is it in this version alone?
    only: bool,
    /// Was it set aside?
    aside: bool,
}

/// Which two.
#[derive(Deserialize)]
pub struct Pair {
    from: i32,
    to: i32,
}

/// `GET /tickets/{number}/compare?from=1&to=3`
pub async fn show(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    Asked(pair): Asked<Pair>,
) -> Answer {
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    let compared = state.service.compare(&caller, number, pair.from, pair.to).await?;
    let (from, to, zone) = (&compared.from, &compared.to, &now.zone);
    let rows = compared.changes.iter().map(|change| row(change, from, to, zone)).collect();
    page(&ComparePage {
        head: Head::new(&ticket),
        from: version(from, zone),
        to: version(to, zone),
        rows,
        sides: [side(from, to), side(to, from)],
        frame,
    })
}

fn version(revision: &Revision, zone: &TimeZone) -> Version {
    Version { number: revision.number, made: format!("{}, {}", revision.made_by, moment(revision.made_at, zone)) }
}

fn row(change: &Change, from: &Revision, to: &Revision, zone: &TimeZone) -> Row {
    let origin = |contents: &Contents| {
        let origin = fact_named(&change.field).and_then(|fact| contents.facts.origin(fact));
        origin.map_or_else(String::new, |origin| {
            format!("{}, {}, {}", origin.source.label(), origin.by, moment(origin.at, zone))
        })
    };
    Row {
        label: change.label.clone(),
        from: change.from.clone(),
        to: change.to.clone(),
        from_origin: origin(&from.contents),
        to_origin: origin(&to.contents),
    }
}

fn side(own: &Revision, other: &Revision) -> Side {
    let in_other = other.judgement.fired();
    let mark = |found: &Found, aside| Mark {
        severity: found.severity,
        title: found.title.clone(),
        code: found.code.clone(),
        only: !in_other.contains(&found.code.as_str()),
        aside,
    };
    let counts = own.judgement.findings.iter().map(|found| mark(found, false));
    let set_aside = own.judgement.silenced.iter().map(|silenced| mark(&silenced.found, true));
    Side {
        number: own.number,
        findings: counts.chain(set_aside).collect(),
        undecided: counted(own.judgement.undecided.len(), "check"),
    }
}
