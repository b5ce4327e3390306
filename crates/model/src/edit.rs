//! Changes of a job as data: what the forms and the remedies do, and what undo takes back.

use std::collections::BTreeSet;

use serde::{Deserialize, Serialize};

use crate::acceptance::Acceptance;
use crate::cabinet::WallBox;
use crate::field::{FieldRef, MaterialField, NotSet, Value};
use crate::id::{BoxId, Id};
use crate::job::{Job, Settings, TitleBlock, UsedCard};
use crate::length::Unit;
use crate::material::Material;
use crate::room::Room;
use crate::validate::{
    Problem, validate, validate_accepted, validate_box, validate_head, validate_materials,
};

/// A change of a job. Applying one gives back the change that undoes it.
///
/// What comes into the job without identities gets them when the change is applied. The job's
/// counter of identities only rises, undo included: what is done again has the identities that it
/// had.
#[derive(Debug, Clone, PartialEq, Serialize, Deserialize)]
pub enum Edit {
    /// Puts another value into a field: what forms, drag handles and lists change.
    Set {
        /// The field.
        field: FieldRef,
        /// Its new value.
        value: Value<'static>,
    },
    /// Puts another description in place of a box.
    ReplaceBox {
        /// The box.
        id: BoxId,
        /// The new description; it has the same identity.
        with: Box<WallBox>,
    },
    /// Adds a box.
    InsertBox {
        /// The box that it comes after in the list; `None`: before all others.
        after: Option<BoxId>,
        /// The box.
        with: Box<WallBox>,
    },
    /// Takes a box out.
    RemoveBox {
        /// The box.
        id: BoxId,
    },
    /// Name, unit, title block, settings and room.
    ReplaceHead(Box<JobHead>),
    /// The whole material table.
    ReplaceMaterials(Vec<Material>),
    /// All cards.
    ReplaceCards(Vec<UsedCard>),
    /// All accepted findings.
    ReplaceAccepted(Vec<Acceptance>),
    /// Several changes in this order, as one step.
    Together(Vec<Edit>),
}

impl Edit {
    /// Puts a description in place of the box that has its identity.
    #[must_use]
    pub fn replace_box(with: WallBox) -> Self {
        Self::ReplaceBox {
            id: with.id,
            with: Box::new(with),
        }
    }

    /// The boxes that it touches, as far as they have identities; those of the change that takes
    /// another one back are all that the other one touched.
    #[must_use]
    pub fn boxes(&self) -> BTreeSet<BoxId> {
        match self {
            Self::Set { field, .. } => field.box_id().into_iter().collect(),
            Self::ReplaceBox { id, .. } | Self::RemoveBox { id } => BTreeSet::from([*id]),
            Self::InsertBox { with, .. } => BTreeSet::from([with.id]),
            Self::Together(edits) => edits.iter().flat_map(Self::boxes).collect(),
            Self::ReplaceHead(_)
            | Self::ReplaceMaterials(_)
            | Self::ReplaceCards(_)
            | Self::ReplaceAccepted(_) => BTreeSet::new(),
        }
    }

