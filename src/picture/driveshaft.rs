//! Driveshaft speed over road speed, against the speed at which the tube whips.

use super::canvas::Stroke;
use super::linked::Linked;
use super::plot::{Axis, Marker, Plot};
use super::scale::Scale;
use super::{Picture, Table, drawn, said, sound};
use crate::calc::tire::road_speed;
use crate::quantity::{Inch, One, Quantity, Rpm};

/// What is drawn.
#[derive(Clone, Debug)]
pub struct Driveshaft {
    /// Critical speed of the tube.
    pub critical: Quantity<Rpm>,
    /// Highest engine speed used; in direct drive the shaft turns with the engine.
    pub highest: Quantity<Rpm>,
    /// The one as a share of the other.
    pub share: Quantity<One>,
    /// Share of the critical speed above which the shop calls it too close, with its mark.
    pub near: (Quantity<One>, String),
    /// Share above which it must not be run, with its mark.
    pub at: (Quantity<One>, String),
    /// Axle ratio.
    pub axle: Quantity<One>,
    /// Tire diameter.
    pub tire: Quantity<Inch>,
}

/// Draws it; `None` when there is a number too big to draw.
pub fn driveshaft(input: &Driveshaft) -> Option<Picture> {
    let Driveshaft { critical, highest, share, axle, tire, .. } = *input;
    let road = |shaft: Quantity<Rpm>| road_speed(shaft, axle, Quantity::new(1.0), tire);
    let (near, at) = (critical * input.near.0.value(), critical * input.at.0.value());
    let farthest = highest.value().max(critical.value()) * 1.05;
    if !sound(&[farthest, road(Quantity::new(farthest)).value(), share.value()]) || farthest <= 0.0 {
        return None;
    }
    let across =
        Axis { label: "road speed, mph".into(), scale: Scale::holding([0.0, road(Quantity::new(farthest)).value()]) };
    let up = Axis { label: "driveshaft speed, rpm".into(), scale: Scale::holding([0.0, farthest]) };
    let mut plot = Plot::new("driveshaft", 300.0, &across, &up);
    let top = road(highest);
    plot.curve(&[(0.0, 0.0), (road(Quantity::new(farthest)).value(), farthest)], Stroke::Plain);
    plot.level(critical.value(), Stroke::Heavy, &format!("whips: {}", critical.to_whole()));
    plot.level(at.value(), Stroke::DashDot, &format!("must not: {}", at.to_whole()));
    plot.level(near.value(), Stroke::Dashed, &format!("too close: {}", near.to_whole()));
    plot.upright(top.value(), Stroke::Dotted);
    let most = format!("{} at {}", highest.to_whole(), top.to_places(1));
    plot.point((top.value(), highest.value()), Marker::Disc, &most);
    let word = if share > input.at.0 {
        "above what may be run"
    } else if share > input.near.0 {
        "too close to it"
    } else {
        "clear of it"
    };
    let title = "Driveshaft speed against its critical speed".to_owned();
    let description = format!(
        "The tube whips at {}. At {} the shaft turns {}, {} of that: {word}.",
        critical.to_whole(),
        top.to_places(1),
        highest.to_whole(),
        share.to_percent(0)
    );
    let row = |what: &str, shaft: Quantity<Rpm>, shown: bool, of: Quantity<One>, from: String| {
        let miles = road(shaft).to_places(1);
        let miles = if shown { drawn(miles) } else { said(miles) };
        vec![said(what), drawn(shaft.to_whole()), miles, said(of.to_percent(0)), said(from)]
    };
    let one = Quantity::new(1.0);
    let rows = vec![
        row("Highest used", highest, true, share, "the job's highest engine speed, direct drive".to_owned()),
        row("Too close above", near, false, input.near.0, input.near.1.clone()),
        row("Must not run above", at, false, input.at.0, input.at.1.clone()),
        row("Whips", critical, false, one, "derived: plain tube, pinned ends".to_owned()),
    ];
    Some(Picture {
        name: "driveshaft".to_owned(),
        svg: plot.finish(&title, &description),
        title,
        description,
        table: Table { columns: vec!["What", "Driveshaft speed", "Road speed", "Of the critical speed", "From"], rows },
        notes: vec![
            "A whipping shaft breaks and comes through the floor. The maker's own limit for the shaft comes first."
                .to_owned(),
        ],
        sums: Linked::to("driveshaft-critical", &[]).into_iter().collect(),
    })
}
