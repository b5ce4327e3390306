//! Whether a job is sound: every number finite and within its limits, every name known.
//!
//! What is merely unwise (a door too big for its place, a bore in the wrong spot) is left to the
//! checks: a sound job can still have findings.

mod boxes;
mod cards;
mod doors;
mod ids;
mod openings;
mod records;

use std::collections::BTreeSet;

use crate::acceptance::Acceptance;
use crate::cabinet::WallBox;
use crate::card::Card;
use crate::job::{FILE_VERSION, Job};
use crate::material::Material;
use crate::room::Room;

/// Longest length of a part or place, mm.
pub const LONGEST: f64 = 5000.0;
/// Largest reveal, overlay, tweak, gap or overhang either way, mm.
pub const LARGEST_SIGNED: f64 = 500.0;
/// Largest distance between a fitting's points, mm.
const LARGEST_ON_CARD: f64 = 2000.0;

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
        for (name, value, most, unit) in [
            ("bumper_gap", settings.bumper_gap, 100.0, " mm"),
            (
                "off_fitting_ignored",
                settings.off_fitting_ignored,
                100.0,
                " mm",
            ),
            ("point_lead", settings.point_lead, 100.0, " mm"),
            (
                "least_wood_behind",
                settings.least_wood_behind,
                100.0,
                " mm",
            ),
            ("least_edge_web", settings.least_edge_web, 100.0, " mm"),
            ("least_bore_web", settings.least_bore_web, 100.0, " mm"),
            ("least_clearance", settings.least_clearance, 100.0, " mm"),
            ("most_hand_force", settings.most_hand_force, 1000.0, " N"),
            ("highest_reach", settings.highest_reach, 20_000.0, " mm"),
            ("head_height", settings.head_height, 20_000.0, " mm"),
            ("head_allowance", settings.head_allowance, LONGEST, " mm"),
            ("finger_gap.min", settings.finger_gap.min, 100.0, " mm"),
            ("finger_gap.max", settings.finger_gap.max, 100.0, " mm"),
            ("most_uneven", settings.most_uneven, 100.0, " mm"),
            ("shelf_load", settings.shelf_load, 2000.0, " kg/m2"),
            ("grid_step", settings.grid_step, 1000.0, " mm"),
        ] {
            self.within(&format!("settings.{name}"), value, 0.0, most, unit);
        }
        self.within("settings.sag_ratio", settings.sag_ratio, 1.0, 10_000.0, "");
        self.within(
            "settings.holds_above",
            settings.holds_above,
            0.0,
            100.0,
            " %",
        );
        self.within("settings.coldest", settings.coldest, -60.0, 100.0, " °C");
        let least = settings.coldest.clamp(-60.0, 100.0);
        self.within("settings.hottest", settings.hottest, least, 100.0, " °C");
        self.room(&job.room);
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

    fn room(&mut self, room: &Room) {
        self.within("room.ceiling", room.ceiling, 0.0, 20_000.0, " mm");
        for obstacle in &room.obstacles {
            for (name, extent) in [
                ("along_wall", obstacle.along_wall),
                ("above_floor", obstacle.above_floor),
                ("from_wall", obstacle.from_wall),
            ] {
                let at = format!("room.obstacle {} \"{}\".{name}", obstacle.id, obstacle.name);
                self.within(
                    &format!("{at}.from"),
                    extent.from,
                    -20_000.0,
                    20_000.0,
                    " mm",
                );
                self.within(&format!("{at}.to"), extent.to, -20_000.0, 20_000.0, " mm");
                if extent.from >= extent.to {
                    self.wrong(
                        at,
                        format!("runs from {} to {} mm", extent.from, extent.to),
                        "put the smaller number first",
                    );
                }
            }
        }
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
            if let Some(stiffness) = &material.stiffness {
                for (name, value) in [
                    ("along", Some(stiffness.along)),
                    ("across", stiffness.across),
                ] {
                    if let Some(value) = value {
                        self.within(
                            &format!("{at}.stiffness.{name}"),
                            value,
                            1.0,
                            1_000_000.0,
                            " N/mm2",
                        );
                    }
                }
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
