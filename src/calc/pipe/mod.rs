//! Pipe threads: taper (it seals on the threads) and straight (it does not).

pub mod port;

use super::thread::Form;
use super::thread::class::Limits;
use super::thread::table::Drill;
use crate::quantity::{Degree, Inch, Quantity};

/// Growth of diameter for one unit of length along the axis: 1 in 16 (standard: ASME B1.20.1).
pub const TAPER: f64 = 1.0 / 16.0;

/// Angle between the taper and the axis: atan(1/32), 1° 47′.
pub fn half_angle() -> Quantity<Degree> {
    Quantity::new((TAPER / 2.0).atan().to_degrees())
}

/// One size of American taper pipe thread.
#[derive(Clone, Copy, Debug)]
pub struct Taper {
    /// Nominal size and threads an inch: `1/8-27`.
    pub name: &'static str,
    /// Outside diameter of the pipe.
    pub outside: Quantity<Inch>,
    /// Threads in one inch.
    pub threads_per_inch: f64,
    /// Hand-tight engagement, L1; tabulated by the standard, not computed.
    pub hand_tight: Quantity<Inch>,
    /// Drill before the tap, no reamer used.
    pub drill: Drill<Inch>,
}

/// Sizes met on a transmission.
///
/// Standard: ASME B1.20.1, table 2. Drills looked up, that of 1/2-14 memory,
/// high. Printed copies with 0.0478 for the 3/8 thread length are wrong (0.4078).
pub const TAPER_SIZES: &[Taper] = &[
    taper("1/8-27", 0.405, 27.0, 0.1615, ("R", 0.339)),
    taper("1/4-18", 0.540, 18.0, 0.2278, ("7/16", 0.4375)),
    taper("3/8-18", 0.675, 18.0, 0.240, ("37/64", 0.578125)),
    taper("1/2-14", 0.840, 14.0, 0.320, ("23/32", 0.71875)),
];

const fn taper(
    name: &'static str,
    outside: f64,
    threads_per_inch: f64,
    hand_tight: f64,
    drill: (&'static str, f64),
) -> Taper {
    Taper {
        name,
        outside: Quantity::new(outside),
        threads_per_inch,
        hand_tight: Quantity::new(hand_tight),
        drill: Drill { name: drill.0, diameter: Quantity::new(drill.1) },
    }
}

/// The taper size called `name`.
pub fn taper_size(name: &str) -> Option<&'static Taper> {
    TAPER_SIZES.iter().find(|size| size.name == name.trim())
}

impl Taper {
    /// Pitch diameter at the small end, E0: D − (0.05 D + 1.1) / n.
    pub fn pitch_diameter_at_end(&self) -> Quantity<Inch> {
        Quantity::new(self.outside.value() - (0.05 * self.outside.value() + 1.1) / self.threads_per_inch)
    }

    /// Pitch diameter at the hand-tight plane, E1: E0 + L1 / 16.
    pub fn pitch_diameter_hand_tight(&self) -> Quantity<Inch> {
        self.pitch_diameter_at(self.hand_tight)
    }

    /// Pitch diameter where the good thread ends, E2: E0 + L2 / 16.
    pub fn pitch_diameter_effective(&self) -> Quantity<Inch> {
        self.pitch_diameter_at(self.effective_length())
    }

    /// Pitch diameter so far from the small end.
    pub fn pitch_diameter_at(&self, from_end: Quantity<Inch>) -> Quantity<Inch> {
        self.pitch_diameter_at_end() + from_end * TAPER
    }

    /// Length of good thread on the fitting, L2: (0.80 D + 6.8) / n.
    pub fn effective_length(&self) -> Quantity<Inch> {
        Quantity::new((0.80 * self.outside.value() + 6.8) / self.threads_per_inch)
    }

    /// Engagement once pulled up with a wrench: L1 + 3 threads (sizes to 2 in; memory, high).
    pub fn wrench_tight(&self) -> Quantity<Inch> {
        self.hand_tight + Quantity::new(3.0 / self.threads_per_inch)
    }

