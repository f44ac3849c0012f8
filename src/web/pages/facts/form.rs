//! The form of one sheet: its questions, and what the rule book says to what stands in them.

use crate::job::Sheet;
use crate::service::{Preview, TicketPage};
use crate::ticket::{Contents, Judgement, Stage, Topic};
use crate::web::facts::{Control, FieldGroup, field_groups, filled, topics};
use crate::web::findings::{Findings, From};
use crate::web::form::FormState;
use crate::web::frame::Frame;
use crate::web::pages::ticket::Head;
use askama::Template;
use uuid::Uuid;

/// The page with a sheet's form.
#[derive(Template)]
#[template(path = "pages/facts.html")]
pub struct SheetForm {
    frame: Frame,
    head: Head,
    sheet: Sheet,
    /// The revision the form is made from.
    base: i32,
    topics: &'static [Topic],
    groups: Vec<FieldGroup>,
    /// What nobody types, for reading only.
    filled: Vec<(&'static str, String)>,
    findings: Findings,
    form: FormState,
}

/// What the form is laid over.
pub struct Ground<'a> {
    /// The revision's number.
    pub base: i32,
    /// What is recorded there.
    pub recorded: &'a Contents,
    /// What would stand with the form.
    pub contents: &'a Contents,
    /// What the rule book says to that.
    pub judgement: &'a Judgement,
    /// Where the job stands.
    pub stage: Stage,
}

impl<'a> Ground<'a> {
    /// The ticket as it stands.
    pub const fn of_ticket(page: &'a TicketPage) -> Self {
        Self {
            base: page.revision.number,
            recorded: &page.revision.contents,
            contents: &page.revision.contents,
            judgement: &page.revision.judgement,
            stage: page.ticket.stage,
        }
    }

    /// The ticket as it would stand.
    pub const fn of_preview(preview: &'a Preview) -> Self {
        Self {
            base: preview.base.number,
            recorded: &preview.base.contents,
            contents: &preview.contents,
            judgement: &preview.after,
            stage: preview.ticket.stage,
        }
    }
}

impl SheetForm {
    /// The form with what stands in it.
    pub fn new(frame: Frame, head: Head, sheet: Sheet, ground: &Ground<'_>, form: FormState) -> Self {
        Self {
            frame,
            head,
            sheet,
            base: ground.base,
            topics: topics(sheet),
            groups: field_groups(sheet, &form, ground.recorded, ground.judgement, ground.stage),
            filled: filled(sheet, ground.recorded),
            findings: findings(sheet, ground),
            form,
        }
    }

    fn once(&self) -> Uuid {
        self.form.once
    }
}

/// What the rule book says beside the form.
pub fn findings(sheet: Sheet, ground: &Ground<'_>) -> Findings {
    Findings::new(ground.judgement, &ground.contents.facts, ground.stage, From::Form(sheet))
}
