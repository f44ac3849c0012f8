//! The pages, asked through the router that serves them, by people of every role.

mod client;
mod customer;
mod door;
mod facts;
mod guards;
mod jobs;
mod links;
mod papers;
mod people;
mod roles;
mod ticket;
