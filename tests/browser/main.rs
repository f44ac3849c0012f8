//! What people see and do, in a real browser.

#[path = "../support/mod.rs"]
mod support;

mod driver;
mod gloves;
mod journey;
mod keyboard;
mod looks;
mod pages;
mod pictures;
mod print;
mod server;
mod visitor;
mod wire;
