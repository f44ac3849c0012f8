//! Two planetary sets on one sun gear: reactions, drum speeds, who carries what.
//!
//! Ratios are input turns per output turn; the reverse ratio is given as a
//! positive size. Torques leave converter multiplication to the caller.
//! Source: derived, from the balance of speeds and torques.

use crate::quantity::{One, PoundFoot, Quantity, Rpm};

/// Reaction on the member held in a forward gear: (ratio − 1) × input torque.
///
/// In first this is on the rear one-way clutch (and the band, when it is on).
pub fn forward_reaction(ratio: Quantity<One>, input: Quantity<PoundFoot>) -> Quantity<PoundFoot> {
    input * (ratio.value() - 1.0)
}

/// Reaction on the rear band in reverse: (ratio + 1) × input torque.
pub fn reverse_reaction(reverse_ratio: Quantity<One>, input: Quantity<PoundFoot>) -> Quantity<PoundFoot> {
    input * (reverse_ratio.value() + 1.0)
}

/// Speed of the direct drum and the sun gear in a forward gear; negative runs backwards.
///
/// input × (second / gear − 1) / (second − 1). Second ratio above 1; `gear` is
/// the ratio engaged: the drum runs backwards in first, stands in second and
/// turns with the input in third.
pub fn direct_drum_speed(gear: Quantity<One>, second_ratio: Quantity<One>, input: Quantity<Rpm>) -> Quantity<Rpm> {
    let second = second_ratio.value();
    input * ((second / gear.value() - 1.0) / (second - 1.0))
}

/// Share of input torque through the direct clutch in third: (second − 1) / second.
///
/// The forward clutch carries the rest.
pub fn direct_share_in_third(second_ratio: Quantity<One>) -> Quantity<One> {
    Quantity::new((second_ratio.value() - 1.0) / second_ratio.value())
}

/// Share of turbine torque through the direct clutch on the trans brake: first / (first + reverse).
///
/// With nothing pushing at the wheels. The forward clutch carries the rest, and
/// the rear band holds all of the turbine torque, in the sense of reverse.
pub fn direct_share_on_brake(first_ratio: Quantity<One>, reverse_ratio: Quantity<One>) -> Quantity<One> {
    Quantity::new(first_ratio.value() / (first_ratio.value() + reverse_ratio.value()))
}

/// First ratio that the other two make certain: second + (second − 1) × reverse.
///
/// Holds for every pair of sets on one sun gear, equal or not. Some other
/// arrangements keep it as well, so agreement does not prove the kind of set.
pub fn first_from_others(second_ratio: Quantity<One>, reverse_ratio: Quantity<One>) -> Quantity<One> {
    Quantity::new(second_ratio.value() + (second_ratio.value() - 1.0) * reverse_ratio.value())
}

