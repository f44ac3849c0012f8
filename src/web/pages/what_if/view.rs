//! What a trial comes to, as the page and the ticket's cards show it.

use super::form::{Trial, facts_of, groups, hours};
use crate::job::{FactId, Job, fact_named, group_label};
use crate::plan::levers::{Lever, Prices, levers};
use crate::rules::{Derived, DerivedId, Limits};
use crate::service::{Preview, Revision, TicketPage, Variant};
use crate::ticket::{Action, Change, Clash, Contents, Price, Unmerged, may};
use crate::web::difference::Difference;
use crate::web::facts::{Control, FactField, as_typed, name_of};
use crate::web::findings::counted;
use crate::web::form::{Fields, FormState, Problem};
use crate::web::frame::Frame;
use crate::web::moment::moment;
use crate::web::pages::ticket::Head;
use crate::web::pages::ticket::price::{PriceRow, rows};
use askama::Template;
use jiff::tz::TimeZone;
use serde_json::Value;

/// The page.
#[derive(Template)]
#[template(path = "pages/what_if.html")]
pub struct WhatIfPage {
    frame: Frame,
    head: Head,
    form: FormState,
    base: i32,
    /// The name of the variant that gets a new version; empty when a new one would be kept.
    variant: String,
    nth: Option<i32>,
    group: &'static str,
    /// The groups to choose from.
    groups: Vec<(&'static str, &'static str)>,
    fields: Vec<FactField>,
    /// Changes to facts that are not shown.
    carried: Vec<(String, String)>,
    /// What is changed, each to be taken back.
    changed: Vec<Changed>,
    may_price: bool,
    price_rows: Vec<PriceRow>,
    look: Look,
}

/// One fact that is changed on the copy.
struct Changed {
    path: String,
    label: &'static str,
    to: String,
}

/// What the changes come to.
#[derive(Template)]
#[template(path = "parts/what_if_look.html")]
pub struct Look {
    /// What cannot be read, while nobody has asked to keep it.
    problems: Vec<Problem>,
    summary: String,
    changes: Vec<Change>,
    difference: Difference,
    numbers: Vec<Number>,
    price: PriceMove,
    hours: String,
    levers: Vec<String>,
    void: bool,
}

/// A worked-out number that moves.
struct Number {
    label: String,
    before: String,
    after: String,
}

/// How the price moves.
pub struct PriceMove {
    /// What it is now.
    pub before: String,
    /// What it would be.
    pub after: String,
    /// The lines of that.
    pub lines: Vec<(String, String)>,
}

/// A variant beside the job as it stands: the differences only.
pub struct VariantCard {
    /// Which variant.
    pub nth: i32,
    /// Which version of it.
    pub version: i32,
    /// Its name.
    pub name: String,
    /// Who made it, when, from which version of the job.
    pub made: String,
    /// What would change.
    pub changes: Vec<Change>,
    /// What that does to the findings; none when it does not fit any more.
    pub difference: Option<Difference>,
    /// What was changed otherwise since it was made.
    pub since: Vec<String>,
    /// The price.
    pub price: PriceMove,
    /// The labour in words.
    pub hours: String,
    /// Who chose it, in words.
    pub chosen: Vec<String>,
}

impl WhatIfPage {
    /// The page with what was typed over what is recorded, and what it comes to.
    pub fn new(
        frame: Frame,
        (ticket, recorded): (&TicketPage, &Contents),
        form: FormState,
        trial: &Trial,
        look: Look,
    ) -> Self {
        let shown: Vec<FactId> = facts_of(trial.group).collect();
        let standing = standing(&shown, &form, recorded);
        let is_shown = |path: &str| shown.iter().any(|fact| fact.declaration().path == path);
        let is_changed = |path: &str, value: &str| {
            fact_named(path).is_some_and(|fact| value != as_typed(recorded.facts.value(fact).as_ref()))
        };
        let typed: Vec<(String, String)> =
            form.typed().starting("f.").map(|(path, value)| (path.to_owned(), value.to_owned())).collect();
        let variant = ticket.variants.iter().find(|variant| Some(variant.nth) == trial.variant);
        Self {
            head: Head::new(ticket),
            base: trial.base,
            variant: variant.map_or_else(String::new, |variant| variant.name.clone()),
            nth: variant.map(|variant| variant.nth),
            group: trial.group,
            groups: groups().map(|group| (group, group_label(group))).collect(),
            fields: shown.iter().map(|fact| FactField::new(*fact, &standing, None, 0)).collect(),
            carried: typed
                .iter()
                .filter(|(path, value)| !is_shown(path) && is_changed(path, value))
                .map(|(path, value)| (format!("f.{path}"), value.clone()))
                .collect(),
            changed: trial.edit.facts.iter().filter_map(changed).collect(),
            may_price: may(frame.caller.role, Action::ChangePrice),
            price_rows: rows(&form, None),
            look,
            frame,
            form,
        }
    }
}

