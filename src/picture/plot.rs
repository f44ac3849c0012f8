//! Curves over an axis, with labels beside what they name.

use super::area::{Area, Spot};
use super::canvas::{Anchor, Canvas, Fill, LINE, Stroke, TEXT, WIDTH, width_of};
use super::scale::Scale;

/// An axis with what it counts: `engine speed, rpm`.
#[derive(Clone, Debug)]
pub struct Axis {
    /// What it counts, with the unit.
    pub label: String,
    /// From where to where.
    pub scale: Scale,
}

/// How a point is marked. Points that mean different things differ in this.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Marker {
    /// A full disc.
    Disc,
    /// A ring.
    Ring,
}

/// A chart in the making.
#[derive(Debug)]
pub struct Plot {
    canvas: Canvas,
    across: Scale,
    up: Scale,
    field: Area,
    /// Where curves are, piece by piece.
    curves: Vec<(Spot, Spot)>,
    /// Where points are.
    points: Vec<Area>,
    /// Where labels are.
    labelled: Vec<Area>,
    /// Labels are put last, when all that is in their way is known.
    labels: Vec<(Spot, String)>,
}

/// Room above for the name of the axis that goes up.
const ABOVE: f64 = 22.0;
/// Room below for numbers and the name of the axis that goes across.
const BELOW: f64 = 36.0;
/// Room on the right for half of the last number.
const RIGHT: f64 = 20.0;

impl Plot {
    /// Axes without anything in them.
    pub fn new(name: &str, height: f64, across: &Axis, up: &Axis) -> Self {
        let mut canvas = Canvas::new(name, height);
        let widest = up.scale.ticks().map(|(_, printed)| width_of(&printed)).fold(0.0, f64::max).min(WIDTH / 3.0);
        let left = widest + 8.0;
        let field = Area { left, top: ABOVE, width: WIDTH - left - RIGHT, height: height - ABOVE - BELOW };
        let bottom = field.top + field.height;
        canvas.words((1.0, TEXT), Anchor::Start, &up.label);
        canvas.words((WIDTH - 1.0, height - 4.0), Anchor::End, &across.label);
        for (value, printed) in up.scale.ticks() {
            let y = bottom - field.height * up.scale.share(value);
            canvas.line(&[(field.left, y), (field.left + field.width, y)], Stroke::Hair);
            canvas.words((field.left - 5.0, y + 4.0), Anchor::End, &printed);
        }
        // As many numbers as stand side by side without touching.
        let widest = across.scale.ticks().map(|(_, printed)| width_of(&printed) + 8.0).fold(1.0, f64::max);
        let room = (field.width / widest).floor().max(1.0) as usize;
        let all = across.scale.ticks().count();
        let every = all.div_ceil(room + 1).max(1);
        for (nth, (value, printed)) in across.scale.ticks().enumerate() {
            let x = field.left + field.width * across.scale.share(value);
            canvas.line(&[(x, field.top), (x, bottom + 4.0)], Stroke::Hair);
            if nth % every == 0 {
                canvas.words((x, bottom + 4.0 + TEXT), Anchor::Middle, &printed);
            }
        }
        Self {
            canvas,
            across: across.scale,
            up: up.scale,
            field,
            curves: Vec::new(),
            points: Vec::new(),
            labelled: Vec::new(),
            labels: Vec::new(),
        }
    }

    fn spot(&self, (across, up): (f64, f64)) -> Spot {
        let Area { left, top, width, height } = self.field;
        (left + width * self.across.share(across), top + height * (1.0 - self.up.share(up)))
    }

    /// A curve through these values, in the units of the axes.
    pub fn curve(&mut self, values: &[(f64, f64)], stroke: Stroke) {
        let through: Vec<Spot> = values.iter().map(|value| self.spot(*value)).collect();
        self.curves.extend(through.windows(2).map(|pair| (pair[0], pair[1])));
        self.canvas.line(&through, stroke);
    }

    /// A line across at this height, with its label on it.
    pub fn level(&mut self, up: f64, stroke: Stroke, label: &str) {
        self.curve(&[(self.across.least(), up), (self.across.most(), up)], stroke);
        self.label((self.across.least(), up), label);
    }

    /// A line from the bottom to the top at this place.
    pub fn upright(&mut self, across: f64, stroke: Stroke) {
        self.curve(&[(across, self.up.least()), (across, self.up.most())], stroke);
    }

    /// A marked point with its label.
    pub fn point(&mut self, at: (f64, f64), marker: Marker, label: &str) {
        let (x, y) = self.spot(at);
        self.canvas.disc((x, y), 4.5, if marker == Marker::Disc { Fill::Ink } else { Fill::Open });
        self.points.push(Area { left: x - 6.0, top: y - 6.0, width: 12.0, height: 12.0 });
        self.label(at, label);
    }

    /// A label beside a value.
    pub fn label(&mut self, at: (f64, f64), label: &str) {
        let spot = self.spot(at);
        self.labels.push((spot, label.to_owned()));
    }

    /// The drawing with all its labels.
    pub fn finish(mut self, title: &str, description: &str) -> String {
        for (spot, label) in std::mem::take(&mut self.labels) {
            let area = self.free(spot, width_of(&label));
            // What had to move away from its point is tied to it.
            if area.away_from(spot) > LINE {
                self.canvas.line(&[spot, area.nearest(spot)], Stroke::Tie);
            }
            // Labels side by side would read as one.
            self.labelled.push(Area { left: area.left - 5.0, width: area.width + 10.0, ..area });
            self.canvas.words((area.left, area.top + TEXT - 1.0), Anchor::Start, &label);
        }
        self.canvas.finish(title, description)
    }

    /// The best place for a label: on no other label and no point, across as little of any curve as can be, near what it
    /// names.
    fn free(&self, spot: Spot, width: f64) -> Area {
        let Area { left, top, width: wide, height: high } = self.field;
        let (right, bottom) = (left + wide, top + high);
        let width = width.min(wide);
        let (x, y) = spot;
        let mut best = (f64::INFINITY, Area { left, top, width, height: LINE });
        for row in 0..12 {
            let away = 5.0 + LINE * f64::from(row);
            for side in
                [x + 8.0, x - 8.0 - width, x - width / 2.0, x + 8.0 + LINE, x - 8.0 - LINE - width, x - width / 4.0]
            {
                for at in [y - away - LINE, y + away, y - LINE / 2.0] {
                    let area = Area {
                        left: side.clamp(left + 2.0, (right - width).max(left + 2.0)),
                        top: at.clamp(top, (bottom - LINE).max(top)),
                        width,
                        height: LINE,
                    };
                    let away = area.away_from(spot);
                    if away >= best.0 {
                        // It could not win, whatever it covers: most places are passed over here.
                        continue;
                    }
                    let on = |taken: &[Area]| taken.iter().filter(|taken| taken.meets(&area)).count() as f64;
                    let covered: f64 = self.curves.iter().map(|(from, to)| area.covers(*from, *to)).sum();
                    let cost = 1000.0 * on(&self.labelled) + 60.0 * on(&self.points) + covered + away;
                    if cost < best.0 {
                        best = (cost, area);
                    }
                }
            }
        }
        best.1
    }
}