    /// Length over which the thread runs out, V: 3.47 / n (standard: ASME B1.20.1).
    pub fn vanish(&self) -> Quantity<Inch> {
        Quantity::new(3.47 / self.threads_per_inch)
    }

    /// How deep this taper goes into a straight hole before its threads bind: (hole's pitch diameter − E0) × 16.
    ///
    /// Zero or less: it does not start. In a straight port it feels tight
    /// there without sealing, and pulled further it splits the case.
    pub fn binds_after(&self, straight_pitch_diameter: Quantity<Inch>) -> Quantity<Inch> {
        (straight_pitch_diameter - self.pitch_diameter_at_end()) * (1.0 / TAPER)
    }

    /// Whether a straight thread passes for this taper: same pitch, outside diameters within 1/32 in.
    pub fn looks_like(&self, straight: &Form<Inch>) -> bool {
        let near = (straight.major - self.outside).abs().value() <= 0.03125;
        near && (straight.threads_per_inch() - self.threads_per_inch).abs() < 1e-6
    }
}

/// One size of American straight mechanical pipe thread (free fit; seals by a washer or not at all).
#[derive(Clone, Copy, Debug)]
pub struct Straight {
    /// Nominal size and threads an inch.
    pub name: &'static str,
    /// Outside diameter of the male thread.
    pub male_major: Limits,
    /// Pitch diameter of the male thread.
    pub male_pitch: Limits,
    /// Bore of the female thread.
    pub female_minor: Limits,
    /// Pitch diameter of the female thread.
    pub female_pitch: Limits,
}

const fn straight(name: &'static str, limits: [[f64; 2]; 4]) -> Straight {
    const fn between(limits: [f64; 2]) -> Limits {
        Limits { least: Quantity::new(limits[0]), most: Quantity::new(limits[1]) }
    }
    Straight {
        name,
        male_major: between(limits[0]),
        male_pitch: between(limits[1]),
        female_minor: between(limits[2]),
        female_pitch: between(limits[3]),
    }
}

/// Straight mechanical sizes (standard: ASME B1.20.1; looked up: machinists' handbook, 27th ed., table 5).
pub const STRAIGHT_SIZES: &[Straight] = &[
    straight("1/8-27", [[0.390, 0.397], [0.3689, 0.3725], [0.358, 0.364], [0.3736, 0.3783]]),
    straight("1/4-18", [[0.517, 0.526], [0.4859, 0.4903], [0.468, 0.481], [0.4916, 0.4974]]),
    straight("3/8-18", [[0.653, 0.662], [0.6211, 0.6256], [0.603, 0.612], [0.6270, 0.6329]]),
];

/// A straight coupling thread of 1/4-18: it takes a taper fitting with sealant at low pressure.
#[derive(Clone, Copy, Debug)]
pub struct Coupling {
    /// Nominal size and threads an inch.
    pub name: &'static str,
    /// Smallest bore.
    pub least_bore: Quantity<Inch>,
    /// Pitch diameter.
    pub pitch: Limits,
}

