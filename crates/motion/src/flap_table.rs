//! A flap on a linked hinge, given as a table of poses.

use euclid::Vector2D;
use flapwright_model::linkage::FlapPose;
use flapwright_model::space::{SectionPoint, SectionVector};

use crate::error::MotionError;
use crate::mechanism::PoseJet;
use crate::motion::{Pose, PoseRate, quarter_turn, turned};

/// Poses between which the shift of the upper back corner runs straight over the angle.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct FlapTable {
    /// Upper back corner of the closed door, mm.
    pub(crate) corner: SectionPoint,
    /// Opening angle, radians, and shift of the corner, mm, in rising angle; two or more.
    rows: Vec<(f64, SectionVector)>,
}

impl FlapTable {
    /// The table, proved to rise from closed to at least `end` radians.
    pub(crate) fn new(
        corner: SectionPoint,
        poses: &[FlapPose],
        end: f64,
    ) -> Result<Self, MotionError> {
        let wrong = |row: usize, what| Err(MotionError::PoseTable { row: row + 1, what });
        for (row, pose) in poses.iter().enumerate() {
            if ![pose.degrees, pose.out, pose.up]
                .iter()
                .all(|number| number.is_finite())
            {
                return wrong(row, "has a number that is not finite; type it again");
            }
        }
        match poses.first() {
            None => return wrong(0, "is missing; give the closed pose and at least one more"),
            Some(first) if [first.degrees, first.out, first.up] != [0.0; 3] => {
                return wrong(0, "must be the closed door: 0 degrees, no shift");
            }
            Some(_) => {}
        }
        for (row, pair) in poses.windows(2).enumerate() {
            if let [before, after] = pair
                && after.degrees <= before.degrees
            {
                return wrong(
                    row + 1,
                    "does not open further than the one before; sort the rows",
                );
            }
        }
        let rows: Vec<_> = poses
            .iter()
            .map(|pose| (pose.degrees.to_radians(), Vector2D::new(pose.out, pose.up)))
            .collect();
        if rows.len() < 2 || rows.last().is_some_and(|last| last.0 < end - 1e-9) {
            return wrong(
                rows.len() - 1,
                "is the last and ends before the end angle; add rows or lower the end angle",
            );
        }
        Ok(Self { corner, rows })
    }

    /// Pose with its derivatives by the angle. At a row the slope is that of the piece after it.
    pub(crate) fn jet(&self, input: f64) -> PoseJet {
        let after = self
            .rows
            .partition_point(|row| row.0 <= input)
            .clamp(1, self.rows.len() - 1);
        let (from, to) = (self.rows[after - 1], self.rows[after]);
        let slope = (to.1 - from.1) / (to.0 - from.0);
        let moved = from.1 + slope * (input - from.0);
        let corner = self.corner.to_vector();
        let start = turned(corner, input);
        PoseJet {
            pose: Pose {
                angle: input,
                shift: corner - start + moved,
            },
            rate: PoseRate {
                turn: 1.0,
                shift: slope - quarter_turn(start),
            },
            bend: PoseRate {
                turn: 0.0,
                shift: start,
            },
        }
    }
}
