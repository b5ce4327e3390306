//! Files of version 1: boxes, openings, shelves, doors and obstacles had no identities, a part was a
//! place in a list, a card was chosen by its name, and an accepted finding was found again by a place
//! in words.
//!
//! A type that has changed since is kept here as it was; the others are read as today's. Whoever
//! changes one of those keeps the old form here first.

mod boxes;
mod convert;
mod names;
mod places;

use std::collections::BTreeMap;

use serde::Deserialize;

use self::boxes::WallBox;
use super::{ReadError, text_error};
use crate::acceptance::AcceptedNumber;
use crate::card::Card;
use crate::job::{Job, Settings, TitleBlock};
use crate::length::Unit;
use crate::material::Material;
use crate::room::Extent;
use crate::severity::Severity;

/// Reads a job of version 1 and turns it into today's form.
pub(super) fn read(text: &str) -> Result<Job, ReadError> {
    let old: OldJob = ron::from_str(text).map_err(|error| text_error(&error))?;
    convert::job(old).map_err(ReadError::Unsound)
}

#[derive(Deserialize)]
#[serde(rename = "Job", deny_unknown_fields)]
struct OldJob {
    /// Always 1, or this form would not have been taken.
    #[serde(rename = "version")]
    _version: u32,
    name: String,
    #[serde(default)]
    invented: bool,
    unit: Unit,
    #[serde(default)]
    title_block: TitleBlock,
    #[serde(default)]
    settings: Settings,
    room: Room,
    materials: Vec<Material>,
    cards: Vec<Card>,
    boxes: Vec<WallBox>,
    #[serde(default)]
    accepted: Vec<Acceptance>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Room {
    ceiling: f64,
    #[serde(default)]
    obstacles: Vec<Obstacle>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Obstacle {
    name: String,
    along_wall: Extent,
    above_floor: Extent,
    from_wall: Extent,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
struct Acceptance {
    check: String,
    place: String,
    reason: String,
    severity: Severity,
    #[serde(default)]
    numbers: Vec<AcceptedNumber>,
}

/// Settings with the checks in them called as they are today.
fn with_new_names(mut settings: Settings) -> Settings {
    settings.weights = std::mem::take(&mut settings.weights)
        .into_iter()
        .map(|(name, weight)| (names::of_today(&name).to_owned(), weight))
        .collect::<BTreeMap<_, _>>();
    settings
}

#[cfg(test)]
mod tests;
