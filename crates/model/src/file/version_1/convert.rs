//! Version 1 to today's form: places in lists become identities, given in the order of the file.

use super::boxes::{self, Part as OldPart, Shelf, ShelfKind};
use super::places::Places;
use super::{OldJob, names, with_new_names};
use crate::acceptance::Acceptance;
use crate::cabinet::WallBox;
use crate::door::{Door, FittingChoice};
use crate::id::{BoxId, CardId, DoorId, Ids, OpeningId, ShelfId};
use crate::job::{FILE_VERSION, Job, UsedCard};
use crate::opening::{FixedShelf, Inside, LooseShelf, Opening, ShelfSplit};
use crate::part::Part;
use crate::record::PanelRecord;
use crate::room::{Obstacle, Room};
use crate::validate::Problem;

/// The identities that the parts of one box get.
pub(super) struct BoxIds {
    /// The box.
    pub(super) id: BoxId,
    /// Its openings from the top down.
    pub(super) openings: Vec<OpeningId>,
    /// The openings that the fixed shelves split, as many as there are such shelves.
    split: Vec<OpeningId>,
    /// Its shelves in the order of its list.
    pub(super) shelves: Vec<ShelfId>,
    /// The doors of its openings from the top down.
    pub(super) doors: Vec<Option<DoorId>>,
}

impl BoxIds {
    fn new(old: &boxes::WallBox, ids: &mut Ids) -> Self {
        Self {
            id: ids.give(),
            openings: old.openings.iter().map(|_| ids.give()).collect(),
            split: old.fixed().iter().map(|_| ids.give()).collect(),
            shelves: old.shelves.iter().map(|_| ids.give()).collect(),
            doors: old
                .openings
                .iter()
                .map(|it| it.door.as_ref().map(|_| ids.give()))
                .collect(),
        }
    }

    /// The part at a place of the lists. One that is not there gets an identity that nothing has.
    pub(super) fn part(&self, part: OldPart, lost: &mut Ids) -> Part {
        match part {
            OldPart::LeftSide => Part::LeftSide,
            OldPart::RightSide => Part::RightSide,
            OldPart::Top => Part::Top,
            OldPart::Bottom => Part::Bottom,
            OldPart::Back => Part::Back,
            OldPart::Frame => Part::Frame,
            OldPart::Shelf(index) => {
                let id = self.shelves.get(index).copied();
                Part::Shelf(id.unwrap_or_else(|| lost.give()))
            }
            OldPart::Leaf { opening, leaf } => {
                let id = self.doors.get(opening).copied().flatten();
                Part::Leaf {
                    door: id.unwrap_or_else(|| lost.give()),
                    leaf,
                }
            }
        }
    }
}

/// The job in today's form.
///
/// # Errors
/// What that form cannot say: a number of openings that does not go with the shelves, a card that is
/// not there.
pub(super) fn job(old: OldJob) -> Result<Job, Vec<Problem>> {
    let problems = problems(&old);
    if !problems.is_empty() {
        return Err(problems);
    }
    let mut ids = Ids::from(1);
    let of_boxes: Vec<BoxIds> = old
        .boxes
        .iter()
        .map(|it| BoxIds::new(it, &mut ids))
        .collect();
    let obstacles = old.room.obstacles.into_iter().map(|it| Obstacle {
        id: ids.give(),
        name: it.name,
        along_wall: it.along_wall,
        above_floor: it.above_floor,
        from_wall: it.from_wall,
    });
    let room = Room {
        ceiling: old.room.ceiling,
        obstacles: obstacles.collect(),
    };
    let cards = old.cards.into_iter().map(|card| UsedCard {
        id: ids.give(),
        card,
    });
    let cards: Vec<UsedCard> = cards.collect();
    let places = Places::of(&old.boxes, &of_boxes, &cards);
    let accepted = old.accepted.into_iter().map(|it| acceptance(it, &places));
    let accepted = accepted.collect();
    let boxes = old
        .boxes
        .into_iter()
        .zip(&of_boxes)
        .map(|(it, its)| wall_box(it, its, &cards, &mut ids))
        .collect();
    Ok(Job {
        version: FILE_VERSION,
        next_id: ids.next(),
        name: old.name,
        invented: old.invented,
        unit: old.unit,
        title_block: old.title_block,
        settings: with_new_names(old.settings),
        room,
        materials: old.materials,
        cards,
        boxes,
        accepted,
    })
}

fn problems(old: &OldJob) -> Vec<Problem> {
    let mut problems = Vec::new();
    for (index, wall_box) in old.boxes.iter().enumerate() {
        let at = format!("boxes[{index}] \"{}\"", wall_box.name);
        let needed = wall_box.fixed().len() + 1;
        if wall_box.openings.len() != needed {
            problems.push(Problem::new(
                format!("{at}.openings"),
                format!(
                    "has {} entries; a box with {} fixed shelves has {needed}",
                    wall_box.openings.len(),
                    needed - 1
                ),
                "add or remove openings, from the top down",
            ));
        }
        for (i, opening) in wall_box.openings.iter().enumerate() {
            let choice = opening.door.as_ref().and_then(|door| door.fitting.as_ref());
            let Some(choice) = choice else { continue };
            if !old.cards.iter().any(|card| card.name == choice.card) {
                problems.push(Problem::new(
                    format!("{at}.openings[{i}].door.fitting.card"),
                    format!(
                        "names \"{}\", which is not among the job's cards",
                        choice.card
                    ),
                    "choose a card of the job or add it",
                ));
            }
        }
    }
    problems
}

