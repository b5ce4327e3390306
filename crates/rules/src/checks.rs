//! The checks: one file each, all listed here.
//!
//! A check is a pure function of one placed box, of two boxes that hang near each other, of two doors
//! that look alike, or of a card. It never panics, and it reports nothing about a
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
use std::collections::BTreeMap;
use std::sync::Arc;

use flapwright_model::acceptance::Topic;
use flapwright_model::cabinet::WallBox;
use flapwright_model::card::Card;
use flapwright_model::door::{Door, FittingChoice};
use flapwright_model::edit::Edit;
use flapwright_model::field::{Fields as _, HeadField};
use flapwright_model::id::DoorId;
use flapwright_model::job::{Job, Settings, UsedCard};
use flapwright_model::part::{BoreId, LeafId, Part, PartId, Subject};
use flapwright_model::severity::SeveritySetting;
use flapwright_motion::sizes::Verdict;

use crate::chosen_work::{ChosenWork, Fall};
use crate::door_work::{Asked, DoorWork};
use crate::finding::{Finding, Severity, numbers};
use crate::inspection::{BoxReport, DoorReport, OpeningReport, PanelReport, PlacedBore};
use crate::message::Message;
use crate::placement::door_motions::DoorMotions;
use crate::placement::place_among;

pub use mirrored_pair_differs::{Looks, OneDoor, looks_of, one_door};
pub use on_the_wall::Stretch;

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
    /// What it looks at.
    #[must_use]
    pub const fn looks_at(&self) -> LooksAt {
        match self.run {
            Run::Box(_) => LooksAt::Box,
            Run::Pair(_) => LooksAt::Pair,
            Run::Alike(_) => LooksAt::Alike,
            Run::Card(_) => LooksAt::Card,
        }
    }

    /// What the form calls these settings, in the order of its fields.
    #[must_use]
    pub fn setting_labels(&self) -> Vec<&'static str> {
        let own = |field: &HeadField| {
            let setting = field.setting();
            setting.is_some_and(|it| self.settings.contains(&it))
        };
        HeadField::all()
            .filter(own)
            .map(|field| field.info().label)
            .collect()
    }

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
                "\n\n## Settings of the job\n{}",
                self.setting_labels().join(", ")
            ));
        }
        text
    }
}

