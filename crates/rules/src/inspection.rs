//! The answer to "what is true of this job": parts, bores, motion, findings.
//!
//! Plain data; window, sheets and command line only read it.

use std::sync::Arc;

use euclid::Box3D;
use flapwright_model::cabinet::Drilled;
use flapwright_model::card::{Depth, Drill, EdgeRange, OpeningKind};
use flapwright_model::door::{Grain, Side};
use flapwright_model::edges::Edges;
use flapwright_model::field::FieldRef;
use flapwright_model::id::{BoxId, DoorId, OpeningId};
use flapwright_model::material::{MassRange, MaterialClass};
use flapwright_model::part::{LeafId, Part, PartId};
use flapwright_model::space::{BoxPoint, BoxSpace, DoorPoint, SectionPoint, SidePoint, TopPoint};
use flapwright_motion::MotionError;
use flapwright_motion::closed::ClosedDoor;
use flapwright_motion::mass::DoorMass;
use flapwright_motion::motion::Motion;
use flapwright_motion::sweep::Sweep;

use crate::finding::{Finding, Severity};
use crate::gaps::Gaps;
use crate::placement::door_motions::DoorMotion;

/// A solid block in the box, mm.
pub type Solid = Box3D<f64, BoxSpace>;

/// Everything that is true of a job.
#[derive(Debug, Clone)]
pub struct Inspection {
    /// One report per box, in the job's order.
    pub boxes: Vec<Arc<BoxReport>>,
    /// The findings: worst first, then those of single boxes in the order of boxes and checks, then
    /// those between boxes and of cards. What a remedy says of its safety is what its check claims.
    pub findings: Vec<Arc<Finding>>,
}

impl Inspection {
    /// The report of a box.
    #[must_use]
    pub fn report(&self, id: BoxId) -> Option<&Arc<BoxReport>> {
        self.boxes.iter().find(|report| report.id == id)
    }

    /// A panel or leaf.
    #[must_use]
    pub fn panel(&self, id: PartId) -> Option<&PanelReport> {
        self.report(id.box_id)?.panel(id.part)
    }

    /// A door.
    #[must_use]
    pub fn door(&self, id: DoorId) -> Option<&DoorReport> {
        self.boxes.iter().find_map(|report| report.door(id))
    }

    /// How many findings of a severity are open: not accepted.
    #[must_use]
    pub fn open(&self, severity: Severity) -> usize {
        self.findings
            .iter()
            .filter(|it| it.accepted.is_none() && it.severity == severity)
            .count()
    }
}

/// One box.
#[derive(Debug, Clone)]
pub struct BoxReport {
    /// Which box it is.
    pub id: BoxId,
    /// Its name.
    pub name: String,
    /// How many are built.
    pub quantity: u32,
    /// Outer size without door and frame: width, height, depth, mm.
    pub outer: [f64; 3],
    /// The panels and leaves, in the order sides, top, bottom, back, shelves, dividers, leaves.
    pub panels: Vec<PanelReport>,
    /// Members of the face frame, if there is one.
    pub frame: Vec<Solid>,
    /// Class of their material.
    pub frame_class: Option<MaterialClass>,
    /// The openings in reading order: from the top down, from left to right.
    pub openings: Vec<OpeningReport>,
}

impl BoxReport {
    /// A panel or leaf.
    #[must_use]
    pub fn panel(&self, part: Part) -> Option<&PanelReport> {
        self.panels.iter().find(|panel| panel.id.part == part)
    }

    /// An opening.
    #[must_use]
    pub fn opening(&self, id: OpeningId) -> Option<&OpeningReport> {
        self.openings.iter().find(|it| it.id == id)
    }

    /// The opening that a door closes.
    #[must_use]
    pub fn opening_of(&self, id: DoorId) -> Option<&OpeningReport> {
        let has_it = |it: &&OpeningReport| it.door.as_ref().is_some_and(|door| door.id == id);
        self.openings.iter().find(has_it)
    }

    /// A door.
    #[must_use]
    pub fn door(&self, id: DoorId) -> Option<&DoorReport> {
        self.opening_of(id)?.door.as_ref()
    }

    /// The doors in reading order.
    pub fn doors(&self) -> impl Iterator<Item = &DoorReport> {
        self.openings.iter().filter_map(|it| it.door.as_ref())
    }

    /// How messages count an opening: from the top, from 1; 0 for one that is not there.
    #[must_use]
    pub fn number_of(&self, id: OpeningId) -> usize {
        let index = self.openings.iter().position(|it| it.id == id);
        index.map_or(0, |index| index + 1)
    }

    /// The same for the opening of a door.
    #[must_use]
    pub fn number_of_door(&self, id: DoorId) -> usize {
        self.opening_of(id).map_or(0, |it| self.number_of(it.id))
    }
}

