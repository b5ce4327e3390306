//! Where something is, in words.

use flapwright_model::message::{Count, Said, Say};
use flapwright_model::messages;
use flapwright_model::part::Subject;

use crate::names::{Names, PlaceName};
use crate::speaker::Speaker;

messages! {
    /// What a box is called.
    pub enum BoxName in "box-name" {
        /// By its name.
        Only = "only" { name: String },
        /// By its name and its number in the job: others have that name too.
        OneOfSeveral = "one-of-several" { name: String, number: Count },
    }
}

messages! {
    /// What a part of a box, or of the room, is called.
    pub enum PartName in "part-name" {
        /// The left side.
        LeftSide = "left-side",
        /// The right side.
        RightSide = "right-side",
        /// The top.
        Top = "top",
        /// The bottom.
        Bottom = "bottom",
        /// The back.
        Back = "back",
        /// The face frame.
        Frame = "frame",
        /// The only shelf, fixed.
        FixedShelf = "fixed-shelf",
        /// A fixed shelf among several shelves.
        FixedShelfOfSeveral = "fixed-shelf-of-several" { number: Count },
        /// The only shelf, loose.
        LooseShelf = "loose-shelf",
        /// A loose shelf among several shelves.
        LooseShelfOfSeveral = "loose-shelf-of-several" { number: Count },
        /// The only divider.
        Divider = "divider",
        /// A divider among several.
        DividerOfSeveral = "divider-of-several" { number: Count },
        /// The only opening.
        Opening = "opening",
        /// An opening among several.
        OpeningOfSeveral = "opening-of-several" { number: Count },
        /// The only door.
        Door = "door",
        /// A door among several.
        DoorOfSeveral = "door-of-several" { number: Count },
        /// The upper leaf of a folding pair.
        UpperLeaf = "upper-leaf" { door: Box<PartName> },
        /// The lower leaf of a folding pair.
        LowerLeaf = "lower-leaf" { door: Box<PartName> },
        /// What stands in the room.
        Obstacle = "obstacle" { name: String },
        /// A fitting card.
        Card = "card" { name: String },
        /// The job as a whole.
        Job = "job",
    }
}

messages! {
    /// A place.
    pub enum Place in "place" {
        /// A part of a box.
        Within = "within" { of_box: BoxName, part: PartName },
        /// The same within a sentence.
        Of = "of" { of_box: BoxName, part: PartName },
    }
}

/// Every message of this crate's own, as [`flapwright_rules::message::examples`].
#[must_use]
pub fn own_examples() -> Vec<Said> {
    let each = [BoxName::examples(), PartName::examples(), Place::examples()];
    each.into_iter().flatten().collect()
}

/// Where a subject is, its box first.
pub(crate) fn full(names: Option<&Names<'_>>, subject: Subject) -> Said {
    match name(names, subject) {
        PlaceName {
            of_box: Some(of_box),
            part: Some(part),
        } => Place::Within { of_box, part }.say(),
        PlaceName {
            of_box: Some(of_box),
            part: None,
        } => of_box.say(),
        PlaceName {
            of_box: None,
            part: Some(part),
        } => part.say(),
        PlaceName {
            of_box: None,
            part: None,
        } => PartName::Job.say(),
    }
}

/// A subject within a sentence.
pub(crate) fn in_sentence(names: Option<&Names<'_>>, subject: Subject) -> Said {
    match name(names, subject) {
        PlaceName {
            of_box: Some(of_box),
            part: Some(part),
        } => Place::Of { of_box, part }.say(),
        _ => full(names, subject),
    }
}

/// Where in its box a subject is.
pub(crate) fn within_box(names: Option<&Names<'_>>, subject: Subject) -> Said {
    match name(names, subject).part {
        Some(part) => part.say(),
        None => full(names, subject),
    }
}

fn name(names: Option<&Names<'_>>, subject: Subject) -> PlaceName {
    names.map_or_else(PlaceName::default, |names| names.name(subject))
}

/// At most this many places are named.
const NAMED: usize = 4;

/// Where some subjects are: each place once, whatever bores of it are meant.
#[must_use]
pub fn places(subjects: &[Subject], speaker: &Speaker<'_>) -> String {
    let mut places: Vec<String> = Vec::new();
    for subject in subjects {
        let it = speaker.said(&full(speaker.names, *subject));
        if !places.contains(&it) {
            places.push(it);
        }
    }
    places.truncate(NAMED);
    speaker.clauses(places)
}
