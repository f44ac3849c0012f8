//! The second page of the intake: the counter set, with what the rules say beside it.

mod form;
mod view;

use crate::job::fact_named;
use crate::service::{self, Caller, ChangeTicket, Key, TicketPage, Who};
use crate::ticket::{Clash, Contents, Edit, Judgement, Topic};
use crate::web::access::Staff;
use crate::web::extract::At;
use crate::web::facts::{Control, Doubt, doubts, name_of, only_the_edit};
use crate::web::failure::Failure;
use crate::web::findings::Findings;
use crate::web::form::{Fields, FormState, Problem, Sent};
use crate::web::frame::{Answer, Frame, again, on_to, page};
use crate::web::pages::conflict::{ConflictPage, theirs};
use crate::web::pages::ticket::{Head, load};
use crate::web::site::AppState;
use askama::Template;
use axum::extract::State;
use form::{Answers, Wish, answers, held};
pub use view::{Asked, leave_out_what_waits_its_turn};
use view::{Section, findings, progress, sections};

/// What a form is shown upon: what the job would be, and what the rules say of it.
struct Ground<'a> {
    /// The revision the form was made from.
    base: i32,
    recorded: &'a Contents,
    would_be: &'a Contents,
    judgement: &'a Judgement,
}

#[derive(Template)]
#[template(path = "pages/questions.html")]
struct QuestionsPage {
    frame: Frame,
    head: Head,
    wants: String,
    symptom: String,
    form: FormState,
    base: i32,
    body: Body,
}

/// What changes while the form is filled in: the questions, and what the rules say.
#[derive(Template)]
#[template(path = "parts/questions_look.html")]
struct Body {
    /// What cannot be read, while nobody has pressed a button yet.
    problems: Vec<Problem>,
    /// Numbers that hardly can be, each with its tick.
    doubts: Vec<Doubt>,
    sections: Vec<Section>,
    answered: usize,
    asked: usize,
    findings: Findings,
}

impl Body {
    fn new(form: &FormState, ground: &Ground<'_>, doubts: Vec<Doubt>) -> Self {
        let sections = sections(form, ground.would_be.facts.job(), ground.recorded);
        let (answered, asked) = progress(&sections);
        let findings = findings(ground.judgement, ground.would_be, &sections);
        Self { problems: Vec::new(), doubts, sections, answered, asked, findings }
    }
}

impl QuestionsPage {
    fn new(frame: Frame, ticket: &TicketPage, form: FormState, ground: &Ground<'_>, doubts: Vec<Doubt>) -> Self {
        let words = |topic| ticket.revision.contents.words.on(topic).map_or_else(String::new, |said| said.text.clone());
        Self {
            head: Head::new(ticket),
            wants: words(Topic::Wants),
            symptom: words(Topic::Symptom),
            body: Body::new(&form, ground, doubts),
            base: ground.base,
            frame,
            form,
        }
    }
}

/// `GET /tickets/{number}/intake`
pub async fn show(State(state): State<AppState>, Staff(caller): Staff, At(number): At<i64>) -> Answer {
    let (frame, ticket, _) = load(&state, &caller, number).await?;
    if !ticket.ticket.stage.open() {
        return on_to(&format!("/tickets/{number}"));
    }
    let form = FormState::holding(held(&ticket.revision.contents));
    let shown = QuestionsPage::new(frame, &ticket, form, &ground_of(&ticket), Vec::new());
    page(&shown)
}

/// `POST /tickets/{number}/intake`
pub async fn send(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<Wish>,
) -> Answer {
    let key = Key(sent.once);
    let (wish, mut filled) = read(&state, &caller, number, sent).await?;
    if !wish.only_look {
        let unsure = filled.doubts.iter().filter(|doubt| !doubt.ticked).map(Doubt::problem);
        filled.answers.problems.extend(unsure);
    }
    if wish.only_look || !filled.answers.problems.is_empty() {
        return filled.form(&state, &caller).await;
    }
    let edit = filled.answers.edit.clone();
    let command = ChangeTicket { ticket: number, made_from: wish.base, edit };
    match state.service.write(Who::Staff(caller.clone()), key, command).await {
        Ok(_) if wish.then_table => on_to(&format!("/tickets/{number}/class-table?from=intake")),
        Ok(_) => on_to(&format!("/tickets/{number}/intake/done")),
        Err(service::Failure::Problems(of)) => filled.with_problems(of).form(&state, &caller).await,
        Err(service::Failure::Conflict(clashes)) => filled.conflict(&state, &caller, clashes).await,
        Err(failure) => Err(failure.into()),
    }
}