/// One panel or leaf with its bores.
#[derive(Debug, Clone)]
pub struct PanelReport {
    /// Which part it is.
    pub id: PartId,
    /// Name in plain words, e.g. `right side`, `door, upper leaf`.
    pub name: String,
    /// Where it stands in the box, door closed.
    pub solid: Solid,
    /// The face that its sheet shows.
    pub face: Face,
    /// Finished size along u and v of that face, mm.
    pub size: [f64; 2],
    /// Thickness, mm.
    pub thickness: f64,
    /// Material name.
    pub material: String,
    /// Class of the material.
    pub class: MaterialClass,
    /// Direction of the grain on the drawn face.
    pub grain: Grain,
    /// Edge bands by the face's own edges, mm.
    pub bands: FaceBands,
    /// Whether it is drilled before or after banding.
    pub drilled: Drilled,
    /// For a framed leaf: what is inside its stiles and rails.
    pub infill: Option<InfillReport>,
    /// Bores in hole-table order: those of the fitting, of the handle, of the system rows; within
    /// these by v, then u.
    pub bores: Vec<PlacedBore>,
}

/// The face that a sheet shows, and so which space its bores are in.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Face {
    /// Inner face of a side (`SideFace`). On the sheet the left side has its front edge at the
    /// left, the right side at the right.
    SideInner(Side),
    /// Underside of a top or shelf (`TopFace`), front edge at the top of the picture.
    Underside,
    /// Back of a leaf (`DoorBack`).
    DoorBack,
    /// A panel that has no sheet of its own: size is width and height (or depth) as it stands.
    Plain,
}

/// Edge bands by the edges of the drawn face, mm, 0 for none.
#[derive(Debug, Clone, Copy, PartialEq, Default)]
pub struct FaceBands {
    /// At u = 0.
    pub u_start: f64,
    /// At the far end of u.
    pub u_end: f64,
    /// At v = 0.
    pub v_start: f64,
    /// At the far end of v.
    pub v_end: f64,
}

/// The pane or panel in a framed leaf, in the leaf's own `DoorBack` frame.
#[derive(Debug, Clone, PartialEq)]
pub struct InfillReport {
    /// Widths of the frame's members by the face's own edges: u start, u end, v start, v end, mm.
    pub members: FaceBands,
    /// How far the infill reaches into the members, mm.
    pub tongue: f64,
    /// Thickness of the infill, mm.
    pub thickness: f64,
    /// From the back of the leaf to the back of the infill, mm.
    pub behind: f64,
    /// Its material's class.
    pub class: MaterialClass,
    /// Its material's name.
    pub material: String,
}

/// A place on a panel's drawn face, in that face's own space.
#[derive(Debug, Clone, Copy, PartialEq)]
pub enum FacePoint {
    /// On the inner face of a side.
    Side(SidePoint),
    /// On the underside of a top or shelf.
    Top(TopPoint),
    /// On the back of a leaf.
    Door(DoorPoint),
}

impl FacePoint {
    /// u and v, mm, from the panel's own finished zero corner.
    #[must_use]
    pub const fn uv(self) -> (f64, f64) {
        match self {
            Self::Side(point) => (point.x, point.y),
            Self::Top(point) => (point.x, point.y),
            Self::Door(point) => (point.x, point.y),
        }
    }
}

/// A bore of a panel.
#[derive(Debug, Clone, PartialEq)]
pub struct PlacedBore {
    /// Number in the panel's hole table, from 1.
    pub number: usize,
    /// Centre on the drawn face, from **finished** edges.
    pub at: FacePoint,
    /// Centre in the box (on the face that is drilled), door closed.
    pub in_box: BoxPoint,
    /// Diameter, depth, purpose, pass.
    pub drill: Drill,
    /// Why it is there.
    pub source: BoreSource,
}

impl PlacedBore {
    /// Depth in a panel of this thickness, mm: the thickness itself for a through bore.
    #[must_use]
    pub const fn depth_in(&self, thickness: f64) -> f64 {
        match self.drill.depth {
            Depth::Blind(depth) => depth,
            Depth::Through => thickness,
        }
    }
}

/// Why a bore is there.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum BoreSource {
    /// Asked for by the card of a door.
    Fitting {
        /// The door.
        door: DoorId,
        /// The fitting's own side.
        side: Side,
    },
    /// Typed as drilled already.
    AsDrilled {
        /// The door.
        door: DoorId,
    },
    /// In a panel of the box that is recorded as drilled: a fact, whatever the fitting needs now.
    Recorded,
    /// One of a row of shelf bores.
    SystemRow,
    /// A screw of the handle.
    Handle {
        /// The door.
        door: DoorId,
    },
}

impl BoreSource {
    /// The door that the bore is for, if it is for one.
    #[must_use]
    pub const fn door(self) -> Option<DoorId> {
        match self {
            Self::Fitting { door, .. } | Self::AsDrilled { door } | Self::Handle { door } => {
                Some(door)
            }
            Self::Recorded | Self::SystemRow => None,
        }
    }
}

