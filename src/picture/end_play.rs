//! An end play as a stack: what is in now, what is aimed at, and what every washer on the shelf would leave.

use super::area::Area;
use super::canvas::{Anchor, Canvas, Fill, LINE, Stroke, WIDTH, width_of};
use super::linked::Linked;
use super::scale::Scale;
use super::{Picture, Table, drawn, said, sound};
use crate::plan::sheet::{Band, Edge, Scale as Measure};
use crate::quantity::{Inch, Quantity};

/// What is drawn.
#[derive(Clone, Debug)]
pub struct EndPlay {
    /// Name of the picture: `front-end-play`.
    pub name: &'static str,
    /// `Front end play`.
    pub label: &'static str,
    /// What was read.
    pub reading: Quantity<Inch>,
    /// What it is held against.
    pub band: Band,
    /// The washer that is in now, when it was measured.
    pub washer: Option<Quantity<Inch>>,
    /// What the washers of the shop's set would leave.
    pub set: Vec<Washer>,
}

/// A washer of the set.
#[derive(Clone, Debug, PartialEq)]
pub struct Washer {
    /// As a person picks it from the drawer.
    pub what: String,
    /// How thick it is.
    pub size: Quantity<Inch>,
    /// The play it would leave.
    pub leaves: Quantity<Inch>,
    /// How far that may be off at the worst, either way.
    pub worst: Quantity<Inch>,
    /// Does it fit?
    pub fits: bool,
    /// Is it the one to choose?
    pub best: bool,
}

const LEFT: f64 = 8.0;
const RIGHT: f64 = 14.0;

/// Draws it; `None` without any limit to hold it against, or with a number too big to draw.
pub fn end_play(input: &EndPlay) -> Option<Picture> {
    let say = |value: f64| Measure::Length.say(value);
    let reading = input.reading.value();
    let (least, most) = (input.band.least.as_ref()?, input.band.most.as_ref()?);
    let aim = input.band.aim.as_ref();
    let values = [reading, least.value, most.value].into_iter().chain(aim.map(|edge| edge.value));
    let results = input.set.iter().flat_map(|washer| [washer.leaves - washer.worst, washer.leaves + washer.worst]);
    let all: Vec<f64> = values.chain(results.map(Quantity::value)).collect();
    if !sound(&all) {
        return None;
    }
    let scale = Scale::holding(all.iter().copied().chain([0.0]));
    let x = |value: f64| LEFT + (WIDTH - LEFT - RIGHT) * scale.share(value);
    let rows_of_set = input.set.len() as f64;
    let stack = 8.0 + 5.0 * LINE;
    let ruler = stack + 2.0 * LINE + 10.0;
    let first = ruler + 30.0;
    let mut canvas = Canvas::new(input.name, first + 2.2 * LINE * rows_of_set + 30.0);
    let mut told = Vec::new();
    let mut rows = Vec::new();

    // The stack: washer and gap, now and as aimed at.
    let gap = Gap { washer: input.washer.map(Quantity::value), play: reading };
    gap.draw(&mut canvas, 4.0, "now");
    rows.push(vec![said("Now"), gap.cell(), drawn(say(reading)), said("read on the bench")]);
    told.push(format!("it reads {}", say(reading)));
    if let Some(aim) = aim {
        let by = reading - aim.value;
        let wanted = Gap { washer: input.washer.map(|old| old.value() + by), play: aim.value };
        wanted.draw(&mut canvas, 4.0 + 2.5 * LINE, "aim");
        rows.push(vec![said("Aim"), wanted.cell(), drawn(say(aim.value)), said(aim.mark.clone())]);
        told.push(match by {
            by if say(by) == say(0.0) => "which is what is aimed at".to_owned(),
            by if by > 0.0 => format!("a washer {} thicker would bring the {} aimed at", say(by), say(aim.value)),
            by => format!("a washer {} thinner would bring the {} aimed at", say(-by), say(aim.value)),
        });
    }

    // The ruler with the window.
    let window = Area { left: x(least.value), top: ruler, width: x(most.value) - x(least.value), height: 16.0 };
    canvas.area(window, Fill::Heat(1));
    canvas.words((x(least.value), ruler - 4.0), Anchor::End, &say(least.value));
    canvas.words((x(most.value), ruler - 4.0), Anchor::Start, &say(most.value));
    canvas.line(&[(LEFT, ruler + 16.0), (WIDTH - RIGHT, ruler + 16.0)], Stroke::Plain);
    for (value, printed) in scale.ticks() {
        canvas.line(&[(x(value), ruler + 16.0), (x(value), ruler + 21.0)], Stroke::Hair);
        let apart = (WIDTH - LEFT - RIGHT) / scale.ticks().count() as f64;
        if apart > width_of(&printed) {
            canvas.words((x(value), ruler + 33.0), Anchor::Middle, &printed);
        }
    }
    if let Some(aim) = aim {
        canvas.line(&[(x(aim.value), ruler - 2.0), (x(aim.value), ruler + 18.0)], Stroke::Dotted);
    }
    canvas.disc((x(reading), ruler + 8.0), 5.0, Fill::Ink);
    let edges: [(&str, &Edge); 2] = [("At least", least), ("At most", most)];
    rows.extend(edges.map(|(name, edge)| vec![said(name), said(""), drawn(say(edge.value)), said(edge.mark.clone())]));

    for (nth, washer) in input.set.iter().enumerate() {
        let top = first + 1.5 * LINE + 2.2 * LINE * nth as f64;
        let word = match (washer.best, washer.fits) {
            (true, true) => "fit this: ",
            (true, false) => "nearest, does not fit: ",
            (false, true) => "fits: ",
            (false, false) if washer.leaves.value() < 0.0 => "too thick, no play: ",
            (false, false) => "no: ",
        };
        let words = format!("{word}{}", washer.what);
        let left = say(washer.leaves.value());
        if washer.best {
            canvas.bold((LEFT, top), Anchor::Start, &words)
        } else {
            canvas.words((LEFT, top), Anchor::Start, &words)
        }
        let y = top + 9.0;
        let (low, high) = (washer.leaves - washer.worst, washer.leaves + washer.worst);
        canvas.line(&[(x(least.value), y - 5.0), (x(least.value), y + 5.0)], Stroke::Hair);
        canvas.line(&[(x(most.value), y - 5.0), (x(most.value), y + 5.0)], Stroke::Hair);
        canvas.line(
            &[(x(low.value()), y), (x(high.value()), y)],
            if washer.best { Stroke::Heavy } else { Stroke::Plain },
        );
        canvas.disc((x(washer.leaves.value()), y), 4.5, if washer.fits { Fill::Ink } else { Fill::Open });
        // What it leaves stands beside its mark, on the side where there is room.
        let beside = (x(high.value()) + 8.0, x(low.value()) - 8.0);
        let (at, anchor) =
            if beside.0 + width_of(&left) < WIDTH { (beside.0, Anchor::Start) } else { (beside.1, Anchor::End) };
        canvas.words((at, y + 4.0), anchor, &left);
        if washer.best {
            told.push(format!("{word}{}, which leaves {}", washer.what, say(washer.leaves.value())));
        }
        rows.push(vec![
            said(washer.what.clone()),
            said(word.trim_end_matches(": ")),
            drawn(say(washer.leaves.value())),
            said("derived: reading + old washer - new washer"),
        ]);
    }
    let foot = canvas.height() - 5.0;
    canvas.disc((LEFT + 5.0, foot - 4.0), 4.5, Fill::Ink);
    canvas.words((LEFT + 14.0, foot), Anchor::Start, "read");
    canvas.area(Area { left: 66.0, top: foot - 10.0, width: 16.0, height: 10.0 }, Fill::Heat(1));
    canvas.words((86.0, foot), Anchor::Start, "allowed");
    canvas.line(&[(152.0, foot - 11.0), (152.0, foot + 1.0)], Stroke::Dotted);
    canvas.words((158.0, foot), Anchor::Start, "aim");
    let title = format!("{} and the washer to choose", input.label);
    let description =
        format!("{}: {}. Allowed is {} to {}.", input.label, told.join("; "), say(least.value), say(most.value));
    let mut notes = Vec::new();
    if input.washer.is_none() {
        notes.push("The washer that is in now is not measured, so no washer of the set can be chosen yet.".to_owned());
    } else if input.set.is_empty() {
        notes.push("The shop's set of washers is not typed in, so none can be chosen from it.".to_owned());
    }
    Some(Picture {
        name: input.name.to_owned(),
        svg: canvas.finish(&title, &description),
        title,
        description,
        table: Table { columns: vec!["What", "Washer", "Play", "From"], rows },
        notes,
        sums: sums(input),
    })
}

