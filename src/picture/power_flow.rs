//! Power flow of one range: every shaft a line, every set and holding element what stands between the lines.

use super::area::Area;
use super::canvas::{Anchor, Canvas, Fill, LINE, Stroke, WIDTH, width_of};
use super::linked::Linked;
use super::{Cell, Picture, Table, drawn, said, sound};
use crate::calc::power_flow::three_speed::Pair;
use crate::calc::power_flow::{CASE, ElementFlow, ElementState, Flow, Load, Member, Outcome, Train};
use crate::quantity::{Quantity, Rpm};

/// What is drawn.
#[derive(Clone, Debug)]
pub struct PowerFlow<'a> {
    /// Name of the picture: `flow-first`.
    pub name: &'static str,
    /// The train.
    pub train: &'a Train,
    /// What the range does.
    pub flow: &'a Flow,
    /// Where the torque and the speed that come in are from.
    pub source: &'a str,
    /// The written ratios it is worked with.
    pub pair: Pair,
    /// The sum with the same numbers.
    pub sums: Vec<Linked>,
}

/// Room on the left for the name of a shaft and its speed.
const NAMES: f64 = 98.0;
/// From one shaft to the next.
const ROW: f64 = 42.0;
/// Where the first line is.
const FIRST: f64 = 40.0;

/// Draws it; `None` when there is a number too big to draw.
pub fn power_flow(input: &PowerFlow<'_>) -> Option<Picture> {
    let PowerFlow { name, train, flow, source, pair, .. } = *input;
    let torques = flow
        .members
        .iter()
        .filter_map(|member| member.torque)
        .chain(flow.elements.iter().filter_map(|one| one.load.most()));
    let torques: Vec<f64> = torques.map(|torque| torque.value().abs()).collect();
    let speeds: Vec<f64> = flow.shafts.iter().filter_map(|shaft| shaft.speed).map(Quantity::value).collect();
    if !sound(&torques) || !sound(&speeds) || train.elements().len() > LETTERS.len() {
        return None;
    }
    let most = torques.iter().copied().fold(0.0, f64::max);
    let heat = |torque: f64| Fill::Heat(if most > 0.0 { (torque.abs() / most * 4.0 - 1e-9).ceil() as u8 } else { 0 });
    let rows = rows(train);
    let y = |shaft: &str| FIRST + ROW * rows.iter().position(|row| *row == shaft).unwrap_or_default() as f64;
    let legend = FIRST + ROW * (rows.len() as f64 - 0.4);
    let mut canvas = Canvas::new(name, legend + LINE * (train.elements().len() as f64 + 2.6));
    for row in &rows {
        shaft_line(&mut canvas, row, y(row), flow);
    }
    let weights = train.elements().len() as f64 + 4.0 * train.sets().len() as f64;
    let column = (WIDTH - NAMES - 4.0) / weights.max(1.0);
    let mut x = NAMES + column / 2.0;
    for (one, letter) in train.elements().iter().zip(LETTERS) {
        if let Some(state) = flow.element(one.name) {
            let (upper, lower) = (y(one.to).min(y(one.shaft)), y(one.to).max(y(one.shaft)));
            element(&mut canvas, (x, upper, lower), state, heat(state.load.most().map_or(most, Quantity::value)));
        }
        canvas.bold((x, 14.0), Anchor::Middle, letter);
        x += column;
    }
    for set in train.sets() {
        let at = x - column / 2.0 + 15.0;
        let nodes = [(Member::Sun, set.sun, "S"), (Member::Carrier, set.carrier, "C"), (Member::Ring, set.ring, "R")];
        let all = nodes.map(|(_, shaft, _)| y(shaft));
        let ends = (all.into_iter().fold(f64::INFINITY, f64::min), all.into_iter().fold(0.0, f64::max));
        canvas.line(&[(at, ends.0), (at, ends.1)], Stroke::Plain);
        for (member, shaft, letter) in nodes {
            let torque = flow.member(set.name, member).and_then(|one| one.torque).map(Quantity::value);
            canvas.disc((at, y(shaft)), 12.0, torque.map_or(Fill::Open, heat));
            canvas.disc((at, y(shaft)), 7.5, Fill::Open);
            canvas.bold((at, y(shaft) + 4.0), Anchor::Middle, letter);
            canvas.words((at + 14.0, y(shaft) - 4.0), Anchor::Start, &torque.map_or("?".to_owned(), whole));
        }
        canvas.bold((x + 1.5 * column, 14.0), Anchor::Middle, set.name);
        x += 4.0 * column;
    }
    heat_legend(&mut canvas, legend + LINE, most);
    for (nth, (one, letter)) in train.elements().iter().zip(LETTERS).enumerate() {
        let Some(state) = flow.element(one.name) else { continue };
        let words = format!("{letter} {}: {}, {}", one.name, state_word(state.state), load_words(state.load));
        canvas.words((2.0, legend + LINE * (nth as f64 + 2.2)), Anchor::Start, &words);
    }
    let title = format!("Power flow: {}", flow.range);
    let description = format!("{} {}", outcome(flow), holding(flow));
    Some(Picture {
        name: name.to_owned(),
        svg: canvas.finish(&title, &description),
        title,
        description,
        table: table(flow),
        notes: vec![
            format!("Comes in: {source}. Steady running, no losses. Worked with the ratios of {}, which decide this range.", pair.words()),
            "Below nought is against the engine. A torque is what a part puts on its shaft; the three of a set add up to \
             nought."
                .to_owned(),
        ],
        sums: input.sums.clone(),
    })
}