/// `POST /tickets/{number}/look`: the questions that apply now and what the rules say, for the script. Changes nothing.
pub async fn look(
    State(state): State<AppState>,
    Staff(caller): Staff,
    At(number): At<i64>,
    sent: Sent<Wish>,
) -> Answer {
    let (_, filled) = read(&state, &caller, number, sent).await?;
    let preview = state.service.look(&caller, number, filled.base, &filled.answers.edit).await?;
    let form = FormState::back(filled.typed, filled.answers.problems.clone());
    let ground = Ground {
        base: filled.base,
        recorded: &preview.base.contents,
        would_be: &preview.contents,
        judgement: &preview.after,
    };
    page(&Body { problems: filled.answers.problems, ..Body::new(&form, &ground, filled.doubts) })
}

fn ground_of(ticket: &TicketPage) -> Ground<'_> {
    let contents = &ticket.revision.contents;
    Ground {
        base: ticket.revision.number,
        recorded: contents,
        would_be: contents,
        judgement: &ticket.revision.judgement,
    }
}

/// A form that was filled in.
struct Filled {
    number: i64,
    base: i32,
    typed: Fields,
    answers: Answers,
    doubts: Vec<Doubt>,
}

async fn read(state: &AppState, caller: &Caller, number: i64, sent: Sent<Wish>) -> Result<(Wish, Filled), Failure> {
    let wish = sent.read.map_err(|_| Failure::Unreadable("the form's own fields were changed on the way"))?;
    let recorded = state.service.revision(caller, number, wish.base).await?;
    let mut answers = answers(&sent.typed, &recorded.contents);
    for field in theirs(&sent.typed) {
        answers.edit.facts.retain(|change| change.path != field);
    }
    let doubts = doubts(&answers.edit.facts, &recorded.contents, &sent.typed);
    let filled = Filled { number, base: wish.base, typed: sent.typed, answers, doubts };
    Ok((wish, filled))
}

impl Filled {
    fn with_problems(mut self, of: Vec<crate::ticket::Problem>) -> Self {
        let at_its_field = |problem: crate::ticket::Problem| {
            let field = fact_named(&problem.field).map_or(problem.field, |fact| name_of(fact.declaration()));
            Problem { field, message: problem.message }
        };
        self.answers.problems.extend(of.into_iter().map(at_its_field));
        self
    }

    /// The form again, with everything typed and what the rules say so far.
    async fn form(self, state: &AppState, caller: &Caller) -> Answer {
        let (frame, ticket, _) = load(state, caller, self.number).await?;
        let wrong = !self.answers.problems.is_empty();
        let form = FormState::back(self.typed, self.answers.problems);
        let shown = match state.service.look(caller, self.number, self.base, &self.answers.edit).await {
            Ok(preview) => {
                let ground = Ground {
                    base: self.base,
                    recorded: &preview.base.contents,
                    would_be: &preview.contents,
                    judgement: &preview.after,
                };
                QuestionsPage::new(frame, &ticket, form, &ground, self.doubts)
            }
            Err(service::Failure::Problems(_)) => {
                QuestionsPage::new(frame, &ticket, form, &Ground { base: self.base, ..ground_of(&ticket) }, self.doubts)
            }
            Err(failure) => return Err(failure.into()),
        };
        if wrong { again(&shown) } else { page(&shown) }
    }

    /// Both answers, to choose from. Only what was changed here is carried on, over what stands now.
    async fn conflict(self, state: &AppState, caller: &Caller, clashes: Vec<Clash>) -> Answer {
        let (frame, ticket, now) = load(state, caller, self.number).await?;
        let carried =
            only_the_edit(&self.answers.edit).with("base", ticket.revision.number.to_string()).with("do", "save");
        let kept = besides(&self.answers.edit, &clashes);
        let action = format!("/tickets/{}/intake", self.number);
        ConflictPage::new(frame, Head::new(&ticket), action, clashes, &carried, &now.zone).beside(kept).answer()
    }
}

/// What was changed and is in nobody's way, by its label.
fn besides(edit: &Edit, clashes: &[Clash]) -> Vec<String> {
    let free = edit.facts.iter().filter(|change| clashes.iter().all(|clash| clash.field != change.path));
    free.filter_map(|change| fact_named(&change.path)).map(|fact| fact.declaration().label.to_owned()).collect()
}
