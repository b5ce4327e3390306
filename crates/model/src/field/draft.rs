//! A card's draft: every number as its paper has it.

use super::choices::Choices;
use super::info::{
    Info, Kind, NAME, Quantity, TEXT, Usual, choice, count, flag, typed, typed_or_empty, words,
};
use super::limits::{
    ADJUST_LESS, ADJUST_MORE, BORE, BORE_DEPTH, DAMPING, DISTANCE, END_ANGLE, GAP, INWARD, ON_CARD,
    PARTS, PASS, SIGNED, SIZE, SPAN, STRAY,
};
use super::table::{Fields, dotted, edge_of, fields, of_row, place};
use super::value::{FieldValue, NotSet, Value};
use crate::card::{BackFrom, FittedSides, LeafEdge, OpeningKind};
use crate::card_draft::{
    AcrossDatum, BackDatum, CardDraft, DownDatum, DraftBodies, DraftCutPart, DraftDoorBore,
    DraftEdgeRange, DraftSideBore, DraftSpread, DraftTopBore, LoadGiven,
};
use crate::edges::Edge;
use crate::length::Unit;
use crate::lift::PieceCount;

/// A distance on a card.
const MM: Kind = typed(Quantity::Length, ON_CARD);
/// Every number of a card comes from its paper.
const PAPER: &str = "The paper says it; until then this stands.";
const EMPTY: Usual = words("", "Only the paper can say it.");

