//! How an invented ticket is told: who brought what, and what happened to it, step by step.

use crate::job::Sheet;
use crate::quantity::Cents;
use crate::ticket::{Gate, Purpose, Source, Stage, WaitsFor};

/// A ticket of the invented shop.
pub struct Story {
    /// How many days ago it came over the counter.
    pub days_ago: u16,
    /// Whose it is.
    pub person: Person,
    /// The vehicle in plain words.
    pub vehicle: &'static str,
    /// Its plate; empty for none.
    pub plate: &'static str,
    /// What the customer wants.
    pub wants: &'static str,
    /// What is wrong, in their words.
    pub symptom: &'static str,
    /// What came with the unit.
    pub brought: &'static str,
    /// Promised for this many days from today (below zero: it is late).
    pub promised_in: Option<i16>,
    /// It is the same vehicle as the story at this place, come back.
    pub comeback_of: Option<usize>,
    /// What happened since.
    pub steps: Vec<Step>,
}

/// An invented customer.
#[derive(Clone, Copy)]
pub struct Person {
    /// Name.
    pub name: &'static str,
    /// Telephone number.
    pub phone: &'static str,
}

/// One thing that happened.
pub enum Step {
    /// Facts were written down: a JSON object of `group.leaf` to value.
    Know(Source, &'static str),
    /// A whole sheet was filled in with harmless values, but for these.
    Sheet(Sheet, Source, &'static str),
    /// The class was taken from the shop's table of that name.
    Class(&'static str),
    /// A price was named, line by line.
    Price(&'static [(&'static str, Cents)]),
    /// The customer signed by link.
    Sign(Purpose),
    /// The customer signed at the counter.
    SignHere(Purpose),
    /// The customer declined by link.
    Decline(Purpose, &'static str),
    /// A link was sent and is still open.
    Send(Purpose),
    /// The job moved on.
    To(Stage),
    /// The owner passed a gate.
    Past(Stage, Gate, &'static str),
    /// The job moved back, or was given up, with a reason.
    Back(Stage, &'static str),
    /// Somebody else has the next move.
    Waits(WaitsFor),
    /// Every step that the job surely needs was ticked in turn, through this one, with harmless readings.
    Through(&'static str),
    /// One step was ticked, in turn or not, with a harmless reading.
    Tick(&'static str),
    /// Something was measured: its name, what the instrument showed each time, what was in the unit, with what.
    Measure(&'static str, &'static [&'static str], &'static str, i32),
    /// The best part by the latest reading of this measurement was chosen.
    Fit(&'static str),
    /// A note.
    Note(&'static str),
}
