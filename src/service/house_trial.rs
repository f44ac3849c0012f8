//! Trying a rule of the shop's own on the jobs there are, before it says anything to anybody.

use super::house_rule::readable;
use super::write::Scene;
use super::{Book, By, Caller, Command, Failure, Key, Service, Who};
use crate::job::Job;
use crate::rules::house::{HouseRule, house_code};
use crate::rules::{Derived, Known, Limits};
use crate::store::house_rule::{self, OpenJob, Trial, Version};
use crate::ticket::{Action, Happening};
use serde::Serialize;
use sqlx::types::Json;
use std::time::{Duration, Instant};

/// Jobs looked at in one go: few enough to hold.
const BATCH: i64 = 200;
/// Jobs looked at in all. A shop with more is told that these were the newest.
const MOST_JOBS: i32 = 20_000;
/// How long a trial may take.
const LONGEST: Duration = Duration::from_secs(10);
/// Jobs that are named of those on which it would have fired, and of those on which it could not decide.
const NAMED: usize = 20;

impl Service {
    /// Holds a version against every job of the shop as it stands, newest first, and keeps what came of it.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when there is no such version; [`Failure::Problems`] when it cannot be read any more.
    pub async fn try_house_rule(&self, caller: &Caller, key: Key, nth: i32, version: i32) -> Result<(), Failure> {
        self.admit(caller, Action::ManageRules).await?;
        let known = self.house_rules(caller).await?;
        let kept = known.into_iter().find(|rule| (rule.nth, rule.version) == (nth, version));
        let kept = kept.ok_or(Failure::NotFound("such version of a rule"))?;
        let rule = readable(&kept).ok_or_else(|| unreadable(&kept))?;
        let trial = self.trial_of(caller, &rule).await?;
        self.write(Who::Staff(caller.clone()), key, KeepTrial { nth, version, trial }).await
    }

    async fn trial_of(&self, caller: &Caller, rule: &HouseRule) -> Result<Tried, Failure> {
        let (shop, until) = (caller.shop, Instant::now() + LONGEST);
        let limits = self.read(|conn| Box::pin(Book::load(conn, shop))).await?.limits;
        let mut tried = Tried::default();
        let mut below = i64::MAX;
        loop {
            let jobs = self
                .read(|conn| Box::pin(async move { Ok(house_rule::facts_of_jobs(conn, shop, below, BATCH).await?) }))
                .await?;
            let Some((last, _)) = jobs.last() else {
                tried.whole = true;
                return Ok(tried);
            };
            below = *last;
            for (number, facts) in &jobs {
                tried.count(rule, *number, facts.job(), &limits);
            }
            if tried.jobs >= MOST_JOBS || Instant::now() > until {
                return Ok(tried);
            }
            tokio::task::yield_now().await;
        }
    }
}

fn unreadable(kept: &Version) -> Failure {
    let why = format!("{} cannot be read any more. Write a new version of it.", house_code(kept.nth));
    Failure::problem("condition", why)
}

/// What a trial came to.
#[derive(Clone, Debug, Default, Serialize)]
struct Tried {
    jobs: i32,
    fired: i32,
    open: i32,
    whole: bool,
    on_jobs: Vec<i64>,
    open_on: Vec<OpenJob>,
}

impl Tried {
    fn count(&mut self, rule: &HouseRule, number: i64, job: &Job, limits: &Limits) {
        self.jobs += 1;
        match rule.condition.verdict(job, &Derived::of(job, limits)) {
            Known::Yes(true, _) => {
                self.fired += 1;
                if self.on_jobs.len() < NAMED {
                    self.on_jobs.push(number);
                }
            }
            Known::Yes(false, _) => {}
            Known::Waits(facts) => {
                self.open += 1;
                if self.open_on.len() < NAMED {
                    let waits = facts.iter().map(|fact| fact.declaration().path.to_owned()).collect();
                    self.open_on.push(OpenJob { job: number, waits });
                }
            }
        }
    }
}

/// Keeps a trial. The key stands for the trying, not for what came of it: a form sent twice tries twice and keeps one.
#[derive(Serialize)]
struct KeepTrial {
    nth: i32,
    version: i32,
    #[serde(skip)]
    trial: Tried,
}

impl Command for KeepTrial {
    type Answer = ();
    const NAME: &'static str = "keep_house_rule_trial";
    const BY: By = By::Staff(Action::ManageRules);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let Tried { jobs, fired, open, whole, on_jobs, open_on } = self.trial.clone();
        let trial = Trial { jobs, fired, open, whole, on_jobs, open_on: Json(open_on), made_by, at: scene.now };
        house_rule::insert_trial(scene.conn, scene.shop, staff, (self.nth, self.version), &trial).await?;
        let (code, version) = (house_code(self.nth), self.version);
        scene.happened_in_shop(Happening::HouseRuleTried { code, version, fired, jobs }).await
    }
}