fields! {
    /// A field of a draft that is not in one of its lists. Where two stand side by side in a form,
    /// their names are what both are of, a comma, and the label.
    DraftField of CardDraft:

    Name at [.name] NAME, EMPTY,
        "name of the card", "name of the card", "As lists and sheets call it; unique in the job.";
    Kind at [.kind] Kind::Choice(OpeningKind::CHOICES), choice("TopHingedFlap", PAPER),
        "opening kind", "opening kind", "How the door opens. Another kind keeps what is typed, but begins the motion anew.";
    MakerText at [.maker_text] TEXT, EMPTY,
        "where it is from", "where it is from", "Maker, article, which paper: free text, printed on the fitting's page.";
    Lengths at [.paper .length] Kind::Choice(Unit::CHOICES), choice("Millimetre", PAPER),
        "lengths", "lengths", "Unit of lengths that have none of their own.";
    Loads at [.paper .loads] Kind::Choice(LOAD_UNITS), choice("Millimetre", PAPER),
        "loads", "loads", "Unit of loads that have none of their own.";
    LoadGiven at [.paper .load_given] Kind::Choice(LoadGiven::CHOICES), choice("MassOrMoment", PAPER),
        "loads of the table are", "loads of the table are", "A moment needs its angle beside it; height times mass is turned into the moment of an even door when level. Masses by height have a table of their own below.";
    OverlaySide at [.paper .overlay_side] typed_or_empty(Quantity::Length, SIGNED), EMPTY,
        "overlay at the side", "overlay at the side", "How far the paper's door laps over the side; distances from its edge are calculated back with it.";
    OverlayTop at [.paper .overlay_top] typed_or_empty(Quantity::Length, SIGNED), EMPTY,
        "overlay at the top", "overlay at the top", "How far the paper's door laps over the top; distances from its edge are calculated back with it.";
    TopThickness at [.paper .top_thickness] typed_or_empty(Quantity::Length, SIZE), EMPTY,
        "top in the paper", "top in the paper", "Distances from the top end of the side are calculated back with it.";
    Sides at [.sides] Kind::Choice(FittedSides::CHOICES), choice("Both", PAPER),
        "sits", "sits", "Left and right as seen from the front.";
    Per at [.per] Kind::Choice(PieceCount::CHOICES), choice("PerPair", PAPER),
        "loads are said", "loads are said", "Whether the loads of the sizes table are said of a pair or of one piece.";
    Invented at [.invented] Kind::Flag, flag(false, PAPER),
        "invented", "invented", "Invented numbers for trying things out; every sheet then says so.";

    DownFrom at [.envelope .down_from] MM, EMPTY,
        "from", "down, from", "Below the underside of the panel above the opening.";
    DownTo at [.envelope .down_to] MM, EMPTY,
        "to", "down, to", "Below the underside of the panel above the opening.";
    BackFrom at [.envelope .back_from] MM, EMPTY,
        "from", "back, from", "Behind the front datum.";
    BackTo at [.envelope .back_to] MM, EMPTY,
        "to", "back, to", "Behind the front datum.";
    Inward at [.envelope .inward] typed(Quantity::Length, INWARD), EMPTY,
        "in from the side", "in from the side", "How far it stands in from the side.";
    BodyFront at [.envelope .front] Kind::Choice(BackFrom::CHOICES), choice("SideFront", PAPER),
        "back counts from", "back counts from", "The front datum of the body.";
    AdjustSidewaysFrom at [.adjustment (0 = sideways) .min]
        typed_or_empty(Quantity::Length, ADJUST_LESS), EMPTY, "from", "sideways, from", "How far the door can be moved left (negative) and right.";
    AdjustSidewaysTo at [.adjustment (0 = sideways) .max]
        typed_or_empty(Quantity::Length, ADJUST_MORE), EMPTY, "to", "sideways, to", "How far the door can be moved left (negative) and right.";
    AdjustUpwardFrom at [.adjustment (1 = upward) .min]
        typed_or_empty(Quantity::Length, ADJUST_LESS), EMPTY, "from", "upward, from", "How far the door can be moved down (negative) and up.";
    AdjustUpwardTo at [.adjustment (1 = upward) .max]
        typed_or_empty(Quantity::Length, ADJUST_MORE), EMPTY, "to", "upward, to", "How far the door can be moved down (negative) and up.";
    AdjustDepthFrom at [.adjustment (2 = depth) .min]
        typed_or_empty(Quantity::Length, ADJUST_LESS), EMPTY, "from", "depth, from", "How far the door can be moved out (negative) and into the box.";
    AdjustDepthTo at [.adjustment (2 = depth) .max]
        typed_or_empty(Quantity::Length, ADJUST_MORE), EMPTY, "to", "depth, to", "How far the door can be moved out (negative) and into the box.";
    Notes at [.notes] TEXT, EMPTY,
        "notes", "notes", "What else the paper says; printed on the fitting's page.";

    EndAngle at [.linkage .end_angle] typed(Quantity::Angle, END_ANGLE), EMPTY,
        "fully open at, degrees", "fully open at, degrees", "Opening angle of the door, or turn of the arms, when fully open.";
    PivotFront at [.linkage .front] Kind::Choice(BackFrom::CHOICES), choice("SideFront", PAPER),
        "back counts from", "back counts from", "The front datum of the pivots.";
    AxisDown at [.linkage .bodies { DraftBodies::FixedAxis { axis } => axis } .down]
        MM, EMPTY, "down", "axis, down", "The door turns about it.";
    AxisBack at [.linkage .bodies { DraftBodies::FixedAxis { axis } => axis } .back]
        MM, EMPTY, "back", "axis, back", "The door turns about it.";
    ReferenceDown at [.linkage .bodies { DraftBodies::PoseTable { reference, .. } => reference } .down]
        MM, EMPTY, "down", "point of the door, down", "The point of the door whose path the table gives, door closed.";
    ReferenceBack at [.linkage .bodies { DraftBodies::PoseTable { reference, .. } => reference } .back]
        MM, EMPTY, "back", "point of the door, back", "The point of the door whose path the table gives, door closed.";
    BoxPivotDown at [.linkage .bodies { DraftBodies::Parallel { box_pivot, .. } => box_pivot } .down]
        MM, EMPTY, "down", "arm in the box, down", "Stands still in the box.";
    BoxPivotBack at [.linkage .bodies { DraftBodies::Parallel { box_pivot, .. } => box_pivot } .back]
        MM, EMPTY, "back", "arm in the box, back", "Stands still in the box.";
    DoorPivotDown at [.linkage .bodies { DraftBodies::Parallel { door_pivot, .. } => door_pivot } .down]
        MM, EMPTY, "down", "arm on the door, down", "Where it is while the door is closed.";
    DoorPivotBack at [.linkage .bodies { DraftBodies::Parallel { door_pivot, .. } => door_pivot } .back]
        MM, EMPTY, "back", "arm on the door, back", "Where it is while the door is closed.";
    SecondDown at [.linkage .bodies { DraftBodies::Parallel { second_down, .. } => second_down }]
        MM, EMPTY, "down", "second arm from first, down", "The second arm is as long as the first and lies beside it.";
    SecondBack at [.linkage .bodies { DraftBodies::Parallel { second_back, .. } => second_back }]
        MM, EMPTY, "back", "second arm from first, back", "The second arm is as long as the first and lies beside it.";
    LeafAxisDown at [.linkage .bodies { DraftBodies::Folding { axis, .. } => axis } .down]
        MM, EMPTY, "down", "axis of the upper leaf, down", "Stands still in the box.";
    LeafAxisBack at [.linkage .bodies { DraftBodies::Folding { axis, .. } => axis } .back]
        MM, EMPTY, "back", "axis of the upper leaf, back", "Stands still in the box.";
    JointBehind at [.linkage .bodies { DraftBodies::Folding { joint_behind, .. } => joint_behind }]
        MM, EMPTY, "joint behind the back", "joint behind the back", "The axis between the leaves behind their back face.";
    LinkBoxDown at [.linkage .bodies { DraftBodies::Folding { link_box, .. } => link_box } .down]
        MM, EMPTY, "down", "link in the box, down", "Stands still in the box.";
    LinkBoxBack at [.linkage .bodies { DraftBodies::Folding { link_box, .. } => link_box } .back]
        MM, EMPTY, "back", "link in the box, back", "Stands still in the box.";
    LinkBelowJoint at [.linkage .bodies { DraftBodies::Folding { link_below_joint, .. } => link_below_joint }]
        MM, EMPTY, "link below the joint", "link below the joint", "The link's pivot on the lower leaf below the joint.";
    LinkBehind at [.linkage .bodies { DraftBodies::Folding { link_behind, .. } => link_behind }]
        MM, EMPTY, "link behind the back", "link behind the back", "The link's pivot behind the back face of the lower leaf.";
    BoxFirstDown at [.linkage .bodies { DraftBodies::TwoArms { box_first, .. } => box_first } .down]
        MM, EMPTY, "down", "first arm in the box, down", "Stands still in the box.";
    BoxFirstBack at [.linkage .bodies { DraftBodies::TwoArms { box_first, .. } => box_first } .back]
        MM, EMPTY, "back", "first arm in the box, back", "Stands still in the box.";
    DoorFirstDown at [.linkage .bodies { DraftBodies::TwoArms { door_first, .. } => door_first } .down]
        MM, EMPTY, "down", "first arm on the door, down", "Where it is while the door is closed.";
    DoorFirstBack at [.linkage .bodies { DraftBodies::TwoArms { door_first, .. } => door_first } .back]
        MM, EMPTY, "back", "first arm on the door, back", "Where it is while the door is closed.";
    BoxSecondDown at [.linkage .bodies { DraftBodies::TwoArms { box_second, .. } => box_second } .down]
        MM, EMPTY, "down", "second arm in the box, down", "Stands still in the box.";
    BoxSecondBack at [.linkage .bodies { DraftBodies::TwoArms { box_second, .. } => box_second } .back]
        MM, EMPTY, "back", "second arm in the box, back", "Stands still in the box.";
    DoorSecondDown at [.linkage .bodies { DraftBodies::TwoArms { door_second, .. } => door_second } .down]
        MM, EMPTY, "down", "second arm on the door, down", "Where it is while the door is closed.";
    DoorSecondBack at [.linkage .bodies { DraftBodies::TwoArms { door_second, .. } => door_second } .back]
        MM, EMPTY, "back", "second arm on the door, back", "Where it is while the door is closed.";
    PathTolerance at [.linkage .path_tolerance] typed_or_empty(Quantity::Length, STRAY), EMPTY,
        "path may stray by", "path may stray by", "How far the true path may lie off the one that these numbers give; empty for none.";
    Damping at [.linkage .damping] typed_or_empty(Quantity::Damping, DAMPING), EMPTY,
        "damping, N·m·s", "damping, N·m·s", "Damping about the first arm or the axis; empty for none.";

    ExampleSize at [.example ? .size] TEXT, EMPTY,
        "size", "size", "Name of the size that it is worked for.";
    ExamplePanels at [.example ? .panel_thickness] typed(Quantity::Length, SIZE), EMPTY,
        "panels", "panels", "Thickness of the top and sides; the top stands between the sides, no face frame.";
    ExampleOverlayLeft at [.example ? .overlays (0 = left)]
        typed(Quantity::Length, SIGNED), EMPTY, "left", "overlay, left", "How far the door laps over the panels.";
    ExampleOverlayRight at [.example ? .overlays (1 = right)]
        typed(Quantity::Length, SIGNED), EMPTY, "right", "overlay, right", "How far the door laps over the panels.";
    ExampleOverlayTop at [.example ? .overlays (2 = top)]
        typed(Quantity::Length, SIGNED), EMPTY, "top", "overlay, top", "How far the door laps over the panels.";
    ExampleOverlayBottom at [.example ? .overlays (3 = bottom)]
        typed(Quantity::Length, SIGNED), EMPTY, "bottom", "overlay, bottom", "How far the door laps over the panels.";
    ExamplePacking at [.example ? .packing] typed_or_empty(Quantity::Length, GAP), EMPTY,
        "packing", "packing", "Packing between side and fitting; empty for none.";
    ExampleJoint at [.example ? .joint_down] typed_or_empty(Quantity::Length, DISTANCE), EMPTY,
        "joint down", "joint down", "The middle of the joint below the underside of the top.";
}

