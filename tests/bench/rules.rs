//! All rules over one job, against reading that job's JSON with serde_json.

use crate::jobs::{Dice, thrown};
use crate::measure::{by_turns, ratio};
use endplay::job::Job;
use endplay::rules::{Limits, judge};
use std::hint::black_box;

const ROUNDS: usize = 401;
const TIMES: u32 = 50;

pub fn against_parsing() {
    let limits = Limits::default();
    let mut dice = Dice(7);
    let jobs = [
        ("a full and harmless job", Job::plain()),
        ("a job as the bench knows it", thrown(&mut dice, 10, 20)),
        ("a job as the counter knows it", thrown(&mut dice, 10, 70)),
        ("a full job at random", thrown(&mut dice, 100, 0)),
    ];
    for (name, job) in jobs {
        let text = job.to_json().to_string();
        let (judging, parsing) = by_turns(
            ROUNDS,
            || (0..TIMES).for_each(|_| drop(black_box(judge(black_box(&job), &limits)))),
            || {
                (0..TIMES).for_each(|_| {
                    let read: serde_json::Value = serde_json::from_str(black_box(&text)).expect("it is JSON");
                    drop(black_box(read));
                });
            },
        );
        println!(
            "rules / parsing of {name} ({} bytes): {:.2}  ({:.1} us against {:.1} us; reach 1.00 or less)",
            text.len(),
            ratio(judging, parsing),
            judging.as_secs_f64() * 1e6 / f64::from(TIMES),
            parsing.as_secs_f64() * 1e6 / f64::from(TIMES),
        );
    }
}
