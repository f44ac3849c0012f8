//! The part to fit, worked out from a measurement, what is fitted now, and what is on the shelf.

use super::band::Band;
use super::entry::{Fit, Measurement};
use super::scale::Scale;
use super::sets::{SetKind, SetPart};
use crate::calc::converter::spacer;
use crate::calc::fit::{
    Landing, Packing, Part, Pick, Pin, PinPick, Shimmed, Stack, Window, choose, fill, landings, pick_pin, shim, wanted,
};
use crate::quantity::{Inch, Quantity};
use crate::rules::{Known, Limits};

/// What is in the unit now, in inches: one washer, every steel of a pack, the height of an old pair of washers.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Fitted(pub Vec<f64>);

/// What follows from a measurement.
#[derive(Clone, Debug, PartialEq)]
pub enum Proposal {
    /// Nothing is worked out from this measurement.
    Nothing,
    /// Something is missing; the sentence says what.
    Missing(String),
    /// This.
    Found(Picked),
}

/// What to fit.
#[derive(Clone, Debug, PartialEq)]
pub struct Picked {
    /// Does something fit?
    pub fits: bool,
    /// What to do, in a sentence.
    pub sentence: String,
    /// The sum with its numbers put in.
    pub working: String,
    /// What can be chosen, the best marked.
    pub offers: Vec<Offer>,
}

/// One part, or one set of parts, with what it would leave.
#[derive(Clone, Debug, PartialEq)]
pub struct Offer {
    /// As a person picks it from the drawer.
    pub what: String,
    /// What it would leave, in words.
    pub leaves: String,
    /// Does it fit?
    pub fits: bool,
    /// Is it the best?
    pub best: bool,
}

/// The most shims that are put under one bearing.
const MOST_SHIMS: usize = 3;

/// The part to fit for a measurement of `value` inches that is unsure by `spread` from end to end.
pub fn pick(
    measurement: &Measurement,
    (value, spread): (f64, f64),
    band: &Known<Band>,
    fitted: &Fitted,
    set: &[SetPart],
    limits: &Limits,
) -> Proposal {
    let Some(fit) = measurement.fit else { return Proposal::Nothing };
    match fit {
        Fit::OffsetDowels => return Proposal::Found(dowels(value)),
        Fit::Spacers => return Proposal::Found(spacers(value, limits)),
        _ => {}
    }
    if let Some(kind) = fit.set().filter(|_| set.is_empty()) {
        return Proposal::Missing(format!(
            "The set \u{201c}{}\u{201d} is not typed in yet. Type what is on the shelf, then the page chooses from it.",
            kind.label()
        ));
    }
    if let Fit::Pin(kind) = fit {
        return Proposal::Found(pin(value, kind, set));
    }
    if fitted.0.is_empty() {
        return Proposal::Missing(fitted_asked(fit).to_owned());
    }
    if let Fit::Shims(kind) = fit {
        return Proposal::Found(shims(value, fitted.0[0], kind, set, limits));
    }
    let Known::Yes(band, _) = band else {
        return Proposal::Missing("It cannot be chosen before the limit is known: see what it waits for.".to_owned());
    };
    let Some(windows) = windows(band) else {
        return Proposal::Missing("There is no limit to choose a part by.".to_owned());
    };
    match fit {
        Fit::Pack(kind) => Proposal::Found(pack(value, fitted, windows[0], kind, set)),
        _ => Proposal::Found(washer((value, spread), fitted.0[0], windows, set, fit)),
    }
}

/// What is asked for beside the reading; empty for most.
pub const fn fitted_asked(fit: Fit) -> &'static str {
    match fit {
        Fit::Washer(_) => "Measure the washer that is in now with a micrometer and type it.",
        Fit::Pack(_) => "Measure every plain steel of the pack and type them, with commas or blanks between.",
        Fit::Shims(_) => "Measure the pair of washers that came out, together, and type it.",
        Fit::Pin(_) | Fit::OffsetDowels | Fit::Spacers => "",
    }
}

const fn inch(value: f64) -> Quantity<Inch> {
    Quantity::new(value)
}

fn say(value: Quantity<Inch>) -> String {
    Scale::Length.say(value.value())
}

