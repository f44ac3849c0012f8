//! Rules on how far a speedometer may be off.
//!
//! None of them is the law everywhere: ask what holds here.

use super::speedometer::{KILOMETRES_IN_MILE, shown};
use crate::quantity::{MilePerHour, One, Quantity};

/// A rule on how far a speedometer may be off.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tolerance {
    /// Buses and trucks: 5 mph either way at 50 mph; nothing said at other speeds.
    Truck,
    /// New vehicles in many countries: never low, high by at most a tenth and 4 km/h.
    Unece39,
    /// Voluntary: 1 % low to 4 % high.
    J2976,
}

/// Nearer than this to the edge of a band, in mph, counts as at the edge; a dial cannot be read a thousand times as well.
const HAIR: f64 = 1e-6;

impl Tolerance {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Truck, Self::Unece39, Self::J2976];

    /// Where it stands and how far that was seen.
    pub const fn source(self) -> &'static str {
        match self {
            Self::Truck => "49 CFR 393.82 (looked up)",
            Self::Unece39 => "UN regulation 39 (looked up in a text that quotes it)",
            Self::J2976 => "SAE J2976, 2022 (looked up in its abstract)",
        }
    }

    /// The one speed it speaks of; none when it holds at every speed.
    pub const fn only_at(self) -> Option<Quantity<MilePerHour>> {
        match self {
            Self::Truck => Some(Quantity::new(50.0)),
            Self::Unece39 | Self::J2976 => None,
        }
    }

    /// Lowest and highest a dial may show at a true speed; `None` where the rule says nothing.
    pub fn band(self, true_speed: Quantity<MilePerHour>) -> Option<(Quantity<MilePerHour>, Quantity<MilePerHour>)> {
        match self {
            Self::Truck if Some(true_speed) == self.only_at() => Some((Quantity::new(45.0), Quantity::new(55.0))),
            Self::Truck => None,
            Self::Unece39 => Some((true_speed, true_speed * 1.1 + Quantity::new(4.0 / KILOMETRES_IN_MILE))),
            Self::J2976 => Some((true_speed * 0.99, true_speed * 1.04)),
        }
    }

    /// Does a dial that is off by this share keep the rule at a true speed? `None` where the rule says nothing.
    pub fn kept(self, true_speed: Quantity<MilePerHour>, error: Quantity<One>) -> Option<bool> {
        let dial = shown(true_speed, error).value();
        self.band(true_speed).map(|(low, high)| low.value() - HAIR <= dial && dial <= high.value() + HAIR)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use proptest::prelude::*;

    #[test]
    fn each_rule_has_its_own_band() {
        let band =
            |rule: Tolerance, mph: f64| rule.band(Quantity::new(mph)).map(|(low, high)| (low.value(), high.value()));
        assert_eq!(band(Tolerance::Truck, 50.0), Some((45.0, 55.0)));
        assert_eq!(band(Tolerance::Truck, 60.0), None, "the rule is for 50 only");
        let (low, high) = band(Tolerance::Unece39, 50.0).expect("at every speed");
        assert!(low == 50.0 && (high - (55.0 + 2.4855)).abs() < 1e-4);
        let (low, high) = band(Tolerance::J2976, 50.0).expect("at every speed");
        assert!(same(low, 49.5) && same(high, 52.0));
    }

    #[test]
    fn each_rule_is_kept_to_its_very_edge_and_not_beyond() {
        let kept =
            |rule: Tolerance, mph: f64, percent: f64| rule.kept(Quantity::new(mph), Quantity::new(percent / 100.0));
        for (rule, mph, edges) in [
            (Tolerance::Truck, 50.0, [-10.0, 10.0]),
            (Tolerance::Unece39, 60.0, [0.0, 10.0 + 400.0 / KILOMETRES_IN_MILE / 60.0]),
            (Tolerance::J2976, 60.0, [-1.0, 4.0]),
        ] {
            for (edge, beyond) in edges.into_iter().zip([-0.01, 0.01]) {
                assert_eq!(kept(rule, mph, edge), Some(true), "{rule:?} at {edge} %");
                assert_eq!(kept(rule, mph, edge + beyond), Some(false), "{rule:?} beyond {edge} %");
            }
        }
        assert_eq!(kept(Tolerance::Truck, 60.0, 0.0), None, "nothing said is not kept");
    }

    proptest! {
        #[test]
        fn a_true_dial_keeps_every_rule_where_it_speaks(mph in 5.0..200.0f64) {
            for rule in Tolerance::ALL {
                let at = rule.only_at().unwrap_or(Quantity::new(mph));
                prop_assert_eq!(rule.kept(at, Quantity::new(0.0)), Some(true));
                prop_assert!(rule.source().contains('('));
            }
        }
    }
}
