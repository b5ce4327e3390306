//! Another box like one that is there.

use std::collections::BTreeMap;

use super::new_box::{free_name, free_place};
use crate::cabinet::WallBox;
use crate::edit::Edit;
use crate::id::{BoxId, DividerId, DoorId, Id, Ids, ShelfId};
use crate::job::Job;
use crate::part::Part;

/// Adds a copy of a box, to the right of all others on the wall and in the list after the one that
/// it is like. Everything in it has an identity of its own; its records go with it.
#[must_use]
pub fn duplicate_box(job: &Job, id: BoxId) -> Option<Edit> {
    let mut copy = job.box_by_id(id)?.clone();
    copy.name = free_name(job, &copy.name);
    copy.place.along_wall = free_place(job);
    give_new_ids(&mut copy, &mut job.next_ids());
    Some(Edit::InsertBox {
        after: Some(id),
        with: Box::new(copy),
    })
}

/// Gives a copy of a box and all in it identities of their own; its records go with it.
pub(crate) fn give_new_ids(copy: &mut WallBox, ids: &mut Ids) {
    let mut new_of: BTreeMap<u32, u32> = BTreeMap::new();
    for number in copy.own_ids_mut() {
        let new = ids.number();
        new_of.insert(*number, new);
        *number = new;
    }
    for record in &mut copy.records {
        record.part = renamed(record.part, &new_of);
    }
}

/// The same part of the copy. A record of a part that is gone keeps its name, which stands for
/// nothing in the copy either.
fn renamed(part: Part, new_of: &BTreeMap<u32, u32>) -> Part {
    let new = |number: u32| new_of.get(&number).copied().unwrap_or(number);
    match part {
        Part::Shelf(id) => Part::Shelf(ShelfId::new(new(id.number()))),
        Part::Divider(id) => Part::Divider(DividerId::new(new(id.number()))),
        Part::Leaf { door, leaf } => Part::Leaf {
            door: DoorId::new(new(door.number())),
            leaf,
        },
        Part::LeftSide | Part::RightSide | Part::Top | Part::Bottom | Part::Back | Part::Frame => {
            part
        }
    }
}
