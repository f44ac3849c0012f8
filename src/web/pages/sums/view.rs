//! What the page of one sum shows.

use crate::job::fact_named;
use crate::rules::Limits;
use crate::sums::{self, Answer, Filled, Kind, Outcome, Sum, Table, Taken};
use crate::ticket::{Action, TicketFacts, in_words};
use crate::web::extract::escaped;
use crate::web::form::{Fields, FormState, Problem};
use crate::web::frame::Frame;
use crate::web::pages::ticket::Head;
use crate::web::site::AppState;
use askama::Template;

/// The page of one sum.
#[derive(Template)]
#[template(path = "pages/sum.html")]
pub struct SumPage {
    frame: Option<Frame>,
    sum: &'static Sum,
    form: FormState,
    fields: Vec<Field>,
    outcome: Option<Outcome>,
    /// The labels of what is still needed.
    needs: Vec<&'static str>,
    /// The sum with its inputs, as it is sent to somebody.
    link: String,
    /// The same within this shop's own pages.
    path: String,
    /// Everything that can be copied, line by line.
    copied: String,
    /// The job whose numbers are in it.
    job: Option<Job>,
    /// What can be put on a ticket, each with its tick.
    keeps: Vec<Keep>,
}

/// One input as a question.
struct Field {
    name: &'static str,
    label: &'static str,
    hint: &'static str,
    unit: &'static str,
    example: &'static str,
    needed: bool,
    keyboard: &'static str,
    /// The answers of a choice: code, label.
    words: Vec<(&'static str, &'static str)>,
    /// How many lines a list is given; none for what stands in one.
    lines: u8,
}

/// A job whose numbers are in the sum.
pub struct Job {
    head: Head,
    /// What was taken from it, in words.
    taken: Vec<String>,
}

/// A fact that a result may fill.
struct Keep {
    fact: &'static str,
    label: &'static str,
    /// The value in words, and whether it is only planned.
    value: String,
    planned: bool,
    /// What stands there now, when it is known and another: the value as it is sent back, and in words with its origin.
    over: Option<(String, String)>,
    ticked: bool,
}

impl Job {
    /// The job, with what its facts filled in.
    pub fn new(head: Head, facts: &TicketFacts, taken: &[Taken], typed: &Fields) -> Self {
        let said = |taken: &Taken| {
            let stands = typed.get(taken.input.name) == Some(taken.text.as_str());
            let origin = facts.origin(taken.fact).map_or("", |origin| origin.source.label()).to_lowercase();
            stands.then(|| format!("{}: {} ({origin})", taken.input.label, facts.words(taken.fact)))
        };
        Self { head, taken: taken.iter().filter_map(said).collect() }
    }
}

impl SumPage {
    /// The sum with what was typed.
    pub fn new(state: &AppState, frame: Option<Frame>, sum: &'static Sum, typed: Fields, limits: &Limits) -> Self {
        let text = |name: &str| typed.get(name).unwrap_or_default().to_owned();
        let Answer { outcome, needs, wrong } = sum.answer(text, limits);
        let path = sums::address(sum, text);
        let link = state.site.link(&path);
        let problems = wrong.into_iter().map(|wrong| Problem { field: wrong.input.to_owned(), message: wrong.message });
        let problems: Vec<_> = problems.collect();
        let keeps =
            outcome.iter().flat_map(|outcome| &outcome.lines).filter_map(|line| line.fills.as_ref()).filter_map(keep);
        Self {
            copied: outcome.as_ref().map_or_else(String::new, |outcome| copied(sum, outcome, &link)),
            keeps: keeps.collect(),
            fields: sum.inputs.iter().map(Field::new).collect(),
            needs: needs.iter().filter_map(|name| sum.input(name)).map(|input| input.label).collect(),
            form: FormState::back(typed, problems),
            outcome,
            link,
            path,
            job: None,
            frame,
            sum,
        }
    }

    /// With one job's numbers.
    #[must_use]
    pub fn of_job(mut self, job: Job, facts: &TicketFacts) -> Self {
        self.told_over(facts);
        self.job = Some(job);
        self
    }

