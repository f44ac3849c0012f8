//! What follows from a job: the questions to ask next, the steps of the work, the summary a customer reads.
//!
//! Pure: a job goes in, what to do with it comes out.

pub mod clearing;
mod counter;
mod decided;
mod doubt;
pub mod levers;
pub mod next;
pub mod sheet;
pub mod shelf;
pub mod steps;
pub mod summary;

pub use counter::{Asked, Question, Section, comes_up, counter, counter_question, counter_sections};
pub use decided::can_be_decided;
pub use doubt::doubt;
