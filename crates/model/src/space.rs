//! The coordinate spaces, as types, so that a place on one face cannot be used on another.
//!
//! All are millimetres in `f64`. `BoxSpace` is **left-handed** (x right, y up, z back): no cross
//! products in it.

use euclid::{Point2D, Point3D, Vector2D};

/// One box, 3D: x right from the left outer face of the left side, y up from the underside of the
/// box, z back from the front edges of the sides.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BoxSpace {}

/// The inner face of a side as it lies on the bench, inner face up: u back from the panel's front
/// edge, v down from its top end. Both sides use the same (u, v); their pictures are mirrored.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SideFace {}

/// The underside of a top panel or fixed shelf, seen from below: u from the panel's own end at
/// box-left, v back from its own front edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum TopFace {}

/// The back of a door leaf lying face down: u from its left edge *as seen from the back* (which is
/// the box-right edge), v down from its top edge.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum DoorBack {}

/// The vertical section, for motion: x is o, out into the room (= -z); y is up. Right-handed when
/// drawn with o to the right; sheets draw the front at the left.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum SectionSpace {}

/// A place in the box, mm.
pub type BoxPoint = Point3D<f64, BoxSpace>;
/// A place on a side's inner face, mm.
pub type SidePoint = Point2D<f64, SideFace>;
/// A place on the underside of a top or shelf, mm.
pub type TopPoint = Point2D<f64, TopFace>;
/// A place on the back of a leaf, mm.
pub type DoorPoint = Point2D<f64, DoorBack>;
/// A place in the section, mm: x = o (out), y = up.
pub type SectionPoint = Point2D<f64, SectionSpace>;
/// A direction in the section, mm.
pub type SectionVector = Vector2D<f64, SectionSpace>;