    /// With what stood in the way of putting it on a ticket.
    #[must_use]
    pub fn back(mut self, problems: Vec<Problem>, facts: Option<&TicketFacts>) -> Self {
        let typed = self.form.typed().clone();
        for keep in &mut self.keeps {
            keep.ticked = typed.all("keep").any(|fact| fact == keep.fact);
        }
        if let Some(facts) = facts {
            self.told_over(facts);
        }
        let own = self.form.problems.iter().filter(|own| !problems.contains(own)).cloned().collect::<Vec<_>>();
        self.form = FormState::back(typed, own.into_iter().chain(problems).collect());
        self
    }

    fn told_over(&mut self, facts: &TicketFacts) {
        for keep in &mut self.keeps {
            let entry = fact_named(keep.fact).and_then(|fact| Some((fact, facts.entry(fact)?)));
            keep.over = entry.and_then(|(fact, entry)| {
                let words = in_words(fact.declaration(), &entry.value);
                let said = format!("{words} ({}, {})", entry.origin.source.label().to_lowercase(), entry.origin.by);
                (words != keep.value).then(|| (entry.value.to_string(), said))
            });
        }
    }

    /// The address this form is sent to.
    fn here(&self) -> String {
        match &self.job {
            Some(job) => format!("/tickets/{}/sums/{}", job.head.number, self.sum.name),
            None => format!("/sums/{}", self.sum.name),
        }
    }

    /// The list it stands in.
    fn list(&self) -> String {
        self.job.as_ref().map_or_else(|| "/sums".to_owned(), |job| format!("/tickets/{}/sums", job.head.number))
    }

    /// The number in the field for the job.
    fn ticket(&self) -> String {
        let of_job = self.job.as_ref().map_or_else(String::new, |job| job.head.number.to_string());
        self.form.typed().get("ticket").map_or(of_job, str::to_owned)
    }

    /// May whoever looks put it on a ticket?
    fn puts(&self) -> bool {
        self.frame.as_ref().is_some_and(|frame| frame.may(Action::WriteNote))
    }

    /// To sign in and come back here.
    fn sign_in(&self) -> String {
        format!("/sign-in?next={}", escaped(&self.path))
    }

    /// The answer in one line, for whoever cannot see it change.
    fn summary(&self) -> String {
        match self.outcome.as_ref().and_then(|outcome| outcome.lines.first()) {
            Some(line) => format!("{}: {}", line.label, line.value),
            None if self.form.is_wrong() => "Nothing is worked out: something cannot be taken.".to_owned(),
            None if self.needs.len() == self.sum.inputs.iter().filter(|input| input.needed).count() => {
                "Fill in the numbers.".to_owned()
            }
            None => "Nothing is worked out yet: something is still needed.".to_owned(),
        }
    }

    /// The problems that are the inputs' own, and not those of putting it on a ticket.
    fn wrong(&self) -> Vec<&Problem> {
        self.form.problems.iter().filter(|problem| self.sum.input(&problem.field).is_some()).collect()
    }
}

impl Field {
    fn new(input: &'static sums::Input) -> Self {
        let words = match &input.kind {
            Kind::Choice(words) => words().into_iter().map(|word| (word.code, word.label)).collect(),
            _ => Vec::new(),
        };
        let keyboard = match &input.kind {
            Kind::Count(..) => "numeric",
            Kind::Number(measure) if measure.symbol != "in" => "decimal",
            Kind::Percent(..) => "decimal",
            // Fractions, sizes and lists want signs that a number pad lacks.
            _ => "text",
        };
        Self {
            name: input.name,
            label: input.label,
            hint: input.hint,
            unit: input.unit(),
            example: input.said(input.example),
            needed: input.needed,
            keyboard,
            words,
            lines: match &input.kind {
                Kind::Rows(..) => 4,
                Kind::Numbers(..) => 2,
                _ => 0,
            },
        }
    }
}

fn keep(filled: &Filled) -> Option<Keep> {
    let declaration = fact_named(filled.fact)?.declaration();
    Some(Keep {
        fact: filled.fact,
        label: declaration.label,
        value: in_words(declaration, &filled.value),
        planned: filled.planned,
        over: None,
        ticked: true,
    })
}

fn copied(sum: &Sum, outcome: &Outcome, link: &str) -> String {
    let mut lines = vec![sum.title.to_owned()];
    lines.extend(outcome.lines.iter().map(|line| format!("{}: {}", line.label, line.worked)));
    lines.extend(outcome.table.iter().flat_map(Table::in_lines));
    lines.extend(outcome.verdicts.iter().map(|verdict| format!("{} ({})", verdict.said, verdict.limit)));
    lines.push(link.to_owned());
    lines.join("\n")
}