/// What is wanted, and what is allowed at the most.
fn windows(band: &Band) -> Option<[Window; 2]> {
    let (least, most) = (band.least.as_ref()?.value, band.most.as_ref()?.value);
    let aim = band.aim.as_ref().map_or((least + most) / 2.0, |aim| aim.value);
    let tight = band.tight.as_ref().map_or(least, |edge| edge.value);
    let loose = band.loose.as_ref().map_or(most, |edge| edge.value);
    let window = |least: f64, most: f64| Window { least: inch(least), aim: inch(aim), most: inch(most) };
    Some([window(tight, loose), window(least, most)])
}

/// What every washer of a set would leave, and which to choose.
#[derive(Clone, Debug, PartialEq)]
pub struct Washers {
    /// One for each, in the order of the set.
    pub landings: Vec<Landing>,
    /// The one to fit.
    pub pick: Pick,
    /// Does nothing reach what the shop builds, so that what is allowed was the measure?
    pub only_allowed: bool,
}

/// Tries every washer of a set for an end play of `value` inches that is unsure by `spread` from end to end, with a washer of
/// `old` inches in; `None` without limits to choose by.
pub fn washers((value, spread): (f64, f64), old: f64, band: &Band, set: &[SetPart]) -> Option<Washers> {
    Some(tried((value, spread), old, windows(band)?, set))
}

fn tried((value, spread): (f64, f64), old: f64, [wished, allowed]: [Window; 2], set: &[SetPart]) -> Washers {
    let parts: Vec<Part> = set.iter().map(|part| Part { size: part.thickness(), give: inch(part.other) }).collect();
    let landed = |window: &Window| landings(inch(old), inch(value), inch(spread / 2.0), window, &parts);
    let (landings, pick) = (landed(&wished), choose(&landed(&wished), &wished));
    if matches!(pick, Pick::NoneFits { .. }) && wished != allowed {
        let wide = landed(&allowed);
        if let fits @ Pick::Fits(_) = choose(&wide, &allowed) {
            return Washers { landings: wide, pick: fits, only_allowed: true };
        }
    }
    Washers { landings, pick, only_allowed: false }
}

fn washer((value, spread): (f64, f64), old: f64, both: [Window; 2], set: &[SetPart], fit: Fit) -> Picked {
    let Washers { landings, pick, only_allowed } = tried((value, spread), old, both, set);
    let wished = both[0];
    let kind = fit.set().unwrap_or(SetKind::FrontWasher);
    let aimed = wanted(inch(old), inch(value), wished.aim);
    let working = format!(
        "new = old + reading - aim = {} + {} - {} = {}",
        say(inch(old)),
        say(inch(value)),
        say(wished.aim),
        say(aimed)
    );
    let (fits, best, sentence) = match pick {
        Pick::NoParts => (false, None, "There is no part to choose from.".to_owned()),
        Pick::Fits(best) => {
            let sure = if best.sure { "" } else { " Read again when it is in: at its worst it would be outside." };
            let wide =
                if only_allowed { " Nothing in the set reaches what this shop builds; this is allowed." } else { "" };
            let part = set[best.part].say(kind);
            let stays = say(set[best.part].thickness()) == say(inch(old));
            let sentence = if stays {
                format!(
                    "Leave what is in: nothing in the set comes nearer than {part}, which leaves {}.{wide}",
                    leaves(&best)
                )
            } else {
                format!("Fit {part}. It will leave {}.{wide}{sure}", leaves(&best))
            };
            (true, Some(best.part), sentence)
        }
        Pick::NoneFits { nearest, off } => {
            let part = set[nearest.part].say(kind);
            let side = if off.value() > 0.0 { "too much" } else { "too little" };
            let sentence = format!(
                "No part in the set fits. The nearest is {part}: it would leave {}, which is {} {side}. A part of about {} \
                 is wanted.",
                leaves(&nearest),
                say(off.abs()),
                say(aimed)
            );
            (false, Some(nearest.part), sentence)
        }
    };
    let offer = |landing: &Landing| Offer {
        what: set[landing.part].say(kind),
        leaves: leaves(landing),
        fits: landing.fits,
        best: best == Some(landing.part),
    };
    Picked { fits, sentence, working, offers: landings.iter().map(offer).collect() }
}

