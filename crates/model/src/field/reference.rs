//! A field of a certain part of a certain job.

use serde::{Deserialize, Serialize};

use super::info::Info;
use super::table::Fields;
use super::value::{NotSet, Value};
use super::{
    BoreField, BoxField, DividerField, DoorField, FixedShelfField, HeadField, HorizontalField,
    LeafField, LooseShelfField, MaterialField, ObstacleField, PanelField,
};
use crate::box_parts::{ShelfMut, ShelfRef};
use crate::cabinet::{HorizontalPanel, Panel, WallBox};
use crate::door::{BoreReference, Door, DrilledBore};
use crate::id::{BoxId, DividerId, DoorId, ObstacleId, ShelfId};
use crate::job::Job;
use crate::part::{LeafId, Part, PartId};

/// A field of a job, whichever part it is of.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum Field {
    /// Of the job as a whole.
    Head(HeadField),
    /// Of an obstacle.
    Obstacle(ObstacleField),
    /// Of a material.
    Material(MaterialField),
    /// Of a box.
    Box(BoxField),
    /// Of a side, top, bottom, back, shelf or divider.
    Panel(PanelField),
    /// Of a top, bottom or shelf.
    Horizontal(HorizontalField),
    /// Of a fixed shelf.
    FixedShelf(FixedShelfField),
    /// Of a loose shelf.
    LooseShelf(LooseShelfField),
    /// Of a divider.
    Divider(DividerField),
    /// Of a door.
    Door(DoorField),
    /// Of a leaf.
    Leaf(LeafField),
    /// Of a bore that an existing door has.
    Bore(BoreField),
}

/// Does the same with a field of any part.
macro_rules! each {
    ($field:expr, $it:ident => $body:expr) => {
        match $field {
            Field::Head($it) => $body,
            Field::Obstacle($it) => $body,
            Field::Material($it) => $body,
            Field::Box($it) => $body,
            Field::Panel($it) => $body,
            Field::Horizontal($it) => $body,
            Field::FixedShelf($it) => $body,
            Field::LooseShelf($it) => $body,
            Field::Divider($it) => $body,
            Field::Door($it) => $body,
            Field::Leaf($it) => $body,
            Field::Bore($it) => $body,
        }
    };
}

impl Field {
    /// All fields, those of the job as a whole first.
    pub fn all() -> impl Iterator<Item = Self> {
        HeadField::all()
            .map(Self::Head)
            .chain(ObstacleField::all().map(Self::Obstacle))
            .chain(MaterialField::all().map(Self::Material))
            .chain(BoxField::all().map(Self::Box))
            .chain(PanelField::all().map(Self::Panel))
            .chain(HorizontalField::all().map(Self::Horizontal))
            .chain(FixedShelfField::all().map(Self::FixedShelf))
            .chain(LooseShelfField::all().map(Self::LooseShelf))
            .chain(DividerField::all().map(Self::Divider))
            .chain(DoorField::all().map(Self::Door))
            .chain(LeafField::all().map(Self::Leaf))
            .chain(BoreField::all().map(Self::Bore))
    }

    /// What the program knows of it.
    #[must_use]
    pub fn info(self) -> &'static Info {
        each!(self, it => it.info())
    }

    /// Its full name within its part.
    #[must_use]
    pub fn name(self) -> String {
        each!(self, it => it.name())
    }

    /// Where it stands in its part, with a dot before it.
    #[must_use]
    pub fn path(self) -> super::Path {
        each!(self, it => it.path())
    }
}

