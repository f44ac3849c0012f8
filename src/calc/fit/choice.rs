//! One washer out of a set.

use super::{inches, whole};
use crate::quantity::{Inch, Quantity};

/// What a clearance may come to, and what is aimed at.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Window {
    /// The least that is good.
    pub least: Quantity<Inch>,
    /// What is aimed at.
    pub aim: Quantity<Inch>,
    /// The most that is good.
    pub most: Quantity<Inch>,
}

/// A part of a selective set.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// How thick it is.
    pub size: Quantity<Inch>,
    /// How far it may be off that, either way: nought when this very part was measured.
    pub give: Quantity<Inch>,
}

/// What a clearance comes to with one part.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Landing {
    /// Which part, by its place in the set.
    pub part: usize,
    /// The clearance it leaves.
    pub result: Quantity<Inch>,
    /// How far it may be off, either way, when everything is off the same way.
    pub worst: Quantity<Inch>,
    /// How far it may be off, either way, when the errors fall by chance.
    pub likely: Quantity<Inch>,
    /// Does it lie inside the window?
    pub fits: bool,
    /// Does it lie inside the window even at its worst?
    pub sure: bool,
}

/// The part to fit.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Pick {
    /// This one.
    Fits(Landing),
    /// No part in the set fits; this one comes nearest, and misses the window by so much: above nought too loose.
    NoneFits {
        /// The nearest.
        nearest: Landing,
        /// How far it is outside.
        off: Quantity<Inch>,
    },
    /// There is no part to choose from.
    NoParts,
}

impl Window {
    /// Does this lie inside it? Its edges belong to it.
    pub fn holds(&self, clearance: Quantity<Inch>) -> bool {
        self.off(clearance) == 0
    }

    /// Nanometres outside: above nought too much, below too little.
    pub(super) fn off(&self, clearance: Quantity<Inch>) -> i64 {
        let (least, most, clearance) = (whole(self.least), whole(self.most), whole(clearance));
        if clearance > most { clearance - most } else { (clearance - least).min(0) }
    }

    /// Nanometres from what is aimed at.
    pub(super) fn past_aim(&self, clearance: Quantity<Inch>) -> i64 {
        (whole(clearance) - whole(self.aim)).abs()
    }
}

/// The thickness that would give exactly what is aimed at: new = old + reading − aim. Exact (geometry).
pub fn wanted(old: Quantity<Inch>, reading: Quantity<Inch>, aim: Quantity<Inch>) -> Quantity<Inch> {
    inches(whole(old) + whole(reading) - whole(aim))
}

/// What every part of the set would leave: result = reading + old − new.
///
/// `unsure` is how far the reading itself may be off, either way. The worst case adds what the part and the
/// reading may be off; the likely one takes the root of the sum of their squares.
pub fn landings(
    old: Quantity<Inch>,
    reading: Quantity<Inch>,
    unsure: Quantity<Inch>,
    window: &Window,
    set: &[Part],
) -> Vec<Landing> {
    let landing = |(part, &Part { size, give }): (usize, &Part)| {
        let result = inches(whole(reading) + whole(old) - whole(size));
        let worst = inches(whole(give).abs() + whole(unsure).abs());
        let likely = Quantity::new(give.value().hypot(unsure.value()));
        let sure = window.holds(result + worst) && window.holds(result - worst);
        Landing { part, result, worst, likely, fits: window.holds(result), sure }
    };
    set.iter().enumerate().map(landing).collect()
}

