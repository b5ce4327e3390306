//! Places in the words of version 1, turned into what they mean.
//!
//! For each box all phrases are made that version 1 could have said of it; what is none of them
//! stays words.

use std::collections::BTreeMap;
use std::collections::btree_map::Entry;

use super::boxes::{Part as OldPart, ShelfKind, WallBox};
use super::convert::BoxIds;
use crate::acceptance::Topic;
use crate::id::Ids;
use crate::job::UsedCard;
use crate::part::{BoreId, LeafId, PartId};

/// What the phrases of one job mean.
pub(super) struct Places {
    /// `None` for a phrase that could mean two things.
    topics: BTreeMap<String, Option<Topic>>,
    /// The panels among them, which can have bores.
    parts: BTreeMap<String, Option<PartId>>,
}

impl Places {
    /// The phrases of a job's boxes and cards.
    pub(super) fn of(boxes: &[WallBox], ids: &[BoxIds], cards: &[UsedCard]) -> Self {
        let mut places = Self {
            topics: BTreeMap::new(),
            parts: BTreeMap::new(),
        };
        let mut namesakes: BTreeMap<&str, usize> = BTreeMap::new();
        for it in boxes {
            *namesakes.entry(it.name.as_str()).or_default() += 1;
        }
        for (index, (wall_box, its)) in boxes.iter().zip(ids).enumerate() {
            let name = if namesakes.get(wall_box.name.as_str()) > Some(&1) {
                format!("{} (box {})", wall_box.name, index + 1)
            } else {
                wall_box.name.clone()
            };
            places.add_box(&name, wall_box, its);
        }
        for used in cards {
            places.add(format!("card \"{}\"", used.card.name), Topic::Card(used.id));
        }
        places
    }

    /// What a place means, sorted and each once; `None` where a part of it is nothing that is known.
    pub(super) fn turn(&self, place: &str) -> Option<Vec<Topic>> {
        let mut topics = self.pieces(place)?;
        topics.sort();
        topics.dedup();
        Some(topics)
    }

    /// Names can have semicolons in them, so the first piece is the shortest one that is known and
    /// leaves a rest that is.
    fn pieces(&self, place: &str) -> Option<Vec<Topic>> {
        if let Some(topic) = self.one(place) {
            return Some(vec![topic]);
        }
        place.match_indices("; ").find_map(|(at, mark)| {
            let first = self.one(place.get(..at)?)?;
            let mut topics = self.pieces(place.get(at + mark.len()..)?)?;
            topics.push(first);
            Some(topics)
        })
    }

    fn one(&self, phrase: &str) -> Option<Topic> {
        if let Some(topic) = self.topics.get(phrase) {
            return topic.clone();
        }
        let (panel, number) = phrase.rsplit_once(", bore ")?;
        let part = self.parts.get(panel).copied().flatten()?;
        let number = number.parse().ok()?;
        Some(Topic::NumberedBore(BoreId { part, number }))
    }

    fn add(&mut self, phrase: String, topic: Topic) {
        match self.topics.entry(phrase) {
            Entry::Vacant(place) => {
                place.insert(Some(topic));
            }
            Entry::Occupied(mut known) if *known.get() != Some(topic) => {
                known.insert(None);
            }
            Entry::Occupied(_) => {}
        }
    }

    fn add_part(&mut self, phrase: String, part: PartId) {
        let known = self.parts.entry(phrase).or_insert(Some(part));
        if *known != Some(part) {
            *known = None;
        }
    }

    fn add_box(&mut self, name: &str, wall_box: &WallBox, its: &BoxIds) {
        self.add(name.to_owned(), Topic::Box(its.id));
        let several = wall_box.openings.len() > 1;
        for (index, (opening, door)) in its.openings.iter().zip(&its.doors).enumerate() {
            let phrase = if several {
                format!("{name}, opening {} from the top", index + 1)
            } else {
                format!("{name}, door")
            };
            // What was said of an opening was said of its door, where it has one.
            self.add(phrase, door.map_or(Topic::Opening(*opening), Topic::Door));
        }
        for (words, part) in panels(wall_box) {
            // A panel that is listed is there, so no identity is made up.
            let part = its.part(part, &mut Ids::from(u32::MAX));
            let id = PartId {
                box_id: its.id,
                part,
            };
            let phrase = format!("{name}, {words}");
            self.add_part(phrase.clone(), id);
            // The only leaf and its door have the same words where there is one door; both mean the
            // door.
            let is_door = matches!(self.topics.get(&phrase), Some(Some(Topic::Door(_))));
            if !is_door {
                self.add(phrase, Topic::Part(id));
            }
        }
    }
}

/// The panels of a box in the words of version 1.
fn panels(wall_box: &WallBox) -> Vec<(String, OldPart)> {
    let mut named: Vec<(String, OldPart)> = [
        ("left side", OldPart::LeftSide),
        ("right side", OldPart::RightSide),
        ("top", OldPart::Top),
        ("bottom", OldPart::Bottom),
        ("back", OldPart::Back),
        ("face frame", OldPart::Frame),
    ]
    .map(|(words, part)| (words.to_owned(), part))
    .to_vec();
    let mut by_height: Vec<usize> = (0..wall_box.shelves.len()).collect();
    by_height.sort_by(|&a, &b| wall_box.shelves[b].up.total_cmp(&wall_box.shelves[a].up));
    for (rank, &index) in by_height.iter().enumerate() {
        let kind = match wall_box.shelves[index].kind {
            ShelfKind::Fixed { .. } => "fixed shelf",
            ShelfKind::Adjustable => "loose shelf",
        };
        let words = if by_height.len() > 1 {
            format!("{kind} {} from the top", rank + 1)
        } else {
            kind.to_owned()
        };
        named.push((words, OldPart::Shelf(index)));
    }
    let with_door: Vec<usize> = (0..wall_box.openings.len())
        .filter(|&index| wall_box.openings[index].door.is_some())
        .collect();
    for &opening in &with_door {
        let door = if with_door.len() > 1 {
            format!("door {} from the top", opening + 1)
        } else {
            "door".to_owned()
        };
        for (suffix, leaf) in [
            ("", LeafId::Only),
            (", upper leaf", LeafId::Upper),
            (", lower leaf", LeafId::Lower),
        ] {
            named.push((format!("{door}{suffix}"), OldPart::Leaf { opening, leaf }));
        }
    }
    named
}
