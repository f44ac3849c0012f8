//! Screw threads: sizes and drills, percent of thread, engagement, holes for inserts.

use crate::calc::thread::Form;
use crate::calc::thread::insert::{
    HOLES, METRIC_COILS, SOLID_SET_DOWN, coil_drill_window, coil_major, coil_minor, coil_pitch_diameter,
};
use crate::calc::thread::table::{Drill, METRIC, Standard, UNIFIED, metric_thread, unified};
use crate::job::Word;
use crate::quantity::{Inch, Length, Millimetre, Quantity};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

pub(super) const THREAD: Input =
    Input::choice("thread", "Thread", || words(inch_names().chain(metric_names())), "3/8-16");

pub(super) const STANDARD: &str = "standard: ASME B1.1 for inch threads, ISO 724 and ISO 898-1 for metric";

pub(super) const STRIPS: &str = "A thread that strips lets go all at once. In a case the hole gives first: torque by the unit's manual, \
                      never by feel.";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "thread-sizes",
        title: "Thread: sizes and tap drills",
        what: "Diameters, tensile area and tap drills of a thread.",
        inputs: &[THREAD],
        work: sizes,
        care: "",
    },
    Sum {
        name: "percent-thread",
        title: "Percent of thread a drill leaves",
        what: "How much of a full thread is left after a drill.",
        inputs: &[
            THREAD,
            Input::number::<Inch>("drill", "Drill", (0.03, 1.5), "5/16").hint("In inches, or with mm behind it."),
        ],
        work: percent,
        care: STRIPS,
    },
    Sum {
        name: "thread-engagement",
        title: "Thread engagement",
        what: "How many bolt diameters of thread hold, against what the shop asks for in aluminum.",
        inputs: &[
            THREAD,
            Input::number::<Inch>("engaged", "Length engaged", (0.02, 6.0), "0.56")
                .hint("Turns in by hand × pitch, or measured with a wire: inches, or with mm behind it."),
        ],
        work: engagement,
        care: STRIPS,
    },
    Sum {
        name: "coil-insert",
        title: "Hole for a coil insert",
        what: "The hole a coil of wire needs. A solid insert needs quite another one.",
        inputs: &[THREAD],
        work: coil,
        care: STRIPS,
    },
    Sum {
        name: "solid-insert",
        title: "Hole for a solid keyed insert",
        what: "Drill and tap for a solid insert with keys. A coil of wire needs quite another hole.",
        inputs: &[Input::choice("thread", "Thread", || words(HOLES.iter().map(|hole| hole.thread)), "3/8-16")],
        work: solid,
        care: STRIPS,
    },
];

pub(super) fn inch_names() -> impl Iterator<Item = &'static str> {
    UNIFIED.iter().map(|row| row.name)
}

pub(super) fn metric_names() -> impl Iterator<Item = &'static str> {
    METRIC.iter().map(|row| row.name)
}

pub(super) fn words(names: impl Iterator<Item = &'static str>) -> Vec<Word> {
    names.map(|name| Word { code: name, label: name }).collect()
}

