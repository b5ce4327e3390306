//! The box: its panels and its face frame. What is inside is a tree, see [`crate::opening`].

use serde::{Deserialize, Serialize};

use crate::edges::Edges;
use crate::id::BoxId;
use crate::opening::Opening;
use crate::record::PanelRecord;

/// A wall cabinet's body with its openings and their doors. All lengths in mm.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct WallBox {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "BoxId::is_left_out")]
    pub id: BoxId,
    /// Name on sheets and lists: a label, that other boxes may have too.
    pub name: String,
    /// How many boxes are built to this description.
    pub quantity: u32,
    /// Where the box hangs.
    pub place: Place,
    /// Outer width, over both sides.
    pub width: f64,
    /// Outer height, over all.
    pub height: f64,
    /// Outer depth from the front edges of the sides to the rearmost face, door and face frame
    /// not counted.
    pub depth: f64,
    /// Left side.
    pub left: Panel,
    /// Right side.
    pub right: Panel,
    /// Top panel.
    pub top: HorizontalPanel,
    /// Bottom panel.
    pub bottom: HorizontalPanel,
    /// How top and bottom meet the sides.
    pub joint: CornerJoint,
    /// The back.
    pub back: Back,
    /// Face frame, if any.
    pub frame: Option<FaceFrame>,
    /// Rows of shelf bores in both sides, if any.
    pub system_rows: Option<SystemRows>,
    /// What is between its sides, top and bottom: an opening, which shelves and dividers may split.
    pub body: Opening,
    /// Panels whose sheet was exported or that are drilled, as they stood then.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub records: Vec<PanelRecord>,
}

/// Where a box hangs, mm.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Place {
    /// From the start of the wall to the box's left outer face.
    pub along_wall: f64,
    /// From the floor to the box's underside.
    pub above_floor: f64,
}

/// Thickness, material, bands and drilling order of a panel.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Panel {
    /// Finished thickness.
    pub thickness: f64,
    /// Name of a material of the job.
    pub material: String,
    /// Thickness of the edge bands, 0 where there is none.
    #[serde(default)]
    pub bands: PanelBands,
    /// Whether the panel is drilled before or after its edges are banded.
    #[serde(default)]
    pub drilled: Drilled,
}

/// Edge bands of a panel of the box, mm, 0 for none.
#[derive(Debug, Clone, Copy, PartialEq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct PanelBands {
    /// On the front edge.
    pub front: f64,
    /// On the back edge.
    pub back: f64,
    /// On the top end of a side or divider; on the left end of a top, bottom or shelf.
    pub top_or_left: f64,
    /// On the bottom end of a side or divider; on the right end of a top, bottom or shelf.
    pub bottom_or_right: f64,
}

/// Whether the machine sees the panel with or without its edge bands.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Serialize, Deserialize)]
pub enum Drilled {
    /// Distances run from finished edges.
    #[default]
    AfterBanding,
    /// Distances run from cut edges: less by the band at each banded edge.
    BeforeBanding,
}

/// A top, bottom or shelf panel between or over the sides.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct HorizontalPanel {
    /// The panel.
    pub panel: Panel,
    /// How far its front edge stands behind the sides' front edges.
    #[serde(default)]
    pub set_back: f64,
    /// How far each end is housed into the side (0: butted). Not used where it lies over the sides.
    #[serde(default)]
    pub housing: f64,
    /// How far a top lies below, or a bottom above, the ends of the sides (0: flush).
    #[serde(default)]
    pub set_in: f64,
}

/// How top and bottom meet the sides.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum CornerJoint {
    /// Top and bottom stand between the sides.
    BetweenSides,
    /// Top and bottom lie over the ends of the sides.
    OverSides,
}

/// The back of the box.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub enum Back {
    /// No back.
    Open,
    /// In a groove of sides, top and bottom.
    Grooved {
        /// The panel.
        panel: Panel,
        /// From the rear edges of the sides to the rear face of the back.
        inset: f64,
        /// Depth of the groove.
        groove: f64,
    },
    /// In a rebate: its rear face is flush with the rear edges of the sides.
    Rebated {
        /// The panel.
        panel: Panel,
        /// How far it laps onto sides, top and bottom.
        lap: f64,
    },
    /// Laid on the rear edges of sides, top and bottom.
    LaidOn {
        /// The panel.
        panel: Panel,
    },
}

impl Back {
    /// The panel, if there is one.
    #[must_use]
    pub const fn panel(&self) -> Option<&Panel> {
        match self {
            Self::Open => None,
            Self::Grooved { panel, .. } | Self::Rebated { panel, .. } | Self::LaidOn { panel } => {
                Some(panel)
            }
        }
    }

    /// The panel, to be changed.
    pub const fn panel_mut(&mut self) -> Option<&mut Panel> {
        match self {
            Self::Open => None,
            Self::Grooved { panel, .. } | Self::Rebated { panel, .. } | Self::LaidOn { panel } => {
                Some(panel)
            }
        }
    }
}

/// A face frame before the front edges of the sides.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct FaceFrame {
    /// Thickness, front to back.
    pub thickness: f64,
    /// Name of a material of the job.
    pub material: String,
    /// Widths of the members: stiles left and right, rails top and bottom.
    pub members: Edges<f64>,
    /// How far each member's inner edge stands inward of the inner face behind it; 0 is flush,
    /// negative is outward.
    pub overhang: Edges<f64>,
    /// Width of the rail before each fixed shelf; its upper edge is flush with the shelf's upper
    /// face.
    pub shelf_rail: f64,
}

/// Rows of bores for shelf pins in both sides, at the 32 mm pitch of the trade.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct SystemRows {
    /// Front row behind the front edge of the side.
    pub front: f64,
    /// Rear row before the rear edge of the side.
    pub rear: f64,
    /// First bore below the top end of the side.
    pub first: f64,
    /// Last bore at least this far above the bottom end of the side.
    pub last: f64,
    /// Diameter.
    pub diameter: f64,
    /// Depth.
    pub depth: f64,
}
