//! Holes for screw-thread inserts: coil of wire, or solid bushing with keys.
//!
//! The two share a name in some manuals and need very different holes, so a
//! record has to say which one it means.

use super::Form;
use super::table::Drill;
use crate::quantity::{Inch, Length, Millimetre, Quantity};

/// Smallest bore of the hole for a **coil** insert: d + 0.108253 P.
///
/// Source: deduced from the tap limits of ASME B94.9 (looked up), which it fits; standard: ASME B18.29.1.
pub fn coil_minor<U: Length>(form: &Form<U>) -> Quantity<U> {
    form.cut(-0.125)
}

/// Smallest pitch diameter of the hole for a **coil** insert: d + 0.649519 P.
pub fn coil_pitch_diameter<U: Length>(form: &Form<U>) -> Quantity<U> {
    form.cut(-0.75)
}

/// Smallest major diameter of the hole for a **coil** insert: d + 1.299038 P.
///
/// Metal left around the hole is counted from here, not from the bolt.
pub fn coil_major<U: Length>(form: &Form<U>) -> Quantity<U> {
    form.cut(-1.5)
}

/// How much wider than its smallest bore a coil's hole may be drilled, 0.015 in (common practice; the drills in use lie within it).
pub const COIL_DRILL_ROOM: Quantity<Inch> = Quantity::new(0.015);

/// Smallest and largest drill for a coil insert.
pub fn coil_drill_window<U: Length>(form: &Form<U>) -> (Quantity<U>, Quantity<U>) {
    let least = coil_minor(form);
    (least, least + Quantity::new(COIL_DRILL_ROOM.value() * U::IN_ONE_INCH))
}

/// How the hole for a coil is tapped.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Tap {
    /// Long lead: the drill has to go four pitches deeper than the full thread needs.
    Plug,
    /// Short lead, for a hole with a floor: two pitches.
    Bottoming,
}

/// Full thread the hole needs for a **coil** insert: nominal length + 1 P.
///
/// Standard: ASME B18.29.2M (looked up on a page that quotes it).
pub fn coil_thread_depth<U: Length>(form: &Form<U>, nominal: Quantity<U>) -> Quantity<U> {
    nominal + form.pitch
}

/// How deep to drill for a **coil** insert: nominal length + 6 P for a plug tap, + 4 P for a bottoming one.
///
/// Four or two pitches of lead, one below the coil, one of set-down. Given for
/// more than 8 mm; source as for [`coil_thread_depth`]. Check that the case is that thick.
pub fn coil_drill_depth<U: Length>(form: &Form<U>, nominal: Quantity<U>, tap: Tap) -> Quantity<U> {
    let lead = match tap {
        Tap::Plug => 4.0,
        Tap::Bottoming => 2.0,
    };
    nominal + form.pitch * (lead + 2.0)
}

/// Shortest and longest a **coil** stands once it is in: nominal length − 0.75 P to − 0.5 P. Source as for [`coil_thread_depth`].
pub fn coil_installed<U: Length>(form: &Form<U>, nominal: Quantity<U>) -> (Quantity<U>, Quantity<U>) {
    (nominal - form.pitch * 0.75, nominal - form.pitch * 0.5)
}

/// How far below the face a **solid** keyed insert is set: 0.010 to 0.030 in (looked up: TM 9-2520-215-34).
pub const SOLID_SET_DOWN: (Quantity<Inch>, Quantity<Inch>) = (Quantity::new(0.010), Quantity::new(0.030));

/// Drill for a metric **coil** insert.
#[derive(Clone, Copy, Debug)]
pub struct MetricCoil {
    /// The bolt's thread.
    pub thread: &'static str,
    /// The drill (memory, high).
    pub drill: Drill<Millimetre>,
}

/// Metric threads repaired with coils; no figures for metric solid inserts were found.
pub const METRIC_COILS: &[MetricCoil] = &[
    metric_coil("M6x1", "6.3 mm", 6.3),
    metric_coil("M8x1.25", "8.3 mm", 8.3),
    metric_coil("M10x1.5", "10.4 mm", 10.4),
    metric_coil("M12x1.75", "12.4 mm", 12.4),
];

const fn metric_coil(thread: &'static str, name: &'static str, diameter: f64) -> MetricCoil {
    MetricCoil { thread, drill: Drill { name, diameter: Quantity::new(diameter) } }
}

/// Hole for one thread, for either kind of insert.
#[derive(Clone, Copy, Debug)]
pub struct Hole {
    /// The bolt's thread.
    pub thread: &'static str,
    /// Drill for a coil insert (1/4-20 looked up, the rest memory, high).
    pub coil_drill: Drill<Inch>,
    /// Drill for a solid keyed insert (looked up: TM 9-2520-215-34).
    pub solid_drill: Drill<Inch>,
    /// Tap for a solid keyed insert (same source).
    pub solid_tap: &'static str,
}

