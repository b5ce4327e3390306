//! Whether a job is sound: every number finite and within its limits, every name known.
//!
//! What is merely unwise (a door too big for its place, a bore in the wrong spot) is left to the
//! checks: a sound job can still have findings.

mod boxes;
mod cards;
mod doors;
mod fields;
mod ids;
mod openings;
mod records;

use std::collections::BTreeSet;

use crate::acceptance::Acceptance;
use crate::cabinet::WallBox;
use crate::card::Card;
use crate::field::{HeadField, Limits, MaterialField, ObstacleField};
use crate::job::{FILE_VERSION, Job};
use crate::material::Material;
use crate::room::Obstacle;

/// One thing that is wrong with a job: where, what, and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Path of the field, e.g. `box b7 "plates".door d9.tweaks.top`.
    pub field: String,
    /// The value and the limit, e.g. `is -3 mm; it must be above 0 and at most 5000 mm`.
    pub what: String,
    /// What to do about it.
    pub remedy: String,
}

impl Problem {
    /// A problem of one field.
    pub fn new(
        field: impl Into<String>,
        what: impl Into<String>,
        remedy: impl Into<String>,
    ) -> Self {
        Self {
            field: field.into(),
            what: what.into(),
            remedy: remedy.into(),
        }
    }
}

impl std::fmt::Display for Problem {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        write!(f, "{} {}; {}", self.field, self.what, self.remedy)
    }
}

/// Everything that is wrong with a job; empty when it is sound.
#[must_use]
pub fn validate(job: &Job) -> Vec<Problem> {
    let mut look = Validator {
        problems: Vec::new(),
    };
    if job.version != FILE_VERSION {
        look.wrong(
            "version",
            format!(
                "is {}; this program knows version {FILE_VERSION}",
                job.version
            ),
            "open the file with the program that wrote it",
        );
    }
    look.ids(job);
    look.head(job);
    look.accepted(&job.accepted);
    look.materials(&job.materials);
    cards::look_at(&mut look, job.card_list());
    for wall_box in &job.boxes {
        boxes::look_at(&mut look, job, wall_box);
    }
    look.problems
}

/// Everything that is wrong with one box, were it a box of this job. Whether other boxes have its
/// identities too is not asked: that needs a look at all of them.
#[must_use]
pub fn validate_box(job: &Job, wall_box: &WallBox) -> Vec<Problem> {
    let mut look = Validator {
        problems: Vec::new(),
    };
    look.ids_of_box(wall_box, job.next_id);
    boxes::look_at(&mut look, job, wall_box);
    look.problems
}

/// Everything that is wrong with settings and room of a job.
#[must_use]
pub fn validate_head(job: &Job) -> Vec<Problem> {
    let mut look = Validator {
        problems: Vec::new(),
    };
    look.head(job);
    look.problems
}

/// Everything that is wrong with the accepted findings of a job.
#[must_use]
pub fn validate_accepted(job: &Job) -> Vec<Problem> {
    let mut look = Validator {
        problems: Vec::new(),
    };
    look.accepted(&job.accepted);
    look.problems
}

/// Everything that is wrong with a card by itself.
#[must_use]
pub fn validate_card(card: &Card) -> Vec<Problem> {
    let mut look = Validator {
        problems: Vec::new(),
    };
    cards::look_at(&mut look, std::iter::once(card));
    look.problems
}

/// Everything that is wrong with a material table by itself.
#[must_use]
pub fn validate_materials(materials: &[Material]) -> Vec<Problem> {
    let mut look = Validator {
        problems: Vec::new(),
    };
    look.materials(materials);
    look.problems
}

/// Collects problems.
struct Validator {
    problems: Vec<Problem>,
}

impl Validator {
    fn wrong(&mut self, field: impl Into<String>, what: impl Into<String>, remedy: &str) {
        self.problems.push(Problem::new(field, what, remedy));
    }

    /// A number within limits; the unit with its blank before it. For what is no field of a table:
    /// numbers of cards and records.
    fn within(&mut self, field: &str, value: f64, limits: Limits, unit: &str) {
        if !limits.hold(value) {
            self.wrong(
                field,
                format!("is {value}{unit}; it must be {}", limits.words(unit)),
                "correct the number",
            );
        }
    }

    /// A length within limits.
    fn length(&mut self, field: &str, value: f64, limits: Limits) {
        self.within(field, value, limits, " mm");
    }

    fn head(&mut self, job: &Job) {
        self.fields::<HeadField>("", job);
        let settings = &job.settings;
        if settings.hottest < settings.coldest {
            self.wrong(
                "settings.hottest",
                format!(
                    "is {} °C; it must be at least the coldest, {} °C",
                    settings.hottest, settings.coldest
                ),
                "correct one of the two",
            );
        }
        for obstacle in &job.room.obstacles {
            self.obstacle(obstacle);
        }
    }

    fn obstacle(&mut self, obstacle: &Obstacle) {
        let at = format!("room.obstacle {} \"{}\"", obstacle.id, obstacle.name);
        self.fields::<ObstacleField>(&at, obstacle);
        for (name, extent) in [
            ("along_wall", obstacle.along_wall),
            ("above_floor", obstacle.above_floor),
            ("from_wall", obstacle.from_wall),
        ] {
            if extent.from >= extent.to {
                self.wrong(
                    format!("{at}.{name}"),
                    format!("runs from {} to {} mm", extent.from, extent.to),
                    "put the smaller number first",
                );
            }
        }
    }

    fn accepted(&mut self, accepted: &[Acceptance]) {
        for (i, accepted) in accepted.iter().enumerate() {
            let at = format!("accepted[{i}] \"{}\"", accepted.check);
            if accepted.reason.trim().is_empty() {
                self.wrong(
                    format!("{at}.reason"),
                    "is empty",
                    "say why the finding is accepted",
                );
            }
            for number in &accepted.numbers {
                if !number.value.is_finite() {
                    self.wrong(
                        format!("{at}.numbers"),
                        format!("has {} for \"{}\"", number.value, number.label),
                        "take the acceptance out and accept the finding again",
                    );
                }
            }
        }
    }

    fn materials(&mut self, materials: &[Material]) {
        let mut names = BTreeSet::new();
        for (i, material) in materials.iter().enumerate() {
            let at = format!("materials[{i}] \"{}\"", material.name);
            self.fields::<MaterialField>(&at, material);
            self.once(&mut names, &at, &material.name, "material");
            let density = material.density;
            if density.low > density.likely || density.likely > density.high {
                self.wrong(
                    format!("{at}.density"),
                    format!(
                        "runs {} / {} / {}; low, likely and high must rise",
                        density.low, density.likely, density.high
                    ),
                    "put them in order",
                );
            }
        }
    }

    fn unique<'a>(&mut self, names: &mut BTreeSet<&'a str>, at: &str, name: &'a str, what: &str) {
        if name.trim().is_empty() {
            self.wrong(format!("{at}.name"), "is empty", "give it a name");
        } else {
            self.once(names, at, name, what);
        }
    }

    /// A name that no other thing of its kind has.
    fn once<'a>(&mut self, names: &mut BTreeSet<&'a str>, at: &str, name: &'a str, what: &str) {
        if !names.insert(name) {
            self.wrong(
                format!("{at}.name"),
                format!("is used by another {what} too"),
                "give one of them another name",
            );
        }
    }
}
