//! The steels of a clutch pack, several at once.

use super::choice::Window;
use super::combine::{Pile, Way, sums};
use super::{inches, whole};
use crate::quantity::{Inch, Quantity};

/// The steels that bring a pack nearest to what is aimed at.
#[derive(Clone, Debug, PartialEq)]
pub struct Filled {
    /// Every steel of the pack, thinnest first.
    pub steels: Vec<Quantity<Inch>>,
    /// How many of them were not in it before.
    pub new: usize,
    /// The clearance they leave.
    pub result: Quantity<Inch>,
}

/// What can be done with a pack.
#[derive(Clone, Debug, PartialEq)]
pub enum Packing {
    /// It fits.
    Fits {
        /// What lands nearest to the aim.
        nearest: Filled,
        /// What lands inside the window with the fewest steels changed; none when that is the same.
        fewest: Option<Filled>,
    },
    /// No set of steels fits; this one comes nearest and misses by so much: above nought too loose.
    NoneFits {
        /// The nearest.
        nearest: Filled,
        /// How far it is outside.
        off: Quantity<Inch>,
    },
    /// There is no steel in the pack.
    NoSteels,
    /// So many different sizes come to more stacks than are tried.
    TooMany,
}

/// The thickness of each new steel when so many are changed for equal ones: old + (clearance − aim) / changed.
///
/// Exact (geometry). All changed steels are taken to be `old` thick; `changed` is 1 or more.
pub fn each_steel(old: Quantity<Inch>, clearance: Quantity<Inch>, aim: Quantity<Inch>, changed: u32) -> Quantity<Inch> {
    old + (clearance - aim) * (1.0 / f64::from(changed))
}

/// The steels to build the pack with, out of those in it and any number of each size on the shelf.
///
/// The number of steels stays. Whatever is exchanged, the clearance goes down by what the stack grows. Of two
/// ways to the same clearance the one that changes fewer steels is taken. Meant for at most 10 steels and 12 sizes.
pub fn fill(
    fitted: &[Quantity<Inch>],
    clearance: Quantity<Inch>,
    window: &Window,
    shelf: &[Quantity<Inch>],
) -> Packing {
    let stack: i64 = fitted.iter().map(|steel| whole(*steel)).sum();
    let piles = piles(fitted, shelf);
    let filled = |thick: i64, way: &Way| Filled {
        steels: laid_out(&piles, way),
        new: way.new,
        result: inches(whole(clearance) + stack - thick),
    };
    let Some(stacks) = sums(&piles, fitted.len()) else { return Packing::TooMany };
    let ways: Vec<Filled> = stacks
        .iter()
        .filter(|((parts, _), _)| *parts == fitted.len() && *parts > 0)
        .map(|((_, thick), way)| filled(*thick, way))
        .collect();
    let by_aim =
        |way: &&Filled| (window.off(way.result).abs(), window.past_aim(way.result), way.new, whole(way.result));
    let by_work = |way: &&Filled| (way.new, window.past_aim(way.result), whole(way.result));
    let Some(nearest) = ways.iter().min_by_key(by_aim) else { return Packing::NoSteels };
    if !window.holds(nearest.result) {
        return Packing::NoneFits { off: inches(window.off(nearest.result)), nearest: nearest.clone() };
    }
    let fewest = ways.iter().filter(|way| window.holds(way.result)).min_by_key(by_work);
    Packing::Fits { fewest: fewest.filter(|fewest| *fewest != nearest).cloned(), nearest: nearest.clone() }
}

/// Each size once, thinnest first, with how many of it are in the pack.
fn piles(fitted: &[Quantity<Inch>], shelf: &[Quantity<Inch>]) -> Vec<Pile> {
    let mut sizes: Vec<i64> = fitted.iter().chain(shelf).map(|size| whole(*size)).collect();
    sizes.sort_unstable();
    sizes.dedup();
    let on_shelf = |size: i64| shelf.iter().any(|steel| whole(*steel) == size);
    sizes
        .into_iter()
        .map(|size| {
            let in_pack = fitted.iter().filter(|steel| whole(**steel) == size).count();
            Pile { size, count: if on_shelf(size) { fitted.len() } else { in_pack }, fitted: in_pack }
        })
        .collect()
}