/// The part that lands inside the window and nearest to the aim; of two equally near the one that lands looser.
pub fn choose(landings: &[Landing], window: &Window) -> Pick {
    let rank = |landing: &&Landing| {
        let off = window.off(landing.result).abs();
        (off, window.past_aim(landing.result), -whole(landing.result))
    };
    match landings.iter().min_by_key(rank) {
        None => Pick::NoParts,
        Some(best) if best.fits => Pick::Fits(*best),
        Some(nearest) => Pick::NoneFits { nearest: *nearest, off: inches(window.off(nearest.result)) },
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all};
    use proptest::prelude::*;

    const EXACT: Quantity<Inch> = Quantity::new(0.0);

    fn inch(size: f64) -> Quantity<Inch> {
        Quantity::new(size)
    }

    fn window(least: f64, aim: f64, most: f64) -> Window {
        Window { least: inch(least), aim: inch(aim), most: inch(most) }
    }

    fn set(sizes: &[f64], give: f64) -> Vec<Part> {
        sizes.iter().map(|size| Part { size: inch(*size), give: inch(give) }).collect()
    }

    /// Front washers of this unit (memory, medium).
    const FRONT: [f64; 7] = [0.062, 0.073, 0.084, 0.095, 0.106, 0.117, 0.128];
    /// Rear washers of a close relative (TM 9-2320-280-34), each ± 0.002.
    const REAR: [f64; 6] = [0.076, 0.084, 0.092, 0.100, 0.108, 0.116];

    #[test]
    fn the_handbooks_front_washer_comes_out() {
        let window = window(0.003, 0.012, 0.024);
        let landings = landings(inch(0.073), inch(0.031), EXACT, &window, &set(&FRONT, 0.0));
        let Pick::Fits(best) = choose(&landings, &window) else { panic!("one fits") };
        let shop = "shop handbook, front or rear washer";
        all(&[
            Check {
                source: shop,
                what: "thickness wanted",
                computed: wanted(inch(0.073), inch(0.031), window.aim).value(),
                published: 0.092,
                within: 1e-9,
            },
            Check { source: shop, what: "nearest step", computed: FRONT[best.part], published: 0.095, within: 1e-9 },
            Check {
                source: shop,
                what: "play it leaves",
                computed: best.result.value(),
                published: 0.009,
                within: 1e-9,
            },
        ]);
    }

    #[test]
    fn what_the_washer_may_be_off_is_told_at_its_worst_and_as_likely() {
        let window = window(0.007, 0.010, 0.019);
        let landings = landings(inch(0.092), inch(0.022), inch(0.001), &window, &set(&REAR, 0.002));
        let Pick::Fits(best) = choose(&landings, &window) else { panic!("one fits") };
        assert_eq!((REAR[best.part], best.result), (0.100, inch(0.014)), "0.108 would leave 0.006, too little");
        assert_eq!(best.worst, inch(0.003));
        assert!((best.likely.value() - 5e-6_f64.sqrt()).abs() < 1e-12);
        assert!(best.sure, "0.011 to 0.017 lies inside");
    }

    #[test]
    fn a_part_at_the_very_edge_fits_and_a_ten_thousandth_beyond_does_not() {
        let window = window(0.003, 0.012, 0.024);
        let of = |size: f64| choose(&landings(inch(0.1), inch(0.012), EXACT, &window, &set(&[size], 0.0)), &window);
        assert!(matches!(of(0.109), Pick::Fits(at) if at.result == inch(0.003)));
        assert!(matches!(of(0.1091), Pick::NoneFits { off, .. } if off == inch(-0.0001)));
        assert!(matches!(of(0.088), Pick::Fits(at) if at.result == inch(0.024)));
        assert!(matches!(of(0.0879), Pick::NoneFits { off, .. } if off == inch(0.0001)));
    }

    #[test]
    fn a_part_that_fits_by_its_size_alone_is_no_sure_thing() {
        let window = window(0.007, 0.010, 0.019);
        let sure = |size: f64, give: f64| {
            let landed = landings(inch(0.1), inch(0.012), inch(0.001), &window, &set(&[size], give));
            assert!(landed[0].fits, "{size}");
            landed[0].sure
        };
        // Two thousandths in the washer and one in the reading: the play may come to three more or three less.
        assert!(sure(0.102, 0.002), "0.010, at its worst just 0.007");
        assert!(!sure(0.103, 0.002), "0.009, at its worst 0.006, too tight");
        assert!(sure(0.096, 0.002), "0.016, at its worst just 0.019");
        assert!(!sure(0.095, 0.002), "0.017, at its worst 0.020, too loose");
        assert!(sure(0.103, 0.001) && sure(0.095, 0.001), "a washer made closer is sure where the other is not");
    }

    #[test]
    fn of_two_parts_equally_far_from_the_aim_the_looser_one_is_taken() {
        let window = window(0.003, 0.012, 0.024);
        for sizes in [[0.095, 0.105], [0.105, 0.095]] {
            let landings = landings(inch(0.1), inch(0.012), EXACT, &window, &set(&sizes, 0.0));
            let Pick::Fits(best) = choose(&landings, &window) else { panic!("both fit") };
            assert_eq!(best.result, inch(0.017), "0.007 would be as near to 0.012");
        }
    }

    #[test]
    fn an_empty_shelf_is_said_plainly() {
        assert_eq!(choose(&[], &window(0.003, 0.012, 0.024)), Pick::NoParts);
    }

    /// Sizes in whole ten-thousandths, as they are written down.
    fn tenths(size: i32) -> Quantity<Inch> {
        inch(f64::from(size) / 10_000.0)
    }

    proptest! {
        #[test]
        fn the_picked_part_is_the_best_by_trying_each(
            old in 500..1300i32, reading in 0..600i32, least in 0..100i32, up in 0..150i32, more in 0..150i32,
            sizes in prop::collection::vec(500..1300i32, 1..9),
        ) {
            let (aim, most) = (least + up, least + up + more);
            let window = Window { least: tenths(least), aim: tenths(aim), most: tenths(most) };
            let set: Vec<_> = sizes.iter().map(|size| Part { size: tenths(*size), give: EXACT }).collect();
            let play = |size: i32| reading + old - size;
            let misses = |size: i32| (least - play(size)).max(play(size) - most).max(0);
            let best = sizes.iter().map(|size| (misses(*size), (play(*size) - aim).abs())).min().expect("a part");
            match choose(&landings(tenths(old), tenths(reading), EXACT, &window, &set), &window) {
                Pick::Fits(at) => {
                    let size = sizes[at.part];
                    prop_assert_eq!((0, (play(size) - aim).abs()), best);
                    prop_assert_eq!(whole(at.result), whole(tenths(play(size))));
                }
                Pick::NoneFits { nearest, off } => {
                    prop_assert!(best.0 > 0);
                    prop_assert_eq!(misses(sizes[nearest.part]), best.0);
                    prop_assert_eq!(whole(off).abs(), whole(tenths(best.0)));
                }
                Pick::NoParts => prop_assert!(false),
            }
        }

        #[test]
        fn the_wanted_part_would_hit_the_aim(old in 500..1300i32, reading in 0..600i32, aim in 1..300i32) {
            let size = wanted(tenths(old), tenths(reading), tenths(aim));
            let window = Window { least: tenths(aim), aim: tenths(aim), most: tenths(aim) };
            let exact = [Part { size, give: EXACT }];
            let landed = landings(tenths(old), tenths(reading), EXACT, &window, &exact);
            prop_assert!(matches!(choose(&landed, &window), Pick::Fits(_)));
        }

        #[test]
        fn a_thicker_part_never_leaves_more(old in 500..1300i32, reading in 0..600i32, one in 500..1300i32, more in 1..90i32) {
            let window = window(0.0, 0.01, 0.02);
            let set = [one, one + more].map(|size| Part { size: tenths(size), give: EXACT });
            let landed = landings(tenths(old), tenths(reading), EXACT, &window, &set);
            prop_assert!(landed[1].result < landed[0].result);
        }
    }
}