fn leaves(landing: &Landing) -> String {
    if landing.result.value() < 0.0 {
        return format!("no room: {} too thick", say(landing.result.abs()));
    }
    if landing.worst.value() == 0.0 {
        return say(landing.result);
    }
    if say(landing.worst) == say(landing.likely) {
        return format!("{} (\u{b1} {})", say(landing.result), say(landing.worst));
    }
    format!(
        "{} (\u{b1} {} at the worst, \u{b1} {} as likely)",
        say(landing.result),
        say(landing.worst),
        say(landing.likely)
    )
}

fn pack(value: f64, fitted: &Fitted, window: Window, kind: SetKind, set: &[SetPart]) -> Picked {
    let old: Vec<_> = fitted.0.iter().map(|steel| inch(*steel)).collect();
    let shelf: Vec<_> = set.iter().map(SetPart::thickness).collect();
    let more = inch(value) - window.aim;
    let working = format!(
        "the stack has to grow by reading - aim = {} - {} = {}; over {} steels that is {} each",
        say(inch(value)),
        say(window.aim),
        say(more),
        old.len(),
        say(more * (1.0 / old.len() as f64))
    );
    let offer = |filled: &crate::calc::fit::Filled, fits, best| Offer {
        what: format!("{} ({} new)", steels(&filled.steels), filled.new),
        leaves: say(filled.result),
        fits,
        best,
    };
    match fill(&old, inch(value), &window, &shelf) {
        Packing::Fits { nearest, fewest } => {
            let again = fewest.as_ref().map_or_else(String::new, |fewest| match fewest.new {
                0 => format!(" As it is now it has {}: also inside.", say(fewest.result)),
                new => format!(" With {new} new it would be {}: also inside.", say(fewest.result)),
            });
            let sentence = if nearest.new == 0 {
                format!(
                    "Leave the steels as they are: nothing on the shelf comes nearer to the aim than {}.",
                    say(nearest.result)
                )
            } else {
                format!(
                    "Build the pack with {}. It will leave {}.{again}",
                    steels(&nearest.steels),
                    say(nearest.result)
                )
            };
            let fewest = fewest.iter().map(|fewest| offer(fewest, true, false));
            Picked {
                fits: true,
                sentence,
                working,
                offers: std::iter::once(offer(&nearest, true, true)).chain(fewest).collect(),
            }
        }
        Packing::NoneFits { nearest, off } => {
            let side = if off.value() > 0.0 { "too much" } else { "too little" };
            let sentence = format!(
                "No steels in the set \u{201c}{}\u{201d} fit. The nearest pack is {}: it would leave {}, which is {} {side}. \
                 Look at the pressure plate and the snap ring.",
                kind.label(),
                steels(&nearest.steels),
                say(nearest.result),
                say(off.abs())
            );
            Picked { fits: false, sentence, working, offers: vec![offer(&nearest, false, true)] }
        }
        Packing::TooMany => Picked {
            fits: false,
            sentence: "There are more stacks of so many different sizes than can be tried. Measure the steels to a \
                       thousandth, or take sizes out of the set."
                .to_owned(),
            working,
            offers: Vec::new(),
        },
        Packing::NoSteels => {
            Picked { fits: false, sentence: "There is no steel to change.".to_owned(), working, offers: Vec::new() }
        }
    }
}

/// `2 of 0.077 in and 2 of 0.097 in`.
fn steels(sizes: &[Quantity<Inch>]) -> String {
    let mut counted: Vec<(Quantity<Inch>, usize)> = Vec::new();
    for size in sizes {
        match counted.iter_mut().find(|(known, _)| known == size) {
            Some((_, count)) => *count += 1,
            None => counted.push((*size, 1)),
        }
    }
    let said: Vec<_> = counted.iter().map(|(size, count)| format!("{count} of {}", say(*size))).collect();
    said.join(" and ")
}

