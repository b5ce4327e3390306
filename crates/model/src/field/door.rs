//! The door, its leaves, and the bores that an existing door has.

use super::choices::Choices;
use super::info::{
    BY_JOB, COMMON, Info, Kind, NEW, NONE, Quantity, TEXT, by_job, choice, length, number,
    quantity, words,
};
use super::limits::{
    BAND, BORE, BORE_DEPTH, DISTANCE, DOOR_MASS, EITHER_WAY, GAP, HANDLE_MASS, MASS_RANGE, SIGNED,
    SIZE,
};
use super::table::{Fields, dotted, edge_of, fields, of_row, place};
use super::value::{FieldValue, NotSet, Value};
use crate::cabinet::Drilled;
use crate::door::{
    BoreReference, BuildUp, Door, DoorFit, DrilledBore, End, Grain, Leaf, Leaves, Side,
};
use crate::edges::Edge;
use crate::part::LeafId;

fields! {
    /// A field of a door that is not one of its leaves' or bores'.
    DoorField of Door:

    Reveal(edge: Edge) at [.fit { DoorFit::Overlay { reveals } => reveals } [edge]]
        length(SIGNED), number(2.0, NEW), "Reveals", "reveal",
        "What stays uncovered of each panel's edge. At a fixed shelf between two doors its gap and split stand in place of the reveal.";
    Gap(edge: Edge) at [.fit { DoorFit::Inset { gaps, .. } => gaps } [edge]]
        length(SIGNED), number(2.0, NEW), "Gaps", "door gap",
        "Clear distance to the panel at each edge.";
    SetBack at [.fit { DoorFit::Inset { set_back, .. } => set_back }]
        length(SIGNED), number(0.0, NEW), "set back", "door set back",
        "Face of the door behind the front edges.";
    Tweak(edge: Edge) at [.tweaks [edge]] length(SIGNED), number(0.0, NEW),
        "Edge tweaks", "edge tweak",
        "By-hand moves of this door's edges after its reveals are set; + is outward.";

    JointDown at [.leaves { Leaves::Two { joint_down, .. } => joint_down }]
        length(SIZE), number(200.0, "Half the height of the box."),
        "joint at", "joint between the leaves",
        "From the underside of the panel above the opening down to the middle of the joint.";
    JointGap at [.leaves { Leaves::Two { joint_gap, .. } => joint_gap }]
        length(GAP), number(3.0, NEW), "gap of the joint", "gap between the leaves", "Clear gap between the leaves.";

    HandleMass at [.handle ? .mass] quantity(Quantity::Mass, HANDLE_MASS), number(0.1, NEW),
        "handle mass", "handle: handle mass", "Mass of the handle with its screws.";
    HandleUp at [.handle ? .up] length(EITHER_WAY), number(40.0, NEW),
        "above bottom edge", "handle: above bottom edge", "Middle of the handle above the door's bottom edge.";
    HandleRight at [.handle ? .right_of_middle] length(EITHER_WAY), number(0.0, NEW),
        "right of middle", "handle: right of middle",
        "Middle of the handle from the door's own, as seen from the front.";
    HandleProjection at [.handle ? .projection] length(DISTANCE), number(30.0, NEW),
        "projection", "handle: projection", "How far it stands out from the face of the door.";
    HandleLength at [.handle ? .length] length(SIZE), number(140.0, NEW),
        "handle length", "handle: handle length", "Overall length, left to right.";
    ScrewSpacing at [.handle ? .screws ? .spacing] length(DISTANCE), number(128.0, COMMON),
        "screw spacing", "handle: screw spacing", "Centre to centre; 0 for one screw.";
    ScrewDiameter at [.handle ? .screws ? .diameter] length(BORE), number(5.0, COMMON),
        "screw bore", "handle: screw bore", "Diameter of the through bores.";

    Mass at [.typed_mass ? .kilograms] quantity(Quantity::Mass, DOOR_MASS), number(3.0, NEW),
        "door mass", "door mass", "Overrides what the build-up gives.";
    MassRange at [.typed_mass ? .plus_minus] quantity(Quantity::Mass, MASS_RANGE), number(0.1, NEW),
        "±", "door mass plus or minus", "Half the width of its range.";

    TiedTo at [.bores_follow { BoreReference::Edges { vertical } => vertical }]
        Kind::Choice(End::CHOICES), choice("Top", NEW),
        "tied to the", "bores tied to", "The edge that carries the bores along.";

    Size at [.fitting ? .size] Kind::CardSize, by_job("The first size of the card."),
        "size", "Size", "Size of the fitting.";
    Packing at [.fitting ? .packing] length(GAP), number(0.0, NEW),
        "packing", "packing", "Thickness between side and fitting, at both sides.";
}

