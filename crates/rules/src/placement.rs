//! From the fittings' datums to bores on every face, through typed spaces.

pub mod body;
pub mod door_motions;
pub mod door_place;
pub mod edge_moves;
pub mod faces;
pub mod fitting;
pub mod leaf_bores;
pub mod opening;
mod panels;
mod reports;
pub mod taken_over;

pub use reports::{place_among, place_box};