    /// One change that takes back `newer` and then `older`: where both put back the same thing, the
    /// older one alone. So a run of keys or a drag is one small step.
    #[must_use]
    pub fn joined(newer: Self, older: Self) -> Self {
        match (&newer, &older) {
            (Self::Set { field: a, .. }, Self::Set { field: b, .. }) if a == b => older,
            (Self::ReplaceBox { id: a, .. }, Self::ReplaceBox { id: b, .. }) if a == b => older,
            (Self::ReplaceHead(_), Self::ReplaceHead(_)) => older,
            _ => Self::Together(vec![newer, older]),
        }
    }
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
/// Only what the change touches is looked at: one box, the head, the acceptances; the whole job
/// where materials or cards change, which any box may name.
///
/// # Errors
/// The problems of the job as it would be; the job is then as it was before.
pub fn apply(job: &mut Job, edit: Edit) -> Result<Edit, Vec<Problem>> {
    let next_id = job.next_id;
    let mut touched = Touched::default();
    let problems = match apply_unchecked(job, edit, &mut touched) {
        Ok(inverse) => {
            let problems = touched.problems(job);
            if problems.is_empty() {
                return Ok(inverse);
            }
            // The inverse of an applied change always fits, so the outcome needs no look.
            let _redo = apply_unchecked(job, inverse, &mut touched);
            problems
        }
        Err(problem) => vec![problem],
    };
    // What was refused has never been in the job, nor have its identities.
    job.next_id = next_id;
    Err(problems)
}

/// What a change has touched and has to be looked at.
#[derive(Default)]
struct Touched {
    boxes: BTreeSet<BoxId>,
    head: bool,
    materials: bool,
    accepted: bool,
    all: bool,
}

impl Touched {
    fn field(&mut self, field: FieldRef) {
        match field {
            FieldRef::Head(_) | FieldRef::Obstacle(..) => self.head = true,
            // Any box may name it.
            FieldRef::Material(_, MaterialField::Name) => self.all = true,
            FieldRef::Material(..) => self.materials = true,
            _ => self.boxes.extend(field.box_id()),
        }
    }

