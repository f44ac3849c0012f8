//! Where the engine meets the held converter.

use super::canvas::Stroke;
use super::linked::Linked;
use super::plot::{Axis, Marker, Plot};
use super::scale::Scale;
use super::{Cell, Picture, Table, drawn, said, sound};
use crate::calc::converter::stall::stall as stall_by_curve;
use crate::calc::converter::torque_curve::TorqueCurve;
use crate::calc::converter::{CapacityFactor, stall_at};
use crate::quantity::{PoundFoot, Quantity, Rpm};

/// What is drawn.
#[derive(Clone, Debug)]
pub struct Stall {
    /// Stall speed on the converter's label.
    pub label: Quantity<Rpm>,
    /// Torque the label was made with.
    pub rated: Quantity<PoundFoot>,
    /// Torque of this engine.
    pub torque: Quantity<PoundFoot>,
    /// Where the two meet: the estimate the rules use.
    pub here: Quantity<Rpm>,
    /// Engine speed of its peak torque, when known.
    pub peak: Option<Quantity<Rpm>>,
    /// The engine's torque curve, when known.
    pub curve: Option<TorqueCurve>,
}

/// Draws it; `None` when there is a number too big to draw.
pub fn stall(input: &Stall) -> Option<Picture> {
    let Stall { label, rated, torque, here, peak, ref curve } = *input;
    let points = curve.as_ref().map_or(&[][..], TorqueCurve::points);
    let last = points.last().map_or(0.0, |point| point.speed.value());
    let farthest = here.value().max(label.value()).max(peak.map_or(0.0, Quantity::value)).max(last) * 1.15;
    if !sound(&[label.value(), rated.value(), torque.value(), here.value(), farthest]) || farthest <= 0.0 {
        return None;
    }
    let across = Axis { label: "engine speed, rpm".into(), scale: Scale::holding([0.0, farthest]) };
    let highest = points.iter().map(|point| point.torque.value()).fold(torque.value().max(rated.value()), f64::max);
    let most = highest * 1.25;
    let up = Axis { label: "torque, lb-ft".into(), scale: Scale::holding([0.0, most]) };
    let mut plot = Plot::new("stall", 300.0, &across, &up);
    // The held converter takes torque with the square of speed: the inverse of the sum that gives the stall.
    let takes = converter_takes(label, rated, up.scale.most(), across.scale.most());
    plot.curve(&takes, Stroke::Heavy);
    if let Some(at) = takes.get(takes.len() / 3) {
        plot.label(*at, "converter, held");
    }
    plot.level(torque.value(), Stroke::Dashed, &format!("this engine: {}", torque.to_whole()));
    plot.point((here.value(), torque.value()), Marker::Disc, &format!("stall here: {}", here.to_whole()));
    plot.point(
        (label.value(), rated.value()),
        Marker::Ring,
        &format!("label: {}, {}", label.to_whole(), rated.to_whole()),
    );
    let mut rows = vec![
        vec![said("On the label"), drawn(label.to_whole()), drawn(rated.to_whole()), said("the converter's label")],
        vec![
            said("Behind this engine"),
            drawn(here.to_whole()),
            drawn(torque.to_whole()),
            said("derived: label × √(torque / rated torque)"),
        ],
    ];
    let (by_curve, note) = match curve {
        Some(curve) => engine_curve(&mut plot, curve, (label, rated), &mut rows),
        None => (
            String::new(),
            "The engine is drawn with its peak torque at every speed, because its curve is not known. Near stall it makes \
             less, and the true stall is lower. A sum of the stall by its torque curve, put on this job, draws the curve."
                .to_owned(),
        ),
    };
    let mut notes = vec![note];
    match peak {
        Some(peak) => {
            plot.upright(peak.value(), Stroke::Dotted);
            plot.label((peak.value(), up.scale.most() * 0.12), &format!("peak torque: {}", peak.to_whole()));
            rows.push(vec![
                said("Peak torque at"),
                drawn(peak.to_whole()),
                drawn(torque.to_whole()),
                said("the engine's sheet"),
            ]);
        }
        None => notes.push("The speed of peak torque is not drawn: it is not known.".to_owned()),
    }
    let title = "Stall: where the engine meets the converter".to_owned();
    let description = format!(
        "Held, this converter takes {} at {} by its label. Behind {} the two meet at {}.{by_curve}",
        rated.to_whole(),
        label.to_whole(),
        torque.to_whole(),
        here.to_whole()
    );
    Some(Picture {
        name: "stall".to_owned(),
        svg: plot.finish(&title, &description),
        title,
        description,
        table: Table { columns: vec!["What", "Engine speed", "Torque", "From"], rows },
        notes,
        sums: ["stall-elsewhere", "stall-by-curve"].iter().filter_map(|name| Linked::to(name, &[])).collect(),
    })
}

/// Draws the engine's own curve and where it meets the converter; gives what is told of it, and what has to be said.
fn engine_curve(
    plot: &mut Plot,
    curve: &TorqueCurve,
    (label, rated): (Quantity<Rpm>, Quantity<PoundFoot>),
    rows: &mut Vec<Vec<Cell>>,
) -> (String, String) {
    let through: Vec<_> = curve.points().iter().map(|point| (point.speed.value(), point.torque.value())).collect();
    plot.curve(&through, Stroke::Plain);
    if let Some(first) = through.first() {
        plot.label(*first, "its torque curve");
    }
    let from = "the torque curve of the sum put on this job";
    let note = "The rules take the engine's peak torque at every speed. Its own curve comes nearer to what it does.";
    let Some(meeting) = stall_by_curve(curve, CapacityFactor::from_stall(label, rated)).from_idle() else {
        rows.push(vec![said("By its own curve"), Cell::Blank("not settled".into()), said(""), said(from)]);
        return (" Its own curve does not meet the converter where the engine would stay.".into(), note.into());
    };
    let (speed, torque) = (meeting.speed.to_whole(), meeting.torque.to_whole());
    plot.point(
        (meeting.speed.value(), meeting.torque.value()),
        Marker::Ring,
        &format!("by its curve: {speed}, {torque}"),
    );
    rows.push(vec![said("By its own curve"), drawn(&*speed), drawn(torque), said(from)]);
    (format!(" By the engine's own curve it is {speed}."), note.into())
}

/// Speed and torque along the held converter's curve, as far as the field goes.
fn converter_takes(label: Quantity<Rpm>, rated: Quantity<PoundFoot>, most: f64, farthest: f64) -> Vec<(f64, f64)> {
    (0..=24)
        .map(|nth| most * (f64::from(nth) / 24.0).powi(2))
        .map(|torque| (stall_at(label, Quantity::new(torque), rated).value(), torque))
        .filter(|(speed, _)| *speed <= farthest)
        .collect()
}