/// A field of a certain part of a job.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub enum FieldRef {
    /// Of the job as a whole.
    Head(HeadField),
    /// Of an obstacle.
    Obstacle(ObstacleId, ObstacleField),
    /// Of a material, by its place in the table: materials have no other identity.
    Material(u32, MaterialField),
    /// Of a box.
    Box(BoxId, BoxField),
    /// Of a panel: side, top, bottom, back, shelf or divider.
    Panel(PartId, PanelField),
    /// Of a top, bottom or shelf.
    Horizontal(PartId, HorizontalField),
    /// Of a fixed shelf.
    FixedShelf(BoxId, ShelfId, FixedShelfField),
    /// Of a loose shelf.
    LooseShelf(BoxId, ShelfId, LooseShelfField),
    /// Of a divider.
    Divider(BoxId, DividerId, DividerField),
    /// Of a door.
    Door(BoxId, DoorId, DoorField),
    /// Of a leaf of a door.
    Leaf(BoxId, DoorId, LeafId, LeafField),
    /// Of a bore that an existing door has, by its place in the list.
    Bore(BoxId, DoorId, u32, BoreField),
}

impl FieldRef {
    /// The field, whichever part it is of.
    #[must_use]
    pub const fn field(self) -> Field {
        match self {
            Self::Head(field) => Field::Head(field),
            Self::Obstacle(_, field) => Field::Obstacle(field),
            Self::Material(_, field) => Field::Material(field),
            Self::Box(_, field) => Field::Box(field),
            Self::Panel(_, field) => Field::Panel(field),
            Self::Horizontal(_, field) => Field::Horizontal(field),
            Self::FixedShelf(_, _, field) => Field::FixedShelf(field),
            Self::LooseShelf(_, _, field) => Field::LooseShelf(field),
            Self::Divider(_, _, field) => Field::Divider(field),
            Self::Door(_, _, field) => Field::Door(field),
            Self::Leaf(_, _, _, field) => Field::Leaf(field),
            Self::Bore(_, _, _, field) => Field::Bore(field),
        }
    }

