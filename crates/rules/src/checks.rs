//! The checks: one file each, all listed here.
//!
//! A check is a pure function of one placed box. It never panics, and it reports nothing about a
//! number that it cannot judge. Where the numbers are limits of shop practice they are settings of
//! the job.

mod bore_breaks_through;
mod bore_misses_member;
mod bore_near_edge;
mod bore_not_in_this_material;
mod bores_collide;
mod bores_off_fitting;
mod box_too_shallow;
mod card_example_fails;
mod card_unproved;
mod clear_way;
mod door_hits_ceiling;
mod door_hits_neighbour;
mod door_hits_obstacle;
mod door_outside_size_span;
mod door_too_heavy;
mod door_too_light;
mod doors_overlap;
mod drilled_panel_differs;
mod drilled_panel_remedies;
mod edge_distance_outside_card;
mod falls_when_let_go;
mod fitting_hits_shelf;
mod frame_blocks_fitting;
mod gap_catches_fingers;
mod glass_needs_safety_glass;
mod hand_force_too_high;
mod handle_out_of_reach;
mod leaf_has_no_size;
mod leaves_meet;
mod lift_cannot_work;
mod linkage_cannot_close;
mod load;
mod mirrored_pair_differs;
mod off_the_grid;
mod on_the_wall;
mod one_sided_fitting_racks;
mod open_door_at_head_height;
mod open_doors_meet;
mod opening_too_short;
mod other_sizes;
mod reveal_out_of_range;
mod rounding_drift;
mod side_hinge_bores_on_lift_door;
mod side_not_symmetric;
mod size_covers_part_of_mass_range;
mod springs_open;
mod stale_sheet;
mod top_edge_hits_panel;
mod uneven_reveals;
mod wall_fixing_reminder;
mod wide_door_sags;

use std::cell::OnceCell;
use std::sync::Arc;

use flapwright_model::cabinet::WallBox;
use flapwright_model::door::Door;
use flapwright_model::edit::Edit;
use flapwright_model::job::Job;
use flapwright_model::measure;
use flapwright_model::part::{BoreId, Subject};
use flapwright_model::severity::SeveritySetting;
use flapwright_motion::sizes::Verdict;

use crate::chosen_work::{ChosenWork, chosen_work};
use crate::finding::{Finding, Severity};
use crate::inspection::{BoxReport, DoorReport, PanelReport, PlacedBore};
use crate::mechanics::all_sizes;

/// A check: its name, its page and the function that runs it.
#[derive(Debug, Clone, Copy)]
pub struct Check {
    /// Name, kebab-case.
    pub name: &'static str,
    /// What it looks at and why it matters in the shop.
    pub page: &'static str,
    /// The severities that its findings can have by themselves.
    pub severities: &'static [Severity],
    /// Names of the settings of the job that it goes by.
    pub settings: &'static [&'static str],
    run: Run,
}

impl Check {
    /// The first sentence of its page: what it looks at.
    #[must_use]
    pub fn summary(&self) -> &'static str {
        let text = self
            .page
            .split("\n")
            .find(|line| !line.is_empty() && !line.starts_with('#'))
            .unwrap_or_default();
        text.find(". ").map_or(text, |end| &text[..=end])
    }

    /// The whole page as Markdown: heading, page, severities, settings.
    #[must_use]
    pub fn manual(&self) -> String {
        let words: Vec<&str> = self.severities.iter().map(|it| it.word()).collect();
        let mut text = format!(
            "# {}\n\n{}\n\n## Severity in a job\nDefault: {}. A job can give it another severity or turn it \
             off.",
            self.name,
            self.page,
            words.join(", ")
        );
        if !self.settings.is_empty() {
            text.push_str(&format!(
                "\n\n## Settings of the job that it goes by\n{}",
                self.settings.join(", ")
            ));
        }
        text
    }
}