/// A thread of either table.
pub(super) enum Thread {
    Inch(&'static Standard<Inch>),
    Metric(&'static Standard<Millimetre>),
}

pub(super) fn thread(given: &Given<'_>) -> Result<Thread, Amiss> {
    let name = given.word("thread")?;
    let inch = unified(name).map(Thread::Inch);
    inch.or_else(|| metric_thread(name).map(Thread::Metric)).ok_or(Amiss::Absent("thread"))
}

/// A length in the thread's own unit.
pub(super) fn own<U: Length>(length: Quantity<Inch>) -> Quantity<U> {
    Quantity::new(length.value() * U::IN_ONE_INCH)
}

/// So many decimals as a drill chart shows.
pub(super) fn size<U: Length>(length: Quantity<U>) -> String {
    length.to_places(if U::IN_ONE_INCH > 1.0 { 3 } else { 4 })
}

fn sizes(given: &Given<'_>) -> Worked {
    Ok(match thread(given)? {
        Thread::Inch(row) => with_sizes(row, row.form.external_minor(), row.form.tensile_area().to_places(4), false),
        Thread::Metric(row) => with_sizes(row, row.form.external_minor(), row.form.tensile_area().to_places(2), true),
    })
}

fn with_sizes<U: Length>(row: &Standard<U>, bolt_minor: Quantity<U>, area: String, metric: bool) -> Outcome {
    let form = &row.form;
    let (d, p) = (short(form.major), short(form.pitch));
    let (minor, minor_put, area_formula, area_put) = if metric {
        ("d - 1.226869 P", "1.226869", "π/4 × (d - 0.938194 P)²", "0.938194")
    } else {
        ("d - 1.190786 P", "1.190786", "π/4 × (d - 0.974279 P)²", "0.974279")
    };
    let drill = |label: &str, drill: &Drill<U>, formula: &'static str| {
        let percent = form.percent_thread(drill.diameter).to_percent(0);
        Line::new(
            label,
            format!("{} ({}), {percent} of thread", drill.name, size(drill.diameter)),
            formula,
            format!("drill chart; ({d} - {}) / (1.299038 × {p})", size(drill.diameter)),
            "looked up; confirm on the chart in the drawer",
        )
    };
    Outcome::default()
        .line(drill("Tap drill", &row.drill, "for aluminum and mild steel, 65 to 80 % of thread"))
        .line(drill("Tap drill in hard metal", &row.drill_hard, "for hard or tough metal, 45 to 60 % of thread"))
        .line(Line::new("Outside diameter", size(form.major), "d", format!("d of {}", row.name), STANDARD))
        .line(Line::new("Pitch", size(form.pitch), "P, one thread to the next", format!("P of {}", row.name), STANDARD))
        .line(Line::new(
            "Pitch diameter",
            size(form.pitch_diameter()),
            "d - 0.649519 P",
            format!("{d} - 0.649519 × {p}"),
            STANDARD,
        ))
        .line(Line::new(
            "Bore of the nut",
            size(form.internal_minor()),
            "d - 1.082532 P",
            format!("{d} - 1.082532 × {p}"),
            STANDARD,
        ))
        .line(Line::new("Root of the bolt", size(bolt_minor), minor, format!("{d} - {minor_put} × {p}"), STANDARD))
        .line(Line::new("Tensile area", area, area_formula, format!("π/4 × ({d} - {area_put} × {p})²"), STANDARD))
}

fn percent(given: &Given<'_>) -> Worked {
    let drill = given.number::<Inch>("drill")?;
    fn of<U: Length>(form: &Form<U>, drill: Quantity<Inch>) -> Worked {
        let drill = own::<U>(drill);
        if drill >= form.major {
            let message = format!("Drill cannot be {}: the thread is only {} outside.", size(drill), size(form.major));
            return Amiss::clash("drill", message);
        }
        Ok(Outcome::default()
            .line(Line::new(
                "Percent of thread",
                form.percent_thread(drill).to_percent(1),
                "(d - drill) / (1.299038 P), the United States way of counting",
                format!("({} - {}) / (1.299038 × {})", short(form.major), size(drill), short(form.pitch)),
                "looked up in fastener handbooks",
            ))
            .line(Line::new(
                "Counted on the height that touches",
                form.percent_contact(drill).to_percent(1),
                "(d - drill) / (1.082532 P), as metric charts count",
                format!("({} - {}) / (1.082532 × {})", short(form.major), size(drill), short(form.pitch)),
                "derived: ISO 724 height of contact",
            ))
            .remark(
                "65 to 80 % is usual in aluminum and mild steel, 45 to 60 % in hard metal. Counted on the true height of \
                 contact the same drills read 87 to 92 %: never compare the two.",
            ))
    }
    match thread(given)? {
        Thread::Inch(row) => of(&row.form, drill),
        Thread::Metric(row) => of(&row.form, drill),
    }
}

fn engagement(given: &Given<'_>) -> Worked {
    let engaged = given.number::<Inch>("engaged")?;
    let (diameters, put_in) = match thread(given)? {
        Thread::Inch(row) => (row.form.engagement(engaged), format!("{} / {}", short(engaged), short(row.form.major))),
        Thread::Metric(row) => {
            let engaged = engaged.to_millimetres();
            (row.form.engagement(engaged), format!("{} / {}", short(engaged), short(row.form.major)))
        }
    };
    Ok(Outcome::default()
        .line(
            Line::new(
                "Engaged",
                diameters.to_places(2),
                "length engaged / outside diameter",
                put_in,
                "exact; what is enough in aluminum is common practice",
            )
            .fills("threads.mount_engage_d", (diameters.value() * 1000.0).round() / 1000.0),
        )
        .at_least("The thread engaged", diameters.value(), LimitId::thread_engaged, given.limits())
        .remark("The job keeps this number for its mount bolts only."))
}

fn coil(given: &Given<'_>) -> Worked {
    fn of<U: Length>(row: &Standard<U>, drill: Option<&Drill<U>>, source: &'static str) -> Outcome {
        let form = &row.form;
        let (d, p) = (short(form.major), short(form.pitch));
        let (least, most) = coil_drill_window(form);
        let drill = drill.map(|drill| {
            Line::new(
                "Drill for the coil's tap",
                format!("{} ({})", drill.name, size(drill.diameter)),
                "from the table of insert drills",
                format!("drill for {}", row.name),
                source,
            )
        });
        let window = Line::new(
            "Any drill from",
            format!("{} to {}", size(least), size(most)),
            "smallest bore to 0.015 in above it",
            format!("{}, and 0.015 in more", size(least)),
            "common practice; the drills in use lie within it",
        );
        let deduced = "deduced from the tap limits of ASME B94.9 (looked up); standard: ASME B18.29.1";
        Outcome::default()
            .lines(drill)
            .line(window)
            .line(Line::new(
                "Smallest bore",
                size(coil_minor(form)),
                "d + 0.108253 P",
                format!("{d} + 0.108253 × {p}"),
                deduced,
            ))
            .line(Line::new(
                "Smallest pitch diameter",
                size(coil_pitch_diameter(form)),
                "d + 0.649519 P",
                format!("{d} + 0.649519 × {p}"),
                deduced,
            ))
            .line(Line::new(
                "Smallest outside diameter",
                size(coil_major(form)),
                "d + 1.299038 P; the metal left around the hole counts from here",
                format!("{d} + 1.299038 × {p}"),
                deduced,
            ))
    }
    Ok(match thread(given)? {
        Thread::Inch(row) => {
            let drill = HOLES.iter().find(|hole| hole.thread == row.name).map(|hole| &hole.coil_drill);
            of(row, drill, "1/4-20 looked up, the rest memory, high; the insert maker's chart comes first")
        }
        Thread::Metric(row) => {
            let drill = METRIC_COILS.iter().find(|coil| coil.thread == row.name).map(|coil| &coil.drill);
            of(row, drill, "memory, high; the insert maker's chart comes first")
        }
    })
}

fn solid(given: &Given<'_>) -> Worked {
    let name = given.word("thread")?;
    let hole = HOLES.iter().find(|hole| hole.thread == name).ok_or(Amiss::Absent("thread"))?;
    let source = "looked up: TM 9-2520-215-34; the insert maker's chart comes first";
    Ok(Outcome::default()
        .line(Line::new(
            "Drill",
            format!("{} ({})", hole.solid_drill.name, size(hole.solid_drill.diameter)),
            "from the table of insert drills",
            format!("drill for {name}"),
            source,
        ))
        .line(Line::new("Tap", hole.solid_tap, "from the table of insert taps", format!("tap for {name}"), source))
        .line(Line::new(
            "Set below the face",
            format!("{} to {}", SOLID_SET_DOWN.0.to_places(3), SOLID_SET_DOWN.1.to_places(3)),
            "the insert's end below the face of the case",
            format!("set-down for {name}"),
            source,
        )))
}
