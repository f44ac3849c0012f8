//! What can happen in a shop, as its history keeps it.

use super::coded::coded;
use super::diff::Change;
use super::gate::Override;
use super::log::Act;
use super::paper::Purpose;
use super::record::{Answer, Channel};
use super::reference::Reference;
use super::role::Role;
use super::stage::{Stage, WaitsFor};
use crate::plan::steps::step_named;
use jiff::Timestamp;
use jiff::civil::Date;
use serde::{Deserialize, Serialize};

/// One thing that happened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(tag = "kind", rename_all = "snake_case")]
#[allow(missing_docs, reason = "the sentence of each says what its fields are")]
pub enum Happening {
    TakenIn {
        comeback_of: Option<i64>,
    },
    Revised {
        revision: i32,
        changes: Vec<Change>,
    },
    JudgedAgain {
        revision: i32,
    },
    Stepped {
        step: String,
        act: Act,
        place: i32,
        initials: String,
        reason: String,
        revision: Option<i32>,
        changes: Vec<Change>,
    },
    SetAside {
        revision: i32,
        code: String,
        title: String,
        reason: String,
    },
    BroughtBack {
        revision: i32,
        code: String,
        title: String,
    },
    Moved {
        from: Stage,
        to: Stage,
        reason: String,
        overrides: Vec<Override>,
    },
    Waits {
        from: WaitsFor,
        to: WaitsFor,
    },
    Promised {
        from: Option<Date>,
        to: Option<Date>,
    },
    Noted {
        text: String,
    },
    SumPut {
        title: String,
        link: String,
        given: Vec<String>,
        worked: Vec<String>,
        verdicts: Vec<String>,
    },
    ContactChanged {
        changes: Vec<Change>,
    },
    LinkMade {
        purpose: Purpose,
        revision: i32,
        expires: Timestamp,
    },
    LinkRevoked {
        purpose: Purpose,
    },
    Answered {
        purpose: Purpose,
        revision: i32,
        answer: Answer,
        channel: Channel,
        name: String,
        reference: Reference,
        why: Option<String>,
    },
    ClassTableTaken {
        name: String,
        version: i32,
    },
    ClassTableWritten {
        name: String,
        version: i32,
    },
    VariantKept {
        name: String,
        version: i32,
    },
    VariantWithdrawn {
        name: String,
    },
    VariantApplied {
        name: String,
        revision: i32,
    },
    VariantChosen {
        name: String,
        by: String,
    },
    Measured {
        label: String,
        said: String,
        verdict: String,
        instrument: String,
        past_due: bool,
    },
    ReadingStruck {
        label: String,
        said: String,
        reason: String,
    },
    PartChosen {
        label: String,
        part: String,
        leaves: String,
    },
    InstrumentWritten {
        name: String,
        what: String,
    },
    SetTyped {
        label: String,
        version: i32,
    },
    UnitsChosen {
        changes: Vec<Change>,
    },
    ShopSetUp {
        name: String,
    },
    ShopChanged {
        changes: Vec<Change>,
    },
    LimitChanged {
        change: Change,
        reason: String,
    },
    LeverPriced {
        change: Change,
    },
    StaffAdded {
        name: String,
        role: Role,
    },
    StaffDisabled {
        name: String,
    },
    HouseRuleWritten {
        code: String,
        version: i32,
        title: String,
    },
    HouseRuleTried {
        code: String,
        version: i32,
        fired: i32,
        jobs: i32,
    },
    HouseRuleSwitched {
        code: String,
        version: i32,
        on: bool,
    },
    PasswordChanged,
    SignedIn,
    SignedOut,
    SignInRefused {
        because: SignInRefusal,
    },
    Denied {
        what: String,
    },
}

coded! {
    /// Why somebody was not let in. Kept for the owner; the person at the door is not told which.
    SignInRefusal {
        /// No such name.
        NoSuchName = "no_such_name", "no such name";
        /// The password did not fit.
        WrongPassword = "wrong_password", "wrong password";
        /// The person is disabled.
        Disabled = "disabled", "disabled";
        /// Too many tries; not even looked at.
        Locked = "locked", "too many tries";
    }
}

