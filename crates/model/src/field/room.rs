//! What stands in the way of doors.

use super::info::{Info, NEW, TEXT, length, number, words};
use super::limits::IN_ROOM;
use super::table::{Fields, dotted, edge_of, fields, of_row, place};
use super::value::{FieldValue, NotSet, Value};
use crate::edges::Edge;
use crate::room::Obstacle;

fields! {
    /// A field of an obstacle.
    ObstacleField of Obstacle:

    Name at [.name] TEXT, words("obstacle", NEW),
        "name", "name", "What it is: a beam, a cornice, a lamp, a pipe, a wall at the side.";
    AlongWallFrom at [.along_wall.from] length(IN_ROOM), number(0.0, NEW),
        "along wall", "along wall from", "Where it begins, from the start of the wall.";
    AlongWallTo at [.along_wall.to] length(IN_ROOM), number(100.0, NEW),
        "to", "along wall to", "Where it ends, from the start of the wall.";
    AboveFloorFrom at [.above_floor.from] length(IN_ROOM), number(50.0, NEW),
        "above floor", "above floor from", "Its underside above the floor.";
    AboveFloorTo at [.above_floor.to] length(IN_ROOM), number(100.0, NEW),
        "to", "above floor to", "Its upper face above the floor.";
    FromWallFrom at [.from_wall.from] length(IN_ROOM), number(0.0, NEW),
        "from wall", "from wall from", "Where it begins, out from the wall.";
    FromWallTo at [.from_wall.to] length(IN_ROOM), number(100.0, NEW),
        "to", "from wall to", "Where it ends, out from the wall.";
}

impl ObstacleField {
    /// Both ends of each extent: along the wall, above the floor, out from the wall.
    pub const EXTENTS: [[Self; 2]; 3] = [
        [Self::AlongWallFrom, Self::AlongWallTo],
        [Self::AboveFloorFrom, Self::AboveFloorTo],
        [Self::FromWallFrom, Self::FromWallTo],
    ];
}
