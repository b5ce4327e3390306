//! Which way the grain of each part runs in the box, and how it lies to each drawing plane: the one
//! source for hatching, cut list and the words on sheets.

use flapwright_model::door::Grain;
use flapwright_model::material::MaterialClass;
use flapwright_rules::inspection::{BoxReport, Face, InfillReport, PanelReport, Solid};

use crate::hatch::{Lie, Stuff};

/// A direction in the box, door closed.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum GrainDirection {
    /// Along x.
    LeftRight,
    /// Along y.
    UpDown,
    /// Along z.
    FrontBack,
}

/// How a view looks at the box.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Plane {
    /// From the front: x right, y up.
    Front,
    /// From the side, front at the left: z right, y up.
    Upright,
    /// From above, front at the bottom: x right, z up.
    Level,
}

impl GrainDirection {
    /// In words, e.g. after "grain".
    pub(crate) const fn words(self) -> &'static str {
        match self {
            Self::LeftRight => "left to right",
            Self::UpDown => "up and down",
            Self::FrontBack => "front to back",
        }
    }

    /// How it lies to a plane.
    pub(crate) const fn on(self, plane: Plane) -> Lie {
        match (self, plane) {
            (Self::LeftRight, Plane::Front | Plane::Level) | (Self::FrontBack, Plane::Upright) => {
                Lie::Along(0.0)
            }
            (Self::UpDown, Plane::Front | Plane::Upright) | (Self::FrontBack, Plane::Level) => {
                Lie::Along(90.0)
            }
            (Self::LeftRight, Plane::Upright)
            | (Self::UpDown, Plane::Level)
            | (Self::FrontBack, Plane::Front) => Lie::Crossing,
        }
    }

    /// A material whose grain runs this way, as that plane shows it.
    pub(crate) const fn stuff(self, class: MaterialClass, plane: Plane) -> Stuff {
        Stuff {
            class,
            lie: self.on(plane),
        }
    }
}

/// Whether the length of a part runs along u of its face: along the grain, or along the longer
/// side where there is none.
pub(crate) fn length_along_u(panel: &PanelReport) -> bool {
    along_u(panel.grain, panel.size)
}

fn along_u(grain: Grain, [u, v]: [f64; 2]) -> bool {
    match grain {
        Grain::Upright => false,
        Grain::Across => true,
        Grain::None => u >= v,
    }
}

/// Of a panel, or of a leaf that is one panel.
pub(crate) fn of_panel(panel: &PanelReport) -> GrainDirection {
    match (panel.face, length_along_u(panel)) {
        (Face::Underside | Face::DoorBack | Face::Plain, true) => GrainDirection::LeftRight,
        (Face::SideInner(_), true) | (Face::Underside, false) => GrainDirection::FrontBack,
        (Face::SideInner(_) | Face::DoorBack | Face::Plain, false) => GrainDirection::UpDown,
    }
}

/// What the members of a face frame are made of; solid wood, as most are, where nothing says.
pub(crate) fn frame_class(report: &BoxReport) -> MaterialClass {
    report.frame_class.unwrap_or(MaterialClass::SolidWood)
}

/// Of what a framed leaf holds: as the leaf says, or along the longer side.
pub(crate) fn of_infill(panel: &PanelReport, infill: &InfillReport) -> GrainDirection {
    if along_u(panel.grain, infill_size(panel, infill)) {
        GrainDirection::LeftRight
    } else {
        GrainDirection::UpDown
    }
}

/// What a framed leaf holds, as its front or back shows it: grain left to right looks the same
/// from both.
pub(crate) fn infill_stuff(panel: &PanelReport, infill: &InfillReport) -> Stuff {
    of_infill(panel, infill).stuff(infill.class, Plane::Front)
}

/// Width and height of what a framed leaf holds, with its tongues, mm.
pub(crate) fn infill_size(panel: &PanelReport, infill: &InfillReport) -> [f64; 2] {
    let members = infill.members;
    let [width, height] = panel.size;
    [
        width - members.u_start - members.u_end + 2.0 * infill.tongue,
        height - members.v_start - members.v_end + 2.0 * infill.tongue,
    ]
}

/// Of the upright members of a framed leaf: along their length.
pub(crate) const STILE: GrainDirection = GrainDirection::UpDown;
/// Of the level members of a framed leaf: along their length.
pub(crate) const RAIL: GrainDirection = GrainDirection::LeftRight;

/// Of a member of the face frame: along its length.
pub(crate) fn of_member(solid: &Solid) -> GrainDirection {
    let size = solid.size();
    if size.width >= size.height {
        RAIL
    } else {
        STILE
    }
}