impl Happening {
    /// What happened, in one line for the history. Changes, reasons and texts are shown beside it.
    pub fn sentence(&self) -> String {
        match self {
            Self::TakenIn { comeback_of: None } => "Taken in".into(),
            Self::TakenIn { comeback_of: Some(earlier) } => format!("Taken in; comes back from job {earlier}"),
            Self::Revised { revision, changes } => {
                let count = changes.len();
                format!("Version {revision}: {count} {}", if count == 1 { "change" } else { "changes" })
            }
            Self::JudgedAgain { revision } => format!("Version {revision}: judged again, nothing else changed"),
            Self::Stepped { step, act, place, .. } => {
                let title = step_named(step).map_or("a step of an earlier edition", |step| step.title);
                format!("Step {step}, {}: {title}, place {place} in the log", act.label().to_lowercase())
            }
            Self::SetAside { revision, code, title, .. } => {
                format!("Version {revision}: set aside for this job: {title} ({code})")
            }
            Self::BroughtBack { revision, code, title } => {
                format!("Version {revision}: brought back: {title} ({code})")
            }
            Self::Moved { from, to, overrides, .. } if overrides.is_empty() => {
                format!("Moved from {} to {}", from.label(), to.label())
            }
            Self::Moved { from, to, .. } => format!("Moved from {} to {} past a closed gate", from.label(), to.label()),
            Self::Waits { from, to } => format!("Waits for {} (was {})", to.label(), from.label()),
            Self::Promised { to: Some(day), .. } => format!("Promised for {day}"),
            Self::Promised { to: None, .. } => "Promise taken back".into(),
            Self::Noted { .. } => "Note".into(),
            Self::SumPut { title, .. } => format!("Sum put on the job: {title}"),
            Self::ContactChanged { .. } => "Customer or vehicle corrected".into(),
            Self::LinkMade { purpose, revision, .. } => format!("Link made: {}, version {revision}", purpose.label()),
            Self::LinkRevoked { purpose } => format!("Link taken back: {}", purpose.label()),
            Self::Answered { purpose, revision, answer, channel, name, reference, .. } => format!(
                "{} version {revision} {} by {name}, {}, {reference}",
                purpose.label(),
                answer.label().to_lowercase(),
                channel.label().to_lowercase()
            ),
            Self::ClassTableTaken { name, version } => {
                format!("Class facts taken from the table {name}, version {version}")
            }
            Self::ClassTableWritten { name, version } => format!("Class table typed: {name}, version {version}"),
            Self::VariantKept { name, version: 1 } => format!("Variant kept: {name}"),
            Self::VariantKept { name, version } => format!("Variant {name} changed: its version {version}"),
            Self::VariantWithdrawn { name } => format!("Variant withdrawn: {name}"),
            Self::VariantApplied { name, revision } => format!("Variant {name} is now the job, as version {revision}"),
            Self::VariantChosen { name, by } => format!("{by} chose the variant {name}"),
            Self::Measured { label, said, verdict, .. } => format!("Measured: {label} {said}, {verdict}"),
            Self::ReadingStruck { label, said, .. } => format!("Reading struck out: {label} {said}"),
            Self::PartChosen { label, part, leaves } => format!("Chosen by {label}: {part}, to leave {leaves}"),
            Self::InstrumentWritten { name, what } => format!("Instrument {name}: {what}"),
            Self::SetTyped { label, version } => format!("On the shelf: {label}, version {version}"),
            Self::UnitsChosen { .. } => "Units of the bench chosen".into(),
            Self::ShopSetUp { name } => format!("{name} was set up"),
            Self::ShopChanged { .. } => "Shop particulars changed".into(),
            Self::LeverPriced { change } => format!("Price set: {}", change.label),
            Self::LimitChanged { change, .. } => format!("Limit moved: {}", change.label),
            Self::StaffAdded { name, role } => format!("{name} added as {}", role.label().to_lowercase()),
            Self::StaffDisabled { name } => format!("{name} can no longer sign in"),
            Self::HouseRuleWritten { code, version, title } => {
                format!("Rule {code} version {version} written: {title}")
            }
            Self::HouseRuleTried { code, version, fired, jobs } => {
                format!("Rule {code} version {version} tried: would have fired on {fired} of {jobs} jobs")
            }
            Self::HouseRuleSwitched { code, version, on } => {
                format!("Rule {code} version {version} switched {}", if *on { "on" } else { "off" })
            }
            Self::PasswordChanged => "Changed the password".into(),
            Self::SignedIn => "Signed in".into(),
            Self::SignedOut => "Signed out".into(),
            Self::SignInRefused { because } => format!("Not let in: {}", because.label()),
            Self::Denied { what } => format!("Was refused: {what}"),
        }
    }
}
