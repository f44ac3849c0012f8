//! Cores on the shelf held against what a customer wants built.
//!
//! A core is a unit in stock of which some facts are known. Put under a spec, its facts take the place
//! of those of the customer's own unit, and the rule book says what it makes of that. A fact nobody
//! wrote down about a core is unknown there, even where it was known of the customer's unit: it was
//! another unit's fact.

use crate::job::{FactId, FactSet, Job, Sheet, fact_ids};
use crate::rules::{Limits, Severity, judge};
use serde_json::Value;

/// How a core would do under a spec. The best comes first in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Fit {
    /// Stops there would be.
    pub stops: usize,
    /// Checks that could not be decided: not passes, so a core of which little is known is no find.
    pub open: usize,
    /// Cautions there would be.
    pub cautions: usize,
    /// Its place in the list that was given.
    pub place: usize,
}

/// A spec, ready to be held against many cores.
pub struct Wanted {
    job: Job,
    of_the_unit: FactSet,
}

impl Wanted {
    /// What is wanted: everything known of the job but what is a fact of the unit that was brought.
    pub fn of(spec: &Job) -> Self {
        let mut job = spec.clone();
        let mut of_the_unit = FactSet::EMPTY;
        for fact in fact_ids().filter(|fact| is_of_the_unit(*fact)) {
            of_the_unit = of_the_unit.with(FactSet::of(fact));
            put(&mut job, fact, &Value::Null);
        }
        Self { job, of_the_unit }
    }

    /// The job with this core under it.
    pub fn with(&self, core: &Job) -> Job {
        let mut job = self.job.clone();
        for fact in self.of_the_unit.iter() {
            if let Some(value) = core.slot(fact).json() {
                put(&mut job, fact, &value);
            }
        }
        job
    }

    /// How each core would do, the best first. Goes through the list once.
    pub fn fits<'a>(&self, cores: impl IntoIterator<Item = &'a Job>, limits: &Limits) -> Vec<Fit> {
        let mut fits: Vec<Fit> =
            cores.into_iter().enumerate().map(|(place, core)| self.fit(place, core, limits)).collect();
        fits.sort_unstable();
        fits
    }

    fn fit(&self, place: usize, core: &Job, limits: &Limits) -> Fit {
        let verdicts = judge(&self.with(core), limits);
        let count = |severity| verdicts.findings.iter().filter(|finding| finding.rule.severity == severity).count();
        let (stops, cautions) = (count(Severity::Stop), count(Severity::Caution));
        Fit { stops, open: verdicts.undecided.len(), cautions, place }
    }
}

/// Is it a fact of the unit itself, seen on the outside or inside, rather than of the car or of what is wanted?
fn is_of_the_unit(fact: FactId) -> bool {
    const GROUPS: [&str; 5] = ["case", "bell", "pump", "output", "gears"];
    let said = fact.declaration();
    let group = said.path.split('.').next().unwrap_or_default();
    matches!(said.sheet, Sheet::Outside | Sheet::Inside) && GROUPS.contains(&group)
}

fn put(job: &mut Job, fact: FactId, value: &Value) {
    let read = job.slot_mut(fact).read(value, fact.declaration());
    debug_assert!(read.is_ok(), "a value of one job is a value of every job");
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::job::BellKind;

    fn spec() -> Job {
        let mut spec = Job::plain();
        spec.bell.kind.set(BellKind::BoltOn);
        spec
    }

    fn core(bosses: Option<u32>) -> Job {
        let mut core = Job::plain();
        core.bell.kind.set(BellKind::BoltOn);
        core.bell.ring_holes.set(8);
        core.pump.holes.set(8);
        match bosses {
            Some(bosses) => {
                core.case.pump_bosses.set(bosses);
                core.case.pump_tapped.set(bosses);
            }
            None => core.case.pump_bosses.forget(),
        }
        core
    }

    #[test]
    fn the_core_with_enough_bosses_comes_before_the_one_nobody_counted() {
        let cores = [core(None), core(Some(6)), core(Some(8))];
        let fits = Wanted::of(&spec()).fits(&cores, &Limits::default());
        let order: Vec<usize> = fits.iter().map(|fit| fit.place).collect();
        assert_eq!(order[0], 2, "{fits:?}");
        let of = |place: usize| fits.iter().find(|fit| fit.place == place).expect("every core has its fit");
        assert!(of(0).open > of(2).open, "not counted is not known, whatever was counted on the customer's own case");
        assert!(of(1).cautions + of(1).stops > of(2).cautions + of(2).stops, "six bosses are fewer than eight");
    }

    #[test]
    fn a_core_brings_its_own_facts_and_leaves_the_customers_wishes_alone() {
        let (mut spec, mut core) = (spec(), core(Some(8)));
        spec.engine.torque_lbft.set(crate::quantity::Quantity::new(700.0));
        core.engine.torque_lbft.set(crate::quantity::Quantity::new(1.0));
        let job = Wanted::of(&spec).with(&core);
        assert_eq!(job.engine.torque_lbft, spec.engine.torque_lbft);
        assert_eq!(job.case.pump_bosses, core.case.pump_bosses);
    }
}
