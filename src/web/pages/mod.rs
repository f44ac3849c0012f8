//! The pages, one a file: the struct its template is filled from, its handlers, its form.

pub mod board;
pub mod compare;
pub mod conflict;
pub mod contact;
pub mod counter;
pub mod customer;
pub mod door;
pub mod facts;
pub mod failed;
pub mod gate;
pub mod hand_off;
pub mod history;
pub mod house_rules;
pub mod intake;
pub mod intake_receipt;
pub mod limits;
pub mod next;
pub mod password;
pub mod people;
pub mod questions;
pub mod receipt;
pub mod setup;
pub mod shop;
pub mod tag;
pub mod ticket;