fn acceptance(old: super::Acceptance, places: &Places) -> Acceptance {
    let about = places.turn(&old.place).unwrap_or_default();
    let lost = about.is_empty();
    let reason = if old.reason.trim().is_empty() {
        "accepted without a reason".to_owned()
    } else {
        old.reason
    };
    Acceptance {
        check: names::of_today(&old.check).to_owned(),
        about,
        reason,
        severity: old.severity,
        numbers: old.numbers,
        by_place: !lost,
        lost_place: if lost { old.place } else { String::new() },
    }
}

fn wall_box(old: boxes::WallBox, its: &BoxIds, cards: &[UsedCard], lost: &mut Ids) -> WallBox {
    let fixed = old.fixed();
    let records = old.records.into_iter().map(|it| PanelRecord {
        part: its.part(it.part, lost),
        state: it.state,
        revision: it.revision,
        size: it.size,
        thickness: it.thickness,
        bores: it.bores,
    });
    let records = records.collect();
    let mut openings: Vec<Opening> = old
        .openings
        .into_iter()
        .zip(&its.openings)
        .zip(&its.doors)
        .map(|((it, id), door_id)| Opening {
            id: *id,
            door: it.door.zip(*door_id).map(|(it, id)| door(it, id, cards)),
            inside: Inside::default(),
        })
        .collect();
    let heights: Vec<f64> = fixed.iter().map(|&i| old.shelves[i].up).collect();
    let mut shelves: Vec<FixedShelf> = Vec::new();
    let mut in_list: Vec<Option<Shelf>> = Vec::new();
    for (shelf, id) in old.shelves.into_iter().zip(&its.shelves) {
        if matches!(shelf.kind, ShelfKind::Adjustable) {
            lay(&mut openings, &heights, loose(shelf, *id));
            in_list.push(None);
        } else {
            in_list.push(Some(shelf));
        }
    }
    for index in fixed {
        if let Some(shelf) = in_list[index].take() {
            shelves.push(fixed_shelf(shelf, its.shelves[index]));
        }
    }
    let mut parts = Parts {
        openings: openings.into_iter(),
        split: its.split.iter().copied(),
    };
    WallBox {
        id: its.id,
        name: old.name,
        quantity: old.quantity,
        place: old.place,
        width: old.width,
        height: old.height,
        depth: old.depth,
        left: old.left,
        right: old.right,
        top: old.top,
        bottom: old.bottom,
        joint: old.joint,
        back: old.back,
        frame: old.frame,
        system_rows: old.system_rows,
        body: parts.tree(shelves),
        records,
    }
}

/// Puts a loose shelf into the opening that holds its height; `heights` are those of the fixed
/// shelves from the top down.
fn lay(openings: &mut [Opening], heights: &[f64], shelf: LooseShelf) {
    let above = heights.iter().position(|height| shelf.up >= *height);
    let index = above.unwrap_or(heights.len());
    if let Some(Inside::Undivided { loose }) = openings.get_mut(index).map(|it| &mut it.inside) {
        loose.push(shelf);
    }
}

fn loose(old: Shelf, id: ShelfId) -> LooseShelf {
    LooseShelf {
        id,
        up: old.up,
        piece: old.piece,
    }
}

fn fixed_shelf(old: Shelf, id: ShelfId) -> FixedShelf {
    let (gap, upper_overlay) = match old.kind {
        ShelfKind::Fixed { gap, upper_overlay } => (gap, upper_overlay),
        ShelfKind::Adjustable => (0.0, None),
    };
    FixedShelf {
        id,
        up: old.up,
        gap,
        upper_overlay,
        piece: old.piece,
    }
}

/// The openings from the top down and the identities of those that are split.
struct Parts<A, B> {
    openings: A,
    split: B,
}

impl<A: Iterator<Item = Opening>, B: Iterator<Item = OpeningId>> Parts<A, B> {
    /// The tree of shelves that stand from the top down, split in the middle again and again, so
    /// that it is as flat as it can be.
    fn tree(&mut self, mut shelves: Vec<FixedShelf>) -> Opening {
        if shelves.is_empty() {
            return self.openings.next().unwrap_or_default();
        }
        let mut rest = shelves.split_off(shelves.len() / 2);
        let shelf = rest.remove(0);
        let id = self.split.next().unwrap_or_default();
        let above = self.tree(shelves);
        let below = self.tree(rest);
        Opening {
            id,
            door: None,
            inside: Inside::Shelf(Box::new(ShelfSplit {
                shelf,
                above,
                below,
            })),
        }
    }
}

fn door(old: boxes::Door, id: DoorId, cards: &[UsedCard]) -> Door {
    Door {
        id,
        fit: old.fit,
        tweaks: old.tweaks,
        leaves: old.leaves,
        handle: old.handle,
        typed_mass: old.typed_mass,
        bores_follow: old.bores_hang_on,
        fitting: old.fitting.map(|it| FittingChoice {
            card: card_named(&it.card, cards),
            size: it.size,
            packing: it.packing,
        }),
    }
}

/// The first card of that name; [`problems`] has seen that it is there.
fn card_named(name: &str, cards: &[UsedCard]) -> CardId {
    let found = cards.iter().find(|it| it.card.name == name);
    found.map(|it| it.id).unwrap_or_default()
}
