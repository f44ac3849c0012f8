//! A job ticket: its stages, revisions, approvals, price, and the proof of what was signed.
//!
//! Everything here is pure: time, people and findings come in as arguments.

mod approval;
mod canonical;
mod class_table;
mod coded;
mod contents;
mod diff;
mod facts;
mod gate;
mod happening;
mod hold;
mod judgement;
mod log;
mod merge;
mod origin;
mod paper;
mod price;
mod record;
mod reference;
mod reworded;
mod role;
mod stage;
mod trail;

pub use approval::{Approval, TickStanding, check_ticks, covers, tick_standing};
pub use canonical::{Digest, canonical};
pub use class_table::{Age, ClassTable, class_facts};
pub use contents::{Contents, Quoted, Topic, WORDS_LIMIT, Wording, Words};
pub use diff::{Change, changes};
pub use facts::{Entry, NOT_KNOWN, TicketFacts, in_words};
pub use gate::{Gate, Override, Refusal, Standing, may_move};
pub use happening::{Happening, SignInRefusal};
pub use hold::{not_passed, unsigned};
pub use judgement::{Found, HouseVersion, Judgement, MovedLimit, Severity, Silenced, Undecided};
pub use log::{Act, Logged, UNDO, done, done_here, next_place, order};
pub use merge::{Clash, Edit, FactChange, Hand, Problem, Unmerged, merge};
pub use origin::{Origin, Source};
pub use paper::{Block, Paper, Purpose, Setting, Tick, build_ticks, paper};
pub use price::{Price, PriceLine};
pub use record::{Answer, Channel, Signature, SignatureRecord};
pub use reference::Reference;
pub use reworded::{Reworded, reworded};
pub use role::{Action, Role, may};
pub use stage::{Stage, WaitsFor, Way};
pub use trail::Trail;
