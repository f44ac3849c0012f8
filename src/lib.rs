//! Endplay: job tickets for a small automatic-transmission rebuild shop.
//!
//! The rooms stand in layers; a file imports only from rooms above its own here.

pub mod quantity;

pub mod calc;

pub mod job;

pub mod rules;

pub mod plan;

pub mod sums;

pub mod picture;

pub mod ticket;

pub mod store;

pub mod service;

pub mod web;

pub mod postgres;

pub mod settings;

pub mod demo;

pub mod command;