    fn problems(&self, job: &Job) -> Vec<Problem> {
        if self.all {
            return validate(job);
        }
        let mut problems = Vec::new();
        if self.head {
            problems.extend(validate_head(job));
        }
        if self.materials {
            problems.extend(validate_materials(&job.materials));
        }
        if self.accepted {
            problems.extend(validate_accepted(job));
        }
        let boxes = job.boxes.iter().filter(|it| self.boxes.contains(&it.id));
        problems.extend(boxes.flat_map(|wall_box| validate_box(job, wall_box)));
        problems
    }
}

fn apply_unchecked(job: &mut Job, edit: Edit, touched: &mut Touched) -> Result<Edit, Problem> {
    match edit {
        Edit::Set { field, value } => {
            let before = field
                .set(job, &value)
                .map_err(|why| not_set(job, field, why))?;
            touched.field(field);
            Ok(Edit::Set {
                field,
                value: before,
            })
        }
        Edit::ReplaceBox { id, with } => replace_box(job, id, with, touched),
        Edit::InsertBox { after, with } => insert_box(job, after, with, touched),
        Edit::RemoveBox { id } => {
            let index = position(job, id)?;
            let with = Box::new(job.boxes.remove(index));
            let before = index.checked_sub(1).and_then(|it| job.boxes.get(it));
            let after = before.map(|it| it.id);
            Ok(Edit::InsertBox { after, with })
        }
        Edit::ReplaceHead(head) => {
            touched.head = true;
            Ok(Edit::ReplaceHead(Box::new(replace_head(job, *head)?)))
        }
        Edit::ReplaceMaterials(materials) => {
            touched.all = true;
            let before = std::mem::replace(&mut job.materials, materials);
            Ok(Edit::ReplaceMaterials(before))
        }
        Edit::ReplaceCards(mut cards) => {
            touched.all = true;
            let mut ids = job.next_ids();
            for used in &mut cards {
                ids.fill(&mut used.id);
            }
            job.next_id = ids.next();
            let new = cards.iter().map(|it| it.id.number());
            let known = job.cards.iter().map(|it| it.id.number());
            take_ids(job, &new.collect::<Vec<_>>(), &known.collect::<Vec<_>>())?;
            let before = std::mem::replace(&mut job.cards, cards);
            Ok(Edit::ReplaceCards(before))
        }
        Edit::ReplaceAccepted(accepted) => {
            touched.accepted = true;
            let before = std::mem::replace(&mut job.accepted, accepted);
            Ok(Edit::ReplaceAccepted(before))
        }
        Edit::Together(edits) => together(job, edits, touched),
    }
}

fn not_set(job: &Job, field: FieldRef, why: NotSet) -> Problem {
    let (what, remedy) = match why {
        NotSet::Absent => (
            "is not there",
            "choose a field that the part has as it is now",
        ),
        NotSet::WrongKind => ("cannot be that", "give a value of the field's own kind"),
    };
    Problem::new(field.path(job), what, remedy)
}

fn together(job: &mut Job, edits: Vec<Edit>, touched: &mut Touched) -> Result<Edit, Problem> {
    let mut inverses = Vec::with_capacity(edits.len());
    for edit in edits {
        match apply_unchecked(job, edit, touched) {
            Ok(inverse) => inverses.push(inverse),
            Err(problem) => {
                for inverse in inverses.into_iter().rev() {
                    let _redo = apply_unchecked(job, inverse, touched);
                }
                return Err(problem);
            }
        }
    }
    inverses.reverse();
    Ok(Edit::Together(inverses))
}

fn replace_box(
    job: &mut Job,
    id: BoxId,
    mut with: Box<WallBox>,
    touched: &mut Touched,
) -> Result<Edit, Problem> {
    let index = position(job, id)?;
    with.id = id;
    give_ids(job, &mut with);
    let known = job.boxes[index].own_ids();
    take_ids(job, &with.own_ids(), &known)?;
    touched.boxes.insert(id);
    let before = std::mem::replace(&mut job.boxes[index], *with);
    Ok(Edit::ReplaceBox {
        id,
        with: Box::new(before),
    })
}

fn insert_box(
    job: &mut Job,
    after: Option<BoxId>,
    mut with: Box<WallBox>,
    touched: &mut Touched,
) -> Result<Edit, Problem> {
    let index = match after {
        Some(after) => position(job, after)? + 1,
        None => 0,
    };
    give_ids(job, &mut with);
    take_ids(job, &with.own_ids(), &[])?;
    let id = with.id;
    touched.boxes.insert(id);
    job.boxes.insert(index, *with);
    Ok(Edit::RemoveBox { id })
}

fn replace_head(job: &mut Job, head: JobHead) -> Result<JobHead, Problem> {
    let before = JobHead::of(job);
    let JobHead {
        name,
        invented,
        unit,
        title_block,
        settings,
        mut room,
    } = head;
    let mut ids = job.next_ids();
    for obstacle in &mut room.obstacles {
        ids.fill(&mut obstacle.id);
    }
    job.next_id = ids.next();
    let numbers = |room: &Room| {
        let obstacles = room.obstacles.iter();
        obstacles.map(|it| it.id.number()).collect::<Vec<u32>>()
    };
    take_ids(job, &numbers(&room), &numbers(&before.room))?;
    job.name = name;
    job.invented = invented;
    job.unit = unit;
    job.title_block = title_block;
    job.settings = settings;
    job.room = room;
    Ok(before)
}

fn give_ids(job: &mut Job, with: &mut WallBox) {
    let mut ids = job.next_ids();
    with.give_ids(&mut ids);
    job.next_id = ids.next();
}

/// Takes in identities that come into the job with a change: the counter goes past them.
///
/// Those that what is replaced had already (`known`) need no look, and neither do numbers that the
/// counter has not reached; others are compared with all that the job has.
fn take_ids(job: &mut Job, new: &[u32], known: &[u32]) -> Result<(), Problem> {
    let next = job.next_id;
    let back: BTreeSet<u32> = new
        .iter()
        .copied()
        .filter(|it| *it < next && !known.contains(it))
        .collect();
    if !back.is_empty()
        && let Some(number) = job
            .all_ids()
            .find(|it| back.contains(it) && !known.contains(it))
    {
        return Err(Problem::new(
            format!("id {number}"),
            "belongs to something else in the job already",
            "leave the id out, so that a new one is given",
        ));
    }
    let after = new.iter().max().map_or(0, |it| it.saturating_add(1));
    job.next_id = next.max(after);
    Ok(())
}

fn position(job: &Job, id: BoxId) -> Result<usize, Problem> {
    let found = job.boxes.iter().position(|it| it.id == id);
    found.ok_or_else(|| {
        Problem::new(
            format!("box {id}"),
            "is not in the job",
            "choose one that is there",
        )
    })
}

#[cfg(test)]
mod tests;
