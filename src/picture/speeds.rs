//! Road speed over engine speed in each gear, and where the engine falls to at each shift.

use super::canvas::Stroke;
use super::linked::Linked;
use super::plot::{Axis, Marker, Plot};
use super::scale::Scale;
use super::{Picture, Table, drawn, said, sound};
use crate::calc::tire::road_speed;
use crate::quantity::{Inch, MilePerHour, One, Quantity, Rpm};

/// What is drawn.
#[derive(Clone, Copy, Debug)]
pub struct Speeds {
    /// First gear ratio.
    pub first: Quantity<One>,
    /// Second gear ratio; third is direct.
    pub second: Quantity<One>,
    /// Axle ratio.
    pub axle: Quantity<One>,
    /// Tire diameter.
    pub tire: Quantity<Inch>,
    /// Highest engine speed used: the shifts are drawn there.
    pub highest: Quantity<Rpm>,
    /// Cruising speed and the engine speed that goes with it in third, when known.
    pub cruise: Option<(Quantity<MilePerHour>, Quantity<Rpm>)>,
}

/// Draws it; `None` when there is a number too big to draw.
pub fn speeds(input: &Speeds) -> Option<Picture> {
    let Speeds { axle, tire, highest, .. } = *input;
    let gears = [
        ("first", input.first, Stroke::Plain),
        ("second", input.second, Stroke::Dashed),
        ("third", Quantity::new(1.0), Stroke::Heavy),
    ];
    let at = |engine: Quantity<Rpm>, gear| road_speed(engine, axle, gear, tire);
    let tops = gears.map(|(_, ratio, _)| at(highest, ratio));
    if !sound(&tops.map(Quantity::value)) || !sound(&[highest.value()]) || highest.value() <= 0.0 {
        return None;
    }
    let road = |speed: Quantity<MilePerHour>| speed.to_places(1);
    let across = Axis {
        label: "engine speed, rpm".into(),
        scale: Scale::holding([0.0, highest.value(), input.cruise.map_or(0.0, |(_, engine)| engine.value())]),
    };
    let up = Axis {
        label: "road speed, mph".into(),
        scale: Scale::holding(
            tops.map(Quantity::value).into_iter().chain([0.0, input.cruise.map_or(0.0, |(road, _)| road.value())]),
        ),
    };
    let mut plot = Plot::new("speeds", 300.0, &across, &up);
    let mut rows = Vec::new();
    let mut told = Vec::new();
    for (nth, (name, ratio, stroke)) in gears.iter().enumerate() {
        let top = tops[nth];
        plot.curve(&[(0.0, 0.0), (highest.value(), top.value())], *stroke);
        plot.point((highest.value(), top.value()), Marker::Disc, &format!("{name}: {}", road(top)));
        told.push(format!("{} in {name}", road(top)));
        let shift = gears.get(nth + 1).map(|(next, to, _)| (next, highest * (*to / *ratio)));
        let cells = match shift {
            Some((next, after)) => {
                plot.curve(&[(highest.value(), top.value()), (after.value(), top.value())], Stroke::Dotted);
                plot.point((after.value(), top.value()), Marker::Ring, &format!("into {next}: {}", after.to_whole()));
                told.push(format!("the shift into {next} brings the engine down to {}", after.to_whole()));
                [drawn(after.to_whole()), said((highest - after).to_whole())]
            }
            None => [said("no higher gear"), said("")],
        };
        let [after, fall] = cells;
        let source = if *name == "third" { "direct drive" } else { "the job's ratio" };
        rows.push(vec![said(*name), said(ratio.to_places(2)), drawn(road(top)), after, fall, said(source)]);
    }
    if let Some((speed, engine)) = input.cruise.filter(|(road, engine)| sound(&[road.value(), engine.value()])) {
        plot.point(
            (engine.value(), speed.value()),
            Marker::Ring,
            &format!("cruise {} at {}", road(speed), engine.to_whole()),
        );
        told.push(format!("cruising at {} the engine turns {}", road(speed), engine.to_whole()));
        rows.push(vec![
            said("cruise in third"),
            said("1.00"),
            drawn(road(speed)),
            drawn(engine.to_whole()),
            said(""),
            said("the job's cruising speed"),
        ]);
    }
    let title = "Road speed over engine speed".to_owned();
    let description = format!("At {}: {}.", highest.to_whole(), told.join(", "));
    let mut notes = vec![format!(
        "Without slip: axle {}, tire {}. The converter adds some engine speed to all of it.",
        axle.to_places(2),
        tire.to_places(2)
    )];
    if input.cruise.is_none() {
        notes.push("Cruise is not drawn: its road speed is not known.".to_owned());
    }
    Some(Picture {
        name: "speeds".to_owned(),
        svg: plot.finish(&title, &description),
        title,
        description,
        table: Table {
            columns: vec!["Gear", "Ratio", "Road speed at the top", "Engine after the shift", "It falls by", "From"],
            rows,
        },
        notes,
        sums: sums(input),
    })
}

/// The sums with the same numbers.
fn sums(input: &Speeds) -> Vec<Linked> {
    let ratio = |ratio: Quantity<One>| ratio.value().to_string();
    let ratios = format!("{} {} 1", ratio(input.first), ratio(input.second));
    let shifts = Linked::to("shift-recovery", &[("ratios", ratios)]);
    let top = Linked::to("speed-in-gear", &[("gear", "1".to_owned())]).map(|sum| sum.about("third"));
    let cruise = input.cruise.and_then(|_| Linked::to("cruise", &[]));
    [shifts, top, cruise].into_iter().flatten().collect()
}
