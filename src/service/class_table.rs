//! The shop's class tables: typed by the desk or an owner, each correction a new version.

use super::form::{self, Field, name_key, one_line};
use super::write::Scene;
use super::{By, Caller, Command, Failure, KeptTable, Service};
use crate::job::fact_named;
use crate::store::class_table::{self, insert};
use crate::ticket::{Action, ClassTable, Happening, Problem};
use serde::{Deserialize, Serialize};
use uuid::Uuid;

const BODY: Field = Field { name: "body", label: "Whose rulebook it is", most: 60, needed: true };
const CLASS: Field = Field { name: "class", label: "The class", most: 60, needed: true };

/// One version of one table.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct TableVersion {
    /// The table.
    pub table: Uuid,
    /// Its version, from 1.
    pub version: i32,
}

/// A class table as it was typed.
#[derive(Clone, Debug, Serialize)]
pub struct WriteClassTable {
    /// The version this one follows, whose year, body and class it keeps; none for a new table.
    pub follows: Option<TableVersion>,
    /// What the rulebook says.
    pub table: ClassTable,
    /// Is it offered on tickets?
    pub offered: bool,
}

impl Command for WriteClassTable {
    type Answer = TableVersion;
    const NAME: &'static str = "write_class_table";
    const BY: By = By::Staff(Action::WriteClassTables);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<TableVersion, Failure> {
        let mut table = self.table.clone();
        let mut next = TableVersion { table: Uuid::now_v7(), version: 1 };
        if let Some(follows) = self.follows {
            let newest = newest(scene, follows.table).await?;
            if newest.version != follows.version {
                let (by, version) = (newest.made_by, newest.version);
                let message = format!("{by} saved version {version} of this table meanwhile. Look at that one first.");
                return Err(Failure::problem("follows", message));
            }
            let asks = std::mem::take(&mut table.asks);
            table = ClassTable { asks, ..newest.table.clone() };
            if table == newest.table && self.offered == newest.offered {
                return Ok(follows);
            }
            next = TableVersion { version: follows.version + 1, ..follows };
        }
        let mut problems = Vec::new();
        table.body = one_line(BODY, &table.body, &mut problems);
        table.class = one_line(CLASS, &table.class, &mut problems);
        problems.extend(complaint(&table));
        form::none(problems)?;
        let caller = scene.caller()?;
        let (staff, made_by) = (caller.staff, caller.name.clone());
        let key = format!("{}|{}", name_key(&table.body), name_key(&table.class));
        let name = table.name();
        let kept = KeptTable {
            id: next.table,
            version: next.version,
            table,
            offered: self.offered,
            made_by,
            made_at: scene.now,
        };
        insert(scene.conn, scene.shop, staff, &key, &kept).await?;
        scene.happened_in_shop(Happening::ClassTableWritten { name, version: next.version }).await?;
        Ok(next)
    }
}

/// Why a table cannot be kept, if it cannot.
fn complaint(table: &ClassTable) -> Option<Problem> {
    if table.asks.is_empty() {
        let message = "Fill in at least one thing that the class asks for. A table without any says nothing.";
        return Some(Problem::new("asks", message));
    }
    if let Some((path, _)) = table.asks.iter().find(|(_, value)| value.as_f64() == Some(0.0)) {
        let message = "0 is no time and no speed. Leave it empty when the rulebook does not say.";
        return Some(Problem::new(format!("f.{path}"), message));
    }
    let (path, refused) = table.as_job().err()?;
    let label = fact_named(&path).map_or(path.as_str(), |fact| fact.declaration().label);
    let allowed = refused.map_or_else(|| "something a class table holds".to_owned(), |refused| refused.allowed);
    Some(Problem::new(format!("f.{path}"), format!("{label}: it has to be {allowed}.")))
}

/// The newest version of a table.
pub(super) async fn newest(scene: &mut Scene<'_>, table: Uuid) -> Result<KeptTable, Failure> {
    let versions = class_table::versions(scene.conn, scene.shop, table).await?;
    versions.into_iter().next().ok_or(Failure::NotFound("such class table"))
}

impl Service {
    /// The newest version of every class table, the newest year first.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn class_tables(&self, caller: &Caller) -> Result<Vec<KeptTable>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        self.read(|conn| Box::pin(async move { Ok(class_table::latest(conn, shop).await?) })).await
    }

    /// One class table, every version of it, the newest first.
    ///
    /// # Errors
    /// [`Failure::NotFound`] when this shop has no such table.
    pub async fn class_table(&self, caller: &Caller, table: Uuid) -> Result<Vec<KeptTable>, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let shop = caller.shop;
        let found = self.read(|conn| Box::pin(async move { Ok(class_table::versions(conn, shop, table).await?) }));
        let versions = found.await?;
        if versions.is_empty() { Err(Failure::NotFound("such class table")) } else { Ok(versions) }
    }
}
