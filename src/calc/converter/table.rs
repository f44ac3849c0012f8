//! A converter's table: capacity factor and torque ratio over speed ratio, as its maker measured it.
//!
//! Real converters do not behave tidily. Their capacity factor first falls and
//! then rises, and near coupling the torque ratio dips a little under one. A
//! table is refused only for what cannot be.

use super::CapacityFactor;
use crate::quantity::{Kilowatt, One, Quantity, Rpm};

/// One measured row.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Row {
    /// Turbine speed / pump speed.
    pub speed_ratio: Quantity<One>,
    /// Capacity factor there.
    pub factor: CapacityFactor,
    /// Turbine torque / pump torque.
    pub torque_ratio: Quantity<One>,
}

impl Row {
    /// Power out / power in: speed ratio × torque ratio.
    pub fn efficiency(&self) -> Quantity<One> {
        Quantity::new(self.speed_ratio.value() * self.torque_ratio.value())
    }

    /// Power that turns to heat: power in × (1 − efficiency).
    pub fn heat(&self, power_in: Quantity<Kilowatt>) -> Quantity<Kilowatt> {
        power_in * (1.0 - self.efficiency().value())
    }

    /// Turbine speed for a pump speed.
    pub fn turbine_speed(&self, pump: Quantity<Rpm>) -> Quantity<Rpm> {
        pump * self.speed_ratio.value()
    }
}

/// Rows with rising speed ratio.
#[derive(Clone, Debug, PartialEq)]
pub struct Table(Vec<Row>);

/// Why rows make no table; prints as a sentence for the person who typed them.
#[derive(Clone, Debug, PartialEq, thiserror::Error)]
pub enum NoTable {
    /// Fewer than two rows.
    #[error("a converter table wants at least 2 rows, {given} given")]
    TooFew {
        /// How many were given.
        given: usize,
    },
    /// A speed ratio outside nought to one: driving forward from standstill to coupling.
    #[error("row {place} has a speed ratio of {given}; it is 0 at stall and stays below 1")]
    SpeedRatio {
        /// Counted from 1.
        place: usize,
        /// As given.
        given: f64,
    },
    /// Not above the row before.
    #[error("row {place} has a speed ratio of {given}, not above the {before} before it")]
    NotRising {
        /// Counted from 1.
        place: usize,
        /// As given.
        given: f64,
        /// The one before.
        before: f64,
    },
    /// A factor that no converter has.
    #[error("row {place} has a capacity factor of {given}; it has to be above 0")]
    Factor {
        /// Counted from 1.
        place: usize,
        /// As given.
        given: f64,
    },
    /// A torque ratio below nought.
    #[error("row {place} has a torque ratio of {given}; it cannot be below 0")]
    TorqueRatio {
        /// Counted from 1.
        place: usize,
        /// As given.
        given: f64,
    },
    /// More power out than in.
    #[error("row {place} gives out more power than it takes: {speed_ratio} × {torque_ratio} is over 1")]
    MoreOutThanIn {
        /// Counted from 1.
        place: usize,
        /// Its speed ratio.
        speed_ratio: f64,
        /// Its torque ratio.
        torque_ratio: f64,
    },
}

impl Table {
    /// Takes rows in the order of their speed ratios.
    ///
    /// # Errors
    /// [`NoTable`], for the first thing that is wrong.
    pub fn new(rows: Vec<Row>) -> Result<Self, NoTable> {
        if rows.len() < 2 {
            return Err(NoTable::TooFew { given: rows.len() });
        }
        let mut before: Option<f64> = None;
        for (index, row) in rows.iter().enumerate() {
            let place = index + 1;
            let (speed_ratio, torque_ratio) = (row.speed_ratio.value(), row.torque_ratio.value());
            if !(0.0..1.0).contains(&speed_ratio) {
                return Err(NoTable::SpeedRatio { place, given: speed_ratio });
            }
            if let Some(before) = before.filter(|before| speed_ratio <= *before) {
                return Err(NoTable::NotRising { place, given: speed_ratio, before });
            }
            if !(row.factor.0.is_finite() && row.factor.0 > 0.0) {
                return Err(NoTable::Factor { place, given: row.factor.0 });
            }
            if !(torque_ratio.is_finite() && torque_ratio >= 0.0) {
                return Err(NoTable::TorqueRatio { place, given: torque_ratio });
            }
            if row.efficiency().value() > 1.0 {
                return Err(NoTable::MoreOutThanIn { place, speed_ratio, torque_ratio });
            }
            before = Some(speed_ratio);
        }
        Ok(Self(rows))
    }

