//! What was changed on the copy: facts of any group, hours and price, all of it carried in the form.

use crate::job::{FactId, GROUPS, fact_ids, fact_named, read_text};
use crate::plan::can_be_decided;
use crate::service::{TicketPage, Variant, cannot_be_planned};
use crate::ticket::{Contents, Edit, FactChange, Price, Severity, Source};
use crate::web::facts::{as_typed, name_of};
use crate::web::form::{Fields, Problem, Reader};
use crate::web::pages::ticket::price;

/// The start of the names under which a form sends facts.
const FACT: &str = "f.";
/// The group that is shown when nothing stands against the job.
const FIRST: &str = "valve_body";

/// What is tried.
pub struct Trial {
    /// The revision the copy was made from.
    pub base: i32,
    /// The group whose facts are shown.
    pub group: &'static str,
    /// The variant that gets a new version; none when a new one would be kept.
    pub variant: Option<i32>,
    /// What it is to be called.
    pub name: String,
    /// The labour in minutes, when somebody said.
    pub minutes: Option<i32>,
    /// What is changed.
    pub edit: Edit,
    /// What cannot be taken.
    pub problems: Vec<Problem>,
    /// What the person wants.
    pub step: Step,
    /// A change that is taken back.
    drop: Option<String>,
}

/// What the person wants with the form.
#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Step {
    /// See what it comes to, or another part of the unit.
    Look,
    /// Keep it as a variant.
    Keep,
}

/// The facts of a group that can be tried: what somebody decides, not what is found, read or tried on the unit.
pub fn facts_of(group: &str) -> impl Iterator<Item = FactId> {
    let own = move |fact: &FactId| fact.declaration().path.split_once('.').is_some_and(|(of, _)| of == group);
    fact_ids().filter(own).filter(|fact| can_be_decided(*fact))
}

/// The group with the facts that the gravest findings rest on, of those that can be tried.
fn that_matters(ticket: &TicketPage) -> &'static str {
    let findings = &ticket.revision.judgement.findings;
    let of = |severity| findings.iter().filter(move |found| found.severity == severity);
    let grave = of(Severity::Stop).chain(of(Severity::Caution)).flat_map(|found| &found.facts);
    let decided = grave.filter_map(|path| fact_named(path)).find(|fact| can_be_decided(*fact));
    decided.and_then(|fact| fact.declaration().path.split_once('.')).map_or(FIRST, |(group, _)| group)
}

/// The groups that have facts to try, in the job file's order.
pub fn groups() -> impl Iterator<Item = &'static str> {
    GROUPS.iter().map(|(name, _)| *name).filter(|name| facts_of(name).next().is_some())
}

/// The form as it is first shown: the job as it stands, or a variant laid over it.
pub fn held(ticket: &TicketPage, variant: Option<&Variant>) -> Fields {
    let mut fields = Fields::default().with("base", ticket.revision.number.to_string());
    let mut price = ticket.revision.contents.price();
    fields.set("priced", "yes");
    fields.set("group", that_matters(ticket));
    if let Some(variant) = variant {
        fields.set("variant", variant.nth.to_string());
        fields.set("name", variant.name.clone());
        fields.set("hours", variant.minutes.map_or_else(String::new, hours));
        for change in &variant.edit.facts {
            fields.set(format!("{FACT}{}", change.path), as_typed(change.value.as_ref()));
        }
        price = variant.edit.price.as_ref().or(price);
        let first = variant.edit.facts.first().and_then(|change| change.path.split_once('.'));
        if let Some((group, _)) = first {
            fields.set("group", group);
        }
    }
    for (at, line) in price.into_iter().flat_map(|price| &price.lines).enumerate() {
        fields.set(price::what_name(at + 1), line.what.clone());
        fields.set(price::amount_name(at + 1), line.cents.to_string());
    }
    fields
}

/// Minutes as a form has them: `1.5`.
pub fn hours(minutes: i32) -> String {
    let hours = format!("{:.2}", f64::from(minutes) / 60.0);
    hours.trim_end_matches('0').trim_end_matches('.').to_owned()
}

impl Trial {
    /// What this form tries, against what it was made from.
    pub fn read(typed: &Fields, base: &Contents) -> Self {
        let mut reader = Reader::new(typed);
        let wish = typed.get("do").unwrap_or_default();
        let drop = wish.strip_prefix("drop.").map(str::to_owned);
        let number = |field: &str| typed.get(field).and_then(|text| text.parse().ok());
        let minutes = minutes(&mut reader);
        let price = price::lines(&mut reader);
        // Without the price's own fields nothing was said about it.
        let priced = typed.get("priced").is_some();
        let mut problems = reader.problems();
        let mut edit = Edit { price: Some(price).filter(|price| priced && differs(price, base)), ..Edit::default() };
        for (path, sent) in typed.starting(FACT).filter(|(path, _)| drop.as_deref() != Some(*path)) {
            match fact_named(path).map(|fact| change(fact, sent, base)) {
                Some(Ok(change)) => edit.facts.extend(change),
                Some(Err(problem)) => problems.push(problem),
                None => {}
            }
        }
        let asked = typed.get("group").unwrap_or_default();
        // What cannot be taken has to be in sight.
        let wrong = problems.iter().find_map(|problem| problem.field.strip_prefix(FACT)?.split_once('.'));
        let asked = wrong.filter(|_| wish == "keep").map_or(asked, |(group, _)| group);
        let group = groups().find(|group| *group == asked).unwrap_or("converter");
        Self {
            base: number("base").unwrap_or_default(),
            group,
            variant: number("variant"),
            name: typed.get("name").unwrap_or_default().to_owned(),
            minutes,
            edit,
            problems,
            step: if wish == "keep" { Step::Keep } else { Step::Look },
            drop,
        }
    }

