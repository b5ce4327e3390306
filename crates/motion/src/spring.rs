//! A spring given as a table of moments over the input angle.

use flapwright_model::lift::SpringRow;

use crate::error::DriveError;
use crate::limits::LARGEST_NUMBER;
use flapwright_model::message::{AsTyped, Count, Word};

/// A spring at one setting, all fitted pieces together.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct Spring {
    /// Input angle, radians, and moment, N·m, in rising angle; one or more.
    rows: Vec<(f64, f64)>,
    /// N·m, never below 0.
    pub(crate) friction: f64,
}

impl Spring {
    /// A spring at a setting from 0 (weakest) to 1 (strongest); moment and friction are
    /// multiplied by `factor`.
    pub(crate) fn new(
        table: &[SpringRow],
        friction: f64,
        setting: f64,
        factor: f64,
    ) -> Result<Self, DriveError> {
        if table.is_empty() {
            return Err(DriveError::SpringMissing);
        }
        if !(0.0..=LARGEST_NUMBER).contains(&friction) {
            return Err(DriveError::Number {
                what: Word("friction"),
                value: AsTyped(friction),
            });
        }
        let mut rows: Vec<(f64, f64)> = Vec::with_capacity(table.len());
        for (index, row) in table.iter().enumerate() {
            let moment = row.weakest + (row.strongest - row.weakest) * setting;
            if !(row.degrees.is_finite() && moment.abs() <= LARGEST_NUMBER) {
                return Err(DriveError::SpringOutOfRange {
                    row: Count(index + 1),
                });
            }
            let angle = row.degrees.to_radians();
            if rows.last().is_some_and(|last| last.0 >= angle) {
                return Err(DriveError::SpringNotRising {
                    row: Count(index + 1),
                });
            }
            rows.push((angle, moment * factor));
        }
        Ok(Self {
            rows,
            friction: friction * factor,
        })
    }

    /// Moment at an input angle, N·m: + pushes open. Straight between rows, level outside them.
    pub(crate) fn moment(&self, input: f64) -> f64 {
        let after = self.rows.partition_point(|row| row.0 <= input);
        match (
            after.checked_sub(1).and_then(|i| self.rows.get(i)),
            self.rows.get(after),
        ) {
            (Some(from), Some(to)) => from.1 + (to.1 - from.1) * (input - from.0) / (to.0 - from.0),
            (Some(end), None) | (None, Some(end)) => end.1,
            (None, None) => 0.0,
        }
    }

    /// What the spring can still give back, J, counted from 0 at input angle 0: minus the area
    /// under the moment. The moment is straight between rows, so the trapezium rule is exact.
    pub(crate) fn energy(&self, input: f64) -> f64 {
        let inner = self
            .rows
            .iter()
            .map(|row| row.0)
            .filter(|angle| *angle > 0.0 && *angle < input);
        let (mut before, mut area) = (0.0, 0.0);
        for angle in inner.chain([input]) {
            area += (angle - before) * (self.moment(before) + self.moment(angle)) / 2.0;
            before = angle;
        }
        -area
    }
}
