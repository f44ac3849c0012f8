//! Rules of the shop's own: written in versions, tried, switched on and off by the owner.

use super::form::{self, Field, one_line, several_lines};
use super::write::Scene;
use super::{By, Caller, Command, Failure, Service};
use crate::job::Declaration;
use crate::plan::steps::{Filler, filler};
use crate::rules::house::{self, Condition, HouseRule, house_code};
use crate::rules::{Due, Severity};
use crate::store::house_rule::{self, Hand, Trial, Version};
use crate::ticket::{Action, Happening, Problem};
use serde::{Deserialize, Serialize};

const TITLE: Field = Field { name: "title", label: "The title", most: 60, needed: true };
const TOLD_SHOP: Field = Field { name: "told_shop", label: "What the shop is told", most: 600, needed: true };
const FIX: Field = Field { name: "fix", label: "What to do", most: 300, needed: true };
/// The customer's words are needed only when the customer has to accept them.
const fn told_customer(needed: bool) -> Field {
    Field { name: "told_customer", label: "What the customer is told", most: 400, needed }
}

/// A rule as it is written down; nothing of it is in force yet.
#[derive(Clone, Debug, Serialize)]
pub struct WriteHouseRule {
    /// Which rule, with the version the form was made from; none for a new one.
    pub rule: Option<(i32, i32)>,
    /// How bad it is.
    pub severity: String,
    /// From which stage it is asked about.
    pub due: String,
    /// Does the customer have to accept it?
    pub customer_accepts: bool,
    /// A few words.
    pub title: String,
    /// What the shop is told.
    pub told_shop: String,
    /// What the customer is told; empty for nothing.
    pub told_customer: String,
    /// What puts it right.
    pub fix: String,
    /// The condition, in CEL.
    pub condition: String,
}

/// Which version was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Written {
    /// Which rule of the shop.
    pub nth: i32,
    /// Which version of it.
    pub version: i32,
}

impl Command for WriteHouseRule {
    type Answer = Written;
    const NAME: &'static str = "write_house_rule";
    const BY: By = By::Staff(Action::ManageRules);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<Written, Failure> {
        let mut problems = Vec::new();
        let title = one_line(TITLE, &self.title, &mut problems);
        let told_shop = several_lines(TOLD_SHOP, &self.told_shop, &mut problems);
        let told_customer = several_lines(told_customer(self.customer_accepts), &self.told_customer, &mut problems);
        let fix = several_lines(FIX, &self.fix, &mut problems);
        let condition = self.condition.trim().to_owned();
        if let Err(amiss) = read_condition(&condition) {
            problems.extend(amiss.into_iter().map(|sentence| Problem::new("condition", sentence)));
        }
        if severity_named(&self.severity).is_none() {
            problems.push(Problem::new("severity", "Choose how bad it is: stop, caution or note."));
        }
        if Due::from_code(&self.due).is_none() {
            problems.push(Problem::new("due", "Choose the stage from which it is asked about."));
        }
        form::none(problems)?;
        let known = house_rule::versions(scene.conn, scene.shop).await?;
        let (nth, version) = match self.rule {
            None => (known.iter().map(|rule| rule.nth).max().unwrap_or(0) + 1, 1),
            Some((nth, from)) => {
                let newest = known.iter().find(|rule| rule.nth == nth).ok_or(Failure::NotFound("such rule"))?;
                if newest.version != from {
                    let why = format!(
                        "Version {} of this rule was written by {} meanwhile. Open the rule again and look.",
                        newest.version, newest.made_by
                    );
                    return Err(Failure::problem("condition", why));
                }
                (nth, from + 1)
            }
        };
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let rule = Version {
            nth,
            version,
            severity: self.severity.clone(),
            due: self.due.clone(),
            customer_accepts: self.customer_accepts,
            title,
            told_shop,
            told_customer,
            fix,
            condition,
            made_by,
            at: scene.now,
            in_force: false,
        };
        house_rule::insert(scene.conn, scene.shop, staff, &rule).await?;
        let happened = Happening::HouseRuleWritten { code: house_code(nth), version, title: rule.title };
        scene.happened_in_shop(happened).await?;
        Ok(Written { nth, version })
    }
}

