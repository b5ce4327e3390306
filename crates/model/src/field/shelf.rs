//! Shelves and dividers.

use super::info::{Info, NEW, Quantity, length, number, optional, unset};
use super::limits::{DISTANCE, SIGNED, SIZE};
use super::table::{Fields, dotted, edge_of, fields, of_row, place};
use super::value::{FieldValue, NotSet, Value};
use crate::edges::Edge;
use crate::opening::{Divider, FixedShelf, LooseShelf};

/// A gap between two doors that is usual in the trade.
const GAP: &str = "The gap between two doors that is usual in the trade; no source.";
const HALF: &str = "Half the height of the box.";
const ALIKE: &str = "Both doors lap alike.";

fields! {
    /// A field of a fixed shelf that is not its panel's.
    FixedShelfField of FixedShelf:

    Up at [.up] length(SIZE), number(200.0, HALF),
        "underside at", "height", "From the underside of the box up to its underside.";
    Gap at [.gap] length(SIGNED), number(3.0, GAP),
        "gap", "gap", "Clear distance between the overlay doors above and below.";
    UpperOverlay at [.upper_overlay] optional(Quantity::Length, SIGNED), unset(ALIKE),
        "upper overlay", "upper overlay", "How far the door above laps over the shelf.";
}

fields! {
    /// A field of a shelf on pins that is not its panel's.
    LooseShelfField of LooseShelf:

    Up at [.up] length(SIZE), number(200.0, HALF),
        "underside at", "height", "From the underside of the box up to its underside.";
}

fields! {
    /// A field of a divider that is not its panel's.
    DividerField of Divider:

    Across at [.across] length(SIZE), number(400.0, "Half the width of the box."),
        "left face at", "place", "From the box's left outer face to its left face.";
    Gap at [.gap] length(SIGNED), number(3.0, GAP),
        "gap", "gap", "Clear distance between the overlay doors at its left and right.";
    LeftOverlay at [.left_overlay] optional(Quantity::Length, SIGNED), unset(ALIKE),
        "left overlay", "left overlay", "How far the door at its left laps over the divider.";
    SetBack at [.set_back] length(DISTANCE), number(0.0, NEW),
        "set back", "set back", "Front edge behind the sides' front edges.";
    Housing at [.housing] length(DISTANCE), number(0.0, NEW),
        "housed", "housing", "How far each end is let into the panel above and below.";
}
