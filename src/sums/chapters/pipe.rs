//! Pipe threads and tube fittings.

use crate::calc::pipe::port::{Fitting, Seat, Trap, find, traps};
use crate::calc::pipe::{COUPLING, STRAIGHT_SIZES, TAPER_SIZES, half_angle, taper_size};
use crate::calc::thread::class::Limits;
use crate::job::Word;
use crate::quantity::Quantity;
use crate::sums::declaration::{Amiss, Input, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, short};

const STANDARD: &str = "standard: ASME B1.20.1";

const LEAKS: &str = "A fitting that feels tight without sealing lets hot fluid out over an exhaust, and one pulled further \
                     splits the case. What seals is the seat, not the torque.";

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "taper-pipe",
        title: "Taper pipe thread",
        what: "Diameters, how far it goes in by hand and with a wrench, and the drill for its tap.",
        inputs: &[Input::choice("size", "Size", taper_words, "1/8-27")],
        work: taper,
        care: LEAKS,
    },
    Sum {
        name: "straight-pipe",
        title: "Straight pipe thread",
        what: "The limits of a straight mechanical pipe thread, which seals by its washer and not on its threads.",
        inputs: &[Input::choice("size", "Size", straight_words, "1/8-27")],
        work: straight,
        care: LEAKS,
    },
    Sum {
        name: "taper-in-straight",
        title: "Taper fitting in a straight port",
        what: "How deep a taper fitting goes into a straight hole before its threads bind, and it still does not seal.",
        inputs: &[Input::choice("size", "Size", straight_words, "1/8-27")],
        work: bind,
        care: LEAKS,
    },
    Sum {
        name: "fitting",
        title: "Tube fitting: thread and what it is taken for",
        what: "The thread of a fitting by its seat and dash size, and the fittings it is mistaken for.",
        inputs: &[
            Input::choice("seat", "Seat", seat_words, "flare_37"),
            Input::count("dash", "Dash size", (3, 8), "6").hint("Sixteenths of an inch of tube: 3/8 is dash 6."),
        ],
        work: fitting,
        care: LEAKS,
    },
];

fn taper_words() -> Vec<Word> {
    TAPER_SIZES.iter().map(|size| Word { code: size.name, label: size.name }).collect()
}

fn straight_words() -> Vec<Word> {
    STRAIGHT_SIZES.iter().map(|size| Word { code: size.name, label: size.name }).collect()
}

fn seat_words() -> Vec<Word> {
    SEATS.iter().map(|(word, _)| *word).collect()
}

const SEATS: [(Word, Seat); 4] = [
    (Word { code: "flare_37", label: "37° flare" }, Seat::Flare37),
    (Word { code: "flare_45", label: "45° flare" }, Seat::Flare45),
    (Word { code: "inverted", label: "Inverted flare" }, Seat::InvertedFlare),
    (Word { code: "o_ring", label: "O-ring under the hexagon" }, Seat::ORing),
];

fn taper(given: &Given<'_>) -> Worked {
    let size = taper_size(given.word("size")?).ok_or(Amiss::Absent("size"))?;
    let (outside, n, by_hand) = (short(size.outside), size.threads_per_inch, short(size.hand_tight));
    let small = size.pitch_diameter_at_end();
    Ok(Outcome::default()
        .line(Line::new(
            "Drill, no reamer",
            format!("{} ({})", size.drill.name, size.drill.diameter.to_places(4)),
            "from the table of tap drills",
            format!("drill for {}", size.name),
            "looked up; that of 1/2-14 memory, high",
        ))
        .line(Line::new(
            "In by hand",
            size.hand_tight.to_places(4),
            "L1, tabulated",
            format!("L1 of {}", size.name),
            STANDARD,
        ))
        .line(Line::new(
            "In with a wrench",
            size.wrench_tight().to_places(3),
            "L1 + 3 threads",
            format!("{by_hand} + 3 / {n}"),
            "three threads are memory, high",
        ))
        .line(Line::new(
            "Good thread on the fitting",
            size.effective_length().to_places(4),
            "(0.80 D + 6.8) / n",
            format!("(0.80 × {outside} + 6.8) / {n}"),
            STANDARD,
        ))
        .line(Line::new(
            "Pitch diameter at the small end",
            small.to_places(5),
            "D - (0.05 D + 1.1) / n",
            format!("{outside} - (0.05 × {outside} + 1.1) / {n}"),
            STANDARD,
        ))
        .line(Line::new(
            "Pitch diameter at the hand-tight plane",
            size.pitch_diameter_hand_tight().to_places(5),
            "small end + L1 / 16",
            format!("{} + {by_hand} / 16", small.to_places(5)),
            STANDARD,
        ))
        .line(Line::new(
            "Pitch diameter where the good thread ends",
            size.pitch_diameter_effective().to_places(5),
            "small end + good thread / 16",
            format!("{} + {} / 16", small.to_places(5), size.effective_length().to_places(4)),
            STANDARD,
        ))
        .line(Line::new("Runs out over", size.vanish().to_places(4), "3.47 / n", format!("3.47 / {n}"), STANDARD))
        .line(Line::new(
            "Taper, angle to the axis",
            format!("{:.2}°", half_angle().value()),
            "atan(1/32): one in sixteen on the diameter",
            "atan(1/32)",
            STANDARD,
        )))
}

