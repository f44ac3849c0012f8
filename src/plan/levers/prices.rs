//! What levers cost in one shop.

use super::Lever;
use crate::quantity::Cents;
use std::collections::BTreeMap;

/// A lever's labour and parts as one shop has them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LeverPrice {
    /// The labour it takes.
    pub minutes: u32,
    /// What its parts cost.
    pub parts: Cents,
}

/// A shop's prices: its labour rate, and what it wrote down for single levers.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Prices {
    /// What an hour of labour costs.
    pub hour: Cents,
    /// The shop's own numbers by lever code; every other lever is as supplied.
    pub own: BTreeMap<String, LeverPrice>,
}

/// As the program comes: an invented rate.
impl Default for Prices {
    fn default() -> Self {
        Self { hour: Self::HOUR, own: BTreeMap::new() }
    }
}

impl Prices {
    /// The labour rate as supplied: a shop setting without a source.
    pub const HOUR: Cents = Cents(10_000);

    /// The labour and parts of a lever, here.
    pub fn of(&self, lever: &Lever) -> LeverPrice {
        self.own.get(lever.code).copied().unwrap_or(LeverPrice { minutes: lever.minutes, parts: lever.parts })
    }

    /// Labour and parts together, rounded up to a whole cent.
    pub fn cost(&self, lever: &Lever) -> Cents {
        let LeverPrice { minutes, parts } = self.of(lever);
        let labour = self.hour.0.max(0).saturating_mul(i64::from(minutes)).saturating_add(59) / 60;
        Cents(labour) + Cents(parts.0.max(0))
    }
}
