//! The job: everything that one file holds.

use std::collections::BTreeMap;

use serde::{Deserialize, Serialize};

use crate::acceptance::Acceptance;
use crate::cabinet::WallBox;
use crate::card::{Card, Span};
use crate::door::Door;
use crate::field::HeadField;
use crate::id::{BoxId, CardId, DoorId, Id, Ids};
use crate::length::Unit;
use crate::material::Material;
use crate::room::Room;
use crate::severity::SeveritySetting;

/// The file version that this program writes.
pub const FILE_VERSION: u32 = 2;

/// One job. Field order is file order; `version` comes first.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct Job {
    /// Version of the file's form.
    pub version: u32,
    /// The number of the next identity, see [`crate::id`]; it only rises.
    #[serde(default)]
    pub next_id: u32,
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
    pub cards: Vec<UsedCard>,
    /// The boxes.
    pub boxes: Vec<WallBox>,
    /// Findings that were accepted, with the reason.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub accepted: Vec<Acceptance>,
}

/// A card that the job uses.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
pub struct UsedCard {
    /// What the program calls it.
    #[serde(default, skip_serializing_if = "CardId::is_left_out")]
    pub id: CardId,
    /// The card.
    pub card: Card,
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

/// Limits of shop practice and conventions of drawing. What each is by default, and where that
/// comes from, is said in [`HeadField`].
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
#[serde(deny_unknown_fields, default)]
pub struct Settings {
    /// A closed overlay door stands off the front edges by this, mm.
    pub bumper_gap: f64,
    /// Bores off the fitting by no more than this are no finding, mm.
    pub off_fitting_ignored: f64,
    /// How far the point of a drill runs ahead of the full diameter, mm.
    pub point_lead: f64,
    /// Wood that must be left behind a blind bore and its point, mm.
    pub least_wood_behind: f64,
    /// Wood that must be left between a bore and an edge, mm.
    pub least_edge_web: f64,
    /// Wood that must be left between two bores, mm.
    pub least_bore_web: f64,
    /// Room that moving parts must keep from what they pass, mm.
    pub least_clearance: f64,
    /// Largest force that the hand may need, N.
    pub most_hand_force: f64,
    /// A handle above this height from the floor is out of reach, mm.
    pub highest_reach: f64,
    /// An open door whose lowest point is below this height and stands out into the room is one
    /// to knock the head on, mm.
    pub head_height: f64,
    /// An open door at head height that stands out by no more than this is no trouble, mm.
    pub head_allowance: f64,
    /// Gaps between these two widths can catch a finger while parts move, mm.
    pub finger_gap: Span,
    /// Reveals of neighbouring doors that differ by more than this look uneven, mm.
    pub most_uneven: f64,
    /// A lift-up door may sag by this share of its width, 1 over the number.
    pub sag_ratio: f64,
    /// Load that a square metre of shelf is calculated with for the wall fixing, kg.
    pub shelf_load: f64,
    /// Coldest place that a strut must still hold the heaviest door open in, °C.
    pub coldest: f64,
    /// Hottest place that a strut must still let the lightest door stay shut in, °C.
    pub hottest: f64,
    /// Above this much of its travel, %, a door must hold when it is let go; below it hands expect
    /// it to fall shut.
    pub holds_above: f64,
    /// Step of the machine's bore grid along the side, mm; 0 for none.
    pub grid_step: f64,
    /// Checks that weigh more or less than they do by themselves, or are not run.
    #[serde(skip_serializing_if = "BTreeMap::is_empty")]
    pub weights: BTreeMap<String, SeveritySetting>,
    /// Which way the apex of the opening mark points.
    pub opening_mark: OpeningMark,
    /// Paper of the drilling sheets.
    pub paper: PaperChoice,
    /// Whether sheets print inches in a second column.
    pub inches_on_sheets: bool,
}

impl Default for Settings {
    fn default() -> Self {
        use HeadField as F;
        let usual = |field: F| field.info().usual.number();
        Self {
            bumper_gap: usual(F::BumperGap),
            off_fitting_ignored: usual(F::OffFittingIgnored),
            point_lead: usual(F::PointLead),
            least_wood_behind: usual(F::LeastWoodBehind),
            least_edge_web: usual(F::LeastEdgeWeb),
            least_bore_web: usual(F::LeastBoreWeb),
            least_clearance: usual(F::LeastClearance),
            most_hand_force: usual(F::MostHandForce),
            highest_reach: usual(F::HighestReach),
            head_height: usual(F::HeadHeight),
            head_allowance: usual(F::HeadAllowance),
            finger_gap: Span {
                min: usual(F::FingerGapFrom),
                max: usual(F::FingerGapTo),
            },
            most_uneven: usual(F::MostUneven),
            sag_ratio: usual(F::SagRatio),
            shelf_load: usual(F::ShelfLoad),
            coldest: usual(F::Coldest),
            hottest: usual(F::Hottest),
            holds_above: usual(F::HoldsAbove),
            grid_step: usual(F::GridStep),
            weights: BTreeMap::new(),
            opening_mark: OpeningMark::ApexAtOpeningSide,
            paper: PaperChoice::A4,
            inches_on_sheets: false,
        }
    }
}

impl Settings {
    /// Cold and hot, °C, between which a strut must keep a door open and shut.
    #[must_use]
    pub const fn cold_and_hot(&self) -> [f64; 2] {
        [self.coldest, self.hottest]
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
        let mut ids = Ids::from(1);
        let cards = cards
            .into_iter()
            .map(|card| UsedCard {
                id: ids.give(),
                card,
            })
            .collect();
        Self {
            version: FILE_VERSION,
            next_id: ids.next(),
            name: "Untitled".to_owned(),
            invented: false,
            unit: Unit::default(),
            title_block: TitleBlock::default(),
            settings: Settings::default(),
            room: Room::under(HeadField::Ceiling.info().usual.number()),
            materials,
            cards,
            boxes: Vec::new(),
            accepted: Vec::new(),
        }
    }

