//! What happened to a ticket, newest first.

use super::ticket::{Head, load};
use crate::service::Event;
use crate::ticket::{Change, Happening};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::frame::{Answer, Frame, page};
use crate::web::moment::moment;
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use jiff::tz::TimeZone;

/// The page of everything that happened.
#[derive(Template)]
#[template(path = "pages/history.html")]
struct HistoryPage {
    frame: Frame,
    head: Head,
    entries: Vec<Entry>,
    versions: Vec<Version>,
}

/// One version to compare.
struct Version {
    number: i32,
    made: String,
}

/// `GET /tickets/{number}/history`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    let (frame, ticket, now) = load(&state, &caller, number).await?;
    let version = |heading: &crate::service::Heading| Version {
        number: heading.number,
        made: format!("{}, {}", heading.made_by, moment(heading.made_at, &now.zone)),
    };
    page(&HistoryPage {
        head: Head::new(&ticket),
        entries: ticket.history.iter().map(|event| entry(event, &now.zone)).collect(),
        versions: ticket.revisions.iter().map(version).collect(),
        frame,
    })
}

/// One thing that happened.
pub struct Entry {
    /// When, in the shop's zone.
    pub at: String,
    /// Who.
    pub by: String,
    /// From which device; empty when it is not known.
    pub device: String,
    /// What, in a line.
    pub what: String,
    /// A note, a reason, what an owner wrote on passing a gate.
    pub words: Vec<String>,
    /// What changed.
    pub changes: Vec<Change>,
    /// The version this made.
    pub revision: Option<i32>,
    /// The sum that was put on the job, with its numbers; empty for everything else.
    pub sum: String,
}

/// One event as the history tells it.
pub fn entry(event: &Event, zone: &TimeZone) -> Entry {
    let (mut words, mut changes, mut revision, mut link) = (Vec::new(), Vec::new(), None, String::new());
    match &event.happened {
        Happening::Revised { revision: number, changes: changed } => {
            changes.clone_from(changed);
            revision = Some(*number);
        }
        Happening::JudgedAgain { revision: number } => revision = Some(*number),
        Happening::SetAside { revision: number, reason, .. } => {
            revision = Some(*number);
            words.extend(reason.lines().map(str::to_owned));
        }
        Happening::BroughtBack { revision: number, .. } => revision = Some(*number),
        Happening::LeverPriced { change } => changes.push(change.clone()),
        Happening::LimitChanged { change, reason } => {
            changes.push(change.clone());
            words.push(reason.clone());
        }
        Happening::Stepped { initials, reason, revision: number, changes: changed, .. } => {
            words.extend(Some(format!("Initials: {initials}")).filter(|_| !initials.is_empty()));
            words.extend(Some(reason.clone()).filter(|reason| !reason.is_empty()));
            changes.clone_from(changed);
            revision = *number;
        }
        Happening::Measured { instrument, past_due, .. } => {
            words.extend(Some(format!("With {instrument}")).filter(|_| !instrument.is_empty()));
            words.extend(past_due.then(|| "The instrument was past its calibration date.".to_owned()));
        }
        Happening::ReadingStruck { reason, .. } => words.push(reason.clone()),
        Happening::UnitsChosen { changes: changed } => changes.clone_from(changed),
        Happening::ContactChanged { changes: changed } | Happening::ShopChanged { changes: changed } => {
            changes.clone_from(changed);
        }
        Happening::Noted { text } => words.extend(text.lines().map(str::to_owned)),
        Happening::SumPut { link: address, given, worked, verdicts, .. } => {
            words.extend([given, worked, verdicts].into_iter().flatten().cloned());
            link.clone_from(address);
        }
        Happening::Moved { reason, overrides, .. } => {
            words.extend(Some(reason.clone()).filter(|reason| !reason.is_empty()));
            words.extend(overrides.iter().map(|passed| format!("{}: {}", passed.gate.label(), passed.reason)));
        }
        Happening::Answered { why: Some(why), .. } => words.push(why.clone()),
        _ => {}
    }
    Entry {
        at: moment(event.at, zone),
        by: event.by_name.clone(),
        device: in_words(&event.device),
        what: event.happened.sentence(),
        words,
        changes,
        revision,
        sum: link,
    }
}

/// A device by the name the shop gave it; what a browser says of itself is for the proof, not for people.
fn in_words(device: &str) -> String {
    let browsers_own = device.contains('/') && device.contains('(');
    match (browsers_own, device.contains("Mobile")) {
        (false, _) => device.to_owned(),
        (true, true) => "a phone or tablet".to_owned(),
        (true, false) => "a computer".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::in_words;

    #[test]
    fn a_device_is_told_in_words() {
        assert_eq!(in_words("the bench tablet"), "the bench tablet");
        assert_eq!(in_words(""), "");
        assert_eq!(in_words("Browser/5.0 (Desk; x64) Engine/1.0"), "a computer");
        assert_eq!(in_words("Browser/5.0 (Hand; arm) Engine/1.0 Mobile"), "a phone or tablet");
    }
}