fn shims(value: f64, old: f64, kind: SetKind, set: &[SetPart], limits: &Limits) -> Picked {
    let within = limits.kit_stack;
    let shelf: Vec<_> = set.iter().map(SetPart::thickness).collect();
    let working =
        format!("shims = old pair - bearing = {} - {} = {}", say(inch(old)), say(inch(value)), say(inch(old - value)));
    let height = |higher: Quantity<Inch>| match higher.value() {
        0.0 => "the same height as the pair".to_owned(),
        more if more > 0.0 => format!("{} higher than the pair", say(higher)),
        _ => format!("{} lower than the pair", say(higher.abs())),
    };
    let under = |shims: &[Quantity<Inch>]| {
        if shims.is_empty() { "no shim".to_owned() } else { format!("shims: {}", steels(shims)) }
    };
    let offer = |shims: &[Quantity<Inch>], higher, fits| {
        vec![Offer { what: under(shims), leaves: height(higher), fits, best: true }]
    };
    match shim(&Stack { old: inch(old), new: inch(value), within }, &shelf, MOST_SHIMS) {
        Shimmed::Fits { shims, higher } => {
            let sentence = format!("Under the bearing: {}. It then stands {}.", under(&shims), height(higher));
            Picked { fits: true, sentence, working, offers: offer(&shims, higher, true) }
        }
        Shimmed::TooHigh(by) => {
            let sentence = format!(
                "The bearing alone stands {} higher than the pair, and no shim makes it lower. Take a thinner race, or \
                 keep the washers.",
                say(by)
            );
            Picked { fits: false, sentence, working, offers: Vec::new() }
        }
        Shimmed::NoneFits { shims, higher } => {
            let sentence = format!(
                "No shims in the set \u{201c}{}\u{201d} fit. The nearest, {}, leave it {}; it has to be within {within}.",
                kind.label(),
                under(&shims),
                height(higher)
            );
            Picked { fits: false, sentence, working, offers: offer(&shims, higher, false) }
        }
    }
}

fn pin(value: f64, kind: SetKind, set: &[SetPart]) -> Picked {
    let pins: Vec<Pin> = set.iter().map(|part| Pin { from: inch(part.size), to: inch(part.other) }).collect();
    let picked = pick_pin(inch(value), &pins);
    let (fits, best, sentence) = match picked {
        PinPick::Fits(pin) => (true, Some(pin), format!("Fit {}.", set[pin].say(kind))),
        PinPick::NoneFits { nearest, off } => {
            let side = if off.value() > 0.0 { "above" } else { "below" };
            let sentence = format!(
                "No pin in the set fits: the mark falls in no window. The nearest is {}, and the reading is {} {side} it.",
                set[nearest].say(kind),
                say(off.abs())
            );
            (false, Some(nearest), sentence)
        }
        PinPick::NoPins => (false, None, "There is no pin to choose from.".to_owned()),
    };
    let offer = |(place, (part, pin)): (usize, (&SetPart, &Pin))| {
        let fits = matches!(pick_pin(inch(value), std::slice::from_ref(pin)), PinPick::Fits(_));
        let leaves = if fits { "the mark falls in its window" } else { "the mark falls outside its window" };
        Offer { what: part.say(kind), leaves: leaves.to_owned(), fits, best: best == Some(place) }
    };
    let offers = set.iter().zip(&pins).enumerate().map(offer).collect();
    Picked { fits, sentence, working: format!("the gauge reads {}", say(inch(value))), offers }
}

/// Offset dowel = half of the total runout. Exact (geometry).
fn dowels(value: f64) -> Picked {
    let half = say(inch(value / 2.0));
    let working = format!("offset = runout / 2 = {} / 2 = {half}", say(inch(value)));
    let sentence = format!(
        "Dowels with {half} of offset would center the bell. Take the nearest, turn both the same way, sweep again."
    );
    Picked { fits: true, sentence, working, offers: Vec::new() }
}

/// Spacer = gap − aim, at every pad. Exact (geometry).
fn spacers(value: f64, limits: &Limits) -> Picked {
    let aim = limits.gap_aim;
    let more = spacer(inch(value), aim);
    let working = format!("spacer = gap - aim = {} - {} = {}", say(inch(value)), say(aim), say(more));
    let sentence = if inch(value) > limits.gap_wide {
        format!("Spacers of {} at every pad bring it to the aim. See that the pilot is still held.", say(more))
    } else {
        format!("No spacers are wanted: up to {} the gap is left as it is.", say(limits.gap_wide))
    };
    Picked { fits: true, sentence, working, offers: Vec::new() }
}
