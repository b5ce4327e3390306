//! What has left the program: panels whose sheet was exported, panels that are drilled.

use serde::{Deserialize, Serialize};

use crate::card::Drill;
use crate::part::Part;

/// One panel as it stood when its sheet was exported or when it was drilled.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelRecord {
    /// Which panel of the box.
    pub part: Part,
    /// How far it has come.
    pub state: RecordState,
    /// Revision of the job then.
    #[serde(default)]
    pub revision: String,
    /// Finished size along u and v of the drawn face, mm.
    pub size: [f64; 2],
    /// The bores, in hole-table order.
    pub bores: Vec<RecordedBore>,
}

/// How far a recorded panel has come.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum RecordState {
    /// Its sheet was exported; the panel can still be drilled otherwise.
    SheetExported,
    /// It is drilled: its bores are facts.
    Drilled,
}

/// A bore on the drawn face, from the finished zero corner.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct RecordedBore {
    /// Along u, mm.
    pub u: f64,
    /// Along v, mm.
    pub v: f64,
    /// Diameter, depth, purpose.
    pub drill: Drill,
}
