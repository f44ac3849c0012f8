//! Two pieces of work by turns, and the median of each.

use std::time::{Duration, Instant};

/// The median time of each of two pieces of work, over rounds in which they take turns.
pub fn by_turns(rounds: usize, mut first: impl FnMut(), mut second: impl FnMut()) -> (Duration, Duration) {
    let (mut a, mut b) = (Vec::new(), Vec::new());
    for _ in 0..rounds {
        a.push(timed(&mut first));
        b.push(timed(&mut second));
    }
    (median(&mut a), median(&mut b))
}

/// How long a piece of work takes once.
pub fn timed(work: &mut impl FnMut()) -> Duration {
    let start = Instant::now();
    work();
    start.elapsed()
}

/// The middle of the times.
pub fn median(times: &mut [Duration]) -> Duration {
    times.sort_unstable();
    times[times.len() / 2]
}

/// One time as so many of another.
pub fn ratio(time: Duration, ceiling: Duration) -> f64 {
    time.as_secs_f64() / ceiling.as_secs_f64()
}