pub(super) fn laid_out(piles: &[Pile], way: &Way) -> Vec<Quantity<Inch>> {
    piles.iter().zip(&way.taken).flat_map(|(pile, taken)| std::iter::repeat_n(inches(pile.size), *taken)).collect()
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::calc::check::{Check, all};
    use proptest::prelude::*;

    fn tenths(size: i32) -> Quantity<Inch> {
        Quantity::new(f64::from(size) / 10_000.0)
    }

    fn window(least: i32, aim: i32, most: i32) -> Window {
        Window { least: tenths(least), aim: tenths(aim), most: tenths(most) }
    }

    #[test]
    fn the_handbooks_pack_comes_out() {
        let shop = "shop handbook, pack steel: 0.140 to 0.060 with 4 steels";
        let each = each_steel(tenths(770), tenths(1400), tenths(600), 4);
        let filled = fill(&[tenths(770); 4], tenths(1400), &window(360, 600, 1200), &[tenths(970)]);
        let Packing::Fits { nearest, fewest } = filled else { panic!("it fits") };
        all(&[
            Check {
                source: shop,
                what: "each thicker by",
                computed: (each - tenths(770)).value(),
                published: 0.020,
                within: 1e-9,
            },
            Check {
                source: shop,
                what: "clearance with four",
                computed: nearest.result.value(),
                published: 0.060,
                within: 1e-9,
            },
        ]);
        assert_eq!((nearest.new, nearest.steels), (4, vec![tenths(970); 4]));
        let fewest = fewest.expect("one thicker steel is enough to land inside");
        assert_eq!((fewest.new, fewest.result), (1, tenths(1200)));
    }

    #[test]
    fn the_armys_packs_have_the_clearance_a_friction_that_is_published() {
        // United States Army manuals: 7 discs 0.073 to 0.141, 6 discs 0.048 to 0.102, 10 discs 0.080 to 0.135 in.
        for (discs, least, most) in [(7, 730, 1410), (6, 480, 1020), (10, 800, 1350)] {
            let aim = discs * 100;
            let steels = vec![tenths(900); 5];
            let filled = fill(&steels, tenths(most + 300), &window(least, aim, most), &[tenths(950), tenths(1000)]);
            let Packing::Fits { nearest, .. } = filled else { panic!("{discs} discs") };
            assert!(nearest.result >= tenths(least) && nearest.result <= tenths(most), "{discs}: {}", nearest.result);
        }
    }

    #[test]
    fn a_shelf_that_cannot_do_it_says_so_and_shows_the_nearest() {
        let filled = fill(&[tenths(770); 3], tenths(1500), &window(180, 300, 600), &[tenths(800)]);
        let Packing::NoneFits { nearest, off } = filled else { panic!("nothing fits") };
        assert_eq!((nearest.new, nearest.result, off), (3, tenths(1410), tenths(810)));
        assert_eq!(fill(&[], tenths(500), &window(1, 2, 3), &[tenths(800)]), Packing::NoSteels);
    }

    #[test]
    fn sizes_that_come_to_millions_of_stacks_are_refused_and_those_of_a_drawer_are_not() {
        let sizes = |from: i32, step: i32, count: i32| (0..count).map(move |at| tenths(from + at * step));
        let drawer: Vec<_> = sizes(700, 25, 12).collect();
        let fitted: Vec<_> = sizes(701, 33, 10).collect();
        assert!(!matches!(fill(&fitted, tenths(500), &window(100, 500, 900), &drawer), Packing::TooMany));
        // Each typed to as many digits as it takes to make every stack another one.
        let odd = |from: f64, count: i32| -> Vec<Quantity<Inch>> {
            (0..count)
                .map(|at| Quantity::new(from + 0.002 * 1.937_f64.powi(at % 7) + 1e-7 * f64::from(at * at)))
                .collect()
        };
        assert_eq!(fill(&odd(0.07, 10), tenths(500), &window(100, 500, 900), &odd(0.081, 12)), Packing::TooMany);
    }

    #[test]
    fn a_pack_that_is_right_already_is_left_as_it_is() {
        // A thin and a thick steel come to the same as two middling ones, in whichever order they are met.
        let window = window(480, 600, 1020);
        for fitted in [[tenths(800); 2], [tenths(700), tenths(900)]] {
            let Packing::Fits { nearest, fewest } =
                fill(&fitted, tenths(600), &window, &[tenths(700), tenths(800), tenths(900)])
            else {
                panic!("it fits as it is")
            };
            assert_eq!((nearest.steels, nearest.new, fewest), (fitted.to_vec(), 0, None));
        }
    }

    /// Every choice of so many out of these sizes, one after the other.
    fn every(sizes: &[i32], count: usize) -> Vec<Vec<i32>> {
        if count == 0 {
            return vec![Vec::new()];
        }
        let shorter = every(sizes, count - 1);
        let longer = |size: &i32| shorter.iter().map(|rest| [rest.as_slice(), &[*size]].concat()).collect::<Vec<_>>();
        sizes.iter().flat_map(longer).collect()
    }

    proptest! {
        #[test]
        fn no_other_pack_comes_nearer(
            fitted in prop::collection::vec(700..900i32, 1..4), shelf in prop::collection::vec(700..1000i32, 0..4),
            clearance in 0..1500i32, least in 0..400i32, up in 0..300i32, more in 0..400i32,
        ) {
            let (aim, most) = (least + up, least + up + more);
            let before: i32 = fitted.iter().sum();
            let all = [fitted.as_slice(), &shelf].concat();
            let usable = |pack: &Vec<i32>| all.iter().all(|size| {
                let of = |among: &[i32]| among.iter().filter(|one| *one == size).count();
                shelf.contains(size) || of(pack) <= of(&fitted)
            });
            let rank = |result: i32| ((least - result).max(result - most).max(0), (result - aim).abs());
            let packs = every(&all, fitted.len());
            let best = packs.iter().filter(|pack| usable(pack))
                .map(|pack| rank(clearance + before - pack.iter().sum::<i32>())).min().expect("the old pack");
            let as_read: Vec<_> = fitted.iter().map(|size| tenths(*size)).collect();
            let on_shelf: Vec<_> = shelf.iter().map(|size| tenths(*size)).collect();
            let result = match fill(&as_read, tenths(clearance), &window(least, aim, most), &on_shelf) {
                Packing::Fits { nearest, fewest } => {
                    prop_assert_eq!(best.0, 0);
                    prop_assert!(fewest.is_none_or(|fewest| fewest.new < nearest.new));
                    nearest
                }
                Packing::NoneFits { nearest, off } => {
                    prop_assert_eq!(whole(off).abs(), whole(tenths(best.0)));
                    nearest
                }
                none => return Err(TestCaseError::fail(format!("{none:?}"))),
            };
            let stack: i64 = result.steels.iter().map(|steel| whole(*steel)).sum();
            prop_assert_eq!(whole(result.result), whole(tenths(clearance + before)) - stack, "the clearance is the stack's");
            prop_assert_eq!(result.steels.len(), fitted.len());
            prop_assert_eq!(whole(tenths(best.1)), (whole(result.result) - whole(tenths(aim))).abs());
        }
    }
}
