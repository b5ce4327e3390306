//! A flap on a linked hinge, given as a table of poses.

use flapwright_model::linkage::FlapPose;
use flapwright_model::space::{SectionPoint, SectionVector};

use crate::error::MotionError;
use crate::limits::LARGEST_NUMBER;
use crate::pose::PoseJet;
use crate::pose::{Pose, PoseRate, quarter_turn, turned};
use flapwright_model::message::Count;

/// Poses through which the shift of the reference point runs smoothly over the angle: piecewise
/// cubic, with the slope at each row that of the parabola through it and its neighbours.
#[derive(Debug, Clone, PartialEq)]
pub(crate) struct FlapTable {
    /// The point of the closed door whose path the rows give, mm.
    pub(crate) reference: SectionPoint,
    /// In rising angle; two or more.
    rows: Vec<Row>,
}

/// One pose.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Row {
    /// Opening angle, radians.
    angle: f64,
    /// Shift of the reference point, mm.
    shift: SectionVector,
    /// Slope of the shift over the angle, mm per radian.
    slope: SectionVector,
}

impl FlapTable {
    /// The table, proved to rise from closed to at least `end` radians.
    pub(crate) fn new(
        reference: SectionPoint,
        poses: &[FlapPose],
        end: f64,
    ) -> Result<Self, MotionError> {
        for (row, pose) in poses.iter().enumerate() {
            if ![pose.degrees, pose.out, pose.up]
                .iter()
                .all(|number| number.abs() <= LARGEST_NUMBER)
            {
                return Err(MotionError::PoseOutOfRange {
                    row: Count(row + 1),
                });
            }
        }
        match poses.first() {
            None => return Err(MotionError::PosesMissing),
            Some(first) if [first.degrees, first.out, first.up] != [0.0; 3] => {
                return Err(MotionError::FirstPoseNotClosed);
            }
            Some(_) => {}
        }
        for (row, pair) in poses.windows(2).enumerate() {
            if let [before, after] = pair
                && after.degrees <= before.degrees
            {
                return Err(MotionError::PosesNotRising {
                    row: Count(row + 2),
                });
            }
        }
        if poses.len() < 2 {
            return Err(MotionError::OnePose);
        }
        let rows = with_slopes(poses);
        if rows.last().is_some_and(|last| last.angle < end - 1e-9) {
            return Err(MotionError::PosesEndEarly {
                row: Count(rows.len()),
            });
        }
        Ok(Self { reference, rows })
    }

    /// Pose with its derivatives by the angle. At a row the second derivative is that of the piece
    /// after it.
    pub(crate) fn jet(&self, input: f64) -> PoseJet {
        let after = self
            .rows
            .partition_point(|row| row.angle <= input)
            .clamp(1, self.rows.len() - 1);
        let [moved, slope, bend] = between(&self.rows[after - 1], &self.rows[after], input);
        let reference = self.reference.to_vector();
        let start = turned(reference, input);
        PoseJet::new(
            Pose {
                angle: input,
                shift: reference - start + moved,
            },
            PoseRate {
                turn: 1.0,
                shift: slope - quarter_turn(start),
            },
            PoseRate {
                turn: 0.0,
                shift: bend + start,
            },
        )
    }
}

/// The rows with their slopes: those of the parabola through a row and its neighbours, at an end
/// of the parabola through the three rows there; of the only piece where there are two rows.
fn with_slopes(poses: &[FlapPose]) -> Vec<Row> {
    let mut rows: Vec<Row> = poses
        .iter()
        .map(|pose| Row {
            angle: pose.degrees.to_radians(),
            shift: SectionVector::new(pose.out, pose.up),
            slope: SectionVector::zero(),
        })
        .collect();
    let pieces: Vec<(f64, SectionVector)> = rows
        .windows(2)
        .map(|pair| {
            let width = pair[1].angle - pair[0].angle;
            (width, (pair[1].shift - pair[0].shift) / width)
        })
        .collect();
    for (row, pair) in rows.iter_mut().skip(1).zip(pieces.windows(2)) {
        let ((before, a), (after, b)) = (pair[0], pair[1]);
        row.slope = (a * after + b * before) / (before + after);
    }
    // A parabola's slopes at the ends of a piece have the chord's slope as their mean.
    let end = |chord: SectionVector, inner: Option<SectionVector>| {
        inner.map_or(chord, |inner| chord * 2.0 - inner)
    };
    let last = rows.len() - 1;
    let inner = |row: usize| (last > 1).then(|| rows[row].slope);
    let (start, finish) = (inner(1), inner(last - 1));
    if let (Some(first), Some(final_piece)) = (pieces.first(), pieces.last()) {
        rows[0].slope = end(first.1, start);
        rows[last].slope = end(final_piece.1, finish);
    }
    rows
}

/// Shift between two rows with its first and second derivative by the angle: the cubic of Hermite
/// through both places and slopes.
fn between(from: &Row, to: &Row, input: f64) -> [SectionVector; 3] {
    let width = to.angle - from.angle;
    let t = (input - from.angle) / width;
    let rise = (to.shift - from.shift) / width;
    // Coefficients of shift = from + width (slope t + b t^2 + c t^3).
    let b = rise * 3.0 - from.slope * 2.0 - to.slope;
    let c = from.slope + to.slope - rise * 2.0;
    [
        from.shift + (from.slope * t + b * (t * t) + c * (t * t * t)) * width,
        from.slope + b * (2.0 * t) + c * (3.0 * t * t),
        (b * 2.0 + c * (6.0 * t)) / width,
    ]
}
