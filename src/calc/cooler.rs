//! Flow through the cooler, as it is measured with a jug and a watch.

use crate::quantity::{Quantity, Quart, Second, SecondPerQuart};

/// Seconds that one quart takes: time / volume.
///
/// Engine idling, fluid hot, positive volume. Source: definition; 15 s a quart is good,
/// above 20 the cooler or its line is blocked (common practice).
pub fn flow(time: Quantity<Second>, caught: Quantity<Quart>) -> Quantity<SecondPerQuart> {
    Quantity::new(time.value() / caught.value())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    #[test]
    fn two_quarts_in_half_a_minute_is_fifteen_seconds_a_quart() {
        assert!(same(flow(Quantity::new(30.0), Quantity::new(2.0)).value(), 15.0));
    }

    proptest! {
        #[test]
        fn however_long_it_runs_a_steady_flow_reads_the_same(time in 1.0..600.0f64, caught in 0.1..20.0f64, longer in 1.0..5.0f64) {
            let once = flow(Quantity::new(time), Quantity::new(caught));
            let twice = flow(Quantity::new(time * longer), Quantity::new(caught * longer));
            prop_assert!(same(once.value(), twice.value()));
        }
    }
}
