//! A sheet of facts: as a list of what is known, and as questions group by group.

use super::field::FactField;
use crate::job::{FactId, Sheet, fact_ids, group_label};
use crate::plan::steps::filler;
use crate::ticket::{Contents, Judgement, Stage};
use crate::web::findings::waited_for;
use crate::web::form::FormState;
use crate::web::moment::moment;
use jiff::tz::TimeZone;

/// What is known on one sheet.
pub struct SheetCard {
    /// As addresses spell it.
    pub code: &'static str,
    /// Its name.
    pub label: &'static str,
    /// What is known, group by group.
    pub groups: Vec<KnownGroup>,
    /// How many facts are known.
    pub known: usize,
    /// How many facts it has.
    pub of: usize,
    /// How many unknown ones a check waits for at this stage.
    pub wanted: usize,
}

/// The known facts of one group.
pub struct KnownGroup {
    /// The group's heading.
    pub label: &'static str,
    /// What is known.
    pub facts: Vec<KnownFact>,
}

/// A known fact.
pub struct KnownFact {
    /// What it is called.
    pub label: &'static str,
    /// Its value in words, with the unit.
    pub value: String,
    /// How it was learnt.
    pub source: &'static str,
    /// Who wrote it down.
    pub by: String,
    /// When, in the shop's zone.
    pub at: String,
}

/// The questions of one group.
pub struct FieldGroup {
    /// The group's heading.
    pub label: &'static str,
    /// The questions that are asked for now, answered, or to be put right.
    pub fields: Vec<FactField>,
    /// The others: nothing asks for them yet.
    pub more: Vec<FactField>,
    /// How many questions it has.
    pub of: usize,
    /// How many of them a check waits for at this stage.
    pub wanted: usize,
    /// How many are answered.
    pub answered: usize,
}

impl FieldGroup {
    /// Can its answers be taken from one of the shop's class tables?
    pub fn is_class_table(&self) -> bool {
        self.fields.iter().chain(&self.more).any(|field| field.path.starts_with("class_table."))
    }
}

/// Every sheet with what is known on it.
pub fn sheet_cards(contents: &Contents, judgement: &Judgement, stage: Stage, zone: &TimeZone) -> Vec<SheetCard> {
    Sheet::ALL
        .into_iter()
        .map(|sheet| {
            let facts: Vec<FactId> = on(sheet).collect();
            let mut groups: Vec<KnownGroup> = Vec::new();
            for (fact, known) in facts.iter().filter_map(|fact| Some((*fact, known_fact(*fact, contents, zone)?))) {
                let label = group_label(fact.declaration().group());
                match groups.last_mut().filter(|group| group.label == label) {
                    Some(group) => group.facts.push(known),
                    None => groups.push(KnownGroup { label, facts: vec![known] }),
                }
            }
            SheetCard {
                code: sheet.code(),
                label: sheet.label(),
                known: groups.iter().map(|group| group.facts.len()).sum(),
                of: facts.len(),
                wanted: facts.iter().filter(|fact| waited_for(judgement, stage, **fact) > 0).count(),
                groups,
            }
        })
        .collect()
}

fn on(sheet: Sheet) -> impl Iterator<Item = FactId> {
    fact_ids().filter(move |fact| fact.declaration().sheet == sheet)
}

fn known_fact(fact: FactId, contents: &Contents, zone: &TimeZone) -> Option<KnownFact> {
    let origin = contents.facts.origin(fact)?;
    let declaration = fact.declaration();
    Some(KnownFact {
        label: declaration.label,
        value: contents.facts.words(fact),
        source: origin.source.label(),
        by: origin.by.clone(),
        at: moment(origin.at, zone),
    })
}

/// What is known on a sheet that nobody types: filled from the step log and from the job's own papers.
pub fn filled(sheet: Sheet, recorded: &Contents) -> Vec<(&'static str, String)> {
    let filled = on(sheet).filter(|fact| filler(*fact).is_some());
    filled.map(|fact| (fact.declaration().label, recorded.facts.words(fact))).collect()
}

/// The questions of a sheet with what stands in the form.
pub fn field_groups(
    sheet: Sheet,
    form: &FormState,
    recorded: &Contents,
    judgement: &Judgement,
    stage: Stage,
) -> Vec<FieldGroup> {
    let mut groups: Vec<FieldGroup> = Vec::new();
    for fact in on(sheet).filter(|fact| filler(*fact).is_none()) {
        let waits = waited_for(judgement, stage, fact);
        let field = FactField::new(fact, form, recorded.facts.origin(fact), waits);
        let label = group_label(fact.declaration().group());
        if groups.last().is_none_or(|group| group.label != label) {
            groups.push(FieldGroup { label, fields: Vec::new(), more: Vec::new(), of: 0, wanted: 0, answered: 0 });
        }
        if let Some(group) = groups.last_mut() {
            group.of += 1;
            group.wanted += usize::from(waits > 0);
            group.answered += usize::from(field.is_filled());
            let matters = waits > 0 || field.is_filled() || !field.problem.is_empty();
            if matters { group.fields.push(field) } else { group.more.push(field) }
        }
    }
    groups
}