/// How far a written first ratio is from what second and reverse make it; a
/// large difference is a slip of the pen or a set of another kind.
///
/// Ratios written to two decimals stay within about 0.02.
pub fn first_disagreement(
    first_ratio: Quantity<One>,
    second_ratio: Quantity<One>,
    reverse_ratio: Quantity<One>,
) -> Quantity<One> {
    (first_ratio - first_from_others(second_ratio, reverse_ratio)).abs()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all, same};
    use proptest::prelude::*;

    fn ratio(value: f64) -> Quantity<One> {
        Quantity::new(value)
    }

    /// Teeth of the sun and ring of the front and the rear set.
    struct Teeth {
        front: (f64, f64),
        rear: (f64, f64),
    }

    /// First, second and reverse, by solving for the speeds of every member in turn.
    ///
    /// Each set obeys Z_S ω_S + Z_R ω_R = (Z_S + Z_R) ω_C. Front ring is
    /// driven, front carrier and rear ring are the output, the suns are one.
    fn ratios(teeth: &Teeth) -> (f64, f64, f64) {
        let ((s1, r1), (s2, r2)) = (teeth.front, teeth.rear);
        // Rear carrier held: the rear set ties sun to output; a unit of output needs this sun.
        let sun = -r2 / s2;
        let first = ((s1 + r1) - s1 * sun) / r1;
        // Sun held.
        let second = (s1 + r1) / r1;
        (first, second, -sun)
    }

    #[test]
    fn agrees_with_published_reactions_and_speeds() {
        let shop = "shop handbook, reactions and drum motion";
        let (first, second, reverse) = (ratio(2.48), ratio(1.48), ratio(2.08));
        let drum = |gear| direct_drum_speed(gear, second, Quantity::new(6500.0)).value();
        let at_500 = Quantity::new(500.0);
        let on_brake = direct_share_on_brake(first, reverse).value();
        let third = direct_share_in_third(second).value();
        all(&[
            Check { source: shop, what: "first, drum", computed: drum(first), published: -5460.0, within: 5.0 },
            Check {
                source: shop,
                what: "first, drum share",
                computed: drum(first) / 6500.0,
                published: -0.84,
                within: 0.0005,
            },
            Check { source: shop, what: "second, drum", computed: drum(second), published: 0.0, within: 1e-9 },
            Check { source: shop, what: "third, drum", computed: drum(ratio(1.0)), published: 6500.0, within: 1e-9 },
            Check {
                source: shop,
                what: "first, rear reaction",
                computed: forward_reaction(first, at_500).value(),
                published: 740.0,
                within: 1e-9,
            },
            Check {
                source: shop,
                what: "reverse, band",
                computed: reverse_reaction(reverse, at_500).value(),
                published: 1540.0,
                within: 1e-9,
            },
            Check { source: shop, what: "brake, direct share", computed: on_brake, published: 0.544, within: 0.0005 },
            Check {
                source: shop,
                what: "brake, direct of 1,120",
                computed: on_brake * 1120.0,
                published: 609.0,
                within: 0.5,
            },
            Check {
                source: shop,
                what: "brake, forward of 1,120",
                computed: (1.0 - on_brake) * 1120.0,
                published: 511.0,
                within: 0.5,
            },
            Check { source: shop, what: "third, direct share", computed: third, published: 0.324, within: 0.0005 },
            Check {
                source: shop,
                what: "third, forward of 500",
                computed: (1.0 - third) * 500.0,
                published: 338.0,
                within: 0.5,
            },
        ]);
    }

    #[test]
    fn the_first_ratio_follows_from_the_other_two_in_published_tables() {
        let encyclopaedia = "encyclopaedia table of a three-speed family";
        let suite = "public test suite, two sets of 30 and 66 teeth";
        let exercise = "exercise: 57/28 and 80/37 teeth";
        let from = |second, reverse| first_from_others(ratio(second), ratio(reverse)).value();
        all(&[
            Check {
                source: encyclopaedia,
                what: "2.479",
                computed: from(1.479, 2.086),
                published: 2.479,
                within: 0.0015,
            },
            Check {
                source: encyclopaedia,
                what: "2.733",
                computed: from(1.562, 2.086),
                published: 2.733,
                within: 0.0015,
            },
            Check {
                source: encyclopaedia,
                what: "2.714",
                computed: from(1.500, 2.429),
                published: 2.714,
                within: 0.0015,
            },
            Check {
                source: suite,
                what: "2.4545",
                computed: from(1.0 + 30.0 / 66.0, 2.2),
                published: 2.4545,
                within: 0.0005,
            },
            Check {
                source: exercise,
                what: "2.553",
                computed: from(1.0 + 28.0 / 57.0, 80.0 / 37.0),
                published: 2.553,
                within: 0.0005,
            },
            Check {
                source: "tooth counts 30/62, derived",
                what: "2.48",
                computed: from(1.0 + 30.0 / 62.0, 62.0 / 30.0),
                published: 2.48,
                within: 0.005,
            },
            Check {
                source: "tooth counts 34/66, derived",
                what: "2.5152",
                computed: from(1.0 + 34.0 / 66.0, 66.0 / 34.0),
                published: 2.5152,
                within: 0.0005,
            },
        ]);
    }

    #[test]
    fn a_slip_of_the_pen_stands_out_from_rounding() {
        let off = |first, second, reverse| first_disagreement(ratio(first), ratio(second), ratio(reverse)).value();
        assert!(off(2.48, 1.48, 2.08) < 0.02, "two decimals");
        assert!(off(2.84, 1.48, 2.08) > 0.3, "digits swapped");
        // Cross-coupled sets (3.0588 / 1.6250 / 2.2941 by their teeth) agree too: agreement does not tell the kind.
        assert!(off(1.0 + 35.0 / 17.0, 1.625, 39.0 / 17.0) < 1e-9);
    }

    proptest! {
        #[test]
        fn solving_the_sets_member_by_member_agrees(s1 in 20u32..60, r1 in 61u32..120, s2 in 20u32..60, r2 in 61u32..120) {
            let teeth = Teeth { front: (s1.into(), r1.into()), rear: (s2.into(), r2.into()) };
            let (first, second, reverse) = ratios(&teeth);
            prop_assert!(same(first_from_others(ratio(second), ratio(reverse)).value(), first));
            // Drum and sun are one: in first it runs backwards at the sun's speed.
            let drum = direct_drum_speed(ratio(first), ratio(second), Quantity::new(first)).value();
            prop_assert!(same(drum, -f64::from(r2) / f64::from(s2)));
        }

        #[test]
        fn torque_in_reaction_and_out_balance(gear in 1.0..4.0f64, torque in 10.0..2000.0f64) {
            let torque = Quantity::new(torque);
            prop_assert!(same((torque + forward_reaction(ratio(gear), torque)).value(), gear * torque.value()));
            prop_assert!(same((reverse_reaction(ratio(gear), torque) - torque).value(), gear * torque.value()));
        }

        #[test]
        fn on_the_brake_the_two_paths_cancel_at_the_output(first in 1.5..4.0f64, reverse in 1.5..4.0f64) {
            let direct = direct_share_on_brake(ratio(first), ratio(reverse)).value();
            prop_assert!(same(direct * reverse, (1.0 - direct) * first));
        }

        #[test]
        fn in_third_both_paths_turn_the_output_alike(second in 1.05..2.5f64) {
            // The sun carries the direct share and the ring the rest, in the ratio of their teeth.
            let direct = direct_share_in_third(ratio(second)).value();
            let sun_to_ring = second - 1.0;
            prop_assert!(same(direct / (1.0 - direct), sun_to_ring));
        }
    }
}
