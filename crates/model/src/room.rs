//! The room that the boxes hang in.

use serde::{Deserialize, Serialize};

use crate::id::ObstacleId;

/// The room, mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Room {
    /// Height of the ceiling above the floor.
    pub ceiling: f64,
    /// What stands in the way of doors: cornices, beams, lamps, pipes, walls at the side.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub obstacles: Vec<Obstacle>,
}

impl Room {
    /// The obstacle that is called so.
    #[must_use]
    pub fn obstacle(&self, id: ObstacleId) -> Option<&Obstacle> {
        self.obstacles.iter().find(|it| it.id == id)
    }

    /// An empty room with a ceiling at that height, mm.
    #[must_use]
    pub const fn under(ceiling: f64) -> Self {
        Self {
            ceiling,
            obstacles: Vec::new(),
        }
    }
}

/// A block with upright and level edges that a door must not meet, mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Obstacle {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "ObstacleId::is_left_out")]
    pub id: ObstacleId,
    /// What it is, in the user's words.
    pub name: String,
    /// Where it begins and ends along the wall, from the wall's start.
    pub along_wall: Extent,
    /// Its underside and upper face above the floor.
    pub above_floor: Extent,
    /// Where it begins and ends out from the wall.
    pub from_wall: Extent,
}

/// From one place to another, mm, `from < to`.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Extent {
    /// Where it begins.
    pub from: f64,
    /// Where it ends.
    pub to: f64,
}
