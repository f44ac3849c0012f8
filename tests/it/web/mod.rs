//! The pages, asked through the router that serves them, by people of every role.

mod client;
mod door;
mod facts;
mod guards;
mod jobs;
mod links;
mod people;
mod roles;
mod ticket;
