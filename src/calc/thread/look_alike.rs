//! Threads that pass for one another until they strip, inch and metric mostly.

use super::Form;
use super::table::{METRIC, UNIFIED};
use crate::quantity::{Length, Millimetre, One, Quantity};

/// How near two threads have to be to pass for one another: outside diameters within 0.9 mm, pitches within 30 % of the finer
/// one.
///
/// Chosen so that every pair found together in the same unit, engine or vehicle is inside; a shop setting, not a standard.
pub const NEAR: (Quantity<Millimetre>, Quantity<One>) = (Quantity::new(0.9), Quantity::new(0.30));

/// A thread that passes for another, and what happens when the two meet.
#[derive(Clone, Copy, Debug)]
pub struct Alike {
    /// As called out.
    pub name: &'static str,
    /// The thread asked for less this one.
    pub apart: Comparison,
    /// A bolt of the thread asked for, started in a hole of this one.
    pub in_its_hole: Entry,
    /// A bolt of this one, started in a hole of the thread asked for.
    pub its_bolt: Entry,
}

impl Alike {
    /// Turns a bolt goes in before it binds, the way about in which it starts; `None` when it starts in neither.
    pub fn turns(&self) -> Option<Quantity<One>> {
        let turns = |entry: Entry| match entry {
            Entry::Turns(turns) => Some(turns),
            Entry::TooBig | Entry::DropsThrough => None,
        };
        turns(self.in_its_hole).or(turns(self.its_bolt))
    }
}

/// Every other thread of the tables that passes for the one called `name`, inch or metric; what goes in furthest before
/// it tells comes first. Empty for a name that is in no table.
///
/// Computed, so that a thread added to a table brings its look-alikes with it.
pub fn alike(name: &str) -> Vec<Alike> {
    let Some((own, form)) = every().find(|(known, _)| *known == name) else { return Vec::new() };
    let near = |(other, other_form): (&'static str, Form<Millimetre>)| {
        let apart = compare(&form, &other_form);
        let finer = if form.pitch < other_form.pitch { form.pitch } else { other_form.pitch };
        let pitches = Quantity::new((form.pitch - other_form.pitch).abs() / finer);
        let near = apart.major.abs() <= NEAR.0 && pitches <= NEAR.1;
        let (in_its_hole, its_bolt) = (try_in(&form, &other_form), try_in(&other_form, &form));
        (other != own && near).then_some(Alike { name: other, apart, in_its_hole, its_bolt })
    };
    let mut found: Vec<Alike> = every().filter_map(near).collect();
    let turns = |alike: &Alike| alike.turns().map_or(-1.0, Quantity::value);
    found.sort_by(|left, right| turns(right).total_cmp(&turns(left)));
    found
}

/// Every thread of the tables with its form in millimetres.
fn every() -> impl Iterator<Item = (&'static str, Form<Millimetre>)> {
    let inch = UNIFIED.iter().map(|row| (row.name, row.form.to_millimetres()));
    inch.chain(METRIC.iter().map(|row| (row.name, row.form)))
}

/// How far two threads differ, the first less the second, in millimetres.
#[derive(Clone, Copy, Debug)]
pub struct Comparison {
    /// Difference of the outside diameters; what a caliper shows.
    pub major: Quantity<Millimetre>,
    /// Difference of the pitches as a share of the second; what a thread gauge shows.
    pub pitch_share: Quantity<One>,
    /// Difference of the pitch diameters; above zero the first one's bolt does not enter the second one's hole.
    pub pitch_diameter: Quantity<Millimetre>,
    /// Turns until the flanks are a quarter of the second pitch out of step; infinite for equal pitches.
    pub turns: Quantity<One>,
}

/// Compares basic sizes; tolerances and plating move the diameters by a tenth of a millimetre or so.
pub fn compare<A: Length, B: Length>(first: &Form<A>, second: &Form<B>) -> Comparison {
    let (first, second) = (first.to_millimetres(), second.to_millimetres());
    Comparison {
        major: first.major - second.major,
        pitch_share: Quantity::new(first.pitch / second.pitch - 1.0),
        pitch_diameter: first.pitch_diameter() - second.pitch_diameter(),
        turns: turns_in_step(first.pitch, second.pitch),
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
    use crate::calc::thread::table::{metric_thread, unified};
    use crate::quantity::Inch;
    use proptest::prelude::*;

    /// Pairs found together in the same unit, engine and vehicle.
    const MET: [(&str, &str); 8] = [
        ("5/16-18", "M8x1.25"),
        ("3/8-16", "M10x1.5"),
        ("1/4-20", "M6x1"),
        ("1/4-28", "M6x1"),
        ("7/16-14", "M12x1.75"),
        ("1/2-13", "M12x1.75"),
        ("1/2-20", "M12x1.25"),
        ("5/16-24", "M8x1"),
    ];

    fn names(of: &str) -> Vec<&'static str> {
        alike(of).iter().map(|alike| alike.name).collect()
    }

    fn pair(inch: &str, metric: &str) -> (Form<Inch>, Form<Millimetre>) {
        (unified(inch).expect(inch).form, metric_thread(metric).expect(metric).form)
    }

    #[test]
    fn every_pair_met_in_practice_is_found_from_either_side() {
        for (inch, metric) in MET {
            assert!(names(inch).contains(&metric), "{metric} is not among {:?}", names(inch));
            assert!(names(metric).contains(&inch), "{inch} is not among {:?}", names(metric));
        }
        for (name, _) in every() {
            for other in names(name) {
                assert!(names(other).contains(&name), "{other} passes for {name}, and not the other way about");
            }
        }
        assert!(!names("1/4-20").contains(&"M8x1.25"), "a hole it drops through is no look-alike");
        assert!(!names("10-24").contains(&"M5x0.8"), "a pitch a third coarser does not pass for the other");
        assert!(!names("10-32").contains(&"10-24"), "nor a third finer");
        assert!(names("no such thread").is_empty());
    }

    #[test]
    fn what_goes_in_furthest_comes_first_and_what_goes_in_neither_way_last() {
        for (name, _) in every() {
            let turns: Vec<_> = alike(name).iter().map(|alike| alike.turns().map(Quantity::value)).collect();
            assert!(
                turns.is_sorted_by(|left, right| left.unwrap_or(-1.0) >= right.unwrap_or(-1.0)),
                "{name}: {turns:?}"
            );
            assert!(!names(name).contains(&name), "{name} is no look-alike of itself");
        }
        // 1.41 against 1.25 mm goes 1.9 turns, 1.06 one and a half, 1.00 one and a quarter.
        assert_eq!(names("M8x1.25"), ["5/16-18", "5/16-24", "M8x1"]);
        let first = alike("M12x1.25")[0];
        assert_eq!((first.name, first.in_its_hole == first.its_bolt), ("1/2-20", false));
        assert!(matches!(first.its_bolt, Entry::TooBig) && first.turns().is_some_and(|turns| turns.value() > 15.0));
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
        let apart = compare(&three_eighths, &ten);
        assert!((apart.pitch_diameter.value() + 0.532).abs() < 0.001 && (apart.turns.value() - 4.3).abs() < 0.05);
        let (quarter, eight) = pair("1/4-20", "M8x1.25");
        assert_eq!(try_in(&quarter, &eight), Entry::DropsThrough);
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
