//! The stages a ticket goes through, and which may follow which.

use super::coded::coded;
use crate::plan::steps::Phase;

coded! {
    /// Where a job stands, from the counter to after-care.
    Stage {
        /// The unit is being taken in.
        Intake = "intake", "Intake";
        /// The build is being specified.
        Spec = "spec", "Spec";
        /// The unit is coming apart.
        Teardown = "teardown", "Teardown";
        /// Findings are known; the customer is being asked.
        Quote = "quote", "Quote";
        /// Parts are being gathered and compared.
        Parts = "parts", "Parts";
        /// Permanent changes are being made.
        Machining = "machining", "Machining";
        /// The unit is going together.
        Assembly = "assembly", "Assembly";
        /// The unit is on the stand or in the vehicle.
        Test = "test", "Test";
        /// Papers, payment, hand-over.
        Delivery = "delivery", "Delivery";
        /// Handed over; rechecks and reminders.
        AfterCare = "after_care", "After-care";
        /// Finished.
        Closed = "closed", "Closed";
        /// The customer declined; the unit goes back.
        Declined = "declined", "Declined";
    }
}

coded! {
    /// Who holds the next move.
    WaitsFor {
        /// The shop itself.
        Us = "us", "Us";
        /// The customer's answer.
        Customer = "customer", "Customer";
        /// Parts on order.
        Parts = "parts", "Parts";
        /// The outside machinist.
        Machinist = "machinist", "Machinist";
    }
}

/// The kinds of move.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Way {
    /// On to the next stage.
    Forward,
    /// Back to an earlier one; needs a written reason.
    Back,
    /// The customer declined; needs a written reason.
    GiveUp,
}

impl Stage {
    /// May work still happen on it?
    pub const fn open(self) -> bool {
        !matches!(self, Self::Closed | Self::Declined)
    }

    /// How one gets from here to there in one move, if at all.
    pub fn way_to(self, to: Self) -> Option<Way> {
        use Stage::*;
        if !self.open() || self == to {
            return None;
        }
        match (self, to) {
            (AfterCare, Declined) => None,
            (_, Declined) => Some(Way::GiveUp),
            (Parts, Assembly) => Some(Way::Forward),
            _ if to < self => Some(Way::Back),
            _ if to as usize == self as usize + 1 => Some(Way::Forward),
            _ => None,
        }
    }

    /// Has the work come to the point where a rule that is `due` then is asked about aloud?
    ///
    /// The points are those of the rule book: intake, spec, teardown, assembly, test, delivery.
    pub fn asks_for(self, due: &str) -> bool {
        let first = match due {
            "intake" => Self::Intake,
            "spec" => Self::Spec,
            "teardown" => Self::Teardown,
            "assembly" => Self::Assembly,
            "test" => Self::Test,
            _ => Self::Delivery,
        };
        self >= first
    }

    /// The phase of the work that begins with it; none when no work is left.
    ///
    /// Not every job is machined, so what is washed belongs to the stage in which the unit goes together.
    pub const fn phase(self) -> Option<Phase> {
        match self {
            Self::Intake | Self::Spec => Some(Phase::Intake),
            Self::Teardown | Self::Quote | Self::Parts => Some(Phase::Teardown),
            Self::Machining => Some(Phase::Machining),
            Self::Assembly => Some(Phase::Wash),
            Self::Test => Some(Phase::Test),
            Self::Delivery => Some(Phase::Delivery),
            Self::AfterCare => Some(Phase::Installation),
            Self::Closed | Self::Declined => None,
        }
    }

    /// Every stage that one move leads to, in the order of the work.
    pub fn moves(self) -> Vec<(Self, Way)> {
        Self::ALL.iter().filter_map(|to| self.way_to(*to).map(|way| (*to, way))).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::Stage::{self, *};
    use super::Way;

    #[test]
    fn the_forward_road_is_the_shops_own() {
        let road = [Intake, Spec, Teardown, Quote, Parts, Machining, Assembly, Test, Delivery, AfterCare, Closed];
        for pair in road.windows(2) {
            assert_eq!(pair[0].way_to(pair[1]), Some(Way::Forward));
        }
        assert_eq!(Parts.way_to(Assembly), Some(Way::Forward), "not every job is machined");
    }

    #[test]
    fn every_pair_of_stages_is_as_the_table_says() {
        // Rows: from; columns: to, both in declared order. f forward, b back, d decline, . not at all.
        let table = [
            ".f.........d",
            "b.f........d",
            "bb.f.......d",
            "bbb.f......d",
            "bbbb.ff....d",
            "bbbbb.f....d",
            "bbbbbb.f...d",
            "bbbbbbb.f..d",
            "bbbbbbbb.f.d",
            "bbbbbbbbb.f.",
            "............",
            "............",
        ];
        for (from, row) in Stage::ALL.iter().zip(table) {
            for (to, cell) in Stage::ALL.iter().zip(row.chars()) {
                let expected = match cell {
                    'f' => Some(Way::Forward),
                    'b' => Some(Way::Back),
                    'd' => Some(Way::GiveUp),
                    _ => None,
                };
                assert_eq!(from.way_to(*to), expected, "{} to {}", from.label(), to.label());
            }
        }
    }

    #[test]
    fn questions_are_asked_when_the_work_gets_there_and_stay_asked() {
        assert!(Intake.asks_for("intake") && !Intake.asks_for("spec"));
        for stage in [Teardown, Quote, Parts, Machining] {
            assert!(stage.asks_for("teardown") && !stage.asks_for("assembly"), "{}", stage.label());
        }
        assert!(Assembly.asks_for("assembly") && !Assembly.asks_for("test"));
        assert!(Test.asks_for("test") && !Test.asks_for("delivery"));
        assert!(Delivery.asks_for("delivery") && AfterCare.asks_for("delivery"));
    }

    #[test]
    fn codes_read_back() {
        for stage in Stage::ALL {
            assert_eq!(Stage::from_code(stage.code()), Some(*stage));
        }
        assert_eq!(Stage::from_code("Intake"), None);
    }
}