impl DoorField {
    /// The numbers of a handle.
    pub const HANDLE: [Self; 5] = [
        Self::HandleMass,
        Self::HandleUp,
        Self::HandleRight,
        Self::HandleProjection,
        Self::HandleLength,
    ];
}

fields! {
    /// A field of a leaf.
    LeafField of Leaf:

    Thickness at [.build {{ BuildUp::Plain { thickness, .. } | BuildUp::Framed { thickness, .. } => thickness }}]
        length(SIZE), number(18.0, NEW), "thickness", "thickness", "Thickness of the leaf.";
    Material at [.build {{ BuildUp::Plain { material, .. } | BuildUp::Framed { material, .. } => material }}]
        Kind::Material, by_job(BY_JOB), "material", "material", "Material of the panel or the frame.";
    Member(edge: Edge) at [.build { BuildUp::Framed { members, .. } => members } [edge]]
        length(SIZE), number(60.0, NEW), "Widths of stiles and rails", "frame member", "Width of each member.";
    InfillThickness at [.build { BuildUp::Framed { infill, .. } => infill } .thickness]
        length(SIZE), number(6.0, NEW), "infill thickness", "infill thickness", "Thickness of the panel or pane in the frame.";
    InfillMaterial at [.build { BuildUp::Framed { infill, .. } => infill } .material]
        Kind::Material, by_job(BY_JOB), "material", "infill material", "Material of the panel or pane in the frame.";
    InfillTongue at [.build { BuildUp::Framed { infill, .. } => infill } .tongue]
        length(DISTANCE), number(8.0, NEW), "infill tongue", "infill tongue", "How far it reaches into the frame.";
    InfillBehind at [.build { BuildUp::Framed { infill, .. } => infill } .behind]
        length(DISTANCE), number(6.0, NEW), "infill behind", "infill behind", "Back of the leaf to the back of the infill.";
    Band(edge: Edge) at [.bands [edge]] length(BAND), number(1.0, NEW),
        "Edge bands", "band", "Thickness of the band at each edge, 0 for none.";
    Drilled at [.drilled] Kind::Choice(Drilled::CHOICES), choice("AfterBanding", COMMON),
        "banding: drilled", "drilled", "Whether the machine drills it before or after its edges are banded.";
    Grain at [.grain] Kind::Choice(Grain::CHOICES), choice("None", NONE),
        "grain", "grain", "Direction of the grain of the visible face.";
}

impl LeafField {
    /// The lengths of what a frame holds.
    pub const INFILL: [Self; 3] = [
        Self::InfillThickness,
        Self::InfillTongue,
        Self::InfillBehind,
    ];
}

fields! {
    /// A field of a bore that an existing door has.
    BoreField of DrilledBore:

    Leaf at [.leaf] Kind::Choice(LeafId::CHOICES), choice("Only", NEW),
        "leaf", "leaf", "Which leaf has it.";
    FromSide at [.from_side] Kind::Choice(Side::CHOICES), choice("Left", NEW),
        "across from", "side edge", "The edge from which the distance across counts, as seen from the front.";
    Across at [.across] length(EITHER_WAY), number(20.0, NEW),
        "across", "across", "To that edge, as seen from the front.";
    FromEnd at [.from_end] Kind::Choice(End::CHOICES), choice("Top", NEW),
        "along from", "end edge", "The edge from which the distance up or down counts.";
    Along at [.along] length(EITHER_WAY), number(60.0, NEW),
        "along", "along", "To that edge.";
    Diameter at [.diameter] length(BORE), number(5.0, NEW),
        "diameter", "diameter", "Diameter of the bore.";
    Depth at [.depth] length(BORE_DEPTH), number(11.0, NEW),
        "depth", "depth", "To the full diameter.";
    Purpose at [.purpose] TEXT, words("fitting screw", NEW),
        "purpose", "purpose", "What it is for.";
}
