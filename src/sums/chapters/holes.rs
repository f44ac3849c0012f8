//! Holes for bolts: clearance, gauging, the drill for a percent of thread, the depth of a coil's hole.

use super::threads::{STRIPS, THREAD, Thread, inch_names, own, size, thread, words};
use crate::calc::thread::Form;
use crate::calc::thread::class::{Limits, bolt_major, bolt_pitch_diameter, nut_bore, nut_pitch_diameter};
use crate::calc::thread::clearance::{self, Fit, Holes};
use crate::calc::thread::insert::{Tap, coil_drill_depth, coil_installed, coil_thread_depth};
use crate::calc::thread::table::unified;
use crate::job::Word;
use crate::quantity::{Inch, Length, Millimetre, One, Quantity};
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "clearance-hole",
        title: "Clearance hole",
        what: "The drill for a hole that a bolt passes through: close, normal, loose.",
        inputs: &[Input::choice("bolt", "Bolt", bolt_words, "3/8")],
        work: clears,
        care: "",
    },
    Sum {
        name: "thread-gauge",
        title: "Inch thread: limits of bolt and hole",
        what: "Between which sizes a bolt and a hole of the usual class lie, to tell a worn or wrong one.",
        inputs: &[
            Input::choice("thread", "Thread", || words(inch_names()), "3/8-16"),
            Input::number::<Inch>("over", "Bolt measured over its threads", (0.1, 1.0), "0.370")
                .hint("Blank to see only the limits.")
                .optional(),
            Input::number::<Inch>("bore", "Hole measured across its threads", (0.1, 1.0), "0.312")
                .hint("The bore, by pins or a small-hole gauge; blank to see only the limits.")
                .optional(),
        ],
        work: gauged,
        care: "",
    },
    Sum {
        name: "drill-for-percent",
        title: "Drill for a percent of thread",
        what: "The drill diameter that leaves so much of a full thread.",
        inputs: &[THREAD, Input::percent("percent", "Percent of thread wanted", (30.0, 100.0), "70")],
        work: drills,
        care: STRIPS,
    },
    Sum {
        name: "coil-depth",
        title: "Depth of a coil insert's hole",
        what: "How deep to drill and tap for a coil insert of a length, and where it stands once it is in.",
        inputs: &[
            THREAD,
            Input::number::<Inch>("length", "Nominal length of the coil", (0.1, 4.0), "0.75")
                .hint("As it is sold: 1, 1.5 or 2 diameters. Inches, or with mm behind it."),
            Input::choice("tap", "Tap", tap_words, "plug"),
        ],
        work: deep,
        care: "Measure how thick the case is there before drilling: a drill that comes through opens a passage for good.",
    },
];

fn bolt_words() -> Vec<Word> {
    words(clearance::INCH.iter().map(|row| row.size).chain(clearance::METRIC.iter().map(|row| row.size)))
}

fn tap_words() -> Vec<Word> {
    vec![
        Word { code: "plug", label: "Plug tap, long lead" },
        Word { code: "bottoming", label: "Bottoming tap, short lead" },
    ]
}

fn clears(given: &Given<'_>) -> Worked {
    fn of<U: Length>(holes: &Holes<U>) -> Outcome {
        let line = |fit: Fit| {
            let drill = holes.drill(fit);
            let label = match fit {
                Fit::Close => "Close",
                Fit::Normal => "Normal",
                Fit::Loose => "Loose",
            };
            Line::new(
                label,
                format!("{} ({})", drill.name, size(drill.diameter)),
                "from the table of clearance holes",
                format!("{} bolt, {} outside, hole class {}", holes.size, size(holes.major), fit.tolerance_class()),
                "standard: ASME B18.2.8, ISO 273 (looked up; M12 normal and loose memory, high)",
            )
        };
        let loosest = holes.loosest.map(|most| {
            Line::new(
                "Loose, at most",
                size(most),
                "largest hole that still counts as loose",
                format!("{} bolt, hole class {}", holes.size, Fit::Loose.tolerance_class()),
                "standard: ASME B18.2.8 (looked up)",
            )
        });
        Outcome::default().lines(Fit::ALL.map(line)).lines(loosest)
    }
    let bolt = given.word("bolt")?;
    match (clearance::inch(bolt), clearance::metric(bolt)) {
        (Some(holes), _) => Ok(of(holes)),
        (_, Some(holes)) => Ok(of(holes)),
        _ => Err(Amiss::Absent("bolt")),
    }
}