impl DraftField {
    /// How far the door can be adjusted, each direction's two ends together.
    pub const ADJUSTMENT: [Self; 6] = [
        Self::AdjustSidewaysFrom,
        Self::AdjustSidewaysTo,
        Self::AdjustUpwardFrom,
        Self::AdjustUpwardTo,
        Self::AdjustDepthFrom,
        Self::AdjustDepthTo,
    ];

    /// The moving bodies; a draft has those of its opening kind.
    pub const BODIES: [Self; 25] = [
        Self::AxisDown,
        Self::AxisBack,
        Self::ReferenceDown,
        Self::ReferenceBack,
        Self::BoxPivotDown,
        Self::BoxPivotBack,
        Self::DoorPivotDown,
        Self::DoorPivotBack,
        Self::SecondDown,
        Self::SecondBack,
        Self::LeafAxisDown,
        Self::LeafAxisBack,
        Self::JointBehind,
        Self::LinkBoxDown,
        Self::LinkBoxBack,
        Self::LinkBelowJoint,
        Self::LinkBehind,
        Self::BoxFirstDown,
        Self::BoxFirstBack,
        Self::DoorFirstDown,
        Self::DoorFirstBack,
        Self::BoxSecondDown,
        Self::BoxSecondBack,
        Self::DoorSecondDown,
        Self::DoorSecondBack,
    ];