const fn hole(
    thread: &'static str,
    coil: (&'static str, f64),
    solid: (&'static str, f64),
    solid_tap: &'static str,
) -> Hole {
    Hole {
        thread,
        coil_drill: Drill { name: coil.0, diameter: Quantity::new(coil.1) },
        solid_drill: Drill { name: solid.0, diameter: Quantity::new(solid.1) },
        solid_tap,
    }
}

/// The threads repaired in a case.
pub const HOLES: &[Hole] = &[
    hole("1/4-20", ("17/64", 0.265625), ("X", 0.397), "7/16-14"),
    hole("5/16-18", ("Q", 0.332), ("29/64", 0.453125), "1/2-13"),
    hole("3/8-16", ("25/64", 0.390625), ("33/64", 0.515625), "9/16-12"),
    hole("7/16-14", ("29/64", 0.453125), ("37/64", 0.578125), "5/8-11"),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::same;
    use crate::calc::thread::table::{metric_thread, unified};
    use proptest::prelude::*;

    #[test]
    fn the_taps_of_the_standard_cut_just_outside_the_smallest_hole() {
        // Machinists' handbook, 31st ed., table 25 (ASME B94.9): tap major and pitch diameter, smallest.
        for (name, major, pitch_diameter) in [
            ("1/4-20", 0.3177, 0.2835),
            ("5/16-18", 0.3874, 0.3501),
            ("3/8-16", 0.4592, 0.4171),
            ("7/16-14", 0.5333, 0.4854),
        ] {
            let form = unified(name).expect(name).form;
            let over = |tap: f64, hole: Quantity<Inch>| tap - hole.value();
            assert!((0.0..0.0035).contains(&over(major, coil_major(&form))), "{name}");
            assert!((0.0..0.0020).contains(&over(pitch_diameter, coil_pitch_diameter(&form))), "{name}");
        }
    }

    #[test]
    fn a_coil_drill_clears_the_smallest_bore_and_a_solid_one_is_far_larger() {
        for hole in HOLES {
            let form = unified(hole.thread).expect(hole.thread).form;
            let over = (hole.coil_drill.diameter - coil_minor(&form)).value();
            assert!((0.0..=0.015).contains(&over), "{}: {over}", hole.thread);
            let apart = (hole.solid_drill.diameter - hole.coil_drill.diameter).value();
            assert!(apart > 0.1, "{}: nobody may take one for the other", hole.thread);
            let solid = unified(hole.solid_tap).expect(hole.solid_tap).form;
            let percent = solid.percent_thread(hole.solid_drill.diameter).value();
            assert!((0.35..0.85).contains(&percent), "{}: {percent}", hole.thread);
        }
    }

    #[test]
    fn every_metric_coil_drill_lies_in_its_window() {
        for coil in METRIC_COILS {
            let form = metric_thread(coil.thread).expect(coil.thread).form;
            let (least, most) = coil_drill_window(&form);
            assert!(least <= coil.drill.diameter && coil.drill.diameter <= most, "{}", coil.thread);
            assert_eq!(Quantity::from_typed(coil.drill.name), Ok(coil.drill.diameter));
        }
    }

    proptest! {
        #[test]
        fn the_drill_goes_below_the_thread_and_the_thread_below_the_coil(major in 6.0..16.0f64, part in 0.1..0.2f64, lengths in 1.0..3.0f64) {
            let form = Form::metric(major, major * part);
            let nominal = Quantity::new(major * lengths);
            let (shortest, longest) = coil_installed(&form, nominal);
            let thread = coil_thread_depth(&form, nominal);
            let [plug, bottoming] = [Tap::Plug, Tap::Bottoming].map(|tap| coil_drill_depth(&form, nominal, tap));
            prop_assert!(shortest < longest && longest < nominal && nominal < thread && thread < bottoming && bottoming < plug);
            // A coil holds whole and part turns: a pitch is the measure of all of it.
            let pitches = |length: Quantity<_>| (length - nominal) / form.pitch;
            prop_assert!((pitches(shortest) + 0.75).abs() < 1e-9 && (pitches(longest) + 0.5).abs() < 1e-9);
            prop_assert!((pitches(thread) - 1.0).abs() < 1e-9);
            prop_assert!((pitches(bottoming) - 4.0).abs() < 1e-9 && (pitches(plug) - 6.0).abs() < 1e-9);
        }

        #[test]
        fn the_window_is_the_same_in_inches_and_millimetres(major in 0.2..0.6f64, per_inch in 11.0..28.0f64) {
            let form = Form::unified(major, per_inch);
            let (inch, metric) = (coil_drill_window(&form), coil_drill_window(&form.to_millimetres()));
            prop_assert!(same(inch.0.to_millimetres().value(), metric.0.value()));
            prop_assert!(same(inch.1.to_millimetres().value(), metric.1.value()));
            prop_assert!(((inch.1 - inch.0).value() - 0.015).abs() < 1e-12);
        }
    }
}
