//! Whether a job is sound: every number finite and within its limits, every name known.
//!
//! What is merely unwise (a door too big for its place, a bore in the wrong spot) is left to the
//! checks: a sound job can still have findings.

mod boxes;
mod cards;

use std::collections::BTreeSet;

use crate::cabinet::WallBox;
use crate::card::Card;
use crate::job::{FILE_VERSION, Job};
use crate::material::Material;

/// Longest length of a part or place, mm.
pub const LONGEST: f64 = 5000.0;
/// Largest reveal, overlay, tweak, gap or overhang either way, mm.
pub const LARGEST_SIGNED: f64 = 500.0;
/// Largest distance between a fitting's points, mm.
const LARGEST_ON_CARD: f64 = 2000.0;

/// One thing that is wrong with a job: where, what, and what to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Problem {
    /// Path of the field, e.g. `boxes[1] "plates".openings[0].door.tweaks.top`.
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
    let mut look = Look {
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
    look.head(job);
    look.materials(&job.materials);
    cards::look_at(&mut look, &job.cards);
    for (index, wall_box) in job.boxes.iter().enumerate() {
        boxes::look_at(&mut look, job, index, wall_box);
    }
    look.problems
}

/// Everything that is wrong with one box, were it box `index` of this job.
#[must_use]
pub fn validate_box(job: &Job, index: usize, wall_box: &WallBox) -> Vec<Problem> {
    let mut look = Look {
        problems: Vec::new(),
    };
    boxes::look_at(&mut look, job, index, wall_box);
    look.problems
}

/// Everything that is wrong with a card by itself.
#[must_use]
pub fn validate_card(card: &Card) -> Vec<Problem> {
    let mut look = Look {
        problems: Vec::new(),
    };
    cards::look_at(&mut look, std::slice::from_ref(card));
    look.problems
}

/// Everything that is wrong with a material table by itself.
#[must_use]
pub fn validate_materials(materials: &[Material]) -> Vec<Problem> {
    let mut look = Look {
        problems: Vec::new(),
    };
    look.materials(materials);
    look.problems
}

/// Collects problems.
struct Look {
    problems: Vec<Problem>,
}

impl Look {
    fn wrong(&mut self, field: impl Into<String>, what: impl Into<String>, remedy: &str) {
        self.problems.push(Problem::new(field, what, remedy));
    }

    /// A number that must be finite and lie in `least..=most`.
    fn within(&mut self, field: &str, value: f64, least: f64, most: f64, unit: &str) {
        if !(value >= least && value <= most) {
            self.wrong(
                field,
                format!("is {value}{unit}; it must be between {least} and {most}{unit}"),
                "correct the number",
            );
        }
    }

    /// A size: above 0 and at most 5 m.
    fn size(&mut self, field: &str, value: f64) {
        if !(value > 0.0 && value <= LONGEST) {
            self.wrong(
                field,
                format!("is {value} mm; it must be above 0 and at most {LONGEST} mm"),
                "correct the length",
            );
        }
    }

    /// A distance that may be 0, at most 5 m.
    fn distance(&mut self, field: &str, value: f64) {
        self.within(field, value, 0.0, LONGEST, " mm");
    }

    /// A reveal, overlay, tweak, gap or overhang.
    fn signed(&mut self, field: &str, value: f64) {
        self.within(field, value, -LARGEST_SIGNED, LARGEST_SIGNED, " mm");
    }

    /// A distance on a card, either way.
    fn on_card(&mut self, field: &str, value: f64) {
        self.within(field, value, -LARGEST_ON_CARD, LARGEST_ON_CARD, " mm");
    }

    fn head(&mut self, job: &Job) {
        let settings = &job.settings;
        for (name, value) in [
            ("bumper_gap", settings.bumper_gap),
            ("off_fitting_ignored", settings.off_fitting_ignored),
            ("point_lead", settings.point_lead),
            ("least_wood_behind", settings.least_wood_behind),
            ("least_edge_web", settings.least_edge_web),
            ("least_bore_web", settings.least_bore_web),
        ] {
            self.within(&format!("settings.{name}"), value, 0.0, 100.0, " mm");
        }
        self.within("room.ceiling", job.room.ceiling, 0.0, 20_000.0, " mm");
    }

    fn materials(&mut self, materials: &[Material]) {
        let mut names = BTreeSet::new();
        for (i, material) in materials.iter().enumerate() {
            let at = format!("materials[{i}] \"{}\"", material.name);
            self.unique(&mut names, &at, &material.name, "material");
            let density = material.density;
            for (name, value) in [
                ("low", density.low),
                ("likely", density.likely),
                ("high", density.high),
            ] {
                self.within(
                    &format!("{at}.density.{name}"),
                    value,
                    1.0,
                    25_000.0,
                    " kg/m3",
                );
            }
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
        } else if !names.insert(name) {
            self.wrong(
                format!("{at}.name"),
                format!("is used by another {what} too"),
                "give one of them another name",
            );
        }
    }
}