    /// What the program knows of it.
    #[must_use]
    pub fn info(self) -> &'static Info {
        self.field().info()
    }

    /// All fields that a job has, part by part: what lists, bulk changes and tests go through.
    #[must_use]
    pub fn all_of(job: &Job) -> Vec<Self> {
        let mut all = Self::of_job_itself(job);
        all.extend(job.boxes.iter().flat_map(Self::of_box));
        all
    }

    /// All fields of a job that are of no box.
    #[must_use]
    pub fn of_job_itself(job: &Job) -> Vec<Self> {
        let mut all: Vec<Self> = HeadField::all().map(Self::Head).collect();
        for obstacle in &job.room.obstacles {
            all.extend(ObstacleField::all().map(|it| Self::Obstacle(obstacle.id, it)));
        }
        for at in (0..).take(job.materials.len()) {
            all.extend(MaterialField::all().map(|it| Self::Material(at, it)));
        }
        all.retain(|field| field.get(job).is_some());
        all
    }

    /// All fields of a box and of the parts that it has.
    #[must_use]
    pub fn of_box(wall_box: &WallBox) -> Vec<Self> {
        let id = wall_box.id;
        let mut all: Vec<Self> = BoxField::all().map(|it| Self::Box(id, it)).collect();
        let shelves = wall_box.shelves();
        let parts = [
            Part::LeftSide,
            Part::RightSide,
            Part::Top,
            Part::Bottom,
            Part::Back,
        ]
        .into_iter()
        .chain(shelves.iter().map(|it| Part::Shelf(it.id())))
        .chain(
            wall_box
                .dividers()
                .into_iter()
                .map(|it| Part::Divider(it.id)),
        );
        for part in parts {
            let part = PartId { box_id: id, part };
            all.extend(PanelField::all().map(|it| Self::Panel(part, it)));
            all.extend(HorizontalField::all().map(|it| Self::Horizontal(part, it)));
        }
        for shelf in shelves.iter().map(|it| it.id()) {
            all.extend(FixedShelfField::all().map(|it| Self::FixedShelf(id, shelf, it)));
            all.extend(LooseShelfField::all().map(|it| Self::LooseShelf(id, shelf, it)));
        }
        for divider in wall_box.dividers() {
            all.extend(DividerField::all().map(|it| Self::Divider(id, divider.id, it)));
        }
        for door in wall_box.doors() {
            all.extend(DoorField::all().map(|it| Self::Door(id, door.id, it)));
            for (leaf, _) in door.leaves.iter() {
                all.extend(LeafField::all().map(|it| Self::Leaf(id, door.id, leaf, it)));
            }
            if let BoreReference::AsDrilled(bores) = &door.bores_follow {
                for at in (0..).take(bores.len()) {
                    all.extend(BoreField::all().map(|it| Self::Bore(id, door.id, at, it)));
                }
            }
        }
        all.retain(|field| field.get_in(wall_box).is_some());
        all
    }

    /// The box that it is of; none for what is of the job as a whole.
    #[must_use]
    pub const fn box_id(self) -> Option<BoxId> {
        match self {
            Self::Head(_) | Self::Obstacle(..) | Self::Material(..) => None,
            Self::Panel(part, _) | Self::Horizontal(part, _) => Some(part.box_id),
            Self::Box(id, _)
            | Self::FixedShelf(id, _, _)
            | Self::LooseShelf(id, _, _)
            | Self::Divider(id, _, _)
            | Self::Door(id, _, _)
            | Self::Leaf(id, _, _, _)
            | Self::Bore(id, _, _, _) => Some(id),
        }
    }

    /// Its value; `None` where the job has no such part or the part no such field.
    #[must_use]
    pub fn get(self, job: &Job) -> Option<Value<'_>> {
        match self {
            Self::Head(field) => field.get(job),
            Self::Obstacle(id, field) => field.get(job.room.obstacle(id)?),
            Self::Material(at, field) => field.get(job.materials.get(at as usize)?),
            Self::Box(_, _)
            | Self::Panel(_, _)
            | Self::Horizontal(_, _)
            | Self::FixedShelf(_, _, _)
            | Self::LooseShelf(_, _, _)
            | Self::Divider(_, _, _)
            | Self::Door(_, _, _)
            | Self::Leaf(_, _, _, _)
            | Self::Bore(_, _, _, _) => self.get_in(job.box_by_id(self.box_id()?)?),
        }
    }

    /// Its value in a box that is at hand already, be that in the job or not.
    #[must_use]
    pub fn get_in(self, wall_box: &WallBox) -> Option<Value<'_>> {
        match self {
            Self::Head(_) | Self::Obstacle(..) | Self::Material(..) => None,
            Self::Box(_, field) => field.get(wall_box),
            Self::Panel(part, field) => field.get(wall_box.panel(part.part)?),
            Self::Horizontal(part, field) => field.get(wall_box.horizontal(part.part)?),
            Self::FixedShelf(_, id, field) => field.get(wall_box.fixed_shelf(id)?),
            Self::LooseShelf(_, id, field) => match wall_box.shelf(id)? {
                ShelfRef::Loose(shelf) => field.get(shelf),
                ShelfRef::Fixed(_) => None,
            },
            Self::Divider(_, id, field) => field.get(wall_box.divider(id)?),
            Self::Door(_, id, field) => field.get(wall_box.door(id)?),
            Self::Leaf(_, id, leaf, field) => field.get(wall_box.door(id)?.leaves.get(leaf)?),
            Self::Bore(_, id, at, field) => field.get(bore_of(wall_box.door(id)?, at)?),
        }
    }

    /// Puts another value in place and gives the old one back. Limits are not looked at:
    /// [`crate::edit::apply`] does both.
    ///
    /// # Errors
    /// [`NotSet`]; the job is then as it was.
    pub fn set(self, job: &mut Job, value: &Value<'_>) -> Result<Value<'static>, NotSet> {
        match self {
            Self::Head(field) => field.set(job, value),
            Self::Obstacle(id, field) => {
                let mut all = job.room.obstacles.iter_mut();
                let obstacle = all.find(|it| it.id == id).ok_or(NotSet::Absent)?;
                field.set(obstacle, value)
            }
            Self::Material(at, field) => {
                let material = job.materials.get_mut(at as usize).ok_or(NotSet::Absent)?;
                field.set(material, value)
            }
            Self::Box(id, _)
            | Self::FixedShelf(id, _, _)
            | Self::LooseShelf(id, _, _)
            | Self::Divider(id, _, _)
            | Self::Door(id, _, _)
            | Self::Leaf(id, _, _, _)
            | Self::Bore(id, _, _, _)
            | Self::Panel(PartId { box_id: id, .. }, _)
            | Self::Horizontal(PartId { box_id: id, .. }, _) => {
                self.set_in(job.box_by_id_mut(id).ok_or(NotSet::Absent)?, value)
            }
        }
    }

    /// The same in a box that is at hand already.
    ///
    /// # Errors
    /// [`NotSet`]; the box is then as it was.
    pub fn set_in(
        self,
        wall_box: &mut WallBox,
        value: &Value<'_>,
    ) -> Result<Value<'static>, NotSet> {
        match self {
            Self::Head(_) | Self::Obstacle(..) | Self::Material(..) => Err(NotSet::Absent),
            Self::Box(_, field) => field.set(wall_box, value),
            Self::Panel(part, field) => put(field, wall_box.panel_mut(part.part), value),
            Self::Horizontal(part, field) => put(field, wall_box.horizontal_mut(part.part), value),
            Self::FixedShelf(_, id, field) => put(field, wall_box.fixed_shelf_mut(id), value),
            Self::LooseShelf(_, id, field) => match wall_box.shelf_mut(id) {
                Some(ShelfMut::Loose(shelf)) => field.set(shelf, value),
                Some(ShelfMut::Fixed(_)) | None => Err(NotSet::Absent),
            },
            Self::Divider(_, id, field) => put(field, wall_box.divider_mut(id), value),
            Self::Door(_, id, field) => put(field, wall_box.door_mut(id), value),
            Self::Leaf(_, id, leaf, field) => {
                let door = wall_box.door_mut(id);
                put(
                    field,
                    door.and_then(|door| door.leaves.get_mut(leaf)),
                    value,
                )
            }
            Self::Bore(_, id, at, field) => {
                let door = wall_box.door_mut(id);
                put(field, door.and_then(|door| bore_of_mut(door, at)), value)
            }
        }
    }

    /// Where it stands in the job, as messages name it:
    /// `box b7 "plates".door d9.tweaks.top`.
    #[must_use]
    pub fn path(self, job: &Job) -> String {
        let mut path = match self {
            Self::Head(_) => {
                // The head is the job itself: no dot before the first name.
                return self.field().path().to_string().split_off(1);
            }
            Self::Obstacle(id, _) => {
                let name = job.room.obstacle(id).map_or("", |it| it.name.as_str());
                format!("room.obstacle {id} \"{name}\"")
            }
            Self::Material(at, _) => {
                let name = job.materials.get(at as usize);
                let name = name.map_or("", |it| it.name.as_str());
                format!("materials[{at}] \"{name}\"")
            }
            Self::Box(id, _)
            | Self::FixedShelf(id, _, _)
            | Self::LooseShelf(id, _, _)
            | Self::Divider(id, _, _)
            | Self::Door(id, _, _)
            | Self::Leaf(id, _, _, _)
            | Self::Bore(id, _, _, _)
            | Self::Panel(PartId { box_id: id, .. }, _)
            | Self::Horizontal(PartId { box_id: id, .. }, _) => {
                let name = job.box_by_id(id).map_or("", |it| it.name.as_str());
                format!("box {id} \"{name}\"{}", self.within_box())
            }
        };
        path.push_str(&self.field().path().to_string());
        path
    }

    /// Where its part stands in its box.
    fn within_box(self) -> String {
        match self {
            Self::Head(_) | Self::Obstacle(..) | Self::Material(..) | Self::Box(..) => {
                String::new()
            }
            Self::Panel(part, _) => format!("{}{}", place_of(part.part), inside(part.part)),
            Self::Horizontal(part, _) => place_of(part.part),
            Self::FixedShelf(_, id, _) | Self::LooseShelf(_, id, _) => format!(".shelf {id}"),
            Self::Divider(_, id, _) => format!(".divider {id}"),
            Self::Door(_, id, _) => format!(".door {id}"),
            Self::Leaf(_, id, LeafId::Only, _) => format!(".door {id}.leaves"),
            Self::Leaf(_, id, LeafId::Upper, _) => format!(".door {id}.leaves.upper"),
            Self::Leaf(_, id, LeafId::Lower, _) => format!(".door {id}.leaves.lower"),
            Self::Bore(_, id, at, _) => format!(".door {id}.bores_follow[{at}]"),
        }
    }

    /// Its name with that of its part, as a screen reader says it: `upper leaf band top`.
    #[must_use]
    pub fn name(self, job: &Job) -> String {
        let of = match self {
            Self::Head(_) | Self::Box(..) | Self::Material(..) | Self::Door(..) => {
                return self.field().name();
            }
            Self::Obstacle(id, _) => {
                let at = job.room.obstacles.iter().position(|it| it.id == id);
                format!("obstacle {}", at.map_or(0, |at| at + 1))
            }
            Self::Panel(part, field) => {
                let of = part_words(job, part);
                return format!("{of} {}", band_name(part.part, field));
            }
            Self::Horizontal(part, _) => part_words(job, part),
            Self::FixedShelf(box_id, id, _) | Self::LooseShelf(box_id, id, _) => part_words(
                job,
                PartId {
                    box_id,
                    part: Part::Shelf(id),
                },
            ),
            Self::Divider(..) => "divider".to_owned(),
            Self::Leaf(_, _, leaf, _) => leaf_words(leaf).to_owned(),
            Self::Bore(_, _, at, _) => format!("bore {}", at + 1),
        };
        format!("{of} {}", self.field().name())
    }

    /// What a change of it is called in a list of changes: `plates: left side thickness`.
    #[must_use]
    pub fn title(self, job: &Job) -> String {
        let name = self.name(job);
        let Some(wall_box) = self.box_id().and_then(|id| job.box_by_id(id)) else {
            return format!("job: {name}");
        };
        let door = match self {
            Self::Door(_, id, _) | Self::Leaf(_, id, _, _) | Self::Bore(_, id, _, _) => Some(id),
            _ => None,
        };
        let doors = wall_box.doors();
        let which = door
            .filter(|_| doors.len() > 1)
            .and_then(|id| doors.iter().position(|it| it.id == id));
        match which {
            Some(at) => format!("{}: door {}: {name}", wall_box.name, at + 1),
            None => format!("{}: {name}", wall_box.name),
        }
    }
}

