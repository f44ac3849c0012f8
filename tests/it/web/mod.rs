//! The pages, asked through the router that serves them, by people of every role.

mod aside;
mod board;
mod class_tables;
mod clearing;
mod client;
mod contact;
mod customer;
mod door;
mod facts;
mod guards;
mod holds;
mod house_rules;
mod intake;
mod jobs;
mod limits;
mod links;
mod next;
mod papers;
mod people;
mod roles;
mod rules;
mod steps;
mod ticket;
mod variants;
mod walk;
mod what_if;
