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
use crate::cabinet::WallBox;
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