fn put<F: Fields>(
    field: F,
    part: Option<&mut F::Part>,
    value: &Value<'_>,
) -> Result<Value<'static>, NotSet> {
    field.set(part.ok_or(NotSet::Absent)?, value)
}

fn bore_of(door: &Door, at: u32) -> Option<&DrilledBore> {
    match &door.bores_follow {
        BoreReference::AsDrilled(bores) => bores.get(at as usize),
        BoreReference::Fitting | BoreReference::Edges { .. } => None,
    }
}

fn bore_of_mut(door: &mut Door, at: u32) -> Option<&mut DrilledBore> {
    match &mut door.bores_follow {
        BoreReference::AsDrilled(bores) => bores.get_mut(at as usize),
        BoreReference::Fitting | BoreReference::Edges { .. } => None,
    }
}

/// Where a panel, or the piece that holds it, stands in its box.
fn place_of(part: Part) -> String {
    match part {
        Part::LeftSide => ".left".to_owned(),
        Part::RightSide => ".right".to_owned(),
        Part::Top => ".top".to_owned(),
        Part::Bottom => ".bottom".to_owned(),
        Part::Back => ".back".to_owned(),
        Part::Shelf(id) => format!(".shelf {id}.piece"),
        Part::Divider(id) => format!(".divider {id}"),
        Part::Frame | Part::Leaf { .. } => String::new(),
    }
}

