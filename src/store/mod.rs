//! SQL and rows, nothing else.

pub mod access;
pub mod pool;

use sqlx::migrate::Migrator;

/// The schema's steps, in the program itself. The role that owns the schema
/// runs them.
pub static MIGRATIONS: Migrator = sqlx::migrate!();
