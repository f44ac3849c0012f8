//! What is on the shelf of each selective set, and the units the shop writes numbers in.

use super::form;
use super::write::Scene;
use super::{By, Caller, Command, Failure, KeptSet, Service};
use crate::plan::sheet::{Habit, MOST_PARTS, SetKind, SetPart};
use crate::store::selective_set::{self, habit, insert_habit};
use crate::ticket::{Action, Change, Happening, Problem};
use serde::Serialize;

/// The shop's sets with the units it writes numbers in.
#[derive(Clone, Debug)]
pub struct Shelf {
    /// The latest version of every set that was typed.
    pub sets: Vec<KeptSet>,
    /// The units.
    pub habit: Habit,
    /// The turn the units came with; 0 as supplied.
    pub habit_turn: i32,
}

impl Shelf {
    /// What is on the shelf of this set; nothing when it was never typed.
    pub fn parts(&self, kind: SetKind) -> &[SetPart] {
        self.kept(kind).map_or(&[], |kept| &kept.parts)
    }

    /// A set as it was typed last.
    pub fn kept(&self, kind: SetKind) -> Option<&KeptSet> {
        self.sets.iter().find(|kept| kept.code == kind.code())
    }
}

pub(super) async fn shelf(conn: &mut sqlx::PgConnection, shop: uuid::Uuid) -> Result<Shelf, Failure> {
    let (habit, habit_turn) = habit(conn, shop).await?;
    Ok(Shelf { sets: selective_set::latest(conn, shop).await?, habit, habit_turn })
}

impl Service {
    /// The shop's selective sets and its units.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn shelf(&self, caller: &Caller) -> Result<Shelf, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(shelf(conn, shop))).await
    }
}

/// A part of a set, as it was typed.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize)]
pub struct TypedPart {
    /// Its size; of a pin, where its window begins.
    pub size: String,
    /// How far it may be off; of a pin, where its window ends.
    pub other: String,
    /// How it is marked.
    pub mark: String,
}

/// What is on the shelf of a set, typed anew as a whole.
#[derive(Clone, Debug, Serialize)]
pub struct WriteSet {
    /// The set's code.
    pub code: String,
    /// The version the form showed; 0 when there was none.
    pub made_from: i32,
    /// The parts, line by line; empty lines are passed over.
    pub parts: Vec<TypedPart>,
}

impl Command for WriteSet {
    type Answer = i32;
    const NAME: &'static str = "write_set";
    const BY: By = By::Staff(Action::ChangeFacts);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<i32, Failure> {
        let kind = SetKind::from_code(&self.code).ok_or(Failure::NotFound("such set"))?;
        let shelf = shelf(scene.conn, scene.shop).await?;
        let was = shelf.kept(kind);
        let version = was.map_or(0, |kept| kept.version);
        let (mut parts, mut problems) = (Vec::new(), Vec::new());
        if let Some(was) = was.filter(|_| version != self.made_from) {
            let message = format!("{} typed this set while you were writing. Look at it again first.", was.made_by);
            problems.push(Problem::new("size.1", message));
        }
        for (nth, part) in (1..).zip(&self.parts) {
            let blank = |text: &str| text.trim().is_empty();
            if blank(&part.size) && blank(&part.other) && blank(&part.mark) {
                continue;
            }
            match kind.read_part(nth, (&part.size, &part.other, &part.mark), shelf.habit) {
                Ok(part) => parts.push(part),
                Err(wrong) => problems
                    .extend(wrong.into_iter().map(|(field, message)| Problem::new(format!("{field}.{nth}"), message))),
            }
        }
        if parts.len() > MOST_PARTS {
            problems.push(Problem::new("size.1", format!("A set holds {MOST_PARTS} parts at the most.")));
        }
        form::none(problems)?;
        parts.sort_by(|one, other| one.size.total_cmp(&other.size));
        if was.is_some_and(|kept| kept.parts == parts) || (was.is_none() && parts.is_empty()) {
            return Ok(version);
        }
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let kept = KeptSet { code: self.code.clone(), version: version + 1, parts, made_by, at: scene.now };
        selective_set::insert(scene.conn, scene.shop, staff, &kept).await?;
        let typed = Happening::SetTyped { label: kind.label().to_owned(), version: kept.version };
        scene.happened_in_shop(typed).await?;
        Ok(kept.version)
    }
}

/// The units a number without one is in from now on. What was typed before stays what it was.
#[derive(Clone, Debug, Serialize)]
pub struct ChooseUnits {
    /// The turn the form showed.
    pub made_from: i32,
    /// The units.
    pub habit: Habit,
}

impl Command for ChooseUnits {
    type Answer = ();
    const NAME: &'static str = "choose_units";
    const BY: By = By::Staff(Action::ManageShop);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let (was, turn) = habit(scene.conn, scene.shop).await?;
        if turn != self.made_from {
            let message = "Somebody chose units while you were writing. Look at them again first.";
            return Err(Failure::problem("length", message));
        }
        let changes = differing(was, self.habit);
        if changes.is_empty() {
            return Ok(());
        }
        let caller = scene.caller()?;
        let (staff, name) = (caller.staff, caller.name.clone());
        insert_habit(scene.conn, scene.shop, (staff, &name), (self.habit, turn + 1), scene.now).await?;
        scene.happened_in_shop(Happening::UnitsChosen { changes }).await
    }
}

fn differing(was: Habit, now: Habit) -> Vec<Change> {
    let fields = [
        ("length", "Lengths", was.length.unit().name, now.length.unit().name),
        ("torque", "Torques", was.torque.unit().name, now.torque.unit().name),
        ("pressure", "Pressures", was.pressure.unit().name, now.pressure.unit().name),
    ];
    super::shop::differing(&fields)
}
