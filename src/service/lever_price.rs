//! What changes cost in this shop: anybody who works here may read it, the owner sets it.

use super::form;
use super::write::Scene;
use super::{By, Caller, Command, Failure, PriceSet, Service};
use crate::plan::levers::{LeverPrice, Prices, lever_named};
use crate::quantity::Cents;
use crate::store::lever_price;
use crate::ticket::{Action, Change, Happening, Problem};
use serde::Serialize;
use sqlx::PgConnection;
use uuid::Uuid;

/// The name under which the labour rate is kept.
pub const LABOUR_HOUR: &str = "labour-hour";

/// The most that a part or an hour may cost: a guard against slips of the hand.
const DEAREST: i64 = 100_000_000;
/// The longest a lever may take: four weeks of work.
const LONGEST: u32 = 160 * 60;
/// How many settings a page shows.
const HISTORY: i64 = 200;

/// The shop's prices with what was set about one of them.
#[derive(Clone, Debug)]
pub struct ShopPrices {
    /// What stands.
    pub prices: Prices,
    /// What was set of the one asked for, newest first; of all, the latest of each.
    pub set: Vec<PriceSet>,
}

impl Service {
    /// What changes cost here, with the settings of this one, or the latest of each.
    ///
    /// # Errors
    /// When the database does not answer.
    pub async fn lever_prices(&self, caller: &Caller, only: Option<&str>) -> Result<ShopPrices, Failure> {
        self.admit(caller, Action::ReadTickets).await?;
        let (shop, only) = (caller.shop, only.map(str::to_owned));
        self.read(|conn| {
            let only = only.clone();
            Box::pin(async move {
                let prices = load(conn, shop).await?;
                let set = match only {
                    Some(name) => lever_price::history(conn, shop, &name, HISTORY).await?,
                    None => lever_price::latest(conn, shop, None).await?,
                };
                Ok(ShopPrices { prices, set })
            })
        })
        .await
    }
}

/// The shop's prices as they stand.
pub(super) async fn load(conn: &mut PgConnection, shop: Uuid) -> Result<Prices, Failure> {
    let mut prices = Prices::default();
    for set in lever_price::latest(conn, shop, None).await? {
        let (Some(minutes), Some(cents)) = (set.minutes, set.cents) else { continue };
        if set.name == LABOUR_HOUR {
            prices.hour = Cents(cents);
        } else {
            let minutes = u32::try_from(minutes).unwrap_or_default();
            prices.own.insert(set.name, LeverPrice { minutes, parts: Cents(cents) });
        }
    }
    Ok(prices)
}

/// What something costs, set by the owner. Plans made from then on reckon with it.
#[derive(Clone, Debug, Serialize)]
pub struct SetLeverPrice {
    /// The lever's code, or [`LABOUR_HOUR`].
    pub name: String,
    /// The turn of the latest setting the form knew of; 0 when there was none.
    pub made_from: i32,
    /// The labour and the parts; none: back to as supplied. The labour rate has no minutes.
    pub price: Option<(u32, Cents)>,
}

impl Command for SetLeverPrice {
    type Answer = ();
    const NAME: &'static str = "set_lever_price";
    const BY: By = By::Staff(Action::ManageShop);

    async fn carry_out(&self, scene: &mut Scene<'_>) -> Result<(), Failure> {
        let lever = lever_named(&self.name);
        if lever.is_none() && self.name != LABOUR_HOUR {
            return Err(Failure::NotFound("such change"));
        }
        let latest = lever_price::latest(scene.conn, scene.shop, Some(&self.name)).await?.pop();
        let turn = latest.as_ref().map_or(0, |latest| latest.turn);
        let mut problems = Vec::new();
        if let Some(latest) = latest.as_ref().filter(|_| turn != self.made_from) {
            let message =
                format!("{} set this while you were writing. Send yours again if you still want it.", latest.made_by);
            problems.push(Problem::new("parts", message));
        }
        if let Some((minutes, cents)) = self.price {
            if minutes > LONGEST {
                problems.push(Problem::new("hours", format!("The labour can be {} hours at most.", LONGEST / 60)));
            }
            if !(0..=DEAREST).contains(&cents.0) {
                problems.push(Problem::new("parts", format!("The amount can be 0 to {}.", Cents(DEAREST))));
            }
        }
        form::none(problems)?;
        let was = latest.and_then(|latest| latest.minutes.zip(latest.cents));
        let now = self.price.map(|(minutes, cents)| (i32::try_from(minutes).unwrap_or(i32::MAX), cents.0));
        if was == now {
            return Ok(());
        }
        let caller = scene.caller()?;
        let (minutes, cents) = now.unzip();
        let made_by = caller.name.clone();
        let set = PriceSet { name: self.name.clone(), turn: turn + 1, minutes, cents, made_by, at: scene.now };
        let staff = caller.staff;
        lever_price::insert(scene.conn, scene.shop, staff, &set).await?;
        let label = lever.map_or("Labour, an hour", |lever| lever.name).to_owned();
        let change = Change { field: self.name.clone(), label, from: in_words(was), to: in_words(now) };
        scene.happened_in_shop(Happening::LeverPriced { change }).await
    }
}

fn in_words(price: Option<(i32, i64)>) -> String {
    match price {
        None => "as supplied".to_owned(),
        Some((0, cents)) => Cents(cents).to_string(),
        Some((minutes, cents)) => format!("{minutes} min and {}", Cents(cents)),
    }
}
