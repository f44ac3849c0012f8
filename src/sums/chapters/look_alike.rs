//! Threads that are mistaken for one another: one pair, and all that pass for one thread.

use super::threads::{STANDARD, STRIPS, THREAD, Thread, inch_names, metric_names, size, thread, words};
use crate::calc::thread::look_alike::{Alike, Entry, NEAR, alike, compare, try_in};
use crate::calc::thread::table::{metric_thread, unified};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, Table};

const BASIC: &str = "computed from basic sizes; tolerances and plating move it by a tenth of a millimeter";
const STEP: &str = "turns until the flanks are a quarter of the hole's pitch out of step";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "mistaken-for",
        title: "What a thread is mistaken for",
        what: "Every other standard thread that passes for one, inch or metric: what goes in, and how far, before it tells.",
        inputs: &[THREAD],
        work: mistaken,
        care: STRIPS,
    },
    Sum {
        name: "look-alikes",
        title: "Threads that look alike",
        what: "What happens when an inch bolt is started in a metric hole, or the other way about.",
        inputs: &[
            Input::choice("inch", "Inch thread", || words(inch_names()), "3/8-16"),
            Input::choice("metric", "Metric thread", || words(metric_names()), "M10x1.5"),
        ],
        work: pair,
        care: STRIPS,
    },
];

fn told(entry: Entry) -> String {
    match entry {
        Entry::TooBig => "does not enter but by force".to_owned(),
        Entry::Turns(turns) if turns.value().is_finite() => {
            format!("starts, then binds or strips after about {} turns", turns.to_places(1))
        }
        Entry::Turns(_) => "starts, and the pitch is the same: it does not bind by pitch".to_owned(),
        Entry::DropsThrough => "drops through without touching a thread".to_owned(),
    }
}

/// As it stands in a cell.
fn in_short(entry: Entry) -> String {
    match entry {
        Entry::TooBig => "does not enter".to_owned(),
        Entry::Turns(turns) if turns.value().is_finite() => format!("{} turns, then binds", turns.to_places(1)),
        Entry::Turns(_) => "goes in, same pitch".to_owned(),
        Entry::DropsThrough => "drops through".to_owned(),
    }
}

fn mistaken(given: &Given<'_>) -> Worked {
    let own = match thread(given)? {
        Thread::Inch(row) => row.name,
        Thread::Metric(row) => row.name,
    };
    let found = alike(own);
    let first = match found.iter().find(|alike| alike.turns().is_some()) {
        Some(alike) => {
            let turns = alike.turns().map_or_else(String::new, |turns| turns.to_places(1));
            let (bolt, hole) =
                if matches!(alike.in_its_hole, Entry::Turns(_)) { (own, alike.name) } else { (alike.name, own) };
            let value = format!("{bolt} bolt in a hole of {hole}, about {turns} turns");
            Line::new(
                "Goes in furthest",
                value,
                STEP,
                format!("{own} and {}, pitches {} apart", alike.name, alike.apart.pitch_share.abs().to_percent(1)),
                BASIC,
            )
        }
        None => {
            let value = "none: no other thread of the tables starts by hand and passes for it";
            Line::new("Goes in furthest", value, STEP, format!("{own} against every other thread"), BASIC)
        }
    };
    let outcome = Outcome::default().line(first);
    let outcome = if found.is_empty() { outcome } else { outcome.table(listed(own, &found)) };
    Ok(outcome.remark(format!(
        "Listed is what lies within {} of outside diameter and {} of pitch, {} in all. A thread of no table is not in it: \
         gauge the pitch and measure the bolt, whatever it goes into.",
        NEAR.0.to_places(1),
        NEAR.1.to_percent(0),
        found.len()
    )))
}

fn listed(own: &str, found: &[Alike]) -> Table {
    let row = |alike: &Alike| {
        vec![
            alike.name.to_owned(),
            in_short(alike.in_its_hole),
            in_short(alike.its_bolt),
            alike.apart.major.to_places(2),
            alike.apart.pitch_share.to_percent(1),
        ]
    };
    Table {
        title: if own.starts_with('M') { "Taken for this metric thread" } else { "Taken for this inch thread" },
        heads: vec!["Thread", "This bolt in its hole", "Its bolt in this hole", "Outsides apart", "Pitches apart"],
        rows: found.iter().map(row).collect(),
        formula: "pitch diameters compared; turns until the flanks are a quarter of the hole's pitch out of step; this thread less \
                  the other; what goes in furthest comes first",
        source: BASIC,
    }
}

fn pair(given: &Given<'_>) -> Worked {
    let (inch, metric) = (unified(given.word("inch")?), metric_thread(given.word("metric")?));
    let (Some(inch), Some(metric)) = (inch, metric) else { return Err(Amiss::Absent("inch")) };
    let apart = compare(&inch.form, &metric.form);
    Ok(Outcome::default()
        .line(Line::new(
            format!("{} bolt in an {} hole", inch.name, metric.name),
            told(try_in(&inch.form, &metric.form)),
            "pitch diameters compared; turns until the flanks are a quarter of the hole's pitch out of step",
            format!("{} in {}", inch.name, metric.name),
            BASIC,
        ))
        .line(Line::new(
            format!("{} bolt in a {} hole", metric.name, inch.name),
            told(try_in(&metric.form, &inch.form)),
            "the same the other way about",
            format!("{} in {}", metric.name, inch.name),
            BASIC,
        ))
        .line(Line::new(
            "Outside diameters apart",
            apart.major.to_places(2),
            "inch - metric; what a caliper shows",
            format!("{} - {}", size(inch.form.to_millimetres().major), size(metric.form.major)),
            STANDARD,
        ))
        .line(Line::new(
            "Out of step after",
            format!("{:.1} turns", apart.turns.value()),
            "metric pitch / 4 / difference of the pitches, whether or not the bolt enters",
            format!(
                "{0} / 4 / ({1} - {0}), without its sign",
                size(metric.form.pitch),
                size(inch.form.to_millimetres().pitch)
            ),
            STANDARD,
        ))
        .line(Line::new(
            "Pitch diameters apart",
            apart.pitch_diameter.to_places(2),
            "inch - metric; above nought the inch bolt does not enter the metric hole",
            format!("{} - {}", size(inch.form.to_millimetres().pitch_diameter()), size(metric.form.pitch_diameter())),
            STANDARD,
        ))
        .line(Line::new(
            "Pitches apart",
            apart.pitch_share.to_percent(1),
            "inch pitch / metric pitch - 1; what a thread gauge shows",
            format!("{} / {} - 1", size(inch.form.to_millimetres().pitch), size(metric.form.pitch)),
            STANDARD,
        )))
}
