//! What every holding element has to hold, beside what it can.

use super::area::Area;
use super::canvas::{Anchor, Canvas, Fill, LINE, Stroke, WIDTH};
use super::linked::Linked;
use super::{Cell, Picture, Table, drawn, said, sound};
use crate::quantity::{One, PoundFoot, Quantity, short};

/// What is drawn.
#[derive(Clone, Debug)]
pub struct Capacity {
    /// Every holding element, in the order it is to be shown.
    pub elements: Vec<Held>,
    /// What was left out.
    pub notes: Vec<String>,
    /// The sums it rests on, and those that would tell what is missing.
    pub sums: Vec<Linked>,
}

/// One holding element.
#[derive(Clone, Debug)]
pub struct Held {
    /// Its name.
    pub name: &'static str,
    /// What it has to hold at the most.
    pub load: Quantity<PoundFoot>,
    /// When that is, and what is counted in.
    pub when: String,
    /// What it can hold with where that comes from, or why it is not known.
    pub capacity: Result<(Quantity<PoundFoot>, String), String>,
    /// How many times the load it must be able to hold before it is said to; 1 where that is counted in already.
    pub margin: Quantity<One>,
}

/// Room for an element: its name, its numbers, its bar.
const ROW: f64 = 56.0;
/// Left and right of the bars.
const RIM: f64 = 4.0;

/// Draws it; `None` when there is nothing to draw, or a number too big.
pub fn capacity(input: &Capacity) -> Option<Picture> {
    let known = |one: &Held| one.capacity.as_ref().ok().map(|(holds, _)| holds.value());
    let all = || input.elements.iter().flat_map(|one| [Some(one.load.value()), known(one)]).flatten();
    if input.elements.is_empty() || !all().all(|value| sound(&[value])) {
        return None;
    }
    let most = all().fold(1.0, f64::max);
    let long = |torque: Quantity<PoundFoot>| (WIDTH - 2.0 * RIM) * (torque.value() / most).clamp(0.0, 1.0);
    let mut canvas = Canvas::new("capacity", 2.0 * LINE + ROW * input.elements.len() as f64);
    let mut rows = Vec::new();
    let (mut over, mut tight, mut within, mut open) = (Vec::new(), Vec::new(), Vec::new(), Vec::new());
    for (nth, one) in input.elements.iter().enumerate() {
        let top = ROW * nth as f64;
        let bar = top + 2.0 * LINE + 4.0;
        canvas.bold((RIM, top + LINE), Anchor::Start, one.name);
        let load = one.load.to_whole();
        let fills = |from: f64, to: f64| Area { left: RIM + from, top: bar, width: (to - from).max(0.0), height: 14.0 };
        let (holds, share, from): (Cell, Cell, String) = match &one.capacity {
            Ok((holds, from)) => {
                let too_much = one.load > *holds;
                let (word, list) = match one.load * one.margin.value() > *holds {
                    _ if too_much => ("over".to_owned(), &mut over),
                    true => (format!("short of the margin, {}", short(one.margin.value(), 2)), &mut tight),
                    false => ("holds".to_owned(), &mut within),
                };
                canvas.words(
                    (RIM, top + 2.0 * LINE),
                    Anchor::Start,
                    &format!("has {load} to hold, can {}: {word}", holds.to_whole()),
                );
                canvas.area(fills(0.0, long(one.load).min(long(*holds))), Fill::Heat(2));
                if too_much {
                    canvas.area(fills(long(*holds), long(one.load)), Fill::Over);
                }
                let end = RIM + long(*holds);
                canvas.line(&[(end, bar - 2.0), (end, bar + 17.0)], Stroke::Heavy);
                list.push(format!("{}, {load} of {}", one.name, holds.to_whole()));
                let share = Quantity::new(one.load / *holds);
                // A pack whose springs are stronger than its pressure holds nothing at all.
                let share = if holds.value() > 0.0 { said(share.to_percent(0)) } else { said("holds nothing") };
                (drawn(holds.to_whole()), share, from.clone())
            }
            Err(why) => {
                canvas.words(
                    (RIM, top + 2.0 * LINE),
                    Anchor::Start,
                    &format!("has {load} to hold; can hold: not known"),
                );
                canvas.area(fills(0.0, long(one.load)), Fill::Heat(2));
                open.push(format!("{}, {load}", one.name));
                (Cell::Blank(format!("not known: {why}")), said("cannot be said"), "derived".to_owned())
            }
        };
        rows.push(vec![said(one.name), drawn(load), said(one.when.clone()), holds, share, said(from)]);
    }
    let foot = canvas.height() - LINE;
    canvas.area(Area { left: RIM, top: foot, width: 14.0, height: 10.0 }, Fill::Heat(2));
    canvas.words((22.0, foot + 9.0), Anchor::Start, "load");
    canvas.area(Area { left: 66.0, top: foot, width: 14.0, height: 10.0 }, Fill::Over);
    canvas.words((84.0, foot + 9.0), Anchor::Start, "over");
    canvas.line(&[(132.0, foot - 1.0), (132.0, foot + 11.0)], Stroke::Heavy);
    canvas.words((140.0, foot + 9.0), Anchor::Start, "what it can hold");
    let title = "Load against capacity".to_owned();
    let told = [
        ("Has more to hold than it can", over),
        ("Holds it without the margin the shop asks for", tight),
        ("Holds", within),
        ("What it can hold is not known", open),
    ];
    let told = told.into_iter().filter(|(_, list)| !list.is_empty());
    let description = told.map(|(what, list)| format!("{what}: {}.", list.join("; "))).collect::<Vec<_>>().join(" ");
    Some(Picture {
        name: "capacity".to_owned(),
        svg: canvas.finish(&title, &description),
        title,
        description,
        table: Table {
            columns: vec!["Element", "Has to hold", "When", "Can hold", "Load of capacity", "Capacity from"],
            rows,
        },
        notes: [
            "Steady torque, except where a margin or a shock is named; no losses. A band or a clutch whose capacity is not known \
             is not thereby strong enough."
                .to_owned(),
        ]
        .into_iter()
        .chain(input.notes.iter().cloned())
        .collect(),
        sums: input.sums.clone(),
    })
}