/// The sum with the same numbers, as far as it can choose from this set.
fn sums(input: &EndPlay) -> Vec<Linked> {
    let number = |size: Quantity<Inch>| format!("{:.4}", size.value());
    let name = if input.name == "front-end-play" { "front-washer" } else { "rear-washer" };
    let sizes: Vec<_> = input.set.iter().map(|washer| number(washer.size)).collect();
    let old = input.washer.map_or_else(String::new, number);
    Linked::to(name, &[("old", old), ("shelf", sizes.join(" "))]).into_iter().collect()
}

/// A washer and the gap beside it.
struct Gap {
    washer: Option<f64>,
    play: f64,
}

impl Gap {
    fn cell(&self) -> super::Cell {
        match self.washer {
            Some(washer) => drawn(Measure::Length.say(washer)),
            None => super::Cell::Blank("not known: not measured".to_owned()),
        }
    }

    /// The washer hatched, the gap open; the gap is drawn many times wider than it is, or nobody would see it.
    fn draw(&self, canvas: &mut Canvas, top: f64, name: &str) {
        let say = |value: f64| Measure::Length.say(value);
        canvas.bold((LEFT, top + LINE + 4.0), Anchor::Start, name);
        let washer = Area { left: 50.0, top, width: 150.0, height: 2.0 * LINE };
        canvas.area(washer, Fill::Heat(1));
        let words = self.washer.map_or("washer: not known".to_owned(), |washer| format!("washer {}", say(washer)));
        canvas.area(Area { left: 56.0, top: top + 6.0, width: 138.0, height: 16.0 }, Fill::Open);
        canvas.words((125.0, top + LINE + 4.0), Anchor::Middle, &words);
        canvas.area(Area { left: 200.0, top, width: 120.0, height: 2.0 * LINE }, Fill::Open);
        canvas.words((260.0, top + LINE + 4.0), Anchor::Middle, &format!("play {}", say(self.play)));
        canvas.line(&[(320.0, top - 2.0), (320.0, top + 2.0 * LINE + 2.0)], Stroke::Heavy);
    }
}
