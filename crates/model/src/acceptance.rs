//! Findings that somebody has looked at and accepted, with the reason.

use serde::{Deserialize, Serialize};

use crate::edges::Edge;
use crate::id::{BoxId, CardId, DoorId, ObstacleId, OpeningId};
use crate::part::{BoreId, PartId};
use crate::severity::Severity;

/// A finding that was accepted as it stood. It comes back when it gets worse.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Acceptance {
    /// Name of the check.
    pub check: String,
    /// What the finding was about, sorted and each once: with the check the key by which it is found
    /// again.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub about: Vec<Topic>,
    /// Why it is accepted, never empty; printed on the list of accepted findings.
    pub reason: String,
    /// How bad it was.
    pub severity: Severity,
    /// The numbers that it had.
    #[serde(default)]
    pub numbers: Vec<AcceptedNumber>,
    /// Whether it comes from a file of version 1, which told a place only and not what the finding
    /// was about there: it then holds for the first finding of its check at that place that has not
    /// got worse.
    #[serde(default, skip_serializing_if = "std::ops::Not::not")]
    pub by_place: bool,
    /// The place in the words of version 1, where nothing of that name is in the job: kept so that
    /// no decision is lost; it holds for no finding.
    #[serde(default, skip_serializing_if = "String::is_empty")]
    pub lost_place: String,
}

/// One number of an accepted finding.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct AcceptedNumber {
    /// What it is.
    pub label: String,
    /// Its value then, in the finding's own unit.
    pub value: f64,
}

/// One of the things that a finding is about, by what stays when the job changes around it.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Topic {
    /// A box as a whole.
    Box(BoxId),
    /// An opening.
    Opening(OpeningId),
    /// A door.
    Door(DoorId),
    /// A panel or leaf.
    Part(PartId),
    /// The handle of a door.
    Handle(DoorId),
    /// A bore, or all like it: never by its number, which shifts when other bores come and go.
    Bore {
        /// The part that is drilled.
        part: PartId,
        /// The door whose fitting or handle it is for; none for rows of shelf bores and for what is
        /// only recorded.
        door: Option<DoorId>,
        /// What it is for.
        purpose: String,
        /// Which of the part's bores for that door and purpose, in the order of the hole table, from
        /// 1; 0 for all of them.
        nth: u32,
    },
    /// A bore by its number: only in acceptances from files of version 1.
    NumberedBore(BoreId),
    /// One edge of it.
    Edge(Edge),
    /// Its width.
    Width,
    /// Its height.
    Height,
    /// What stands in the room.
    Obstacle(ObstacleId),
    /// A card in use.
    Card(CardId),
    /// Findings of one check that are about the same things are told apart by their order, from 2.
    Another(u32),
}
