//! Inch and metric threads that pass for one another until they strip.

use super::Form;
use super::table::{METRIC, Standard, UNIFIED, metric_thread, unified};
use crate::quantity::{Inch, Length, Millimetre, One, Quantity};

/// Pairs found together in the same unit, engine and vehicle.
pub const PAIRS: &[(&str, &str)] = &[
    ("5/16-18", "M8x1.25"),
    ("3/8-16", "M10x1.5"),
    ("1/4-20", "M6x1"),
    ("1/4-28", "M6x1"),
    ("7/16-14", "M12x1.75"),
    ("1/2-13", "M12x1.75"),
    ("1/2-20", "M12x1.25"),
    ("5/16-24", "M8x1"),
];

/// Metric threads a bolt of this inch thread is mistaken for, with the comparison.
pub fn of_inch(name: &str) -> impl Iterator<Item = (&'static Standard<Millimetre>, Comparison)> {
    let inch = unified(name);
    PAIRS.iter().filter_map(move |(left, right)| {
        let inch = inch.filter(|inch| inch.name == *left)?;
        let metric = metric_thread(right)?;
        Some((metric, compare(&inch.form, &metric.form)))
    })
}

/// How near two threads have to be to pass for one another: outside diameters within 0.9 mm, pitches within 30 %.
///
/// Chosen so that every pair found in practice ([`PAIRS`]) is inside; a shop setting, not a standard.
pub const NEAR: (Quantity<Millimetre>, Quantity<One>) = (Quantity::new(0.9), Quantity::new(0.30));

/// Every inch and metric thread of the tables that pass for one another, with the comparison.
///
/// Computed, so that a thread added to a table brings its look-alikes with it.
pub fn near() -> impl Iterator<Item = (&'static Standard<Inch>, &'static Standard<Millimetre>, Comparison)> {
    let pairs = UNIFIED.iter().flat_map(|inch| METRIC.iter().map(move |metric| (inch, metric)));
    pairs.filter_map(|(inch, metric)| {
        let found = compare(&inch.form, &metric.form);
        let near = found.major.abs() <= NEAR.0 && found.pitch_share.abs() <= NEAR.1;
        near.then_some((inch, metric, found))
    })
}

/// How far an inch thread and a metric one differ, inch less metric, in millimetres.
#[derive(Clone, Copy, Debug)]
pub struct Comparison {
    /// Difference of the outside diameters; what a caliper shows.
    pub major: Quantity<Millimetre>,
    /// Difference of the pitches as a share of the metric one; what a thread gauge shows.
    pub pitch_share: Quantity<One>,
    /// Difference of the pitch diameters; above zero the inch bolt does not enter the metric hole.
    pub pitch_diameter: Quantity<Millimetre>,
    /// Turns until the flanks are a quarter of a metric pitch out of step; infinite for equal pitches.
    pub turns: Quantity<One>,
}

/// Compares basic sizes; tolerances and plating move the diameters by a tenth of a millimetre or so.
pub fn compare(inch: &Form<Inch>, metric: &Form<Millimetre>) -> Comparison {
    let inch = inch.to_millimetres();
    Comparison {
        major: inch.major - metric.major,
        pitch_share: Quantity::new(inch.pitch / metric.pitch - 1.0),
        pitch_diameter: inch.pitch_diameter() - metric.pitch_diameter(),
        turns: turns_in_step(inch.pitch, metric.pitch),
    }
}

/// What happens when a bolt is started in the hole of another thread.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Entry {
    /// Its pitch diameter is larger than the hole's: force only.
    TooBig,
    /// Starts by hand, then binds or strips after about so many turns.
    Turns(Quantity<One>),
    /// Drops through without touching a thread.
    DropsThrough,
}

/// Tries a bolt in a hole by basic sizes.
///
/// The turns run until the flanks are a quarter of the hole's pitch out of
/// step; a worn or loose thread goes further before it tells.
pub fn try_in<B: Length, H: Length>(bolt: &Form<B>, hole: &Form<H>) -> Entry {
    let (bolt, hole) = (bolt.to_millimetres(), hole.to_millimetres());
    if bolt.pitch_diameter() > hole.pitch_diameter() {
        Entry::TooBig
    } else if bolt.major <= hole.internal_minor() {
        Entry::DropsThrough
    } else {
        Entry::Turns(turns_in_step(bolt.pitch, hole.pitch))
    }
}

/// Turns until two pitches have drifted apart by a quarter of the second.
fn turns_in_step(pitch: Quantity<Millimetre>, against: Quantity<Millimetre>) -> Quantity<One> {
    Quantity::new(against.value() / 4.0 / (pitch - against).abs().value())
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn pair(inch: &str, metric: &str) -> (Form<Inch>, Form<Millimetre>) {
        (unified(inch).expect(inch).form, metric_thread(metric).expect(metric).form)
    }

    #[test]
    fn every_pair_met_in_practice_is_found_by_its_sizes() {
        let found: Vec<_> = near().map(|(inch, metric, _)| (inch.name, metric.name)).collect();
        for pair in PAIRS {
            assert!(found.contains(pair), "{pair:?} is not among {found:?}");
        }
        assert!(!found.contains(&("1/4-20", "M8x1.25")), "a hole it drops through is no look-alike");
        assert!(!found.contains(&("10-24", "M5x0.8")), "a pitch a third coarser does not pass for the other");
        for (inch, metric, comparison) in near() {
            assert!(comparison.turns.value() > 0.8, "{} and {} do not start", inch.name, metric.name);
        }
    }

    #[test]
    fn a_bolt_is_told_by_which_way_round_it_goes() {
        let (three_eighths, ten) = pair("3/8-16", "M10x1.5");
        assert!(
            matches!(try_in(&three_eighths, &ten), Entry::Turns(turns) if turns.value() > 4.0 && turns.value() < 5.0)
        );
        assert_eq!(try_in(&ten, &three_eighths), Entry::TooBig);
        // The closest pitch of all: it will not enter one way and goes in loose for fifteen turns the other.
        let (half, twelve) = pair("1/2-20", "M12x1.25");
        assert_eq!(try_in(&half, &twelve), Entry::TooBig);
        assert!(matches!(try_in(&twelve, &half), Entry::Turns(turns) if turns.value() > 15.0));
        let (quarter, eight) = pair("1/4-20", "M8x1.25");
        assert_eq!(try_in(&quarter, &eight), Entry::DropsThrough);
        let names: Vec<_> = of_inch("5/16-18").map(|(metric, _)| metric.name).collect();
        assert_eq!(names, ["M8x1.25"]);
        assert_eq!(of_inch("10-24").count(), 0);
    }

    #[test]
    fn a_thread_stays_in_step_with_itself() {
        let (left, _) = pair("5/16-18", "M8x1.25");
        assert_eq!(try_in(&left, &left), Entry::Turns(Quantity::new(f64::INFINITY)));
    }

    proptest! {
        #[test]
        fn flanks_walked_turn_by_turn_part_at_the_same_place(pitch in 0.5..2.5f64, against in 0.5..2.5f64) {
            prop_assume!((pitch - against).abs() > 0.01);
            let turns = turns_in_step(Quantity::new(pitch), Quantity::new(against)).value();
            let (mut walked, mut turned) = (0.0_f64, 0.0);
            while walked.abs() < against / 4.0 {
                walked += (pitch - against) / 1000.0;
                turned += 0.001;
            }
            prop_assert!((turned - turns).abs() < 0.002, "{turned} and {turns}");
        }
    }
}