/// The fields of a group: what was typed, and for the rest what is recorded.
fn standing(shown: &[FactId], form: &FormState, recorded: &Contents) -> FormState {
    let mut fields = Fields::default();
    for fact in shown {
        let name = name_of(fact.declaration());
        let typed = form.typed().get(&name).map(str::to_owned);
        fields.set(name, typed.unwrap_or_else(|| as_typed(recorded.facts.value(*fact).as_ref())));
    }
    FormState::back(fields, form.problems.clone())
}

fn changed(change: &crate::ticket::FactChange) -> Option<Changed> {
    let declaration = fact_named(&change.path)?.declaration();
    let to = crate::ticket::in_words(declaration, change.value.as_ref().unwrap_or(&Value::Null));
    Some(Changed { path: change.path.clone(), label: declaration.label, to })
}

impl Look {
    /// The same with what cannot be read yet.
    pub fn with(self, problems: Vec<Problem>) -> Self {
        Self { problems, ..self }
    }

    /// What this preview comes to.
    pub fn new(preview: &Preview, limits: &Limits, prices: &Prices, trial: &Trial) -> Self {
        let (before, after) = (&preview.base.contents, &preview.contents);
        let difference = Difference::new(&preview.base.judgement, &preview.after);
        Self {
            problems: Vec::new(),
            summary: summary(&preview.changes, &difference),
            changes: preview.changes.iter().filter(|change| change.label != "Price").cloned().collect(),
            numbers: numbers(before.facts.job(), after.facts.job(), limits),
            price: PriceMove::new(before.price(), after.price()),
            hours: trial.minutes.map_or_else(String::new, |minutes| format!("{} hours", hours(minutes))),
            levers: matching(before.facts.job(), trial, prices),
            void: preview.voided.is_some(),
            difference,
        }
    }
}

fn summary(changes: &[Change], difference: &Difference) -> String {
    if changes.is_empty() {
        return "Nothing is changed yet.".to_owned();
    }
    format!(
        "{} against the job as it stands: {} would come, {} would go.",
        counted(changes.len(), "change"),
        counted(difference.new.len(), "finding"),
        counted(difference.gone.len(), "finding")
    )
}

impl PriceMove {
    fn new(before: Option<&Price>, after: Option<&Price>) -> Self {
        let total = |price: Option<&Price>| price.cloned().unwrap_or_default().total_in_words();
        let lines = after.into_iter().flat_map(|price| &price.lines);
        Self {
            before: total(before),
            after: total(after),
            lines: lines.map(|line| (line.what.clone(), line.cents.to_string())).collect(),
        }
    }
}

/// The worked-out numbers that differ.
fn numbers(before: &Job, after: &Job, limits: &Limits) -> Vec<Number> {
    let (before, after) = (Derived::of(before, limits), Derived::of(after, limits));
    let number = |id: &DerivedId| {
        let declaration = id.declaration();
        let (was, is) = (before.get(*id).0, after.get(*id).0);
        (was != is).then(|| Number {
            label: declaration.doc.trim().trim_end_matches('.').to_owned(),
            before: printed(declaration.path, was.as_ref()),
            after: printed(declaration.path, is.as_ref()),
        })
    };
    DerivedId::ALL.iter().filter_map(number).collect()
}

