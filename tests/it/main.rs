//! What a shop relies on, on a real database: the write path and every use case.

#[path = "../support/mod.rs"]
mod support;

mod customer_links;
mod gates;
mod people;
mod privileges;
mod roles;
mod shop;
mod signatures;
mod tickets;
mod web;
mod write_path;