/// The same from there to the panel itself.
const fn inside(part: Part) -> &'static str {
    match part {
        Part::LeftSide | Part::RightSide | Part::Frame | Part::Leaf { .. } => "",
        Part::Top | Part::Bottom | Part::Back | Part::Shelf(_) | Part::Divider(_) => ".panel",
    }
}

fn part_words(job: &Job, part: PartId) -> String {
    match part.part {
        Part::LeftSide => "left side".to_owned(),
        Part::RightSide => "right side".to_owned(),
        Part::Top => "top".to_owned(),
        Part::Bottom => "bottom".to_owned(),
        Part::Back => "back".to_owned(),
        Part::Shelf(id) => {
            let shelves = job.box_by_id(part.box_id).map(WallBox::shelves);
            let at = shelves.and_then(|all| all.iter().position(|it| it.id() == id));
            format!("shelf {}", at.map_or(0, |at| at + 1))
        }
        Part::Divider(_) => "divider".to_owned(),
        Part::Frame => "face frame".to_owned(),
        Part::Leaf { leaf, .. } => leaf_words(leaf).to_owned(),
    }
}

const fn leaf_words(leaf: LeafId) -> &'static str {
    match leaf {
        LeafId::Only => "leaf",
        LeafId::Upper => "upper leaf",
        LeafId::Lower => "lower leaf",
    }
}

