//! What people can do, one use case a file: who may, what is decided, what is kept.
//!
//! Everything that changes anything is a [`Command`] and goes through [`Service::write`]. What only
//! looks is a method that takes the [`Caller`].

mod account;
mod admit;
mod board;
mod book;
mod change;
mod choose;
mod class_table;
mod clearing;
mod contact;
mod counter;
mod failure;
mod fired;
mod form;
mod house_rule;
mod house_trial;
mod instrument;
mod judge;
mod judge_again;
mod lever_price;
mod limit;
mod link;
mod link_answer;
mod link_page;
mod make_link;
mod measure;
mod move_stage;
mod note;
mod password;
mod plan_ahead;
mod preview;
mod receipt;
mod search;
mod selective_set;
mod session;
mod set_aside;
mod setup;
mod shop;
mod sign_in;
mod staff;
mod strike;
mod sum;
mod take_in;
mod tick;
mod ticket_page;
mod token;
mod use_class_table;
mod variant;
mod weigh;
mod write;

pub use crate::rules::house::house_code;
pub use account::ChangePassword;
pub use book::{Book, HouseSince, LimitSince};
pub use change::{ChangeTicket, Revised};
pub use choose::{ChosenOffer, CustomerChoice, Offer, Offers};
pub use class_table::{TableVersion, WriteClassTable};
pub use clearing::{ApplyPlan, price_with};
pub use contact::{ChangeContact, Person, VehicleWords};
pub use counter::AnswerAtCounter;
pub use failure::Failure;
pub use house_rule::{SwitchHouseRule, WriteHouseRule, Written, read_condition};
pub use instrument::WriteInstrument;
pub use judge::judge;
pub use judge_again::JudgeAgain;
pub use lever_price::{LABOUR_HOUR, SetLeverPrice, ShopPrices};
pub use limit::{ChangeLimit, ShopLimits};
pub use link::{CustomerLink, LinkState};
pub use link_answer::{Answered, CustomerAnswer};
pub use link_page::{LinkPage, Shown, SinceSigned};
pub use make_link::{LinkMade, MakeLink, RevokeLink};
pub use measure::{BenchSheet, ChoosePart, Measured, TakeReading, is_past, latest, proposal, taking_of};
pub use move_stage::{MoveStage, Moved};
pub use note::WriteNote;
pub use plan_ahead::{ChangePromise, ChangeWaits};
pub use preview::{Preview, Voided};
pub use receipt::Receipt;
pub use selective_set::{ChooseUnits, Shelf, TypedPart, WriteSet};
pub use session::{Caller, SignedIn};
pub use set_aside::{BringBack, SetAside};
pub use setup::{FirstStart, SetUp};
pub use shop::ChangeShop;
pub use staff::{AddStaff, DisableStaff};
pub use strike::{StrikeReading, without};
pub use sum::{Fill, PutSum, SumPut};
pub use take_in::{TakeIn, TakenIn, WhichVehicle, WhoseUnit};
pub use tick::{AddWork, TickStep, Ticked};
pub use ticket_page::{Compared, TicketPage};
pub use token::Pass;
pub use use_class_table::{TableTaken, UseClassTable};
pub use variant::{ApplyVariant, KeepVariant, MOST_VARIANTS, Variant, WithdrawVariant, Would, cannot_be_planned};
pub use write::{By, Command, Key, Who};

pub use crate::store::board::Line;
pub use crate::store::class_table::KeptTable;
pub use crate::store::customer::{Customer, Vehicle};
pub use crate::store::event::Event;
pub use crate::store::house_rule::{OpenJob, Trial, Version};
pub use crate::store::instrument::KeptInstrument;
pub use crate::store::lever_price::PriceSet;
pub use crate::store::limit::LimitChange;
pub use crate::store::reading::{Chosen as PartChosen, Reading, Struck};
pub use crate::store::revision::{Heading, Revision};
pub use crate::store::search::Returning;
pub use crate::store::selective_set::KeptSet;
pub use crate::store::shop::Shop;
pub use crate::store::signature::Passed;
pub use crate::store::staff::Staff;
pub use crate::store::ticket::Ticket;
pub use crate::store::variant::Chosen;

use crate::job::Job;
use crate::ticket::{Judgement, Silenced};
use jiff::Timestamp;
use sqlx::{PgConnection, PgPool};
use std::pin::Pin;
use std::sync::Arc;

/// Holds a job against the shop's rule book, setting aside what was set aside: [`judge()`], except in tests, which
/// bring a few rules that never change.
pub type Judge = fn(&Job, &Book, &[Silenced]) -> Judgement;

type Clock = Arc<dyn Fn() -> Timestamp + Send + Sync>;

/// Everything people can do, on one database. Cheap to clone; holds nothing that two instances could disagree on.
#[derive(Clone)]
pub struct Service {
    pool: PgPool,
    judge: Judge,
    clock: Clock,
}

impl Service {
    /// The service on this database with this rule book.
    pub fn new(pool: PgPool, judge: Judge) -> Self {
        Self { pool, judge, clock: Arc::new(Timestamp::now) }
    }

    /// The same with another clock.
    #[must_use]
    pub fn with_clock(self, clock: impl Fn() -> Timestamp + Send + Sync + 'static) -> Self {
        Self { clock: Arc::new(clock), ..self }
    }

    /// What time it is. To the microsecond, as the database keeps it, so that a time read back is the time given.
    pub(crate) fn now(&self) -> Timestamp {
        let now = (self.clock)();
        Timestamp::from_microsecond(now.as_microsecond()).unwrap_or(now)
    }

    /// Looks something up. A lost connection is tried again; looking twice harms nobody.
    async fn read<T>(
        &self,
        work: impl for<'c> Fn(&'c mut PgConnection) -> Looking<'c, T> + Send + Sync,
    ) -> Result<T, Failure> {
        let mut patience = write::Patience::lasting(write::FOR_A_LOOK);
        loop {
            let tried = async { work(&mut *self.pool.acquire().await?).await }.await;
            match tried {
                Err(failure) if failure.passes() && patience.wait().await => {}
                done => return done,
            }
        }
    }
}

type Looking<'c, T> = Pin<Box<dyn Future<Output = Result<T, Failure>> + Send + 'c>>;