/// A worked-out value in words, with the unit its name ends in.
fn printed(path: &str, value: Option<&Value>) -> String {
    let number = match value {
        None => return crate::ticket::NOT_KNOWN.to_owned(),
        Some(Value::Bool(yes)) => return if *yes { "yes" } else { "no" }.to_owned(),
        Some(value) => value.as_f64().unwrap_or_default(),
    };
    let short = |number: f64| {
        let places = if number.abs() >= 100.0 {
            0
        } else if number.abs() >= 10.0 {
            1
        } else {
            3
        };
        let text = format!("{number:.places$}");
        if text.contains('.') { text.trim_end_matches('0').trim_end_matches('.').to_owned() } else { text }
    };
    let unit = [("_rpm", "rpm"), ("_in", "in"), ("_lbft", "lb-ft"), ("_kw", "kW"), ("_c", "°C")];
    if path.ends_with("error") || path.ends_with("share") {
        return format!("{} %", short(number * 100.0));
    }
    match unit.into_iter().find(|(ending, _)| path.ends_with(ending)) {
        Some((_, unit)) => format!("{} {unit}", short(number)),
        None => short(number),
    }
}

/// The known changes a shop can make that set just what is changed here, with the work and parts they take: a suggestion.
fn matching(job: &Job, trial: &Trial, prices: &Prices) -> Vec<String> {
    let is_set = |lever: &&&Lever| {
        let settings = lever.on(job).unwrap_or_default();
        let own: Vec<_> = settings.iter().filter(|set| set.fact != job.paper.permanent_mods.id()).collect();
        !own.is_empty()
            && own.iter().all(|set| {
                let path = set.fact.declaration().path;
                trial.edit.facts.iter().any(|change| change.path == path && change.value.as_ref() == Some(&set.value))
            })
    };
    let told = |lever: &&Lever| {
        let price = prices.of(lever);
        let minutes = i32::try_from(price.minutes).unwrap_or(i32::MAX);
        let source = match prices.own.contains_key(lever.code) {
            true => "this shop's own price".to_owned(),
            false => format!("as supplied, {}; check it before you name a price", Lever::MARK),
        };
        format!(
            "{}: about {} hours of work, parts {}, together {} ({source}). It {}.",
            lever.name,
            hours(minutes),
            price.parts,
            prices.cost(lever),
            lever.undo.label()
        )
    };
    levers().iter().filter(is_set).map(told).collect()
}

impl VariantCard {
    /// A variant beside the job as it stands.
    pub fn new(variant: &Variant, current: &Revision, zone: &TimeZone) -> Self {
        let would = variant.would.as_ref();
        let price = would.map_or(variant.edit.price.as_ref(), |would| would.contents.price());
        Self {
            nth: variant.nth,
            version: variant.version,
            name: variant.name.clone(),
            made: format!("{}, {}, from version {}", variant.made_by, moment(variant.at, zone), variant.made_from),
            changes: would.map(|would| would.changes.clone()).unwrap_or_default(),
            difference: would.ok().map(|would| Difference::new(&current.judgement, &would.judgement)),
            since: would.err().map(in_the_way).unwrap_or_default(),
            price: PriceMove::new(current.contents.price(), price),
            hours: variant.minutes.map_or_else(|| "not said".to_owned(), hours),
            chosen: variant
                .chosen
                .iter()
                .map(|chosen| {
                    let earlier = if chosen.version == variant.version { "" } else { ", in an earlier version" };
                    format!("Chosen by {}, {}{earlier}.", chosen.name, moment(chosen.at, zone))
                })
                .collect(),
        }
    }
}

/// Why a variant no longer fits the job.
fn in_the_way(why: &Unmerged) -> Vec<String> {
    match why {
        Unmerged::Clashes(clashes) => clashes.iter().map(since).collect(),
        Unmerged::Problems(problems) => problems.iter().map(|problem| problem.message.clone()).collect(),
    }
}

/// What somebody changed since, plainly.
pub fn since(clash: &Clash) -> String {
    let who = clash.by.as_deref().unwrap_or("somebody");
    format!(
        "{}: this has {}, but {who} has since written down {}. Look it over, then keep it anew.",
        clash.label, clash.yours, clash.theirs
    )
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    #[test]
    fn numbers_are_printed_short_with_their_unit() {
        for (path, value, words) in [
            ("converter.stall_here_rpm", json!(2843.6), "2844 rpm"),
            ("speedometer.error", json!(0.0512), "5.12 %"),
            ("converter.pilot_engaged_in", json!(0.21), "0.21 in"),
            ("need.shield", json!(true), "yes"),
            ("bell.usable_bolts", json!(6), "6"),
        ] {
            assert_eq!(printed(path, Some(&value)), words);
        }
        assert_eq!(printed("need.shield", None), crate::ticket::NOT_KNOWN);
    }
}
