//! What can hurt somebody at a stage of the work, said where the work is started.
//!
//! Reminders only. The unit's manual, the makers of tools and solvents, local rules and, for racing, the current rule
//! book come first; figures are common shop practice.

use crate::ticket::Stage;

/// What to mind at this stage; nothing where nobody handles the unit.
pub const fn reminders(stage: Stage) -> &'static [&'static str] {
    match stage {
        Stage::Intake | Stage::Spec => &[LIFTING, STANDS],
        Stage::Teardown => &[HOT_FLUID, LIFTING, STANDS, SPRINGS, SOLVENTS, WASTE],
        Stage::Machining => &[LIFTING, CHIPS, AIR, SOLVENTS],
        Stage::Assembly => &[LIFTING, SPRINGS, AIR, SOLVENTS],
        Stage::Test => &[SPINNING, HOT_FLUID, STANDS, LIFTING, RACING],
        Stage::Delivery | Stage::AfterCare => &[LIFTING, HOT_FLUID, RACING],
        Stage::Quote | Stage::Parts | Stage::Closed | Stage::Declined => &[],
    }
}

const HOT_FLUID: &str = "Hot fluid burns. Let the unit cool until it is warm to the hand, then drain it with gloves and \
                         a face shield.";
const LIFTING: &str = "A unit weighs about 135 lb and is slippery. Two people or a hoist; under a vehicle a \
                       transmission jack with its strap closed.";
const STANDS: &str = "Nobody goes under a vehicle that stands on a jack alone. Rated stands, on hard level ground.";
const SPRINGS: &str = "Clutch and servo springs are under load. Use the press or the right compressor, and stand to the \
                       side of it.";
const SOLVENTS: &str = "Solvents: fresh air, gloves and glasses, no flame or spark in the room.";
const WASTE: &str = "Old fluid goes to licensed disposal, never down a drain.";
const AIR: &str = "Compressed air: glasses on, 30 psi or less with a chip guard for cleaning, a regulator for air \
                   checks, never toward skin.";
const CHIPS: &str = "Drills, saws and grinders: glasses, no gloves or loose sleeves near what turns, the case clamped.";
const SPINNING: &str = "Shafts and wheels turn in a test: chocks set, no loose sleeves, nobody in line with wheels or \
                        driveshaft, a second person at the key.";
const RACING: &str = "For racing, the current rule book and the official at the event decide, not this page.";

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn wherever_hands_are_on_the_unit_something_is_said() {
        for stage in [Stage::Teardown, Stage::Machining, Stage::Assembly, Stage::Test] {
            assert!(reminders(stage).len() >= 3, "{}", stage.label());
            assert!(reminders(stage).contains(&LIFTING), "{}", stage.label());
        }
        assert!(reminders(Stage::Teardown).contains(&HOT_FLUID));
        assert!(reminders(Stage::Assembly).contains(&SPRINGS));
        assert!(reminders(Stage::Test).contains(&SPINNING));
    }
}
