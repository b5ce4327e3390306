//! One display list and the views and sheets drawn with it.
//!
//! | how do I… | |
//! | --- | --- |
//! | draw the front view of a box | [`views::elevation`] |
//! | draw its section, door closed or open | [`views::section`] |
//! | find what is under the pointer | [`views::hit`] |
//! | make the drilling sheets of a job | [`panel_sheet::sheets`] |
//! | draw the picture of a fitting card | [`card_picture::card_picture`] |
//! | check that no texts lie on each other | [`overlap::overlapping_texts`] |
//!
//! **Invariants.** Nothing here computes a bore, a door or a pose: all of that is read from
//! [`flapwright_rules::inspection`]. Nothing here knows a file format or the window. The same
//! input gives the same list.

pub mod brush;
pub mod card_picture;
pub mod cautions;
pub mod dimension;
#[cfg(test)]
mod fixture;
pub mod hatch;
pub mod layout;
pub mod list;
pub mod opening_mark;
pub mod overlap;
pub mod panel_sheet;
pub mod paper;
pub mod pen;
pub mod running;
pub mod scale;
pub mod sheet;
pub mod text;
pub mod title_block;
pub mod views;
pub mod words;