/// What a check looks at, and how.
#[derive(Debug, Clone, Copy)]
enum Run {
    /// One box by itself.
    Box(fn(&BoxContext<'_>, &mut Vec<Finding>)),
    /// Two boxes that hang near each other, in the order of their identities; or twice the same
    /// one, for what is between its own doors.
    Pair(fn(&Settings, [Seen<'_>; 2], &mut Vec<Finding>)),
    /// Two doors that look alike, wherever they hang.
    Alike(fn(&Settings, [OneDoor<'_>; 2]) -> Option<Finding>),
    /// A card in use and the doors that are on it.
    Card(fn(&UsedCard, &[Subject], &mut Vec<Finding>)),
}

/// What a check looks at.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LooksAt {
    /// One box by itself.
    Box,
    /// Two boxes that hang near each other.
    Pair,
    /// Two doors that look alike.
    Alike,
    /// A card and its doors.
    Card,
}

/// A box as described and as placed.
#[derive(Debug, Clone, Copy)]
pub struct Seen<'a> {
    /// As described.
    pub wall_box: &'a WallBox,
    /// As placed.
    pub report: &'a BoxReport,
}

/// The checks that go by the room.
pub const READ_THE_ROOM: [&str; 2] = [
    door_hits_ceiling::CHECK.name,
    door_hits_obstacle::CHECK.name,
];
/// The check that goes by the job's unit.
pub const READ_THE_UNIT: [&str; 1] = [rounding_drift::CHECK.name];
/// The settings that a door's size is judged by, whichever check asks.
pub const JUDGE_SIZES: [&str; 2] = ["coldest", "hottest"];
/// The setting that places are reckoned with.
pub const PLACE_DOORS: [&str; 1] = ["bumper_gap"];

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

/// What the checks that `which` names find in one box by itself, in the order of [`CHECKS`].
#[must_use]
pub fn look_at_box(
    job: &Job,
    seen: Seen<'_>,
    motions: &DoorMotions,
    which: impl Fn(&Check) -> bool,
) -> Vec<Finding> {
    let context = BoxContext::new(job, seen, motions);
    let mut findings = Vec::new();
    for check in CHECKS.iter().filter(|check| which(check)) {
        if let Run::Box(run) = check.run {
            weighed(&job.settings, check, &mut findings, |found| {
                run(&context, found);
            });
        }
    }
    findings
}

/// What the checks find between two boxes, in the order of their identities; between the doors of
/// one, where it is given twice.
#[must_use]
pub fn look_at_pair(settings: &Settings, pair: [Seen<'_>; 2]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for check in CHECKS {
        if let Run::Pair(run) = check.run {
            weighed(settings, check, &mut findings, |found| {
                run(settings, pair, found);
            });
        }
    }
    findings
}

/// What the checks find between two doors that look alike.
#[must_use]
pub fn look_at_alike(settings: &Settings, doors: [OneDoor<'_>; 2]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for check in CHECKS {
        if let Run::Alike(run) = check.run {
            weighed(settings, check, &mut findings, |found| {
                found.extend(run(settings, doors));
            });
        }
    }
    findings
}

/// What the checks find in a card; `users` are the doors on it.
#[must_use]
pub fn look_at_card(settings: &Settings, used: &UsedCard, users: &[Subject]) -> Vec<Finding> {
    let mut findings = Vec::new();
    for check in CHECKS {
        if let Run::Card(run) = check.run {
            weighed(settings, check, &mut findings, |found| {
                run(used, users, found);
            });
        }
    }
    findings
}

/// Tells that a box hangs among so many others that they were not all compared with it.
#[must_use]
pub fn tell_of_crowd(settings: &Settings, seen: Seen<'_>, uncompared: usize) -> Vec<Finding> {
    let mut findings = Vec::new();
    weighed(settings, &doors_overlap::CHECK, &mut findings, |found| {
        found.push(doors_overlap::crowd(seen.report.id, uncompared));
    });
    findings
}

/// Runs a check unless the job has it off, gives what it finds the weight that the job says, and
/// sees to it that no two findings have one key: those about the very same things are told apart by
/// their order.
fn weighed(
    settings: &Settings,
    check: &Check,
    findings: &mut Vec<Finding>,
    run: impl FnOnce(&mut Vec<Finding>),
) {
    let weight = settings.weights.get(check.name);
    if weight == Some(&SeveritySetting::Off) {
        return;
    }
    let before = findings.len();
    run(findings);
    let found = &mut findings[before..];
    if let Some(severity) = weight.and_then(|weight| weight.severity()) {
        for finding in &mut *found {
            finding.severity = severity;
        }
    }
    tell_apart(found);
}

/// Gives the second, third finding about the same things a number.
fn tell_apart(found: &mut [Finding]) {
    let mut seen: BTreeMap<Vec<Topic>, u32> = BTreeMap::new();
    for finding in found {
        let count = seen
            .entry(finding.about.clone())
            .and_modify(|count| *count += 1)
            .or_insert(1);
        if *count > 1 {
            finding.about.push(Topic::Another(*count));
        }
    }
}

/// What a check sees.
pub(crate) struct BoxContext<'a> {
    /// The job: its head, materials and cards. Other boxes are nothing that a check of one box may go
    /// by, and may be left out.
    pub(crate) job: &'a Job,
    /// The box as described.
    pub(crate) wall_box: &'a WallBox,
    /// The box as placed.
    pub(crate) report: &'a BoxReport,
    /// The motions of doors that are alike.
    motions: &'a DoorMotions,
    /// What is dear to reckon of each door, once somebody asks.
    doors: Vec<(DoorId, OnceCell<Option<Arc<DoorWork>>>)>,
}

impl<'a> BoxContext<'a> {
    /// A box to be looked at.
    pub(crate) fn new(
        job: &'a Job,
        Seen { wall_box, report }: Seen<'a>,
        motions: &'a DoorMotions,
    ) -> Self {
        let doors = report.doors().map(|door| (door.id, OnceCell::new()));
        Self {
            job,
            wall_box,
            report,
            motions,
            doors: doors.collect(),
        }
    }

    /// The box as another description of it would be placed.
    pub(crate) fn placed(&self, with: &WallBox) -> BoxReport {
        place_among(self.job, with, self.motions)
    }

    /// The card of the fitting of a door.
    pub(crate) fn card(&self, choice: &FittingChoice) -> Option<&'a Card> {
        self.job.card_by_id(choice.card)
    }
}

impl BoxContext<'_> {
    /// How the chosen size of a door works; `None` without a fitting, a mass or a motion, which
    /// other checks report.
    pub(crate) fn work(&self, door: DoorId) -> Option<&ChosenWork> {
        let (work, asked) = self.its_work(door)?;
        work.chosen(asked)
    }

    /// From where the heaviest door falls, if that is higher than a door may fall from.
    pub(crate) fn fall(&self, door: DoorId) -> Option<&Fall> {
        let (work, asked) = self.its_work(door)?;
        work.fall(asked)
    }

    /// Verdicts on every size for a door, the best first; none where [`Self::work`] gives none.
    pub(crate) fn verdicts(&self, door: DoorId) -> &[Verdict] {
        let its = self.its_work(door);
        its.map_or(&[], |(work, asked)| work.sizes(asked))
    }

    /// What is shared with all doors that are alike.
    fn its_work(&self, door: DoorId) -> Option<(&DoorWork, Asked<'_>)> {
        let (_, work) = self.doors.iter().find(|it| it.0 == door)?;
        let asked = Asked {
            job: self.job,
            wall_box: self.wall_box,
            report: self.report,
            door,
        };
        let work = work.get_or_init(|| self.motions.works.of(asked)).as_ref()?;
        Some((work, asked))
    }

    /// The doors, with their description and their place.
    pub(crate) fn doors(&self) -> impl Iterator<Item = (DoorId, &Door, &DoorReport)> {
        self.report
            .doors()
            .filter_map(|report| Some((report.id, self.wall_box.door(report.id)?, report)))
    }

    /// The opening that a door closes.
    pub(crate) fn opening_of(&self, door: DoorId) -> Option<&OpeningReport> {
        self.report.opening_of(door)
    }

    /// A leaf of a door.
    pub(crate) fn leaf(&self, door: DoorId, leaf: LeafId) -> Option<&PanelReport> {
        self.report.panel(Part::Leaf { door, leaf })
    }

    /// What points at this box.
    pub(crate) const fn box_subject(&self) -> Subject {
        Subject::Box(self.report.id)
    }

    /// What points at a door of this box.
    pub(crate) const fn door_subject(&self, door: DoorId) -> Subject {
        Subject::Door(self.report.id, door)
    }

    /// A part of this box.
    pub(crate) const fn part_id(&self, part: Part) -> PartId {
        PartId {
            box_id: self.report.id,
            part,
        }
    }

    /// The change that gives a door another description.
    pub(crate) fn replace_door(&self, door: DoorId, with: Door) -> Edit {
        Edit::replace_box(self.with_door(door, with))
    }

    /// This box with another description of a door.
    pub(crate) fn with_door(&self, door: DoorId, with: Door) -> WallBox {
        let mut wall_box = self.wall_box.clone();
        if let Some(place) = wall_box.door_mut(door) {
            *place = with;
        }
        wall_box
    }
}

/// A finding without reasons and remedies. It is about what it points at, but for bores: the
/// number of a bore shifts when others come and go.
pub(crate) fn finding(
    check: &'static str,
    severity: Severity,
    message: impl Into<Message>,
    subjects: Vec<Subject>,
) -> Finding {
    let message = message.into();
    let about: Vec<Topic> = subjects.iter().filter_map(topic_of).collect();
    let found = Finding {
        check,
        severity,
        numbers: numbers(&message),
        message,
        reasons: Vec::new(),
        about: Vec::new(),
        accepted: None,
        subjects,
        remedies: Vec::new(),
    };
    found.about(about)
}

const fn topic_of(subject: &Subject) -> Option<Topic> {
    match *subject {
        Subject::Box(id) => Some(Topic::Box(id)),
        Subject::Opening(_, id) => Some(Topic::Opening(id)),
        Subject::Door(_, id) => Some(Topic::Door(id)),
        Subject::Part(id) => Some(Topic::Part(id)),
        Subject::Obstacle(id) => Some(Topic::Obstacle(id)),
        Subject::Card(id) => Some(Topic::Card(id)),
        Subject::Bore(_) => None,
    }
}

/// The topic of a finding about one bore of a panel.
pub(crate) fn bore_topic(panel: &PanelReport, bore: &PlacedBore) -> Topic {
    let before = panel.bores.iter().take_while(|it| it.number < bore.number);
    let like = before.filter(|it| of_one_kind(it, bore)).count();
    Topic::Bore {
        part: panel.id,
        door: bore.source.door(),
        purpose: bore.drill.purpose.clone(),
        nth: u32::try_from(like).map_or(u32::MAX, |it| it.saturating_add(1)),
    }
}

/// The topic of a finding about all bores of a panel that are for one door and purpose.
pub(crate) fn bores_topic(panel: &PanelReport, bore: &PlacedBore) -> Topic {
    Topic::Bore {
        part: panel.id,
        door: bore.source.door(),
        purpose: bore.drill.purpose.clone(),
        nth: 0,
    }
}

fn of_one_kind(a: &PlacedBore, b: &PlacedBore) -> bool {
    a.source.door() == b.source.door() && a.drill.purpose == b.drill.purpose
}

/// What points at a bore of a panel.
pub(crate) fn bore_subject(panel: &PanelReport, bore: &PlacedBore) -> Subject {
    Subject::Bore(BoreId {
        part: panel.id,
        number: bore.number,
    })
}