    /// The material of that name.
    #[must_use]
    pub fn material(&self, name: &str) -> Option<&Material> {
        self.materials.iter().find(|material| material.name == name)
    }

    /// The box of that identity.
    #[must_use]
    pub fn box_by_id(&self, id: BoxId) -> Option<&WallBox> {
        self.boxes.iter().find(|it| it.id == id)
    }

    /// The same, to be changed.
    pub fn box_by_id_mut(&mut self, id: BoxId) -> Option<&mut WallBox> {
        self.boxes.iter_mut().find(|it| it.id == id)
    }

    /// The door of that identity and the box that it is on.
    #[must_use]
    pub fn door_by_id(&self, id: DoorId) -> Option<(&WallBox, &Door)> {
        self.boxes.iter().find_map(|it| Some((it, it.door(id)?)))
    }

    /// The card of that identity.
    #[must_use]
    pub fn card_by_id(&self, id: CardId) -> Option<&Card> {
        let used = self.cards.iter().find(|it| it.id == id)?;
        Some(&used.card)
    }

    /// The card in use that has this name.
    #[must_use]
    pub fn card_named(&self, name: &str) -> Option<&UsedCard> {
        self.cards.iter().find(|it| it.card.name == name)
    }

    /// The cards in use, without their identities.
    pub fn card_list(&self) -> impl Iterator<Item = &Card> + Clone {
        self.cards.iter().map(|it| &it.card)
    }

    /// A new identity.
    pub fn new_id<I: Id>(&mut self) -> I {
        let mut ids = Ids::from(self.next_id);
        let id = ids.give();
        self.next_id = ids.next();
        id
    }

    /// The identities that come next, for a change that is not yet applied.
    #[must_use]
    pub const fn next_ids(&self) -> Ids {
        Ids::from(self.next_id)
    }

    /// Gives identities to all that has none: boxes with their parts, obstacles, cards. A job that
    /// does not say what number comes next goes on after its largest one.
    pub fn give_ids(&mut self) {
        if self.next_id == 0 {
            self.next_id = self.all_ids().max().unwrap_or(0).saturating_add(1);
        }
        let mut ids = self.next_ids();
        for wall_box in &mut self.boxes {
            wall_box.give_ids(&mut ids);
        }
        for obstacle in &mut self.room.obstacles {
            ids.fill(&mut obstacle.id);
        }
        for used in &mut self.cards {
            ids.fill(&mut used.id);
        }
        self.next_id = ids.next();
    }

    /// The numbers of all identities, 0 where one is not given.
    pub fn all_ids(&self) -> impl Iterator<Item = u32> + '_ {
        let in_room = self.room.obstacles.iter().map(|it| it.id.number());
        let of_cards = self.cards.iter().map(|it| it.id.number());
        let in_boxes = self.boxes.iter().flat_map(WallBox::own_ids);
        in_boxes.chain(in_room).chain(of_cards)
    }
}
