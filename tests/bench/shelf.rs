//! Cores on the shelf against one spec: from a hundred to ten thousand it has to grow like the shelf.

use crate::jobs::{Dice, thrown};
use crate::measure::{by_turns, ratio};
use endplay::job::Job;
use endplay::plan::shelf::Wanted;
use endplay::rules::Limits;
use std::hint::black_box;

pub fn growth() {
    let mut dice = Dice(11);
    let cores: Vec<Job> = (0..10_000).map(|_| thrown(&mut dice, 30, 30)).collect();
    let limits = Limits::default();
    let wanted = Wanted::of(&thrown(&mut dice, 10, 0));
    let work = |cores: &[Job]| drop(black_box(wanted.fits(black_box(cores), &limits)));
    for many in [1_000, 10_000] {
        let rounds = if many == 1_000 { 31 } else { 7 };
        let (few, all) = by_turns(rounds, || work(&cores[..100]), || work(&cores[..many]));
        println!(
            "{many} cores / 100 cores: {:.1} times the time for {} times the cores  ({:.1} ms against {:.1} ms)",
            ratio(all, few),
            many / 100,
            all.as_secs_f64() * 1e3,
            few.as_secs_f64() * 1e3,
        );
    }
}
