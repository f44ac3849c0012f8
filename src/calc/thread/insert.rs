//! Holes for screw-thread inserts: coil of wire, or solid bushing with keys.
//!
//! The two share a name in some manuals and need very different holes, so a
//! record has to say which one it means.

use super::Form;
use super::table::Drill;
use crate::quantity::{Inch, Length, Quantity};

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
    use crate::calc::check::{Check, all};
    use crate::calc::thread::table::unified;

    #[test]
    fn agrees_with_published_insert_holes() {
        let source = "table of coil-insert holes, computed apart";
        let table = [
            ("1/4-20", 0.2554, 0.2825, 0.3150),
            ("5/16-18", 0.3185, 0.3486, 0.3847),
            ("3/8-16", 0.3818, 0.4156, 0.4562),
            ("7/16-14", 0.4452, 0.4839, 0.5303),
        ];
        for (what, minor, pitch_diameter, major) in table {
            let form = unified(what).expect(what).form;
            all(&[
                Check { source, what, computed: coil_minor(&form).value(), published: minor, within: 1e-4 },
                Check {
                    source,
                    what,
                    computed: coil_pitch_diameter(&form).value(),
                    published: pitch_diameter,
                    within: 1e-4,
                },
                Check { source, what, computed: coil_major(&form).value(), published: major, within: 1e-4 },
            ]);
        }
        let metric = |major, pitch| Form::metric(major, pitch);
        all(&[
            Check {
                source,
                what: "M8 minor",
                computed: coil_minor(&metric(8.0, 1.25)).value(),
                published: 8.135,
                within: 1e-3,
            },
            Check {
                source,
                what: "M8 major",
                computed: coil_major(&metric(8.0, 1.25)).value(),
                published: 9.624,
                within: 1e-3,
            },
            Check {
                source,
                what: "M10 pitch",
                computed: coil_pitch_diameter(&metric(10.0, 1.5)).value(),
                published: 10.974,
                within: 1e-3,
            },
            Check {
                source,
                what: "M10 major",
                computed: coil_major(&metric(10.0, 1.5)).value(),
                published: 11.949,
                within: 1e-3,
            },
        ]);
    }

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
}
