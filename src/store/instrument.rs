//! Instruments, version by version: a calibration is a new version.

use super::columns::{At, Day};
use jiff::Timestamp;
use jiff::civil::Date;
use jiff_sqlx::ToSqlx;
use sqlx::PgConnection;
use uuid::Uuid;

/// One version of an instrument.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct KeptInstrument {
    /// Which instrument, counted from 1.
    pub nth: i32,
    /// Which version of it, counted from 1.
    pub version: i32,
    /// What the shop calls it.
    pub name: String,
    /// Its kind's code.
    pub kind: String,
    /// When it was calibrated last; none when nobody knows.
    pub calibrated: Option<Date>,
    /// The last day its calibration is good for; none when nobody knows.
    pub due: Option<Date>,
    /// Is it out of use?
    pub retired: bool,
    /// Who wrote this version.
    pub made_by: String,
    /// When.
    pub at: Timestamp,
}

/// The latest version of every instrument, in the order they came.
pub async fn latest(conn: &mut PgConnection, shop: Uuid) -> sqlx::Result<Vec<KeptInstrument>> {
    sqlx::query!(
        r#"SELECT DISTINCT ON (nth) nth, version, name, kind, calibrated AS "calibrated: Day", due AS "due: Day", retired,
                  made_by, at AS "at: At"
           FROM instrument WHERE shop_id = $1 ORDER BY nth, version DESC"#,
        shop
    )
    .map(|row| KeptInstrument {
        nth: row.nth,
        version: row.version,
        name: row.name,
        kind: row.kind,
        calibrated: row.calibrated.map(Into::into),
        due: row.due.map(Into::into),
        retired: row.retired,
        made_by: row.made_by,
        at: row.at.into(),
    })
    .fetch_all(conn)
    .await
}

/// Keeps a version. Two for the same version of one instrument cannot be kept.
pub async fn insert(conn: &mut PgConnection, shop: Uuid, staff: Uuid, kept: &KeptInstrument) -> sqlx::Result<()> {
    sqlx::query!(
        "INSERT INTO instrument (shop_id, nth, version, name, kind, calibrated, due, retired, staff_id, made_by, at)
         VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11)",
        shop,
        kept.nth,
        kept.version,
        kept.name,
        kept.kind,
        kept.calibrated.map(ToSqlx::to_sqlx) as _,
        kept.due.map(ToSqlx::to_sqlx) as _,
        kept.retired,
        staff,
        kept.made_by,
        kept.at.to_sqlx() as _
    )
    .execute(conn)
    .await
    .map(drop)
}
