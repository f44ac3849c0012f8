//! Small linear equations by elimination, with what they leave open kept apart from what they settle.

/// How many unknowns, and how many equations, there may be.
pub(super) const SIDE: usize = 24;

/// What is smaller than this, where numbers are about 1, is rounding.
pub(super) const ROUNDING: f64 = 1e-10;

/// One equation: a factor for each unknown, and after them what they add up to.
type Row = [f64; SIDE + 1];

/// Room for one set of equations after another, cleared only as far as each needs.
pub(super) struct Equations {
    unknowns: usize,
    count: usize,
    rows: [Row; SIDE],
    /// The row that gives this unknown by the open ones; an open one has none.
    row_of: [Option<usize>; SIDE],
}

impl Equations {
    /// Empty room.
    pub(super) fn room() -> Self {
        Self { unknowns: 0, count: 0, rows: [[0.0; SIDE + 1]; SIDE], row_of: [None; SIDE] }
    }

    /// Starts anew with so many equations in so many unknowns, all noughts; at most [`SIDE`] of either.
    pub(super) fn start(&mut self, count: usize, unknowns: usize) {
        (self.count, self.unknowns) = (count, unknowns);
        self.rows[..count].iter_mut().for_each(|row| row[..=unknowns].fill(0.0));
        self.row_of[..unknowns].fill(None);
    }

    /// One equation, to write it.
    pub(super) fn row(&mut self, equation: usize) -> &mut [f64] {
        &mut self.rows[equation][..=self.unknowns]
    }

    /// Gauss and Jordan's elimination with row exchange.
    pub(super) fn solve(&mut self) -> Solved<'_> {
        let (count, unknowns) = (self.count, self.unknowns);
        let mut done = 0;
        for column in 0..unknowns {
            let size = |row: usize| self.rows[row][column].abs();
            let Some(largest) = (done..count).max_by(|a, b| size(*a).total_cmp(&size(*b))) else { break };
            if size(largest) < ROUNDING {
                continue;
            }
            self.rows.swap(done, largest);
            let over = 1.0 / self.rows[done][column];
            self.rows[done][column..=unknowns].iter_mut().for_each(|cell| *cell *= over);
            let pivot = self.rows[done];
            for (index, row) in self.rows[..count].iter_mut().enumerate() {
                let factor = row[column];
                if index != done && factor != 0.0 {
                    let cells = row[column..=unknowns].iter_mut().zip(&pivot[column..=unknowns]);
                    cells.for_each(|(cell, pivot)| *cell -= factor * pivot);
                }
            }
            self.row_of[column] = Some(done);
            done += 1;
        }
        let consistent = self.rows[done..count].iter().all(|row| row[unknowns].abs() < ROUNDING);
        Solved { equations: self, consistent }
    }
}

/// What a set of equations says about its unknowns.
pub(super) struct Solved<'a> {
    equations: &'a Equations,
    /// Whether all the equations can hold at once.
    pub(super) consistent: bool,
}

impl Solved<'_> {
    /// The unknowns that may be anything.
    pub(super) fn open(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.equations.unknowns).filter(|unknown| self.equations.row_of[*unknown].is_none())
    }

    /// The unknown's value while every open one is nought.
    pub(super) fn basic(&self, unknown: usize) -> f64 {
        self.equations.row_of[unknown].map_or(0.0, |row| self.equations.rows[row][self.equations.unknowns])
    }

    /// How much the unknown grows when this open one grows by 1.
    pub(super) fn growth(&self, unknown: usize, open: usize) -> f64 {
        match self.equations.row_of[unknown] {
            Some(row) => -self.equations.rows[row][open],
            None => f64::from(u8::from(unknown == open)),
        }
    }

    /// The unknown's value, if it does not depend on an open one; a nought without the rounding around it.
    pub(super) fn settled(&self, unknown: usize) -> Option<f64> {
        let free = self.open().all(|open| self.growth(unknown, open).abs() < ROUNDING);
        let value = self.basic(unknown);
        free.then_some(if value.abs() < ROUNDING { 0.0 } else { value })
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn written(unknowns: usize, rows: &[&[f64]]) -> Equations {
        let mut equations = Equations::room();
        // What stood there before must not shine through.
        equations.start(SIDE, SIDE);
        (0..SIDE).for_each(|row| equations.row(row).fill(7.0));
        equations.solve();
        equations.start(rows.len(), unknowns);
        for (index, row) in rows.iter().enumerate() {
            equations.row(index).copy_from_slice(row);
        }
        equations
    }

    #[test]
    fn tells_what_is_settled_from_what_is_open() {
        // x + y + z = 6, y = 2: y is settled, x and z lean on each other.
        let mut equations = written(3, &[&[1.0, 1.0, 1.0, 6.0], &[0.0, 1.0, 0.0, 2.0]]);
        let open = equations.solve();
        assert!(open.consistent);
        assert_eq!(open.open().collect::<Vec<_>>(), [2]);
        assert_eq!([0, 1, 2].map(|unknown| open.settled(unknown)), [None, Some(2.0), None]);
        assert_eq!([0, 1, 2].map(|unknown| open.basic(unknown)), [4.0, 2.0, 0.0]);
        assert_eq!([0, 1, 2].map(|unknown| open.growth(unknown, 2)), [-1.0, 0.0, 1.0]);
    }

    #[test]
    fn exchanges_rows_where_the_first_begins_with_nought() {
        let rows: [&[f64]; 2] = [&[0.0, 2.0, 4.0], &[4.0, 1.0, 6.0]];
        let mut equations = written(2, &rows);
        let both = equations.solve();
        assert_eq!([both.settled(0), both.settled(1)], [Some(1.0), Some(2.0)]);
    }

    #[test]
    fn sees_what_cannot_hold_at_once_and_what_is_said_twice() {
        assert!(!written(2, &[&[1.0, 1.0, 1.0], &[2.0, 2.0, 3.0]]).solve().consistent);
        let mut equations = written(2, &[&[1.0, 1.0, 1.0], &[2.0, 2.0, 2.0], &[1.0, -1.0, 0.0]]);
        let twice = equations.solve();
        assert!(twice.consistent);
        assert_eq!([twice.settled(0), twice.settled(1)], [Some(0.5), Some(0.5)]);
    }
}
