//! The names of a job's parts.

use std::collections::BTreeMap;

use flapwright_model::box_parts::ShelfRef;
use flapwright_model::cabinet::WallBox;
use flapwright_model::id::{BoxId, DividerId, DoorId, OpeningId, ShelfId};
use flapwright_model::job::Job;
use flapwright_model::message::Count;
use flapwright_model::part::{LeafId, Part, Subject};

use crate::catalogue::Language;
use crate::place::{BoxName, PartName};
use crate::speaker::Speaker;

/// What something is called: its box, and what of the box it is.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct PlaceName {
    /// The box; none for what is of the job as a whole.
    pub of_box: Option<BoxName>,
    /// What of it; none for the box itself.
    pub part: Option<PartName>,
}

/// The names of the parts of one job. Names are labels: two boxes may have one, and are told apart by
/// their place in the job then.
#[derive(Debug)]
pub struct Names<'a> {
    job: &'a Job,
    /// Each box with its place in the job, from 1.
    boxes: BTreeMap<BoxId, (usize, &'a WallBox)>,
    /// How many boxes have a name.
    namesakes: BTreeMap<&'a str, usize>,
}

impl<'a> Names<'a> {
    /// For a job.
    #[must_use]
    pub fn of(job: &'a Job) -> Self {
        let mut namesakes = BTreeMap::new();
        let mut boxes = BTreeMap::new();
        for (index, wall_box) in job.boxes.iter().enumerate() {
            *namesakes.entry(wall_box.name.as_str()).or_default() += 1;
            boxes.insert(wall_box.id, (index + 1, wall_box));
        }
        Self {
            job,
            boxes,
            namesakes,
        }
    }

    /// Who says things of this job, in its unit.
    #[must_use]
    pub const fn speaker(&self) -> Speaker<'_> {
        Speaker {
            language: Language::English,
            unit: self.job.unit,
            names: Some(self),
        }
    }

    /// What a subject is called; a bore is called as its part.
    #[must_use]
    pub fn name(&self, subject: Subject) -> PlaceName {
        let of_job = |part| PlaceName {
            of_box: None,
            part: Some(part),
        };
        match subject {
            Subject::Box(id) => self.in_box(id, |_| None),
            Subject::Opening(id, opening) => self.in_box(id, |it| Some(opening_name(it, opening))),
            Subject::Door(id, door) => self.in_box(id, |it| Some(door_name(it, door))),
            Subject::Part(part) => self.in_box(part.box_id, |it| Some(part_name(it, part.part))),
            Subject::Bore(bore) => self.name(Subject::Part(bore.part)),
            Subject::Obstacle(id) => {
                let obstacle = self.job.room.obstacle(id);
                of_job(obstacle.map_or(PartName::Job, |it| PartName::Obstacle {
                    name: it.name.clone(),
                }))
            }
            Subject::Card(id) => {
                let card = self.job.card_by_id(id);
                of_job(card.map_or(PartName::Job, |it| PartName::Card {
                    name: it.name.clone(),
                }))
            }
        }
    }

    fn in_box(&self, id: BoxId, part: impl FnOnce(&WallBox) -> Option<PartName>) -> PlaceName {
        let Some((number, wall_box)) = self.boxes.get(&id) else {
            return PlaceName::default();
        };
        let namesakes = self.namesakes.get(wall_box.name.as_str());
        let name = wall_box.name.clone();
        let of_box = if namesakes.is_some_and(|count| *count > 1) {
            BoxName::OneOfSeveral {
                name,
                number: Count(*number),
            }
        } else {
            BoxName::Only { name }
        };
        PlaceName {
            of_box: Some(of_box),
            part: part(wall_box),
        }
    }
}

fn part_name(wall_box: &WallBox, part: Part) -> PartName {
    match part {
        Part::LeftSide => PartName::LeftSide,
        Part::RightSide => PartName::RightSide,
        Part::Top => PartName::Top,
        Part::Bottom => PartName::Bottom,
        Part::Back => PartName::Back,
        Part::Frame => PartName::Frame,
        Part::Shelf(id) => shelf_name(wall_box, id),
        Part::Divider(id) => divider_name(wall_box, id),
        Part::Leaf { door, leaf } => {
            let door = door_name(wall_box, door);
            match leaf {
                LeafId::Only => door,
                LeafId::Upper => PartName::UpperLeaf {
                    door: Box::new(door),
                },
                LeafId::Lower => PartName::LowerLeaf {
                    door: Box::new(door),
                },
            }
        }
    }
}

fn shelf_name(wall_box: &WallBox, id: ShelfId) -> PartName {
    let shelves = wall_box.shelves();
    let number = Count(number(shelves.iter().position(|it| it.id() == id)));
    let is_fixed = wall_box.shelf(id).is_some_and(ShelfRef::is_fixed);
    match (is_fixed, shelves.len() > 1) {
        (true, false) => PartName::FixedShelf,
        (true, true) => PartName::FixedShelfOfSeveral { number },
        (false, false) => PartName::LooseShelf,
        (false, true) => PartName::LooseShelfOfSeveral { number },
    }
}

fn divider_name(wall_box: &WallBox, id: DividerId) -> PartName {
    let dividers = wall_box.dividers();
    if dividers.len() > 1 {
        let place = dividers.iter().position(|it| it.id == id);
        PartName::DividerOfSeveral {
            number: Count(number(place)),
        }
    } else {
        PartName::Divider
    }
}

fn opening_name(wall_box: &WallBox, id: OpeningId) -> PartName {
    let openings = wall_box.openings();
    if openings.len() > 1 {
        let place = openings.iter().position(|it| it.id == id);
        PartName::OpeningOfSeveral {
            number: Count(number(place)),
        }
    } else {
        PartName::Opening
    }
}

/// A door counts by its opening, so that its number is the one that the form shows.
fn door_name(wall_box: &WallBox, id: DoorId) -> PartName {
    if wall_box.doors().len() < 2 {
        return PartName::Door;
    }
    let of_door = |it: &&flapwright_model::opening::Opening| {
        it.door.as_ref().is_some_and(|door| door.id == id)
    };
    let openings = wall_box.openings();
    PartName::DoorOfSeveral {
        number: Count(number(openings.iter().position(of_door))),
    }
}

/// How people count what stands at an index; 0 for what is not there.
fn number(index: Option<usize>) -> usize {
    index.map_or(0, |index| index + 1)
}
