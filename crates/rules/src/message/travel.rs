//! What the checks on the whole travel of a door say.

use flapwright_model::message::{Degrees, Mm, Newton, Within, Word};
use flapwright_model::messages;
use flapwright_model::part::Subject;

messages! {
    /// The door and the ceiling.
    pub enum DoorHitsCeiling in "door-hits-ceiling" {
        /// It reaches higher.
        Hits = "hits" { from: Degrees, over: Mm, left_below_the_ceiling: Mm [smaller] },
        /// It comes near.
        Near = "near" { left_below_the_ceiling: Mm [smaller], wanted: Mm },
        /// Both heights.
        Heights = "heights" { needs: Mm, ceiling: Mm },
    }
}

messages! {
    /// The door and what stands beside it.
    pub enum DoorHitsNeighbour in "door-hits-neighbour" {
        /// It hits a box.
        Body = "body" { hits: Word, other: Subject, met_at: Degrees [smaller] },
        /// It hits a closed door.
        Door = "door" { hits: Word, other: Subject, met_at: Degrees [smaller] },
        /// It hits the handle of a closed door.
        Handle = "handle" { hits: Word, other: Subject, met_at: Degrees [smaller] },
    }
}

messages! {
    /// The door and an obstacle of the room.
    pub enum DoorHitsObstacle in "door-hits-obstacle" {
        /// It hits it.
        Hits = "hits" { hits: Word, obstacle: String, at: Degrees, gap: Mm [smaller] },
        /// It comes near.
        Near = "near" { comes: Word, obstacle: String, at: Degrees, gap: Mm [smaller] },
        /// How near it may come.
        Wanted = "wanted" { wanted: Mm },
    }
}

messages! {
    /// Two doors of which one is open.
    pub enum OpenDoorsMeet in "open-doors-meet" {
        /// The other one hits it.
        Hits = "hits" { hits: Word, other: Subject, met_at: Degrees [smaller] },
    }
}

messages! {
    /// An open door and people's heads.
    pub enum OpenDoorAtHeadHeight in "open-door-at-head-height" {
        /// It is in the way.
        InTheWay = "in-the-way" { lowest_place: Mm [smaller], stands_out: Mm [greater] },
        /// The limit.
        Limit = "limit" { limit: Mm },
    }
}

messages! {
    /// The handle of an open door.
    pub enum HandleOutOfReach in "handle-out-of-reach" {
        /// The handle is too high.
        Handle = "handle" { limit: Mm, height_of_the_grip: Mm [greater] },
        /// The lower edge of a door without a handle is too high.
        LowerEdge = "lower-edge" { limit: Mm, height_of_the_grip: Mm [greater] },
    }
}

messages! {
    /// The force that a hand needs.
    pub enum HandForceTooHigh in "hand-force-too-high" {
        /// To open.
        Open = "open" {
            at: Degrees, largest_hand_force: Newton [greater], limit: Newton [smaller],
        },
        /// To close.
        Close = "close" {
            at: Degrees, largest_hand_force: Newton [greater], limit: Newton [smaller],
        },
    }
}

messages! {
    /// The two leaves of a folding pair.
    pub enum LeavesMeet in "leaves-meet" {
        /// They hit each other.
        Hit = "hit" { met_at: Degrees [smaller] },
    }
}

messages! {
    /// The top edge of a door and what is above it.
    pub enum TopEdgeHitsPanel in "top-edge-hits-panel" {
        /// It swings into it.
        Swings = "swings" { at: Degrees, rise: Mm [greater] },
    }
}

messages! {
    /// The fitting and what is in the box.
    pub enum FittingHitsShelf in "fitting-hits-shelf" {
        /// Its body has no room.
        Body = "body" { obstacle: Within, overlap: Mm [either] },
        /// Something that moves hits it.
        Hits = "hits" { hits: Word, obstacle: Within, met_at: Degrees [either] },
    }
}
