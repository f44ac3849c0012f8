//! The pages, one a file: the struct its template is filled from, its handlers, its form.

pub mod board;
pub mod door;
pub mod failed;
pub mod setup;
