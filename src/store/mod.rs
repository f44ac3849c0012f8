//! SQL and rows, nothing else.

pub mod access;
pub mod board;
pub mod class_table;
mod columns;
pub mod customer;
pub mod event;
pub mod fired;
pub mod house_rule;
pub mod idempotency;
pub mod instrument;
pub mod lever_price;
pub mod limit;
pub mod link;
pub mod pool;
pub mod reading;
pub mod revision;
pub mod search;
pub mod selective_set;
pub mod session;
pub mod shop;
pub mod sign_in;
pub mod signature;
pub mod staff;
pub mod step;
pub mod ticket;
pub mod variant;

use sqlx::migrate::Migrator;

/// The schema's steps, in the program itself. The role that owns the schema
/// runs them.
pub static MIGRATIONS: Migrator = sqlx::migrate!();