    /// The same with these problems.
    pub fn with(self, problems: Vec<Problem>) -> Self {
        Self { problems, step: Step::Keep, ..self }
    }

    /// The fields without the facts that were only shown, over this revision.
    pub fn alone(&self, typed: &Fields, revision: i32) -> Fields {
        let mut alone = Fields::default();
        let is_tried = |path: &str| self.edit.facts.iter().any(|change| change.path == path);
        for (name, value) in typed.pairs().filter(|(name, _)| name.strip_prefix(FACT).is_none_or(is_tried)) {
            alone.set(name, value);
        }
        alone.with("base", revision.to_string())
    }

    /// What was typed, without what was taken back.
    pub fn kept(&self, typed: Fields) -> Fields {
        let mut kept = Fields::default();
        let dropped = self.drop.as_ref().map(|path| format!("{FACT}{path}"));
        for (name, value) in typed.pairs().filter(|(name, _)| Some(*name) != dropped.as_deref()) {
            kept.set(name, value);
        }
        kept
    }
}

fn differs(price: &Price, base: &Contents) -> bool {
    price.lines != base.price().map(|price| price.lines.clone()).unwrap_or_default()
}

/// The labour typed in hours, in minutes.
fn minutes(reader: &mut Reader<'_>) -> Option<i32> {
    let typed = reader.fields().get("hours").unwrap_or_default().trim().to_owned();
    if typed.is_empty() {
        return None;
    }
    let hours = typed.parse::<f64>().ok().filter(|hours| (0.0..=1000.0).contains(hours));
    if hours.is_none() {
        let message = format!("Hours of work cannot be \"{typed}\": write a number from 0 to 1000, such as 1.5.");
        reader.wrong("hours", message);
    }
    hours.map(|hours| (hours * 60.0).round() as i32)
}

fn change(fact: FactId, sent: &str, base: &Contents) -> Result<Option<FactChange>, Problem> {
    let declaration = fact.declaration();
    let recorded = base.facts.value(fact);
    if sent == as_typed(recorded.as_ref()) {
        return Ok(None);
    }
    if !can_be_decided(fact) {
        return Err(Problem { field: name_of(declaration), message: cannot_be_planned(declaration.path) });
    }
    let value = read_text(sent, declaration)
        .map_err(|error| Problem { field: name_of(declaration), message: error.message })?;
    // Whoever types it: until it is done, it is a plan.
    let source = Source::Planned;
    Ok((value != recorded).then(|| FactChange { path: declaration.path.to_owned(), value, source }))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn trial(body: &str) -> Trial {
        Trial::read(&Fields::parse(body.as_bytes()), &Contents::default())
    }

    #[test]
    fn changes_of_every_group_count_whichever_is_shown() {
        let trial = trial("base=3&group=yoke&f.yoke.kind=bolt_on&f.converter.stall_rpm=2800&f.use.raced=");
        let paths: Vec<_> = trial.edit.facts.iter().map(|change| change.path.as_str()).collect();
        assert_eq!(paths, ["yoke.kind", "converter.stall_rpm"]);
        assert_eq!((trial.group, trial.base, trial.variant), ("yoke", 3, None));
    }

    #[test]
    fn a_change_can_be_taken_back() {
        let typed = Fields::parse(b"base=1&f.yoke.kind=bolt_on&f.use.raced=yes&do=drop.yoke.kind");
        let trial = Trial::read(&typed, &Contents::default());
        assert_eq!(trial.edit.facts.len(), 1);
        assert_eq!(trial.kept(typed).get("f.yoke.kind"), None);
    }

    #[test]
    fn what_cannot_be_taken_is_named_and_put_in_sight_when_it_is_to_be_kept() {
        let trial = trial("group=yoke&f.converter.stall_rpm=fast&hours=long&what.1=Work&amount.1=much&do=keep");
        let fields: Vec<_> = trial.problems.iter().map(|problem| problem.field.as_str()).collect();
        assert_eq!(fields, ["hours", "amount.1", "f.converter.stall_rpm"]);
        assert_eq!(trial.group, "converter");
    }

    #[test]
    fn hours_are_minutes_and_read_back() {
        assert_eq!(trial("hours=1.5").minutes, Some(90));
        assert_eq!(trial("hours=").minutes, None);
        assert_eq!(hours(90), "1.5");
        assert_eq!(hours(0), "0");
    }

    #[test]
    fn nobody_tries_out_a_reading() {
        for found in
            ["bench.rear_end_play_in=0.012", "one_way.low=correct", "one_way.race_state=smooth", "case.crack=none"]
        {
            let trial = trial(&format!("f.{found}&f.yoke.kind=slip"));
            assert_eq!((trial.edit.facts.len(), trial.problems.len()), (1, 1), "{found}");
        }
        assert_eq!(facts_of("bench").count(), 0);
        let one_way: Vec<_> = facts_of("one_way").map(|fact| fact.declaration().path).collect();
        assert_eq!(one_way, ["one_way.race_shape", "one_way.kind", "one_way.elements"]);
    }

    #[test]
    fn what_is_tried_is_a_plan_whoever_types_it() {
        let trial = trial("f.valve_body.kind=manual&f.pan.depth=deep");
        assert!(trial.edit.facts.len() == 2 && trial.edit.facts.iter().all(|fact| fact.source == Source::Planned));
    }

    #[test]
    fn every_group_shown_can_be_asked_for_and_no_record_is_typed() {
        assert!(groups().all(|group| facts_of(group).all(|fact| crate::plan::steps::filler(fact).is_none())));
        assert!(!groups().any(|group| group == "order" || group == "paper"));
        assert!(groups().any(|group| group == "converter"));
    }
}
