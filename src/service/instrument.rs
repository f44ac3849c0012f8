//! The shop's instruments and their calibration dates. Whoever measures may keep them.

use super::form::{self, Field, name_key, one_line};
use super::write::Scene;
use super::{By, Caller, Command, Failure, KeptInstrument, Service};
use crate::plan::sheet::Instrument;
use crate::store::instrument;
use crate::ticket::{Action, Happening, Problem};
use jiff::civil::Date;
use serde::Serialize;

const NAME: Field = Field { name: "name", label: "The instrument's name", most: 60, needed: true };

impl Service {
    /// Every instrument the shop ever had, as it stands.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn instruments(&self, caller: &Caller) -> Result<Vec<KeptInstrument>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(async move { Ok(instrument::latest(conn, shop).await?) })).await
    }
}

/// A new instrument, or a new version of one: calibrated, renamed, taken out of use, brought back.
#[derive(Clone, Debug, Serialize)]
pub struct WriteInstrument {
    /// The instrument and the version the form showed; none for a new one.
    pub follows: Option<(i32, i32)>,
    /// What the shop calls it.
    pub name: String,
    /// Its kind's code.
    pub kind: String,
    /// When it was calibrated last.
    pub calibrated: Option<Date>,
    /// The last day its calibration is good for.
    pub due: Option<Date>,
    /// Is it out of use?
    pub retired: bool,
}

impl Command for WriteInstrument {
    type Answer = i32;
    const NAME: &'static str = "write_instrument";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<i32, Failure> {
        let all = instrument::latest(scene.conn, scene.shop).await?;
        let mut problems = Vec::new();
        let name = one_line(NAME, &self.name, &mut problems);
        let own = |kept: &&KeptInstrument| self.follows.is_some_and(|(nth, _)| kept.nth == nth);
        if all.iter().any(|kept| !own(&kept) && name_key(&kept.name) == name_key(&name)) {
            let message = format!("There is an instrument called {name} already. Give this one a name of its own.");
            problems.push(Problem::new("name", message));
        }
        if Instrument::from_code(&self.kind).is_none() {
            problems.push(Problem::new("kind", "Choose what kind of instrument it is."));
        }
        if self.calibrated.zip(self.due).is_some_and(|(calibrated, due)| due < calibrated) {
            let message = "The day it is due again lies before the day it was calibrated. Look at the sticker again.";
            problems.push(Problem::new("due", message));
        }
        let was = all.iter().find(own);
        if self.follows.is_some() && was.is_none() {
            return Err(Failure::NotFound("such instrument"));
        }
        if let Some(was) = was.filter(|was| self.follows.is_some_and(|(_, version)| version != was.version)) {
            let message =
                format!("{} changed {} while you were writing. Look at it again first.", was.made_by, was.name);
            problems.push(Problem::new("name", message));
        }
        form::none(problems)?;
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let kept = KeptInstrument {
            nth: was.map_or_else(|| all.iter().map(|kept| kept.nth).max().unwrap_or(0) + 1, |was| was.nth),
            version: was.map_or(1, |was| was.version + 1),
            name,
            kind: self.kind.clone(),
            calibrated: self.calibrated,
            due: self.due,
            retired: self.retired,
            made_by,
            at: scene.now,
        };
        let what = match was {
            None => "added".to_owned(),
            Some(was) if kept.retired && !was.retired => "out of use".to_owned(),
            Some(was) if was.retired && !kept.retired => "in use again".to_owned(),
            Some(_) => kept.due.map_or_else(|| "changed".to_owned(), |due| format!("good through {due}")),
        };
        instrument::insert(scene.conn, scene.shop, staff, &kept).await?;
        let (nth, name) = (kept.nth, kept.name);
        scene.happened_in_shop(Happening::InstrumentWritten { name, what }).await?;
        Ok(nth)
    }
}
