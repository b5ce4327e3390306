//! Every value of a job and of a card's draft, once: where it stands, what it counts, what it may
//! be, what it usually is, and what it is called.
//!
//! | how do I… | |
//! |---|---|
//! | know what a field is | [`Field::info`], [`Info`] |
//! | get or set one of a job | [`FieldRef::get`], [`FieldRef::set`] |
//! | change one so that it can be undone | [`crate::edit::Edit::Set`] |
//! | go through all fields of a part | [`Fields::all`] |
//! | look for one by what it is called | [`find`], [`find_among`] |
//! | add one | a row in the table of its part: `head.rs`, `room.rs`, `material.rs`, `cabinet.rs`, `shelf.rs`, `door.rs`, `draft.rs` |
//!
//! A row of a table is all that the program knows of a field. Validation, the form and its
//! tooltips, the search and edits read it; none of them has a limit or a name of its own. To get
//! a field allocates nothing, and no text is read on the way: a field is a variant of an enum and
//! its place a pattern of the language.

mod cabinet;
mod choices;
mod door;
mod draft;
mod find;
mod head;
mod info;
pub mod limits;
mod material;
mod reference;
mod room;
mod shelf;
mod size_columns;
mod table;
#[cfg(test)]
mod tests;
mod value;

pub use cabinet::{BoxField, HorizontalField, PanelField};
pub use choices::Choices;
pub use door::{BoreField, DoorField, LeafField};
pub use draft::{
    CutPartField, DraftDoorBoreField, DraftField, DraftSideBoreField, DraftTopBoreField,
    EdgeRangeField, SpreadField,
};
pub use find::{find, find_among};
pub use head::HeadField;
pub use info::{Choice, Info, Kind, Quantity, Usual};
pub use limits::Limits;
pub use material::MaterialField;
pub use reference::{Field, FieldRef};
pub use room::ObstacleField;
pub use shelf::{DividerField, FixedShelfField, LooseShelfField};
pub use size_columns::SizeColumn;
pub use table::{Fields, Path};
pub use value::{FieldValue, NotSet, Value};