/// The ends of a side are its top and bottom, those of any other panel left and right.
fn band_name(part: Part, field: PanelField) -> String {
    match (field, field.word_at(part)) {
        (PanelField::BandTopOrLeft | PanelField::BandBottomOrRight, word) => format!("band {word}"),
        _ => field.name(),
    }
}

impl PanelField {
    /// The word before it in a form of this part: its ends have names of their own.
    #[must_use]
    pub const fn word_at(self, part: Part) -> &'static str {
        let upright = matches!(part, Part::LeftSide | Part::RightSide | Part::Divider(_));
        match (self, upright) {
            (Self::BandTopOrLeft, true) => "top",
            (Self::BandTopOrLeft, false) => "left",
            (Self::BandBottomOrRight, true) => "bottom",
            (Self::BandBottomOrRight, false) => "right",
            _ => self.info().label,
        }
    }
}

impl WallBox {
    /// A panel of the box; leaves and the face frame are none.
    #[must_use]
    pub fn panel(&self, part: Part) -> Option<&Panel> {
        match part {
            Part::LeftSide => Some(&self.left),
            Part::RightSide => Some(&self.right),
            Part::Back => self.back.panel(),
            Part::Divider(id) => Some(&self.divider(id)?.panel),
            Part::Top | Part::Bottom | Part::Shelf(_) => Some(&self.horizontal(part)?.panel),
            Part::Frame | Part::Leaf { .. } => None,
        }
    }

    /// The same, to be changed.
    pub fn panel_mut(&mut self, part: Part) -> Option<&mut Panel> {
        match part {
            Part::LeftSide => Some(&mut self.left),
            Part::RightSide => Some(&mut self.right),
            Part::Back => self.back.panel_mut(),
            Part::Divider(id) => Some(&mut self.divider_mut(id)?.panel),
            Part::Top | Part::Bottom | Part::Shelf(_) => {
                Some(&mut self.horizontal_mut(part)?.panel)
            }
            Part::Frame | Part::Leaf { .. } => None,
        }
    }

    /// A panel that lies across the box: top, bottom or shelf.
    #[must_use]
    pub fn horizontal(&self, part: Part) -> Option<&HorizontalPanel> {
        match part {
            Part::Top => Some(&self.top),
            Part::Bottom => Some(&self.bottom),
            Part::Shelf(id) => Some(self.shelf(id)?.piece()),
            Part::LeftSide
            | Part::RightSide
            | Part::Back
            | Part::Divider(_)
            | Part::Frame
            | Part::Leaf { .. } => None,
        }
    }

    /// The same, to be changed.
    pub fn horizontal_mut(&mut self, part: Part) -> Option<&mut HorizontalPanel> {
        match part {
            Part::Top => Some(&mut self.top),
            Part::Bottom => Some(&mut self.bottom),
            Part::Shelf(id) => Some(self.shelf_mut(id)?.piece()),
            Part::LeftSide
            | Part::RightSide
            | Part::Back
            | Part::Divider(_)
            | Part::Frame
            | Part::Leaf { .. } => None,
        }
    }
}
