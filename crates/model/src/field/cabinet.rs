//! The box and its panels.

use super::choices::Choices;
use super::info::{
    BY_JOB, COMMON, Info, Kind, NAME, NEW, by_job, choice, count, length, number, words,
};
use super::limits::{ALONG_WALL, BAND, BORE, BORE_DEPTH, DISTANCE, HEIGHT, PIECES, SIGNED, SIZE};
use super::table::{Fields, dotted, edge_of, fields, of_row, place};
use super::value::{FieldValue, NotSet, Value};
use crate::cabinet::{Back, CornerJoint, Drilled, HorizontalPanel, Panel, WallBox};
use crate::edges::Edge;

const SYSTEM: &str = "The 32 mm system of the trade: rows 37 mm from the edges, 5 mm bores.";

fields! {
    /// A field of a box that is not one of its panels', shelves' or doors'.
    BoxField of WallBox:

    Name at [.name] NAME, words("box 1", NEW),
        "name", "Box name", "Name of the box on sheets and lists.";
    Quantity at [.quantity] Kind::Count(PIECES), count(1, NEW),
        "quantity", "Box quantity", "How many boxes are built like this.";
    Width at [.width] length(SIZE), number(800.0, NEW),
        "width", "Box width", "Over both sides.";
    Height at [.height] length(SIZE), number(400.0, NEW),
        "height", "Box height", "Over all.";
    Depth at [.depth] length(SIZE), number(330.0, NEW),
        "depth", "Box depth", "Front edges of the sides to the rear, without door and frame.";
    AlongWall at [.place.along_wall] length(ALONG_WALL), number(0.0, NEW),
        "along the wall", "Place along the wall", "Start of the wall to the box.";
    AboveFloor at [.place.above_floor] length(HEIGHT), number(1400.0, NEW),
        "above the floor", "Place above the floor", "Floor to underside of the box.";
    Joint at [.joint] Kind::Choice(CornerJoint::CHOICES), choice("BetweenSides", NEW),
        "top and bottom", "top and bottom", "Whether top and bottom stand between the sides or lie over them.";

    BackInset at [.back { Back::Grooved { inset, .. } => inset }] length(DISTANCE), number(10.0, NEW),
        "inset", "back inset", "Rear edges of the sides to its rear face.";
    BackGroove at [.back { Back::Grooved { groove, .. } => groove }] length(DISTANCE), number(6.0, NEW),
        "groove", "back groove depth", "Depth of the groove.";
    BackLap at [.back { Back::Rebated { lap, .. } => lap }] length(DISTANCE), number(8.0, NEW),
        "lap", "back lap", "How far it laps onto sides, top and bottom.";

    FrameThickness at [.frame ? .thickness] length(SIZE), number(20.0, NEW),
        "thickness", "frame thickness", "Front to back.";
    FrameMaterial at [.frame ? .material] Kind::Material, by_job(BY_JOB),
        "material", "frame material", "Material of the face frame.";
    FrameMember(edge: Edge) at [.frame ? .members [edge]] length(SIZE), number(40.0, NEW),
        "Widths of stiles and rails", "frame member", "Width of each member.";
    FrameOverhang(edge: Edge) at [.frame ? .overhang [edge]] length(SIGNED), number(0.0, NEW),
        "Inner edges inward of the panel's inner face", "frame overhang",
        "0 is flush with the inner face behind it; negative is outward.";
    ShelfRail at [.frame ? .shelf_rail] length(SIZE), number(40.0, NEW),
        "shelf rail", "shelf rail width", "Rail before each fixed shelf.";

    RowFront at [.system_rows ? .front] length(DISTANCE), number(37.0, SYSTEM),
        "front row", "shelf bores front row", "Behind the front edge of the side.";
    RowRear at [.system_rows ? .rear] length(DISTANCE), number(37.0, SYSTEM),
        "rear row", "shelf bores rear row", "Before the rear edge of the side.";
    RowFirst at [.system_rows ? .first] length(DISTANCE), number(64.0, SYSTEM),
        "first bore", "shelf bores first bore", "Below the top end of the side.";
    RowLast at [.system_rows ? .last] length(DISTANCE), number(64.0, SYSTEM),
        "last bore", "shelf bores last bore", "At least this far above the bottom end.";
    RowDiameter at [.system_rows ? .diameter] length(BORE), number(5.0, SYSTEM),
        "diameter", "shelf bores diameter", "Diameter of the bores.";
    RowDepth at [.system_rows ? .depth] length(BORE_DEPTH), number(13.0, SYSTEM),
        "bore depth", "shelf bores bore depth", "To the full diameter.";
}

impl BoxField {
    /// The numbers of the rows of shelf bores.
    pub const SYSTEM_ROWS: [Self; 6] = [
        Self::RowFront,
        Self::RowRear,
        Self::RowFirst,
        Self::RowLast,
        Self::RowDiameter,
        Self::RowDepth,
    ];
}

fields! {
    /// A field of a panel of a box: side, top, bottom, back or shelf.
    PanelField of Panel:

    Thickness at [.thickness] length(SIZE), number(18.0, NEW),
        "thickness", "thickness", "Finished thickness.";
    Material at [.material] Kind::Material, by_job(BY_JOB),
        "material", "material", "Material of the panel.";
    BandFront at [.bands.front] length(BAND), number(1.0, NEW),
        "front", "band front", "Thickness of the edge band, 0 for none. Sizes are finished sizes.";
    BandBack at [.bands.back] length(BAND), number(0.0, NEW),
        "back", "band back", "Thickness of the edge band, 0 for none. Sizes are finished sizes.";
    BandTopOrLeft at [.bands.top_or_left] length(BAND), number(0.0, NEW),
        "top or left", "band top or left",
        "Thickness of the band on the top end of a side or the left end of another panel, 0 for none.";
    BandBottomOrRight at [.bands.bottom_or_right] length(BAND), number(0.0, NEW),
        "bottom or right", "band bottom or right",
        "Thickness of the band on the bottom end of a side or the right end of another panel, 0 for none.";
    Drilled at [.drilled] Kind::Choice(Drilled::CHOICES), choice("AfterBanding", COMMON),
        "banding: drilled", "drilled", "Whether the machine drills it before or after its edges are banded.";
}

impl PanelField {
    /// The four bands.
    pub const BANDS: [Self; 4] = [
        Self::BandFront,
        Self::BandBack,
        Self::BandTopOrLeft,
        Self::BandBottomOrRight,
    ];
}

fields! {
    /// How a top, bottom or shelf sits between the sides.
    HorizontalField of HorizontalPanel:

    SetBack at [.set_back] length(DISTANCE), number(0.0, NEW),
        "set back", "set back", "Front edge behind the sides' front edges.";
    Housing at [.housing] length(DISTANCE), number(0.0, NEW),
        "housed", "housing", "How far each end is let into the side.";
    SetIn at [.set_in] length(DISTANCE), number(0.0, NEW),
        "set in", "set in", "From the ends of the sides inwards; 0 is flush.";
}