fn straight(given: &Given<'_>) -> Worked {
    let name = given.word("size")?;
    let size = STRAIGHT_SIZES.iter().find(|size| size.name == name).ok_or(Amiss::Absent("size"))?;
    let line = |label: &str, limits: Limits, places: usize| {
        Line::new(
            label,
            format!("{} to {}", limits.least.to_places(places), limits.most.to_places(places)),
            "from the table of straight mechanical pipe threads",
            format!("limits of {name}"),
            "standard: ASME B1.20.1 (looked up: machinists' handbook, 27th ed., table 5)",
        )
    };
    let coupling = (COUPLING.name == name).then(|| {
        let source = "standard: ASME B1.20.1 (looked up: machinists' handbook, 27th ed., table 4)";
        let least = COUPLING.least_bore.to_places(3);
        let pitch = format!("{} to {}", COUPLING.pitch.least.to_places(4), COUPLING.pitch.most.to_places(4));
        [
            Line::new("Coupling, least bore", least, "from the table of couplings", format!("bore of {name}"), source),
            Line::new(
                "Coupling, pitch diameter",
                pitch,
                "from the table of couplings",
                format!("limits of {name}"),
                source,
            ),
        ]
    });
    Ok(Outcome::default()
        .line(line("Fitting, outside diameter", size.male_major, 3))
        .line(line("Fitting, pitch diameter", size.male_pitch, 4))
        .line(line("Port, bore", size.female_minor, 3))
        .line(line("Port, pitch diameter", size.female_pitch, 4))
        .lines(coupling.into_iter().flatten())
        .remark(
            "It goes in freely to its shoulder and seals there. A taper fitting binds in it early and does not seal.",
        ))
}

fn bind(given: &Given<'_>) -> Worked {
    let name = given.word("size")?;
    let taper = taper_size(name).ok_or(Amiss::Absent("size"))?;
    let straight = STRAIGHT_SIZES.iter().find(|size| size.name == name).ok_or(Amiss::Absent("size"))?;
    let small = taper.pitch_diameter_at_end();
    let line = |label: &str, hole: Quantity<_>| {
        Line::new(
            label,
            taper.binds_after(hole).to_places(3),
            "(pitch diameter of the hole - that of the fitting's small end) × 16",
            format!("({} - {}) × 16", hole.to_places(4), small.to_places(4)),
            "standard: ASME B1.20.1, from basic sizes",
        )
    };
    Ok(Outcome::default()
        .line(line("Binds in the tightest port", straight.female_pitch.least))
        .line(line("Binds in the loosest port", straight.female_pitch.most))
        .lines((COUPLING.name == name).then(|| line("Binds in the tightest coupling", COUPLING.pitch.least)))
        .lines((COUPLING.name == name).then(|| line("Binds in the loosest coupling", COUPLING.pitch.most)))
        .remark("There it feels tight and does not seal. A straight port takes a straight fitting with its washer."))
}

fn fitting(given: &Given<'_>) -> Worked {
    let code = given.word("seat")?;
    let (word, seat) = SEATS.iter().find(|(word, _)| word.code == code).ok_or(Amiss::Absent("seat"))?;
    let dash = given.count("dash")?;
    let Some(found) = u8::try_from(dash).ok().and_then(|dash| find(*seat, dash)) else {
        let known: Vec<String> =
            (3..=8u8).filter(|dash| find(*seat, *dash).is_some()).map(|dash| dash.to_string()).collect();
        let message = format!(
            "Dash size cannot be “{dash}” for {}: the table has {}.",
            word.label.to_lowercase(),
            known.join(", ")
        );
        return Amiss::clash("dash", message);
    };
    let taper = found.taper_look_alike().map(|taper| {
        format!("It passes for the {} taper pipe thread, which has the same pitch: look for the taper.", taper.name)
    });
    let mistaken = traps(found).map(|(trap, other)| told(trap, other));
    Ok(Outcome::default()
        .line(Line::new(
            "Thread",
            found.thread,
            "from the table of fittings",
            format!("{}, dash {dash}", word.label),
            found.source,
        ))
        .line(Line::new(
            "Tube outside diameter",
            found.tube().to_fraction().unwrap_or_else(|| found.tube().to_places(4)),
            "dash size / 16",
            format!("{dash} / 16"),
            "definition of the dash size",
        ))
        .remarks(mistaken)
        .remarks(taper))
}

fn told(trap: Trap, other: &Fitting) -> String {
    let seat = SEATS.iter().find(|(_, seat)| *seat == other.seat).map_or("", |(word, _)| word.label);
    match trap {
        Trap::SameThreadOtherSeat => {
            format!(
                "Taken for {seat}, dash {}: it has the same thread and screws in, and the seats do not meet.",
                other.dash
            )
        }
        Trap::SameTubeOtherThread => format!(
            "Taken for {seat}, dash {}: the tube is the same, the thread ({}) is not.",
            other.dash, other.thread
        ),
    }
}