    /// The rows, speed ratios rising.
    pub fn rows(&self) -> &[Row] {
        &self.0
    }

    /// A row on the straight line between its neighbours; `None` outside the table.
    pub fn at(&self, speed_ratio: Quantity<One>) -> Option<Row> {
        let mut pieces = self.0.iter().zip(self.0.iter().skip(1));
        let (left, right) =
            pieces.find(|(left, right)| left.speed_ratio <= speed_ratio && speed_ratio <= right.speed_ratio)?;
        let share = (speed_ratio - left.speed_ratio) / (right.speed_ratio - left.speed_ratio);
        Some(Row {
            speed_ratio,
            factor: CapacityFactor(left.factor.0 + (right.factor.0 - left.factor.0) * share),
            torque_ratio: left.torque_ratio + (right.torque_ratio - left.torque_ratio) * share,
        })
    }

    /// Capacity factor with the turbine held; `None` when the table begins above standstill.
    pub fn at_stall(&self) -> Option<Row> {
        self.at(Quantity::new(0.0))
    }

    /// Where the torque ratio comes down to one, on the straight line between two rows: from there on the converter only
    /// couples. `None` when it does not come down within the table.
    pub fn coupling_point(&self) -> Option<Row> {
        let over = |row: &Row| (row.torque_ratio - Quantity::new(1.0)).value();
        let mut pieces = self.0.iter().zip(self.0.iter().skip(1));
        let (left, right) = pieces.find(|(left, right)| over(left) > 0.0 && over(right) <= 0.0)?;
        let share = over(left) / (over(left) - over(right));
        self.at(left.speed_ratio + (right.speed_ratio - left.speed_ratio) * share)
    }

