//! Two people changed the same thing: both values with who and when, to be chosen from.

use crate::ticket::Clash;
use crate::web::form::Fields;
use crate::web::frame::{Answer, Frame};
use crate::web::moment::moment;
use crate::web::pages::ticket::Head;
use askama::Template;
use axum::http::StatusCode;
use axum::response::{Html, IntoResponse};
use jiff::tz::TimeZone;
use uuid::Uuid;

/// The page that lets a person choose.
#[derive(Template)]
#[template(path = "pages/conflict.html")]
pub struct ConflictPage {
    frame: Frame,
    head: Head,
    /// Where the choice is sent.
    action: String,
    clashes: Vec<Choice>,
    /// Is there only one to choose, so that one tap does it?
    one: bool,
    /// What was changed besides and is in nobody's way.
    others_kept: Vec<String>,
    /// What is sent again.
    carried: Vec<(String, String)>,
}

/// One thing with two values.
struct Choice {
    label: String,
    /// The name the choice is sent under.
    keep: String,
    yours: String,
    theirs: String,
    /// Whose the other value is and since when.
    who: String,
}

/// The start of the names under which choices are sent.
const KEEP: &str = "keep.";

/// The fields in which the other's value was chosen.
pub fn theirs(typed: &Fields) -> Vec<String> {
    typed.starting(KEEP).filter(|(_, choice)| *choice == "theirs").map(|(field, _)| field.to_owned()).collect()
}

impl ConflictPage {
    /// The choice between these values; `carried` is what is sent again with it.
    pub fn new(
        frame: Frame,
        head: Head,
        action: String,
        clashes: Vec<Clash>,
        carried: &Fields,
        zone: &TimeZone,
    ) -> Self {
        let clashes: Vec<_> = clashes
            .into_iter()
            .map(|clash| Choice {
                keep: format!("{KEEP}{}", clash.field),
                who: match (clash.by, clash.at) {
                    (Some(by), Some(at)) => format!("{by}, {}", moment(at, zone)),
                    (Some(by), None) => by,
                    _ => "Saved meanwhile".to_owned(),
                },
                label: clash.label,
                yours: clash.yours,
                theirs: clash.theirs,
            })
            .collect();
        Self {
            frame,
            head,
            action,
            one: clashes.len() == 1,
            clashes,
            others_kept: Vec::new(),
            carried: carried.pairs().map(|(name, value)| (name.to_owned(), value.to_owned())).collect(),
        }
    }

    /// The same, naming what else is saved along with the choice.
    pub fn beside(self, others_kept: Vec<String>) -> Self {
        Self { others_kept, ..self }
    }

    /// As an answer: nothing was done yet.
    ///
    /// # Errors
    /// When the page cannot be written, which is a fault of ours.
    pub fn answer(&self) -> Answer {
        Ok((StatusCode::CONFLICT, Html(self.render()?)).into_response())
    }

    fn once(&self) -> Uuid {
        Uuid::now_v7()
    }
}