#[derive(Debug, Clone, Copy)]
enum Run {
    /// Looks at one box at a time.
    Box(fn(&BoxContext<'_>, &mut Vec<Finding>)),
    /// Looks at the job as a whole.
    Job(fn(&Job, &[Arc<BoxReport>], &mut Vec<Finding>)),
}

/// Every check, in the order in which lists show them.
pub const CHECKS: &[Check] = &[
    bores_off_fitting::CHECK,
    drilled_panel_differs::CHECK,
    stale_sheet::CHECK,
    bore_breaks_through::CHECK,
    bore_near_edge::CHECK,
    bores_collide::CHECK,
    bore_misses_member::CHECK,
    bore_not_in_this_material::CHECK,
    edge_distance_outside_card::CHECK,
    linkage_cannot_close::CHECK,
    leaf_has_no_size::CHECK,
    frame_blocks_fitting::CHECK,
    reveal_out_of_range::CHECK,
    doors_overlap::CHECK,
    door_too_heavy::CHECK,
    door_too_light::CHECK,
    size_covers_part_of_mass_range::CHECK,
    door_outside_size_span::CHECK,
    box_too_shallow::CHECK,
    opening_too_short::CHECK,
    lift_cannot_work::CHECK,
    falls_when_let_go::CHECK,
    springs_open::CHECK,
    fitting_hits_shelf::CHECK,
    top_edge_hits_panel::CHECK,
    leaves_meet::CHECK,
    door_hits_ceiling::CHECK,
    door_hits_obstacle::CHECK,
    door_hits_neighbour::CHECK,
    open_doors_meet::CHECK,
    open_door_at_head_height::CHECK,
    handle_out_of_reach::CHECK,
    gap_catches_fingers::CHECK,
    hand_force_too_high::CHECK,
    wide_door_sags::CHECK,
    one_sided_fitting_racks::CHECK,
    glass_needs_safety_glass::CHECK,
    wall_fixing_reminder::CHECK,
    card_example_fails::CHECK,
    card_unproved::CHECK,
    side_hinge_bores_on_lift_door::CHECK,
    mirrored_pair_differs::CHECK,
    side_not_symmetric::CHECK,
    uneven_reveals::CHECK,
    off_the_grid::CHECK,
    rounding_drift::CHECK,
];

/// The check of that name.
#[must_use]
pub fn check(name: &str) -> Option<&'static Check> {
    CHECKS.iter().find(|check| check.name == name)
}

/// What the checks find in one box; remedies not judged yet.
pub(crate) fn look_at_box(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for check in CHECKS {
        if let Run::Box(run) = check.run {
            weighed(context.job, check, findings, |found| run(context, found));
        }
    }
}

/// What the checks find in the job as a whole.
pub(crate) fn look_at_job(job: &Job, reports: &[Arc<BoxReport>], findings: &mut Vec<Finding>) {
    for check in CHECKS {
        if let Run::Job(run) = check.run {
            weighed(job, check, findings, |found| run(job, reports, found));
        }
    }
}

/// Runs a check unless the job has it off, and gives what it finds the weight that the job says.
fn weighed(
    job: &Job,
    check: &Check,
    findings: &mut Vec<Finding>,
    run: impl FnOnce(&mut Vec<Finding>),
) {
    let weight = job.settings.weights.get(check.name);
    if weight == Some(&SeveritySetting::Off) {
        return;
    }
    let before = findings.len();
    run(findings);
    if let Some(severity) = weight.and_then(|weight| weight.severity()) {
        for finding in &mut findings[before..] {
            finding.severity = severity;
        }
    }
}

/// What a check sees.
pub(crate) struct BoxContext<'a> {
    /// The job.
    pub(crate) job: &'a Job,
    /// The box as described.
    pub(crate) wall_box: &'a WallBox,
    /// The box as placed.
    pub(crate) report: &'a BoxReport,
    /// How the chosen size of each opening works, once somebody asks.
    works: Vec<OnceCell<Option<ChosenWork>>>,
    /// The verdicts on every size for each opening, likewise.
    verdicts: Vec<OnceCell<Vec<Verdict>>>,
}

impl<'a> BoxContext<'a> {
    /// A box to be looked at.
    pub(crate) fn new(job: &'a Job, wall_box: &'a WallBox, report: &'a BoxReport) -> Self {
        Self {
            job,
            wall_box,
            report,
            works: vec![OnceCell::new(); report.openings.len()],
            verdicts: vec![OnceCell::new(); report.openings.len()],
        }
    }
}

impl BoxContext<'_> {
    /// How the chosen size of the door of an opening works; `None` without a door, a fitting, a
    /// mass or a motion, which other checks report.
    pub(crate) fn work(&self, opening: usize) -> Option<&ChosenWork> {
        self.works
            .get(opening)?
            .get_or_init(|| chosen_work(self.job, self.wall_box, self.report, opening))
            .as_ref()
    }

    /// Verdicts on every size for the door of an opening, the best first; none where
    /// [`Self::work`] gives none.
    pub(crate) fn verdicts(&self, opening: usize) -> &[Verdict] {
        self.verdicts.get(opening).map_or(&[], |cell| {
            cell.get_or_init(|| all_sizes(self.job, self.wall_box, self.report, opening))
        })
    }

    /// A length with its unit.
    pub(crate) fn length(&self, millimetres: f64) -> String {
        measure::length(millimetres, self.job.unit)
    }

    /// The openings that have a door, with its description and its place.
    pub(crate) fn doors(&self) -> impl Iterator<Item = (usize, &Door, &DoorReport)> {
        self.wall_box
            .openings
            .iter()
            .zip(&self.report.openings)
            .enumerate()
            .filter_map(|(index, (opening, report))| {
                Some((index, opening.door.as_ref()?, report.door.as_ref()?))
            })
    }

    /// How messages name the door of an opening.
    pub(crate) fn door_words(&self, opening: usize) -> String {
        let doors = self
            .wall_box
            .openings
            .iter()
            .filter(|opening| opening.door.is_some())
            .count();
        if doors > 1 {
            format!(
                "\"{}\", door {} from the top",
                self.report.name,
                opening + 1
            )
        } else {
            format!("\"{}\", door", self.report.name)
        }
    }

    /// How messages name a panel.
    pub(crate) fn panel_words(&self, panel: &PanelReport) -> String {
        format!("\"{}\", {}", self.report.name, panel.name)
    }

    /// The change that puts another description of this box in its place.
    pub(crate) fn replace(&self, with: WallBox) -> Edit {
        Edit::ReplaceBox {
            index: self.report.box_index,
            with: Box::new(with),
        }
    }

    /// The change that gives the door of an opening another description.
    pub(crate) fn replace_door(&self, opening: usize, with: Door) -> Edit {
        let mut wall_box = self.wall_box.clone();
        if let Some(place) = wall_box.openings.get_mut(opening) {
            place.door = Some(with);
        }
        self.replace(wall_box)
    }
}

/// A finding without details, numbers or remedies.
pub(crate) fn finding(
    check: &'static str,
    severity: Severity,
    message: String,
    subjects: Vec<Subject>,
) -> Finding {
    Finding {
        check,
        severity,
        message,
        details: Vec::new(),
        place: String::new(),
        accepted: None,
        subjects,
        numbers: Vec::new(),
        remedies: Vec::new(),
    }
}

/// What points at a bore of a panel.
pub(crate) fn bore_subject(panel: &PanelReport, bore: &PlacedBore) -> Subject {
    Subject::Bore(BoreId {
        part: panel.id,
        number: bore.number,
    })
}