    /// The row of greatest efficiency; where two share it, the one at the lower speed ratio.
    pub fn best(&self) -> Option<Row> {
        self.0.iter().copied().reduce(|best, row| if row.efficiency() > best.efficiency() { row } else { best })
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    fn row(speed_ratio: f64, factor: f64, torque_ratio: f64) -> Row {
        Row {
            speed_ratio: Quantity::new(speed_ratio),
            factor: CapacityFactor(factor),
            torque_ratio: Quantity::new(torque_ratio),
        }
    }

    /// As untidy as measured converters are; `tests/published` has a whole one.
    fn untidy() -> Table {
        let rows = [
            row(0.0, 137.5, 2.232),
            row(0.3, 135.7, 1.846),
            row(0.6, 145.3, 1.409),
            row(0.8, 163.0, 1.096),
            row(0.90, 197.7, 0.999),
            row(0.94, 244.5, 1.002),
        ];
        Table::new(rows.into()).expect("as measured")
    }

    #[test]
    fn data_that_is_not_tidy_is_taken() {
        let table = untidy();
        let factors: Vec<f64> = table.rows().iter().map(|row| row.factor.0).collect();
        assert!(!factors.is_sorted(), "its capacity factor falls before it rises");
        assert!(table.rows().iter().any(|row| row.torque_ratio.value() < 1.0), "and its torque ratio dips under one");
        assert_eq!(table.best().map(|row| row.speed_ratio.value()), Some(0.94));
    }

    #[test]
    fn between_rows_it_is_a_straight_line_and_outside_it_is_unknown() {
        let table = untidy();
        let middle = table.at(Quantity::new(0.7)).expect("inside");
        assert!(same(middle.factor.0, (145.3 + 163.0) / 2.0));
        assert!(same(middle.torque_ratio.value(), (1.409 + 1.096) / 2.0));
        assert_eq!(table.at(Quantity::new(0.8)).map(|row| row.factor.0), Some(163.0));
        assert_eq!(table.at(Quantity::new(0.94)).map(|row| row.factor.0), Some(244.5), "its last row is inside");
        assert_eq!(table.at(Quantity::new(0.95)), None);
        assert_eq!(table.at(Quantity::new(-0.01)), None);
        assert_eq!(table.at_stall().map(|row| row.factor.0), Some(137.5));
        let from_above = Table::new(vec![row(0.1, 140.0, 2.0), row(0.9, 200.0, 1.0)]).expect("a table");
        assert_eq!(from_above.at_stall(), None, "standstill was not measured");
    }

    #[test]
    fn it_couples_where_the_torque_ratio_comes_down_to_one() {
        let at = |rows: &[Row]| {
            Table::new(rows.to_vec()).expect("a table").coupling_point().map(|row| row.speed_ratio.value())
        };
        assert_eq!(at(&[row(0.0, 140.0, 2.0), row(0.5, 150.0, 1.5), row(0.75, 200.0, 0.5)]), Some(0.625));
        assert_eq!(at(&[row(0.0, 140.0, 2.0), row(0.75, 150.0, 1.0), row(0.875, 200.0, 1.0)]), Some(0.75));
        assert_eq!(at(&[row(0.0, 140.0, 2.0), row(0.5, 150.0, 1.01)]), None, "not within the table");
        assert_eq!(at(&[row(0.0, 140.0, 2.0), row(0.5, 150.0, 1.0005)]), None, "nearly one is not one");
        assert!(at(&[row(0.5, 150.0, 1.0005), row(0.75, 150.0, 0.9995)]).is_some_and(|found| same(found, 0.625)));
        assert_eq!(at(&[row(0.5, 150.0, 1.0), row(0.75, 200.0, 0.9)]), None, "it lies before the table");
        let found = untidy().coupling_point().expect("it comes down");
        assert!(same(found.torque_ratio.value(), 1.0) && same(found.speed_ratio.value(), 0.8 + 0.1 * 96.0 / 97.0));
    }

    #[test]
    fn of_two_equally_good_rows_the_slower_is_the_best_and_a_turbine_may_give_nothing() {
        // Powers of two, so that both efficiencies are exactly the same number.
        let table =
            Table::new(vec![row(0.0, 140.0, 2.0), row(0.25, 140.0, 2.0), row(0.5, 150.0, 1.0), row(0.75, 200.0, 0.0)]);
        let best = table.expect("a torque ratio of nought is one").best();
        assert_eq!(best.map(|row| row.speed_ratio.value()), Some(0.25));
    }

    #[test]
    fn what_cannot_be_says_which_row_and_why() {
        let refused = |rows: &[Row]| Table::new(rows.to_vec()).expect_err("no table").to_string();
        let sound = row(0.0, 140.0, 2.0);
        assert!(refused(&[sound]).contains("1 given"));
        for wrong in [1.0, -0.1, f64::NAN] {
            assert!(refused(&[sound, row(wrong, 140.0, 0.5)]).contains("row 2 has a speed ratio"), "{wrong}");
        }
        assert!(refused(&[sound, row(0.0, 140.0, 1.0)]).contains("not above the 0 before"));
        for wrong in [0.0, -5.0, f64::INFINITY] {
            assert!(refused(&[sound, row(0.5, wrong, 1.0)]).contains("capacity factor"), "{wrong}");
        }
        for wrong in [-0.1, f64::NAN] {
            assert!(refused(&[sound, row(0.5, 140.0, wrong)]).contains("torque ratio"), "{wrong}");
        }
        assert!(refused(&[sound, row(0.5, 140.0, 2.01)]).contains("more power"));
        assert!(Table::new(vec![sound, row(0.5, 140.0, 2.0)]).is_ok(), "all of it may come out, as a limit");
    }

    proptest! {
        #[test]
        fn what_does_not_come_out_is_heat(speed_ratio in 0.0..0.94f64, power in 1.0..500.0f64, rpm in 500.0..6000.0f64) {
            let row = untidy().at(Quantity::new(speed_ratio)).expect("inside");
            let (pump, turbine) = (Quantity::<Rpm>::new(rpm), row.turbine_speed(Quantity::new(rpm)));
            // Power as torque × speed on either side, the pump's torque being one.
            let out = power * row.torque_ratio.value() * (turbine / pump);
            prop_assert!((row.heat(Quantity::new(power)).value() + out - power).abs() < 1e-9 * power);
            prop_assert!(row.heat(Quantity::new(power)).value() >= 0.0);
        }
    }
}