/// One opening.
#[derive(Debug, Clone)]
pub struct OpeningReport {
    /// Which opening it is.
    pub id: OpeningId,
    /// The panels around it.
    pub around: Edges<Part>,
    /// Clear space between the panels, from side to side, floor to top, front datum to the back;
    /// z from 0.
    pub clear: Solid,
    /// What the door's edges are set from: the clear opening, or the frame's.
    pub door_opening: Edges<f64>,
    /// Its door.
    pub door: Option<DoorReport>,
}

/// What moves an edge of a door, its tweak apart.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct EdgeMove {
    /// The number: a reveal, the gap of an inset door, or at a panel that two doors share its gap or
    /// split.
    pub field: FieldRef,
    /// How far the edge moves outward from the door, mm, for each mm by which the number rises.
    pub outward: f64,
}

/// A door, closed.
#[derive(Debug, Clone)]
pub struct DoorReport {
    /// Which door it is.
    pub id: DoorId,
    /// Overlays at the four edges without tweaks, mm; negative: gap of an inset door.
    pub overlays: Edges<f64>,
    /// The door's edges with tweaks: x of left and right, y of top and bottom, mm.
    pub edges: Edges<f64>,
    /// Which number of the job sets each of these edges.
    pub edge_moves: Edges<EdgeMove>,
    /// z of the front face, door closed and on its bumpers, mm (negative: before the sides).
    pub front: f64,
    /// z of the back face likewise, mm.
    pub back: f64,
    /// How it opens; `None` without a fitting.
    pub kind: Option<OpeningKind>,
    /// Card and size in words, e.g. `Wren, size 3`; empty without a fitting.
    pub fitting: String,
    /// Where the door's bores are needed and where they are.
    pub offsets: Vec<BoreOffset>,
    /// Bodies of the fittings, door closed.
    pub envelopes: Vec<Solid>,
    /// Main axis of the fitting in the section.
    pub axis: Option<SectionPoint>,
    /// Mass of the door that the checks use.
    pub mass: MassRange,
    /// Mass as the build-up gives it (the same unless a mass was typed).
    pub built_mass: MassRange,
    /// The same part by part; `None` where a leaf has no size.
    pub weighed: Option<DoorMass>,
    /// Places of the closed door that motion starts from.
    pub closed: ClosedDoor,
    /// How it moves, shared by all doors that are alike; `None` without a fitting.
    pub(crate) moves: Option<Arc<DoorMotion>>,
}

impl DoorReport {
    /// What the door sweeps over in the section of its box, and how far it comes; reckoned once
    /// for all doors that are alike. `None` without a motion.
    #[must_use]
    pub fn sweep(&self) -> Option<&Sweep> {
        self.moves.as_ref()?.sweep()
    }

    /// Where on the way its leaves first touch each other, if they do; reckoned once like the sweep.
    #[must_use]
    pub fn first_touch(&self) -> Option<f64> {
        self.moves.as_ref()?.first_touch()
    }

    /// How wide its gaps are over the way, measured once like the sweep.
    pub(crate) fn gaps(&self) -> Option<&Gaps> {
        Some(&self.moves.as_ref()?.gaps)
    }

    /// The motion, or why the linkage fails; `None` without a fitting.
    #[must_use]
    pub fn motion(&self) -> Option<&Result<Motion, MotionError>> {
        self.moves.as_ref().map(|it| &it.motion)
    }

    /// The motion, where it works.
    #[must_use]
    pub fn working_motion(&self) -> Option<&Motion> {
        self.motion()?.as_ref().ok()
    }
}

/// A bore of the door's back against the place where the fitting needs it.
#[derive(Debug, Clone, PartialEq)]
pub struct BoreOffset {
    /// Which leaf.
    pub leaf: LeafId,
    /// The fitting's own side.
    pub side: Side,
    /// What the fitting's bore is for.
    pub purpose: String,
    /// Where the fitting needs it, in the box.
    pub needed: BoxPoint,
    /// The bore that is there: its number in the leaf's hole table and its place in the box;
    /// `None` when the door has none for it.
    pub drilled: Option<(usize, BoxPoint)>,
    /// Offset across, + to box-right, mm; 0 when there is no bore.
    pub across: f64,
    /// Offset up, + up, mm; 0 when there is no bore.
    pub up: f64,
    /// Distances to the leaf's edges that the card allows.
    pub edge_ranges: Vec<EdgeRange>,
    /// Whether the card allows the bore in glass or metal.
    pub in_glass_or_metal: bool,
}

impl BoreOffset {
    /// Straight-line offset, mm.
    #[must_use]
    pub fn distance(&self) -> f64 {
        self.across.hypot(self.up)
    }
}
