//! What saving a sheet would change: facts, findings, the customer's signature.

use crate::job::Sheet;
use crate::service::{Preview, Voided};
use crate::ticket::{Change, Found, TickStanding};
use crate::web::difference::{Difference, Gone};
use crate::web::facts::Doubt;
use crate::web::findings::counted;
use crate::web::form::Fields;
use crate::web::frame::Frame;
use crate::web::pages::ticket::Head;
use askama::Template;
use uuid::Uuid;

/// The page that shows what would change.
#[derive(Template)]
#[template(path = "pages/facts_diff.html")]
pub struct DiffPage {
    frame: Frame,
    head: Head,
    sheet: Sheet,
    changes: Vec<Change>,
    /// Numbers that hardly can be.
    doubts: Vec<Doubt>,
    /// What would be found that is not found now.
    new: Vec<Found>,
    /// What is found now and would not be.
    gone: Vec<Gone>,
    /// How many checks would be decided that wait now, and the other way about; empty when none.
    undecided: String,
    voided: Option<Voided>,
    /// Everything typed, carried along.
    carried: Vec<(String, String)>,
}

impl DiffPage {
    /// What this preview comes to, with the form that asked for it.
    pub fn new(frame: Frame, head: Head, sheet: Sheet, preview: Preview, doubts: Vec<Doubt>, typed: &Fields) -> Self {
        let difference = Difference::new(&preview.before, &preview.after);
        Self {
            undecided: undecided(difference.decided, difference.opened.len()),
            new: difference.new,
            gone: difference.gone,
            carried: typed
                .pairs()
                .filter(|(name, _)| !matches!(*name, "once" | "do"))
                .map(|(name, value)| (name.to_owned(), value.to_owned()))
                .collect(),
            changes: preview.changes,
            doubts,
            voided: preview.voided,
            frame,
            head,
            sheet,
        }
    }

    fn once(&self) -> Uuid {
        Uuid::now_v7()
    }
}

fn undecided(decided: usize, opened: usize) -> String {
    let sentence = |count: usize, rest: &str| match count {
        0 => String::new(),
        _ => format!("{} {rest}", counted(count, "check")),
    };
    let both = [sentence(decided, "that waited can be decided then."), sentence(opened, "cannot be decided any more.")];
    both.into_iter().filter(|sentence| !sentence.is_empty()).collect::<Vec<_>>().join(" ")
}
