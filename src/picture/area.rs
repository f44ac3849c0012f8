//! Places and rectangles of a drawing.

/// A place: across from the left, down from the top.
pub type Spot = (f64, f64);

/// A rectangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Area {
    /// Its left edge.
    pub left: f64,
    /// Its upper edge.
    pub top: f64,
    /// How wide.
    pub width: f64,
    /// How high.
    pub height: f64,
}

impl Area {
    /// Do the two share any ground?
    pub fn meets(&self, other: &Self) -> bool {
        self.left < other.left + other.width
            && other.left < self.left + self.width
            && self.top < other.top + other.height
            && other.top < self.top + self.height
    }

    /// How much of the way from one place to the other lies in it.
    pub fn covers(&self, from: Spot, to: Spot) -> f64 {
        // Clipped to it side by side, in shares of the way.
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        for (from, by, least, most) in [
            (from.0, to.0 - from.0, self.left, self.left + self.width),
            (from.1, to.1 - from.1, self.top, self.top + self.height),
        ] {
            if by == 0.0 {
                if from < least || from > most {
                    return 0.0;
                }
            } else {
                let (one, other) = ((least - from) / by, (most - from) / by);
                enters = enters.max(one.min(other));
                leaves = leaves.min(one.max(other));
            }
        }
        if leaves > enters { (leaves - enters) * (to.0 - from.0).hypot(to.1 - from.1) } else { 0.0 }
    }

    /// Its place that is nearest to this one.
    pub fn nearest(&self, (x, y): Spot) -> Spot {
        (x.max(self.left).min(self.left + self.width), y.max(self.top).min(self.top + self.height))
    }

    /// How far it is from this place; nought inside.
    pub fn away_from(&self, spot: Spot) -> f64 {
        let (x, y) = self.nearest(spot);
        (x - spot.0).hypot(y - spot.1)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_a_line_has_in_an_area_is_as_long_as_it_is_drawn_there() {
        let area = Area { left: 10.0, top: 20.0, width: 30.0, height: 40.0 };
        for (from, to, long) in [
            ((0.0, 30.0), (100.0, 30.0), 30.0),
            ((20.0, 0.0), (20.0, 50.0), 30.0),
            ((10.0, 20.0), (40.0, 60.0), 50.0),
            ((15.0, 25.0), (15.0, 26.0), 1.0),
            ((0.0, 0.0), (100.0, 10.0), 0.0),
            ((41.0, 0.0), (41.0, 90.0), 0.0),
            ((0.0, 61.0), (90.0, 61.0), 0.0),
        ] {
            assert!((area.covers(from, to) - long).abs() < 1e-9, "{from:?} to {to:?}: {}", area.covers(from, to));
            assert!((area.covers(to, from) - long).abs() < 1e-9, "the other way");
        }
    }
}
