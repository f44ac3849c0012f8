//! The steels of a pack and the pin of a band.

use super::shared::{PROVEN, listed};
use crate::calc::fit::{Filled, Packing, Pin, PinPick, Window, fill, pick_pin};
use crate::plan::sheet::{AIR, SERVO};
use crate::quantity::{Inch, Quantity};
use crate::rules::LimitId;
use crate::sums::declaration::{Amiss, Input, Measure, Sum, Worked};
use crate::sums::given::Given;
use crate::sums::outcome::{Line, Outcome, plain, short};

const STEELS: Input =
    Input::numbers::<Inch>("shelf", "Steels on the shelf", (0.02, 0.5), (1, 12), "0.077 0.090 0.097 0.110")
        .hint("Each size once; the sum reckons with enough of each.");
const WINDOW: Measure = Measure::of::<Inch>(0.0, 2.0);

pub(super) const SUMS: &[Sum] = &[
    Sum {
        name: "pack-steels",
        title: "Pack clearance: steels to fit",
        what: "From the steels in a pack, its clearance and the shelf: the steels to build it with, several sizes at once \
               where that comes nearer.",
        inputs: &[
            Input::count("frictions", "Lined plates", (1, 10), "6"),
            Input::numbers::<Inch>("fitted", "Steels in the pack", (0.02, 0.5), (1, 10), "0.090 0.090 0.090 0.090 0.090")
                .hint("Each of them, with blanks between."),
            Input::number::<Inch>("clearance", "Clearance measured", (0.0, 0.5), "0.140"),
            STEELS,
        ],
        work: pack,
        care: AIR,
    },
    Sum {
        name: "band-pin",
        title: "Rear band: apply pin",
        what: "The apply pin whose window the gauge reading falls in.",
        inputs: &[
            Input::number::<Inch>("reading", "Gauge reading", (0.0, 2.0), "0.210"),
            Input::rows(
                "pins",
                "Windows of the pins",
                &[WINDOW, WINDOW],
                (1, 8),
                "0.000 0.120; 0.120 0.240; 0.240 0.360",
            )
            .hint("Lowest and highest reading of each pin, from the sheet of the unit, pins with a semicolon between them."),
        ],
        work: pin,
        care: SERVO,
    },
];

fn pack(given: &Given<'_>) -> Worked {
    let frictions = f64::from(given.count("frictions")?);
    let (fitted, shelf) = (given.numbers::<Inch>("fitted")?, given.numbers::<Inch>("shelf")?);
    let clearance = given.number::<Inch>("clearance")?;
    let limits = given.limits();
    let at = |limit| Quantity::<Inch>::new(limits.get(limit)) * frictions;
    let window = Window {
        least: at(LimitId::pack_clear_least),
        aim: at(LimitId::pack_clear_aim),
        most: at(LimitId::pack_clear_most),
    };
    let (nearest, fewest, remark) = match fill(&fitted, clearance, &window, &shelf) {
        Packing::Fits { nearest, fewest } => (nearest, fewest, None),
        Packing::NoneFits { nearest, off } => {
            let way = if off.value() > 0.0 { "too loose" } else { "too tight" };
            let said = format!("No steels from this shelf fit. The nearest would be {} {way}.", short(off.abs()));
            (nearest, None, Some(said))
        }
        Packing::NoSteels => return Err(Amiss::Absent("fitted")),
        Packing::TooMany => {
            let message = "Steels on the shelf: with so many different sizes there are more stacks than can be tried. \
                           Measure to a thousandth, or leave out sizes you would not take.";
            return Amiss::clash("shelf", message.to_owned());
        }
    };
    let line = |label: &'static str, steels: &Filled| {
        let sum: f64 = fitted.iter().map(|steel| steel.value()).sum();
        Line::new(
            label,
            format!("{} in, leaving {}", listed(&steels.steels), steels.result.to_places(4)),
            "clearance + steels that are in - steels to fit, of all ways the one nearest to the aim",
            format!("{} + {} - ({})", short(clearance), plain(sum), listed(&steels.steels).replace(", ", " + ")),
            "exact (geometry)",
        )
    };
    let result = nearest.result.value() / frictions;
    Ok(Outcome::default()
        .line(line(if remark.is_some() { "No steels fit; nearest" } else { "Steels to fit" }, &nearest))
        .lines(fewest.iter().map(|steels| line("With the fewest steels changed", steels)))
        .line(Line::new(
            "Clearance wanted",
            window.aim.to_places(3),
            "aim for each friction × frictions",
            format!("{} × {}", plain(limits.get(LimitId::pack_clear_aim)), plain(frictions)),
            "the shop's aim",
        ))
        .at_least("The clearance for each friction", result, LimitId::pack_clear_least, limits)
        .at_most("The clearance for each friction", result, LimitId::pack_clear_most, limits)
        .remarks(remark)
        .remark(format!("It aims by the {}.", limits.used(LimitId::pack_clear_aim)))
        .remark(PROVEN))
}

fn pin(given: &Given<'_>) -> Worked {
    let reading = given.number::<Inch>("reading")?;
    let windows = given.pairs::<Inch, Inch>("pins")?;
    if let Some((from, to)) = windows.iter().find(|(from, to)| from > to) {
        let message = format!(
            "Windows of the pins cannot be “{} {}”: the lowest reading comes first.",
            plain(from.value()),
            plain(to.value())
        );
        return Amiss::clash("pins", message);
    }
    let pins: Vec<Pin> = windows.iter().map(|(from, to)| Pin { from: *from, to: *to }).collect();
    let (place, off) = match pick_pin(reading, &pins) {
        PinPick::Fits(place) => (place, None),
        PinPick::NoneFits { nearest, off } => (nearest, Some(off)),
        PinPick::NoPins => return Err(Amiss::Absent("pins")),
    };
    let pin = pins[place];
    let value = format!("pin {} of the list, {} to {}", place + 1, short(pin.from), short(pin.to));
    Ok(Outcome::default()
        .line(Line::new(
            if off.is_some() { "No pin fits; nearest" } else { "Pin to fit" },
            value,
            "the pin whose window the reading falls in",
            format!("{} among {} windows", short(reading), pins.len()),
            "exact for the windows given",
        ))
        .remarks(off.map(|off| {
            let way = if off.value() > 0.0 { "above" } else { "below" };
            format!(
                "The reading is {} {way} the nearest window: measure again, and look for what is worn.",
                short(off.abs())
            )
        })))
}