    /// The worked example but for the joint of a folding pair.
    pub const EXAMPLE: [Self; 7] = [
        Self::ExampleSize,
        Self::ExamplePanels,
        Self::ExampleOverlayLeft,
        Self::ExampleOverlayRight,
        Self::ExampleOverlayTop,
        Self::ExampleOverlayBottom,
        Self::ExamplePacking,
    ];
}

/// The units of loads, which go with those of lengths.
const LOAD_UNITS: &[super::info::Choice] = &[
    super::info::Choice {
        name: "Millimetre",
        label: "kg, N, N·m",
    },
    super::info::Choice {
        name: "Inch",
        label: "lb, lbf, lbf·in",
    },
];

fields! {
    /// A field of a bore in the inner face of a side.
    DraftSideBoreField of DraftSideBore:

    Down at [.down <by>]
        MM, EMPTY, "down", "down", "Vertically, + down.";
    DownFrom at [.down .from] Kind::Choice(DownDatum::CHOICES), choice("BoxTopUnderside", PAPER),
        "counts from", "down from", "Where that distance counts from.";
    Back at [.back <by>]
        MM, EMPTY, "back", "back", "In depth, + to the back.";
    BackFrom at [.back .from] Kind::Choice(BackDatum::CHOICES), choice("SideFront", PAPER),
        "counts from", "back from", "Where that distance counts from.";
    Diameter at [.drill .diameter] typed(Quantity::Length, BORE), EMPTY,
        "diameter", "diameter", "Diameter of the bore.";
    Depth at [.drill .depth] typed(Quantity::Length, BORE_DEPTH), EMPTY,
        "depth", "depth", "Depth to the full diameter, or the word through.";
    Purpose at [.drill .purpose] TEXT, EMPTY,
        "what it is for", "what it is for", "Printed in the hole table of the sheet.";
    Pass at [.drill .pass] Kind::Count(PASS), count(1, PAPER),
        "pass", "pass", "In which pass of the work it is drilled.";
}

impl DraftSideBoreField {
    /// The columns of a table of these bores.
    pub const COLUMNS: [Self; 6] = [
        Self::Down,
        Self::Back,
        Self::Diameter,
        Self::Depth,
        Self::Purpose,
        Self::Pass,
    ];
}

