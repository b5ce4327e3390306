//! Changes of a job as data: what the forms and the remedies do, and what undo takes back.

use serde::{Deserialize, Serialize};

use crate::acceptance::Acceptance;
use crate::cabinet::WallBox;
use crate::card::Card;
use crate::job::{Job, Settings, TitleBlock};
use crate::length::Unit;
use crate::material::Material;
use crate::room::Room;
use crate::validate::{Problem, validate, validate_box};

/// A change of a job. Applying one gives back the change that undoes it.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Edit {
    /// Puts another description in place of box `index`.
    ReplaceBox {
        /// Index in the job.
        index: usize,
        /// The new description.
        with: Box<WallBox>,
    },
    /// Adds a box so that it has this index.
    InsertBox {
        /// Index in the job, up to the number of boxes.
        index: usize,
        /// The box.
        with: Box<WallBox>,
    },
    /// Takes box `index` out.
    RemoveBox {
        /// Index in the job.
        index: usize,
    },
    /// Name, unit, title block, settings and room.
    ReplaceHead(Box<JobHead>),
    /// The whole material table.
    ReplaceMaterials(Vec<Material>),
    /// All cards.
    ReplaceCards(Vec<Card>),
    /// All accepted findings.
    ReplaceAccepted(Vec<Acceptance>),
    /// Several changes in this order, as one step.
    Together(Vec<Edit>),
}

/// What a job says of itself as a whole.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub struct JobHead {
    /// Name of the job.
    pub name: String,
    /// Whether it is invented for demonstration.
    pub invented: bool,
    /// Unit of forms and labels.
    pub unit: Unit,
    /// Texts of the title block.
    pub title_block: TitleBlock,
    /// Limits and conventions.
    pub settings: Settings,
    /// The room.
    pub room: Room,
}

impl JobHead {
    /// The head of a job.
    #[must_use]
    pub fn of(job: &Job) -> Self {
        Self {
            name: job.name.clone(),
            invented: job.invented,
            unit: job.unit,
            title_block: job.title_block.clone(),
            settings: job.settings.clone(),
            room: job.room.clone(),
        }
    }
}

/// Applies a change and returns the change that undoes it.
///
/// # Errors
/// The problems of the job as it would be; the job is then as it was before.
pub fn apply(job: &mut Job, edit: Edit) -> Result<Edit, Vec<Problem>> {
    // A change of one box cannot make another one unsound.
    let only = match &edit {
        Edit::ReplaceBox { index, .. } | Edit::InsertBox { index, .. } => Some(*index),
        Edit::RemoveBox { .. }
        | Edit::ReplaceHead(_)
        | Edit::ReplaceMaterials(_)
        | Edit::ReplaceCards(_)
        | Edit::ReplaceAccepted(_)
        | Edit::Together(_) => None,
    };
    let inverse = apply_unchecked(job, edit).map_err(|problem| vec![problem])?;
    let problems = match only.and_then(|index| Some((index, job.boxes.get(index)?))) {
        Some((index, wall_box)) => validate_box(job, index, wall_box),
        None => validate(job),
    };
    if problems.is_empty() {
        return Ok(inverse);
    }
    // The inverse of an applied change always fits, so the outcome needs no look.
    let _redo = apply_unchecked(job, inverse);
    Err(problems)
}

fn apply_unchecked(job: &mut Job, edit: Edit) -> Result<Edit, Problem> {
    match edit {
        Edit::ReplaceBox { index, with } => {
            let count = job.boxes.len();
            let place = job
                .boxes
                .get_mut(index)
                .ok_or_else(|| no_such_box(index, count))?;
            let before = std::mem::replace(place, *with);
            Ok(Edit::ReplaceBox {
                index,
                with: Box::new(before),
            })
        }
        Edit::InsertBox { index, with } => {
            if index > job.boxes.len() {
                return Err(no_such_box(index, job.boxes.len()));
            }
            job.boxes.insert(index, *with);
            Ok(Edit::RemoveBox { index })
        }
        Edit::RemoveBox { index } => {
            if index >= job.boxes.len() {
                return Err(no_such_box(index, job.boxes.len()));
            }
            let with = Box::new(job.boxes.remove(index));
            Ok(Edit::InsertBox { index, with })
        }
        Edit::ReplaceHead(head) => {
            let before = JobHead::of(job);
            let JobHead {
                name,
                invented,
                unit,
                title_block,
                settings,
                room,
            } = *head;
            job.name = name;
            job.invented = invented;
            job.unit = unit;
            job.title_block = title_block;
            job.settings = settings;
            job.room = room;
            Ok(Edit::ReplaceHead(Box::new(before)))
        }
        Edit::ReplaceMaterials(materials) => Ok(Edit::ReplaceMaterials(std::mem::replace(
            &mut job.materials,
            materials,
        ))),
        Edit::ReplaceCards(cards) => {
            Ok(Edit::ReplaceCards(std::mem::replace(&mut job.cards, cards)))
        }
        Edit::ReplaceAccepted(accepted) => Ok(Edit::ReplaceAccepted(std::mem::replace(
            &mut job.accepted,
            accepted,
        ))),
        Edit::Together(edits) => {
            let mut inverses = Vec::with_capacity(edits.len());
            for edit in edits {
                match apply_unchecked(job, edit) {
                    Ok(inverse) => inverses.push(inverse),
                    Err(problem) => {
                        for inverse in inverses.into_iter().rev() {
                            let _redo = apply_unchecked(job, inverse);
                        }
                        return Err(problem);
                    }
                }
            }
            inverses.reverse();
            Ok(Edit::Together(inverses))
        }
    }
}

fn no_such_box(index: usize, count: usize) -> Problem {
    Problem::new(
        format!("boxes[{index}]"),
        format!("there is no such box: the job has {count}"),
        "choose one that is there",
    )
}
