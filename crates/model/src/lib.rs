//! Lengths, materials, boxes, doors, fitting cards and the job file of Flapwright.
//!
//! This crate knows no drawing, no checks and no dialogs. A [`job::Job`] that came through
//! [`file::read_job`] or [`validate::validate`] is sound: every other crate relies on it.

pub mod acceptance;
pub mod box_parts;
pub mod cabinet;
pub mod card;
pub mod card_difference;
pub mod card_draft;
pub mod card_record;
pub mod change;
mod defaults;
pub mod door;
pub mod edges;
pub mod edit;
pub mod field;
pub mod file;
pub mod id;
pub mod job;
pub mod length;
pub mod lift;
pub mod linkage;
pub mod material;
pub mod measure;
pub mod message;
pub mod opening;
pub mod part;
pub mod record;
pub mod room;
pub mod severity;
pub mod space;
pub mod validate;
