//! The pages, asked through the router that serves them, by people of every role.

mod client;
mod facts;
mod jobs;
mod links;
mod ticket;
