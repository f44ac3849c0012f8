use super::lever_table;
use crate::job::{Job, fact_ids};

/// The next place in the job log: behind everything that is in it.
fn next(job: &Job) -> u32 {
    let placed = fact_ids().filter(|fact| fact.declaration().path.starts_with("order."));
    let last = placed.filter_map(|fact| job.slot(fact).json()?.as_u64()).max().unwrap_or(0);
    u32::try_from(last).unwrap_or(u32::MAX).saturating_add(1)
}

lever_table! {
    "again-wash" "Wash again" {
        work: "Wash and dry everything once more, with every passage seen open.",
        minutes: 75, parts: 1_000, undo: Freely,
        sets: |j, s| s.aim(&j.order.final_wash, next(j)),
    }
    "again-valve-body" "Take the valve body down and fit it again" {
        work: "Take the valve body down, finish what should have come before it, and fit it again.",
        minutes: 60, parts: 1_500, undo: Freely,
        sets: |j, s| s.aim(&j.order.valve_body_fit, next(j)),
    }
    "again-drum" "Pull the drum, try the direction and fit it again" {
        work: "Pull the drum, try the one-way clutch by hand and fit the drum again.",
        minutes: 240, parts: 1_500, undo: Freely,
        sets: |j, s| s.aim(&j.order.drum_fit, next(j)),
    }
    "again-front-end-play" "Read the front end play again" {
        work: "Read the front end play once more with the pump torqued.",
        minutes: 30, parts: 0, undo: Freely,
        sets: |j, s| s.aim(&j.order.front_end_play, next(j)),
    }
    "again-output" "Pull the output shaft, clean and fit it again" {
        work: "Pull the output shaft, wash out the chips of the honing and fit it again.",
        minutes: 180, parts: 500, undo: Freely,
        sets: |j, s| s.aim(&j.order.output_fit, next(j)),
    }
    "again-first-start" "Open the unit, look for debris and start it anew" {
        work: "Drain, drop the pan, look at filter and pan for what came out of the cooler, and start it again.",
        minutes: 120, parts: 6_000, undo: Freely,
        sets: |j, s| s.aim(&j.order.first_start, next(j)),
    }
}