const LETTERS: [&str; 12] = ["A", "B", "D", "E", "F", "G", "H", "J", "K", "L", "M", "N"];

/// The case on top, then the shafts, the output last.
fn rows(train: &Train) -> Vec<&'static str> {
    let shafts = train.shafts();
    let (ends, inner) = shafts.split_at(2.min(shafts.len()));
    [CASE].into_iter().chain(ends.first().copied()).chain(inner.iter().copied()).chain(ends.get(1).copied()).collect()
}

fn shaft_line(canvas: &mut Canvas, name: &str, y: f64, flow: &Flow) {
    let ends = [(NAMES, y), (WIDTH - 2.0, y)];
    if name == CASE {
        canvas.area(Area { left: NAMES, top: y - 3.0, width: WIDTH - 2.0 - NAMES, height: 6.0 }, Fill::Ink);
        canvas.words((2.0, y + 4.0), Anchor::Start, "case: held");
        return;
    }
    let speed = flow.shaft(name).and_then(|shaft| shaft.speed);
    let stroke = match speed.map(Quantity::value) {
        None => Stroke::Dotted,
        Some(speed) if speed < -0.5 => Stroke::DashDot,
        Some(speed) if speed > 0.5 => Stroke::Heavy,
        Some(_) => Stroke::Plain,
    };
    canvas.line(&ends, stroke);
    let lines = wrapped(name, NAMES - 6.0);
    let words = speed.map_or("not settled".to_owned(), |speed| speed.to_whole());
    let top = y + 4.0 - LINE * lines.len() as f64 / 2.0;
    for (nth, line) in lines.iter().chain([&words]).enumerate() {
        canvas.words((2.0, top + (LINE - 1.0) * nth as f64), Anchor::Start, line);
    }
}

/// Words broken so that they fit.
fn wrapped(words: &str, width: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in words.split(' ') {
        match lines.last_mut() {
            Some(line) if width_of(line) + width_of(word) + width_of(" ") <= width => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(word.to_owned()),
        }
    }
    lines
}

/// What stands between two shafts: a block when it holds, an open one when it is released, a ring when it turns freely.
fn element(canvas: &mut Canvas, (x, upper, lower): (f64, f64, f64), state: &ElementFlow, heat: Fill) {
    // Always between two lines, never on one that it passes by.
    let middle = upper + ROW / 2.0;
    let holds = matches!(state.state, ElementState::Applied | ElementState::Locked | ElementState::Undecided);
    let stroke = if holds { Stroke::Plain } else { Stroke::Dotted };
    canvas.line(&[(x, upper), (x, middle - 7.0)], stroke);
    canvas.line(&[(x, middle + 7.0), (x, lower)], stroke);
    canvas.disc((x, upper), 3.0, Fill::Ink);
    canvas.disc((x, lower), 3.0, Fill::Ink);
    let block = Area { left: x - 7.0, top: middle - 7.0, width: 14.0, height: 14.0 };
    match state.state {
        ElementState::Overrunning | ElementState::Unloaded => canvas.disc((x, middle), 6.0, Fill::Open),
        ElementState::Open => {
            canvas.line(&[(x - 7.0, middle - 5.0), (x + 7.0, middle - 5.0)], Stroke::Plain);
            canvas.line(&[(x - 7.0, middle + 5.0), (x + 7.0, middle + 5.0)], Stroke::Plain);
        }
        ElementState::Applied | ElementState::Locked | ElementState::Undecided => canvas.area(block, heat),
    }
}