fields! {
    /// A field of a bore in the panel above the opening.
    DraftTopBoreField of DraftTopBore:

    Across at [.across <by>]
        MM, EMPTY, "across", "across", "Across, + towards the middle.";
    AcrossFrom at [.across .from] Kind::Choice(AcrossDatum::CHOICES), choice("MountingFace", PAPER),
        "counts from", "across from", "Where that distance counts from.";
    Back at [.back <by>]
        MM, EMPTY, "back", "back", "In depth, + to the back.";
    BackFrom at [.back .from] Kind::Choice(BackDatum::CHOICES), choice("SideFront", PAPER),
        "counts from", "back from", "Where that distance counts from.";
    Diameter at [.drill .diameter] typed(Quantity::Length, BORE), EMPTY,
        "diameter", "diameter", "Diameter of the bore.";
    Depth at [.drill .depth] typed(Quantity::Length, BORE_DEPTH), EMPTY,
        "depth", "depth", "Depth to the full diameter, or the word through.";
    Purpose at [.drill .purpose] TEXT, EMPTY,
        "what it is for", "what it is for", "Printed in the hole table of the sheet.";
    Pass at [.drill .pass] Kind::Count(PASS), count(1, PAPER),
        "pass", "pass", "In which pass of the work it is drilled.";
}

impl DraftTopBoreField {
    /// The columns of a table of these bores.
    pub const COLUMNS: [Self; 6] = [
        Self::Across,
        Self::Back,
        Self::Diameter,
        Self::Depth,
        Self::Purpose,
        Self::Pass,
    ];
}

fields! {
    /// A field of a bore in the back of a leaf.
    DraftDoorBoreField of DraftDoorBore:

    Across at [.across <by>]
        MM, EMPTY, "across", "across", "Across, + towards the middle.";
    AcrossFrom at [.across .from] Kind::Choice(AcrossDatum::CHOICES), choice("MountingFace", PAPER),
        "counts from", "across from", "Where that distance counts from.";
    Down at [.down <by>]
        MM, EMPTY, "down", "down", "Vertically, + down.";
    DownFrom at [.down .from] Kind::Choice(DownDatum::CHOICES), choice("BoxTopUnderside", PAPER),
        "counts from", "down from", "Where that distance counts from.";
    Diameter at [.drill .diameter] typed(Quantity::Length, BORE), EMPTY,
        "diameter", "diameter", "Diameter of the bore.";
    Depth at [.drill .depth] typed(Quantity::Length, BORE_DEPTH), EMPTY,
        "depth", "depth", "Depth to the full diameter, or the word through.";
    Purpose at [.drill .purpose] TEXT, EMPTY,
        "what it is for", "what it is for", "Printed in the hole table of the sheet.";
    Pass at [.drill .pass] Kind::Count(PASS), count(1, PAPER),
        "pass", "pass", "In which pass of the work it is drilled.";
    InGlassOrMetal at [.in_glass_or_metal] Kind::Flag, flag(false, PAPER),
        "in glass or metal", "in glass or metal", "Whether the paper allows this bore in a leaf of glass or metal.";
}

impl DraftDoorBoreField {
    /// The columns of a table of these bores.
    pub const COLUMNS: [Self; 6] = [
        Self::Across,
        Self::Down,
        Self::Diameter,
        Self::Depth,
        Self::Purpose,
        Self::Pass,
    ];
}

fields! {
    /// A field of a range of distances to an edge of the leaf.
    EdgeRangeField of DraftEdgeRange:

    Edge at [.edge] Kind::Choice(LeafEdge::CHOICES), choice("Top", PAPER),
        "distance to the", "distance to the", "From the middle of the bore to this edge of its leaf.";
    Least at [.min] typed(Quantity::Length, SPAN), EMPTY,
        "least", "is allowed, least", "From the middle of the bore to this edge of its leaf.";
    Most at [.max] typed(Quantity::Length, SPAN), EMPTY,
        "most", "is allowed, most", "From the middle of the bore to this edge of its leaf.";
}

fields! {
    /// A field of a group that is spread over the width.
    SpreadField of DraftSpread:

    EndInset at [.end_inset] typed(Quantity::Length, DISTANCE), EMPTY,
        "outermost from the side", "outermost from the side",
        "From the inner face of each side to the middle of the outermost group.";
}

fields! {
    /// A field of a part that is cut to length.
    CutPartField of DraftCutPart:

    Name at [.name] TEXT, EMPTY,
        "what it is", "what it is", "What it is called on the list of parts.";
    Deduction at [.deduction] MM, EMPTY,
        "clear width less", "clear width less", "It is as long as the clear width less this.";
    Count at [.count] Kind::Count(PARTS), count(1, PAPER),
        "how many", "how many", "How many go to one door.";
}

impl CutPartField {
    /// The columns of a table of these parts.
    pub const COLUMNS: [Self; 3] = [Self::Name, Self::Deduction, Self::Count];
}