/// The coupling size that was read (machinists' handbook, 27th ed., table 4); the others are not guessed.
pub const COUPLING: Coupling = Coupling {
    name: "1/4-18",
    least_bore: Quantity::new(0.442),
    pitch: Limits { least: Quantity::new(0.4864), most: Quantity::new(0.4968) },
};

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::thread::table::unified;
    use proptest::prelude::*;

    #[test]
    fn the_printing_errors_going_round_are_not_ours() {
        let three_eighths = taper_size("3/8-18").expect("in the table").effective_length().value();
        assert!((three_eighths - 0.0478).abs() > 0.3 && (three_eighths - 0.4078).abs() < 1e-4);
        // A quick table gives 0.180 in for the hand-tight depth of 1/8; the standard has 0.1615.
        assert!((taper_size("1/8-27").expect("in the table").hand_tight.value() - 0.1615).abs() < 1e-9);
    }

    #[test]
    fn a_straight_hole_begins_where_the_taper_is_hand_tight() {
        for straight in STRAIGHT_SIZES {
            let taper = taper_size(straight.name).expect(straight.name);
            let hand_tight = taper.pitch_diameter_hand_tight();
            assert!((straight.female_pitch.least - hand_tight).abs().value() < 1e-4, "{}", straight.name);
            let depth = taper.binds_after(straight.female_pitch.least);
            assert!((depth - taper.hand_tight).abs().value() < 0.0016, "{}: {depth}", straight.name);
            // The loosest hole lets it further in, and it still has not sealed.
            assert!(taper.binds_after(straight.female_pitch.most) > depth);
            assert!(straight.male_pitch.most < straight.female_pitch.least, "{}: free fit", straight.name);
        }
        // Shop handbook: taper 1/8 binds in a straight hole at about 0.16 in.
        let eighth = taper_size("1/8-27").expect("in the table");
        assert!((eighth.binds_after(STRAIGHT_SIZES[0].female_pitch.least).value() - 0.16).abs() < 0.005);
        assert!(eighth.binds_after(Quantity::new(0.36)).value() < 0.0, "too small a hole does not take it");
    }

    #[test]
    fn a_drill_fits_between_the_roots_and_the_pitch_line() {
        for size in TAPER_SIZES {
            // Basic minor diameter at the small end of the pipe: E0 less a thread depth of 0.8 P.
            let minor = size.pitch_diameter_at_end() - Quantity::new(0.8 / size.threads_per_inch);
            let over = (size.drill.diameter - minor).value();
            assert!((0.0..0.020).contains(&over), "{}: {over}", size.name);
        }
    }

    #[test]
    fn the_dash_6_thread_passes_for_quarter_inch_pipe() {
        let quarter = taper_size("1/4-18").expect("in the table");
        assert!(quarter.looks_like(&unified("9/16-18").expect("in the table").form));
        assert!(!quarter.looks_like(&unified("5/8-18").expect("in the table").form), "same pitch, too big");
        assert!(!quarter.looks_like(&unified("9/16-12").expect("in the table").form), "same size, other pitch");
    }

    #[test]
    fn the_coupling_is_tapped_about_the_taper_it_takes() {
        let taper = taper_size(COUPLING.name).expect("in the table");
        assert!(COUPLING.pitch.take(taper.pitch_diameter_hand_tight()), "the fitting is hand-tight inside its limits");
        assert!(COUPLING.least_bore < taper.pitch_diameter_at_end());
        // A turn and a half less and one more than hand-tight: the limits are that far apart on the taper.
        assert!(taper.binds_after(COUPLING.pitch.least) < taper.hand_tight);
        assert!(taper.binds_after(COUPLING.pitch.most) > taper.hand_tight);
    }

    #[test]
    fn hand_tight_comes_before_wrench_tight_and_both_inside_the_good_thread_and_its_run_out() {
        for size in TAPER_SIZES {
            let turns = |length: Quantity<Inch>| length.value() * size.threads_per_inch;
            assert!((turns(size.wrench_tight() - size.hand_tight) - 3.0).abs() < 1e-9, "{}", size.name);
            assert!(size.hand_tight < size.effective_length(), "{}", size.name);
            assert!(size.wrench_tight() < size.effective_length() + size.vanish(), "{}", size.name);
        }
    }

    proptest! {
        #[test]
        fn sixteen_in_of_thread_grow_one_in(from_end in 0.0..0.5f64, index in 0usize..4) {
            let size = &TAPER_SIZES[index];
            let here = size.pitch_diameter_at(Quantity::new(from_end));
            let further = size.pitch_diameter_at(Quantity::new(from_end + 16.0));
            prop_assert!(((further - here).value() - 1.0).abs() < 1e-12);
            // Coming from the other side: a hole of that pitch diameter takes the fitting just so far.
            prop_assert!((size.binds_after(here).value() - from_end).abs() < 1e-12);
        }
    }
}