fn heat_legend(canvas: &mut Canvas, y: f64, most: f64) {
    canvas.words((2.0, y), Anchor::Start, "torque, lb-ft, up to");
    for level in 1..=4u8 {
        let left = 132.0 + 57.0 * f64::from(level - 1);
        canvas.area(Area { left, top: y - 10.0, width: 12.0, height: 12.0 }, Fill::Heat(level));
        canvas.words((left + 15.0, y), Anchor::Start, &whole(most * f64::from(level) / 4.0));
    }
}

const fn state_word(state: ElementState) -> &'static str {
    match state {
        ElementState::Applied => "applied",
        ElementState::Open => "released",
        ElementState::Locked => "holds",
        ElementState::Overrunning => "turns freely",
        ElementState::Unloaded => "carries nothing",
        ElementState::Undecided => "cannot be told",
    }
}

fn whole(value: f64) -> String {
    Quantity::<crate::quantity::One>::new(value).to_whole()
}

fn load_words(load: Load) -> String {
    match load {
        Load::Carries(torque) => whole(torque.value()),
        Load::UpTo(torque) => format!("up to {}", whole(torque.value())),
        Load::Unknown => "not settled".to_owned(),
    }
}

fn outcome(flow: &Flow) -> String {
    match &flow.outcome {
        Outcome::Driven(ratio) => {
            let way = if ratio.value() < 0.0 { " backward" } else { "" };
            format!("The input turns {} times for one turn of the output{way}.", ratio.abs().to_places(3))
        }
        Outcome::Stalled { fighting } => format!("Nothing turns: {} hold against each other.", listed(fighting)),
        Outcome::Free { loose, .. } => format!("No torque goes through; free are {}.", listed(loose)),
        Outcome::Undecided { one_ways } => format!("It cannot be told what {} do.", listed(one_ways)),
    }
}

/// What holds, each by how much; the sense of it stands in the picture and the table.
fn holding(flow: &Flow) -> String {
    let held = flow.elements.iter().filter_map(|one| {
        let carried = one.load.most().map(Quantity::abs);
        match (one.state, carried) {
            (ElementState::Applied | ElementState::Locked, Some(torque)) if torque.value() == 0.0 => None,
            (ElementState::Applied | ElementState::Locked, Some(torque)) => {
                Some(format!("{} with {}", one.name, torque.to_whole()))
            }
            (ElementState::Applied | ElementState::Locked, None) => {
                Some(format!("{} with a torque that cannot be told", one.name))
            }
            _ => None,
        }
    });
    let held: Vec<String> = held.collect();
    if held.is_empty() { "Nothing holds.".to_owned() } else { format!("Holding: {}.", held.join(", ")) }
}

fn listed(names: &[&str]) -> String {
    match names {
        [] => "none".to_owned(),
        [one] => (*one).to_owned(),
        [most @ .., last] => format!("{} and {last}", most.join(", ")),
    }
}

fn table(flow: &Flow) -> Table {
    let unknown = || Cell::Blank("not settled".to_owned());
    let torque = |torque: Option<f64>| torque.map_or_else(unknown, |torque| drawn(whole(torque)));
    let power = |power: Option<Quantity<crate::quantity::Kilowatt>>| {
        power.map_or_else(unknown, |power| said(power.to_places(1)))
    };
    let speed = |speed: Option<Quantity<Rpm>>| speed.map_or_else(unknown, |speed| drawn(speed.to_whole()));
    let shafts = flow.shafts.iter().map(|one| {
        vec![
            said(one.name),
            said("shaft"),
            speed(one.speed),
            one.torque.map_or_else(unknown, |torque| said(whole(torque.value()))),
            said(""),
        ]
    });
    let members = flow.members.iter().map(|one| {
        let word = match one.member {
            Member::Sun => "sun",
            Member::Ring => "ring",
            Member::Carrier => "carrier",
        };
        let turns = match (one.shaft, one.speed) {
            (CASE, _) => said("0 rpm"),
            (_, turns) => speed(turns),
        };
        vec![
            said(format!("{} {word}", one.set)),
            said(one.shaft),
            turns,
            torque(one.torque.map(Quantity::value)),
            power(one.power),
        ]
    });
    let elements = flow.elements.iter().map(|one| {
        let slips = one.slip.map_or_else(unknown, |slip| said(format!("slips {}", slip.to_whole())));
        let load = if one.load == Load::Unknown { unknown() } else { drawn(load_words(one.load)) };
        vec![said(one.name), said(state_word(one.state)), slips, load, power(one.power)]
    });
    Table {
        columns: vec!["What", "On, or state", "Speed", "Torque, lb-ft", "Power passed on"],
        rows: shafts.chain(members).chain(elements).collect(),
    }
}
