//! What a field is called where people read it, and where it stands as messages say it.

use super::reference::FieldRef;
use super::{Fields, PanelField};
use crate::cabinet::WallBox;
use crate::job::Job;
use crate::part::{LeafId, Part, PartId};

impl FieldRef {
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
