//! The program as the shop meets it: started, refused, killed, stopped.

mod database_url;
mod docker;
mod killed;
mod refused;
mod served;
mod service;
mod stopped;
#[path = "../support/mod.rs"]
mod support;