fn gauged(given: &Given<'_>) -> Worked {
    let row = unified(given.word("thread")?).ok_or(Amiss::Absent("thread"))?;
    let form = &row.form;
    let line = |label: &str, limits: Limits| {
        Line::new(
            label,
            format!("{} to {}", limits.least.to_places(4), limits.most.to_places(4)),
            "class 2A bolt, 2B hole: basic size, allowance and tolerance by the standard's formulas",
            format!("{}, class 2", row.name),
            "standard: ASME B1.1 (formulas memory, high; checked at 1/4-20 and 1/2-20)",
        )
    };
    let mut outcome = Outcome::default()
        .line(line("Bolt, outside diameter", bolt_major(form)))
        .line(line("Bolt, pitch diameter", bolt_pitch_diameter(form)))
        .line(line("Hole, pitch diameter", nut_pitch_diameter(form)))
        .lines(nut_bore(form).map(|bore| line("Hole, bore", bore)));
    let measured = [
        ("over", "The bolt over its threads", Some(bolt_major(form))),
        ("bore", "The bore of the hole", nut_bore(form)),
    ];
    for (name, what, limits) in measured {
        if let (Some(reading), Some(limits)) = (given.maybe::<Inch>(name), limits) {
            let taken = limits.take(reading);
            let said = format!(
                "{what} is {}, {} {} to {}.",
                short(reading),
                if taken { "within" } else { "outside" },
                limits.least.to_places(4),
                limits.most.to_places(4)
            );
            outcome = outcome.ruled(taken, said, "ASME B1.1, class 2 (standard)");
        }
    }
    Ok(outcome.remark("Right by these two it may still be worn on its flanks: a thread gauge tells that."))
}

fn drills(given: &Given<'_>) -> Worked {
    fn of<U: Length>(form: &Form<U>, percent: Quantity<One>) -> Outcome {
        Outcome::default()
            .line(Line::new(
                "Drill",
                size(form.drill_for(percent)),
                "d - percent × 1.299038 P",
                format!("{} - {} × 1.299038 × {}", short(form.major), plain(percent.value()), short(form.pitch)),
                "looked up in fastener handbooks, the United States way of counting",
            ))
            .remark("Take the next drill on the chart, and see what percent that one leaves.")
    }
    let percent = given.number::<One>("percent")?;
    Ok(match thread(given)? {
        Thread::Inch(row) => of(&row.form, percent),
        Thread::Metric(row) => of(&row.form, percent),
    })
}

/// The nominal diameter above which the depths of a coil's hole are stated by the page they were looked up on.
const COIL_DEPTHS_OVER: Quantity<Millimetre> = Quantity::new(8.0);

fn deep(given: &Given<'_>) -> Worked {
    fn of<U: Length>(form: &Form<U>, nominal: Quantity<U>, tap: Tap) -> Outcome {
        let (n, p) = (short(nominal), short(form.pitch));
        let source = "standard: ASME B18.29.2M (looked up on a page that quotes it)";
        let (formula, pitches) = match tap {
            Tap::Plug => ("nominal length + 6 P: four of lead, one below the coil, one of set-down", 6),
            Tap::Bottoming => ("nominal length + 4 P: two of lead, one below the coil, one of set-down", 4),
        };
        let (shortest, longest) = coil_installed(form, nominal);
        Outcome::default()
            .line(Line::new(
                "Drill at least",
                size(coil_drill_depth(form, nominal, tap)),
                formula,
                format!("{n} + {pitches} × {p}"),
                source,
            ))
            .line(Line::new(
                "Full thread at least",
                size(coil_thread_depth(form, nominal)),
                "nominal length + P",
                format!("{n} + {p}"),
                source,
            ))
            .line(Line::new(
                "The coil once it is in",
                format!("{} to {}", size(shortest), size(longest)),
                "nominal length - 0.75 P to - 0.5 P",
                format!("{n} - 0.75 × {p} to {n} - 0.5 × {p}"),
                source,
            ))
    }
    let nominal = given.number::<Inch>("length")?;
    let tap = if given.word("tap")? == "bottoming" { Tap::Bottoming } else { Tap::Plug };
    let (outcome, major) = match thread(given)? {
        Thread::Inch(row) => (of(&row.form, nominal, tap), row.form.major.to_millimetres()),
        Thread::Metric(row) => (of(&row.form, own(nominal), tap), row.form.major),
    };
    let small = (major <= COIL_DEPTHS_OVER).then(|| {
        format!(
            "These depths are looked up for threads over {}; for smaller ones they are only a guide. The sheet of the coil's \
             maker decides.",
            short(COIL_DEPTHS_OVER)
        )
    });
    Ok(outcome.remarks(small))
}
