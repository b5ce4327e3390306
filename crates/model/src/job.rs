//! The job: everything that one file holds.

use serde::{Deserialize, Serialize};

use crate::cabinet::WallBox;
use crate::card::Card;
use crate::length::Unit;
use crate::material::Material;

/// The file version that this program writes.
pub const FILE_VERSION: u32 = 1;

/// One job. Field order is file order; `version` comes first.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// Version of the file's form.
    pub version: u32,
    /// Name of the job.
    pub name: String,
    /// Whether the job is invented for demonstration; printed on every sheet.
    #[serde(default)]
    pub invented: bool,
    /// Unit of forms and labels. Files and sheets are in mm.
    pub unit: Unit,
    /// Texts of the title block.
    #[serde(default)]
    pub title_block: TitleBlock,
    /// Limits and conventions.
    #[serde(default)]
    pub settings: Settings,
    /// The room.
    pub room: Room,
    /// Material table.
    pub materials: Vec<Material>,
    /// Cards in use.
    pub cards: Vec<Card>,
    /// The boxes.
    pub boxes: Vec<WallBox>,
}

/// Texts of the title block (fields of ISO 7200, restated second-hand). Empty ones print ruled.
#[derive(Debug, Clone, PartialEq, Eq, Default, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct TitleBlock {
    /// Legal owner.
    pub owner: String,
    /// Identification number.
    pub number: String,
    /// Date of issue, as it is to be printed.
    pub date_of_issue: String,
    /// Who made the drawing.
    pub creator: String,
    /// Who approved it.
    pub approver: String,
    /// Revision.
    pub revision: String,
}

/// The room that the boxes hang in, mm.
#[derive(Debug, Clone, Copy, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Room {
    /// Height of the ceiling above the floor.
    pub ceiling: f64,
}

/// Limits of shop practice and conventions of drawing, each with a default.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Settings {
    /// A closed overlay door stands off the front edges by this, mm. Common practice, no source.
    pub bumper_gap: f64,
    /// Bores off the fitting by no more than this are no finding, mm. Common practice, no source.
    pub off_fitting_ignored: f64,
    /// How far the point of a drill runs ahead of the full diameter, mm. Common practice, no
    /// source.
    pub point_lead: f64,
    /// Wood that must be left behind a blind bore and its point, mm. Common practice, no source.
    pub least_wood_behind: f64,
    /// Wood that must be left between a bore and an edge, mm. Common practice, no source.
    pub least_edge_web: f64,
    /// Wood that must be left between two bores, mm. Common practice, no source.
    pub least_bore_web: f64,
    /// Which way the apex of the opening mark points.
    pub opening_mark: OpeningMark,
    /// Paper of the drilling sheets.
    pub paper: PaperChoice,
    /// Whether sheets print inches in a second column.
    pub inches_on_sheets: bool,
}

impl Default for Settings {
    fn default() -> Self {
        Self {
            bumper_gap: 2.0,
            off_fitting_ignored: 0.2,
            point_lead: 2.0,
            least_wood_behind: 2.0,
            least_edge_web: 3.0,
            least_bore_web: 3.0,
            opening_mark: OpeningMark::ApexAtOpeningSide,
            paper: PaperChoice::A4,
            inches_on_sheets: false,
        }
    }
}

/// The two published, opposite conventions for the opening mark in an elevation.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum OpeningMark {
    /// Base at the hinge side, apex at the opening side, continuous lines (Austrian, German,
    /// Hungarian practice; OENORM A 6240-2 as cited by a school textbook).
    ApexAtOpeningSide,
    /// Apex at the hinge side, dashed lines (practice in the USA).
    ApexAtHinge,
}

/// Paper for sheets.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub enum PaperChoice {
    /// ISO 216 A4.
    A4,
    /// ISO 216 A3.
    A3,
    /// 8.5 by 11 in.
    Letter,
    /// 11 by 17 in.
    Tabloid,
}

impl Job {
    /// A new, empty job with the material table and cards given.
    #[must_use]
    pub fn empty(materials: Vec<Material>, cards: Vec<Card>) -> Self {
        Self {
            version: FILE_VERSION,
            name: "Untitled".to_owned(),
            invented: false,
            unit: Unit::default(),
            title_block: TitleBlock::default(),
            settings: Settings::default(),
            room: Room { ceiling: 2500.0 },
            materials,
            cards,
            boxes: Vec::new(),
        }
    }

    /// The material of that name.
    #[must_use]
    pub fn material(&self, name: &str) -> Option<&Material> {
        self.materials.iter().find(|material| material.name == name)
    }

    /// The card of that name.
    #[must_use]
    pub fn card(&self, name: &str) -> Option<&Card> {
        self.cards.iter().find(|card| card.name == name)
    }
}