/// Switches a version on, or the rule off. Only what has been tried can be switched on.
#[derive(Clone, Debug, Serialize)]
pub struct SwitchHouseRule {
    /// Which rule of the shop.
    pub nth: i32,
    /// Which version.
    pub version: i32,
    /// On, or off.
    pub on: bool,
}

impl Command for SwitchHouseRule {
    type Answer = ();
    const NAME: &'static str = "switch_house_rule";
    const BY: By = By::Staff(Action::ManageRules);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let known = house_rule::versions(scene.conn, scene.shop).await?;
        let wanted = known.iter().find(|rule| (rule.nth, rule.version) == (self.nth, self.version));
        let wanted = wanted.ok_or(Failure::NotFound("such version of a rule"))?;
        if wanted.in_force == self.on {
            return Ok(());
        }
        let tried = house_rule::trial(scene.conn, scene.shop, self.nth, self.version).await?;
        if self.on && tried.is_none() {
            let why = "Try this version on the jobs there are before you switch it on.";
            return Err(Failure::problem("switch", why));
        }
        let caller = scene.caller()?;
        let (staff, name) = (caller.staff, caller.name.clone());
        let hand = Hand { staff, name: &name, at: scene.now };
        house_rule::switch(scene.conn, scene.shop, (self.nth, self.version), self.on, &hand).await?;
        let code = house_code(self.nth);
        scene.happened_in_shop(Happening::HouseRuleSwitched { code, version: self.version, on: self.on }).await
    }
}

impl Service {
    /// Every version of every rule of the shop's own, newest first within a rule.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn house_rules(&self, caller: &Caller) -> Result<Vec<Version>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(async move { Ok(house_rule::versions(conn, shop).await?) })).await
    }

    /// The latest trial of a version, if there was one.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn house_trial(&self, caller: &Caller, nth: i32, version: i32) -> Result<Option<Trial>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(async move { Ok(house_rule::trial(conn, shop, nth, version).await?) })).await
    }
}

/// Reads the condition of a rule that is being written.
///
/// # Errors
/// Everything that is amiss, in sentences. Facts that follow from a job's own papers are among it: they change with the
/// customer's signature, and what a signature covers would change with the rule.
pub fn read_condition(text: &str) -> Result<Condition, Vec<String>> {
    let condition =
        house::read(text).map_err(|amiss| amiss.into_iter().map(|amiss| amiss.message).collect::<Vec<_>>())?;
    let named = condition.names().facts;
    let papers = named.iter().filter(|fact| matches!(filler(*fact), Some(Filler::Papers)));
    let amiss: Vec<String> = papers.map(|fact| no_ground(fact.declaration())).collect();
    if amiss.is_empty() { Ok(condition) } else { Err(amiss) }
}

fn no_ground(fact: &Declaration) -> String {
    format!(
        "{} ({}) is filled from the job's own papers; a rule of the shop's own cannot rest on it.",
        fact.path, fact.label
    )
}

/// The severity of this code.
pub(super) fn severity_named(code: &str) -> Option<Severity> {
    [Severity::Stop, Severity::Caution, Severity::Note].into_iter().find(|severity| severity.code() == code)
}

/// A kept version, ready to be held against jobs; none when this program cannot read it any more.
pub(super) fn readable(kept: &Version) -> Option<HouseRule> {
    Some(HouseRule {
        code: house_code(kept.nth),
        version: kept.version,
        severity: severity_named(&kept.severity)?,
        due: Due::from_code(&kept.due)?,
        customer_accepts: kept.customer_accepts,
        title: kept.title.clone(),
        shop: kept.told_shop.clone(),
        customer: Some(kept.told_customer.clone()).filter(|text| !text.is_empty()),
        fix: kept.fix.clone(),
        condition: house::read(&kept.condition).ok()?,
    })
}
