//! What the integration tests share.

#![allow(dead_code, unused_imports, reason = "each test binary uses a part of it")]

mod cluster;
mod database;

pub use database::{TestDatabase, database};
