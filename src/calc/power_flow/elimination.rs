//! Small linear equations by elimination, with what they leave open kept apart from what they settle.

/// How many unknowns, and how many equations, there may be.
pub(super) const SIDE: usize = 24;

/// What is smaller than this, where numbers are about 1, is rounding.
pub(super) const ROUNDING: f64 = 1e-10;

/// One equation: a factor for each unknown, and after them what they add up to.
pub(super) type Row = [f64; SIDE + 1];

/// Equations being collected.
pub(super) struct Equations {
    unknowns: usize,
    count: usize,
    rows: [Row; SIDE],
}

impl Equations {
    /// For so many unknowns, at most [`SIDE`].
    pub(super) fn new(unknowns: usize) -> Self {
        Self { unknowns, count: 0, rows: [[0.0; SIDE + 1]; SIDE] }
    }

    /// One more equation, all noughts until it is written; at most [`SIDE`] of them.
    pub(super) fn add(&mut self) -> &mut Row {
        self.count += 1;
        &mut self.rows[self.count - 1]
    }

    /// An equation added before, to write more of it.
    pub(super) fn row(&mut self, equation: usize) -> &mut Row {
        &mut self.rows[equation]
    }

    /// Gauss and Jordan's elimination with row exchange.
    pub(super) fn solve(mut self) -> Solved {
        let mut row_of = [None; SIDE];
        let mut done = 0;
        for (column, row_of) in row_of.iter_mut().enumerate().take(self.unknowns) {
            let size = |row: usize| self.rows[row][column].abs();
            let Some(largest) = (done..self.count).max_by(|a, b| size(*a).total_cmp(&size(*b))) else { break };
            if size(largest) < ROUNDING {
                continue;
            }
            self.rows.swap(done, largest);
            let over = 1.0 / self.rows[done][column];
            self.rows[done][column..=self.unknowns].iter_mut().for_each(|cell| *cell *= over);
            let pivot = self.rows[done];
            for (index, row) in self.rows[..self.count].iter_mut().enumerate() {
                let factor = row[column];
                if index != done && factor != 0.0 {
                    for cell in column..=self.unknowns {
                        row[cell] -= factor * pivot[cell];
                    }
                }
            }
            *row_of = Some(done);
            done += 1;
        }
        let consistent = self.rows[done..self.count].iter().all(|row| row[self.unknowns].abs() < ROUNDING);
        Solved { unknowns: self.unknowns, rows: self.rows, row_of, consistent }
    }
}

/// What a set of equations says about its unknowns.
pub(super) struct Solved {
    unknowns: usize,
    rows: [Row; SIDE],
    /// The row that gives this unknown by the open ones; an open one has none.
    row_of: [Option<usize>; SIDE],
    /// Whether all the equations can hold at once.
    pub(super) consistent: bool,
}

impl Solved {
    /// The unknowns that may be anything.
    pub(super) fn open(&self) -> impl Iterator<Item = usize> + '_ {
        (0..self.unknowns).filter(|unknown| self.row_of[*unknown].is_none())
    }

    /// The unknown's value while every open one is nought.
    pub(super) fn basic(&self, unknown: usize) -> f64 {
        self.row_of[unknown].map_or(0.0, |row| self.rows[row][self.unknowns])
    }

    /// How much the unknown grows when this open one grows by 1.
    pub(super) fn growth(&self, unknown: usize, open: usize) -> f64 {
        match self.row_of[unknown] {
            Some(row) => -self.rows[row][open],
            None => f64::from(u8::from(unknown == open)),
        }
    }

    /// The unknown's value, if it does not depend on an open one.
    pub(super) fn settled(&self, unknown: usize) -> Option<f64> {
        let free = self.open().all(|open| self.growth(unknown, open).abs() < ROUNDING);
        free.then(|| self.basic(unknown))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn solved(unknowns: usize, rows: &[&[f64]]) -> Solved {
        let mut equations = Equations::new(unknowns);
        for row in rows {
            equations.add()[..row.len()].copy_from_slice(row);
        }
        equations.solve()
    }

    #[test]
    fn tells_what_is_settled_from_what_is_open() {
        // x + y + z = 6, y = 2: y is settled, x and z lean on each other.
        let open = solved(3, &[&[1.0, 1.0, 1.0, 6.0], &[0.0, 1.0, 0.0, 2.0]]);
        assert!(open.consistent);
        assert_eq!(open.open().collect::<Vec<_>>(), [2]);
        assert_eq!([0, 1, 2].map(|unknown| open.settled(unknown)), [None, Some(2.0), None]);
        assert_eq!([0, 1, 2].map(|unknown| open.basic(unknown)), [4.0, 2.0, 0.0]);
        assert_eq!([0, 1, 2].map(|unknown| open.growth(unknown, 2)), [-1.0, 0.0, 1.0]);
    }

    #[test]
    fn exchanges_rows_where_the_first_begins_with_nought() {
        let rows: [&[f64]; 2] = [&[0.0, 2.0, 4.0], &[4.0, 1.0, 6.0]];
        let both = solved(2, &rows);
        assert_eq!([both.settled(0), both.settled(1)], [Some(1.0), Some(2.0)]);
    }

    #[test]
    fn sees_what_cannot_hold_at_once_and_what_is_said_twice() {
        assert!(!solved(2, &[&[1.0, 1.0, 1.0], &[2.0, 2.0, 3.0]]).consistent);
        let twice = solved(2, &[&[1.0, 1.0, 1.0], &[2.0, 2.0, 2.0], &[1.0, -1.0, 0.0]]);
        assert!(twice.consistent);
        assert_eq!([twice.settled(0), twice.settled(1)], [Some(0.5), Some(0.5)]);
    }
}
