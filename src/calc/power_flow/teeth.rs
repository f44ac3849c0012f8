//! Tooth counts: the ratio they make, and whether the gears can be put together at all.

use super::train::Pinions;
use crate::quantity::{One, Quantity};

/// Teeth of the sun gear and the ring gear of one set.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Teeth {
    /// Teeth of the sun gear.
    pub sun: u32,
    /// Teeth of the ring gear.
    pub ring: u32,
}

/// What is wrong with a set of pinions spaced evenly around a sun gear.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Misfit {
    /// No pinion fits between sun and ring, or there is none: the ring must have at least two teeth more.
    NoRoom,
    /// Ring less sun is odd, so no standard pinion meshes with both; one with shifted profile might.
    OddDifference,
    /// This many pinions do not come to mesh at even spacing.
    Spacing,
    /// Neighbouring pinions would touch.
    Touching,
}

impl Teeth {
    /// Ring teeth / sun teeth, as a set's ratio is given.
    pub fn ratio(self) -> Quantity<One> {
        Quantity::new(f64::from(self.ring) / f64::from(self.sun))
    }

    /// Teeth of a single pinion between sun and ring, half the difference rounded down; `None` without room.
    ///
    /// Where the difference is odd the profile has to be shifted to take up the half tooth.
    pub fn pinion(self) -> Option<u32> {
        self.ring.checked_sub(self.sun).map(|difference| difference / 2).filter(|teeth| *teeth > 0)
    }

    /// What keeps so many single pinions from being assembled at even spacing; empty if nothing does.
    ///
    /// Sum: ring = sun + 2 × pinion. Spacing: (sun + ring) / pinions whole.
    /// Neighbours: (sun + pinion) × sin(180° / pinions) above pinion + 2, with
    /// teeth of standard height (one module above the pitch circle).
    /// Source: any machine-design text on planetary gears.
    pub fn misfits(self, pinions: u32) -> Vec<Misfit> {
        let Some(pinion) = self.pinion() else { return vec![Misfit::NoRoom] };
        let spacing = !spaced_evenly(self, Pinions::Single, pinions);
        let odd = (self.ring - self.sun) % 2 == 1;
        let found = [
            (odd, Misfit::OddDifference),
            (spacing, Misfit::Spacing),
            (self.gap(pinion, pinions) <= 0.0, Misfit::Touching),
        ];
        found.into_iter().filter(|(wrong, _)| *wrong).map(|(_, misfit)| misfit).collect()
    }

    /// Room between the tips of neighbouring pinions, in modules; one pinion has no neighbour.
    fn gap(self, pinion: u32, pinions: u32) -> f64 {
        if pinions < 2 {
            return f64::INFINITY;
        }
        let between_centres = f64::from(self.sun + pinion) * (std::f64::consts::PI / f64::from(pinions)).sin();
        between_centres - f64::from(pinion + 2)
    }
}

/// Whether so many pinions, or meshing pairs of them, come to mesh at even spacing.
///
/// Single: (sun + ring) / count whole; pairs: (ring − sun) / count whole.
pub fn spaced_evenly(teeth: Teeth, pinions: Pinions, count: u32) -> bool {
    let around = match pinions {
        Pinions::Single => teeth.sun + teeth.ring,
        Pinions::Pair => teeth.ring.abs_diff(teeth.sun),
    };
    around.is_multiple_of(count)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    const fn teeth(sun: u32, ring: u32) -> Teeth {
        Teeth { sun, ring }
    }

    #[test]
    fn whole_tooth_sets_of_known_ratios_go_together() {
        // Tooth counts derived for 2.48, 2.52 and 2.45; sun, pinion, ring.
        for (sun, pinion, ring, counts) in [
            (30, 16, 62, &[4][..]),
            (43, 23, 89, &[3, 4]),
            (45, 24, 93, &[3]),
            (34, 16, 66, &[4, 5]),
            (30, 18, 66, &[3, 4]),
        ] {
            let set = teeth(sun, ring);
            assert_eq!(set.pinion(), Some(pinion));
            assert_eq!(sun + 2 * pinion, ring);
            for count in counts {
                assert_eq!(set.misfits(*count), [], "{set:?} with {count}");
            }
        }
        // 20/30/80, a textbook set; 24/24/72, an overdrive.
        assert_eq!(teeth(20, 80).pinion(), Some(30));
        assert_eq!(teeth(24, 72).misfits(4), []);
    }

    #[test]
    fn what_does_not_go_together_says_why() {
        // 32/62 makes the ratio but has 94 teeth: two pinions only.
        assert_eq!(teeth(32, 62).misfits(2), []);
        for count in [3, 4, 5] {
            assert!(teeth(32, 62).misfits(count).contains(&Misfit::Spacing));
        }
        // University program test run: sun 21, ring 108, pinions 43 by shifted profile.
        assert_eq!(teeth(21, 108).pinion(), Some(43));
        assert_eq!(teeth(21, 108).misfits(3), [Misfit::OddDifference]);
        // Big pinions around a small sun touch; at these counts only that is wrong.
        assert_eq!(teeth(24, 72).misfits(6), [Misfit::Touching]);
        assert_eq!(teeth(20, 80).misfits(5), [Misfit::Touching]);
        assert_eq!(teeth(30, 31).misfits(3), [Misfit::NoRoom]);
        assert_eq!(teeth(30, 20).misfits(3), [Misfit::NoRoom]);
        assert_eq!(teeth(21, 108).misfits(5), [Misfit::OddDifference, Misfit::Spacing, Misfit::Touching]);
    }

    #[test]
    fn pairs_of_pinions_are_spaced_by_the_difference() {
        let ravigneaux = teeth(28, 79);
        assert!(spaced_evenly(ravigneaux, Pinions::Pair, 3) && !spaced_evenly(ravigneaux, Pinions::Single, 3));
        assert!(spaced_evenly(teeth(23, 79), Pinions::Single, 3) && !spaced_evenly(teeth(23, 79), Pinions::Pair, 3));
    }

    proptest! {
        #[test]
        fn centres_on_a_circle_leave_the_gap_that_is_stated(sun in 15u32..60, pinion in 12u32..40, count in 2u32..7) {
            let set = teeth(sun, sun + 2 * pinion);
            // Two neighbouring centres by their coordinates, in modules.
            let radius = f64::from(sun + pinion) / 2.0;
            let angle = std::f64::consts::TAU / f64::from(count);
            let apart = ((radius * angle.cos() - radius).powi(2) + (radius * angle.sin()).powi(2)).sqrt();
            let tips = f64::from(pinion + 2);
            prop_assert!((set.gap(pinion, count) - (apart - tips)).abs() < 1e-9);
            prop_assert_eq!(set.misfits(count).contains(&Misfit::Touching), apart <= tips);
        }

        #[test]
        fn more_pinions_never_make_more_room(sun in 15u32..60, pinion in 12u32..40, count in 1u32..7) {
            let set = teeth(sun, sun + 2 * pinion);
            prop_assert!(set.gap(pinion, count + 1) < set.gap(pinion, count));
        }
    }
}
