//! One display list and the views and sheets drawn with it.
//!
//! | how do I… | |
//! | --- | --- |
//! | draw the front view of a box | [`views::elevation`] |
//! | draw its section, door closed or open | [`views::section`] |
//! | find what is under the pointer | [`views::hit`] |
//! | make the pages of a job | [`job_sheets::job_sheets`] |
//! | draw its plan | [`views::plan`] |
//! | draw the picture of a fitting card | [`card_picture::card_picture`] |
//!
//! **Invariants.** Nothing here computes a bore, a door or a pose: all of that is read from
//! [`flapwright_rules::inspection`]. Nothing here knows a file format or the window. The same
//! input gives the same list.

pub mod brush;
pub mod card_picture;
pub mod cautions;
pub mod dimension;
mod draft;
mod edge_mark;
mod fit;
#[cfg(test)]
mod fixture;
mod grain;
pub mod handle;
pub mod hatch;
pub mod job_sheets;
pub mod layout;
pub mod list;
pub mod opening_mark;
#[cfg(test)]
mod overlap;
pub mod page_kind;
mod panel_sheet;
pub mod paper;
mod paper_frame;
pub mod pen;
pub mod running;
pub mod scale;
pub mod sheet;
pub mod text;
pub mod title_block;
pub mod views;
pub mod words;
