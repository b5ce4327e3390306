//! Whether the bores in the back of a door are where its fitting needs them.

use flapwright_model::acceptance::Topic;
use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Adjustment, AdjustmentRange};
use flapwright_model::change::door_is_drilled;
use flapwright_model::door::{BoreReference, Door};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::Edit;
use flapwright_model::id::DoorId;
use flapwright_model::part::{BoreId, LeafId, Part, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Remedy, Severity};
use crate::inspection::{BoreOffset, DoorReport};
use crate::placement::place_box;
use crate::plural;
use crate::tweaks;

const NAME: &str = "bores-off-fitting";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Every bore in the back of a door against the place where the fitting in the box needs it: how far \
off across and up, bore by bore.

## Why it matters
The fitting sits at a place in the box; the door has to meet it there. When the bores of a door hang \
on its own edges, or are in it already, a change of an edge carries them off the fitting. The door is \
then hung crooked, rubs, or cannot be hung.

## Severity
Caution while the fitting's adjustment can take up the offset of every bore, stop beyond it, stop \
also when a bore is missing or when the bores of one fitting are off by different amounts, which no \
adjustment takes up. Offsets up to the job's setting (default 0.2 mm; common practice, no source) \
are no finding.

## What can be done
Turn the tweak into a reveal (the door's edge stays, the bores go back to the fitting); hang the \
bores on the fitting again; undo the tweak. A door that is drilled already can only take the last. \
Of a door that is recorded as drilled the check `drilled-panel-differs` speaks.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["off_fitting_ignored"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, report) in context.doors() {
        let Some(card) = door.fitting.as_ref().and_then(|it| context.card(it)) else {
            continue;
        };
        // What differs from the record of a drilled door is another check's to say.
        if door_is_drilled(context.wall_box, door_id) {
            continue;
        }
        let Some(trouble) = Trouble::of(context, &report.offsets, &card.adjustment) else {
            continue;
        };
        let subjects = subjects(context, door_id, &trouble);
        let mut it = finding(
            NAME,
            trouble.severity,
            message(context, door_id, report, &trouble),
            subjects,
        );
        it = it.about([Topic::Door(door_id)]);
        it.details = details(context, report, &card.adjustment);
        it.numbers = numbers(&trouble, &card.adjustment);
        it.remedies = remedies(context, door);
        findings.push(it);
    }
}

/// How bad it is that the bores of a door are off its fitting; `None` when they are not.
pub(super) fn severity_of(
    context: &BoxContext<'_>,
    offsets: &[BoreOffset],
    adjustment: &Adjustment,
) -> Option<Severity> {
    Trouble::of(context, offsets, adjustment).map(|trouble| trouble.severity)
}

/// What is wrong with the bores of one door.
struct Trouble {
    severity: Severity,
    /// Offsets that count, furthest first.
    off: Vec<BoreOffset>,
    /// Bores that the fitting needs and the door does not have.
    missing: usize,
    /// Bores of one fitting that are off by different amounts: the largest difference, mm.
    uneven: f64,
    /// Share of the adjustment that is used up, 1 = all of it; infinite without adjustment.
    used: f64,
}

impl Trouble {
    fn of(
        context: &BoxContext<'_>,
        offsets: &[BoreOffset],
        adjustment: &Adjustment,
    ) -> Option<Self> {
        let ignored = context.job.settings.off_fitting_ignored;
        let missing = offsets
            .iter()
            .filter(|offset| offset.drilled.is_none())
            .count();
        let mut off: Vec<BoreOffset> = offsets
            .iter()
            .filter(|offset| offset.distance() > ignored)
            .cloned()
            .collect();
        if off.is_empty() && missing == 0 {
            return None;
        }
        off.sort_by(|a, b| b.distance().total_cmp(&a.distance()));
        let uneven = unevenness(offsets);
        let used = off
            .iter()
            .map(|offset| used(offset, adjustment))
            .fold(0.0, f64::max);
        let hopeless = missing > 0 || uneven > ignored || used > 1.0;
        let severity = if hopeless {
            Severity::Stop
        } else {
            Severity::Caution
        };
        Some(Self {
            severity,
            off,
            missing,
            uneven,
            used,
        })
    }
}

/// The largest difference between the offsets of bores of one fitting in one leaf, mm.
fn unevenness(offsets: &[BoreOffset]) -> f64 {
    let mut largest = 0.0_f64;
    for (i, a) in offsets.iter().enumerate() {
        for b in &offsets[i + 1..] {
            let together = a.leaf == b.leaf && a.side == b.side;
            if together && a.drilled.is_some() && b.drilled.is_some() {
                largest = largest.max((a.across - b.across).hypot(a.up - b.up));
            }
        }
    }
    largest
}

/// How much of the adjustment an offset uses up. A bore that is off by (a, u) hangs the door at
/// (-a, -u); the fitting has to move it by (a, u).
fn used(offset: &BoreOffset, adjustment: &Adjustment) -> f64 {
    share_of(offset.across, adjustment.sideways).max(share_of(offset.up, adjustment.upward))
}

fn share_of(by: f64, travel: AdjustmentRange) -> f64 {
    let limit = if by > 0.0 { travel.max } else { -travel.min };
    if by == 0.0 {
        0.0
    } else if limit > 0.0 {
        by.abs() / limit
    } else {
        f64::INFINITY
    }
}

fn subjects(context: &BoxContext<'_>, door_id: DoorId, trouble: &Trouble) -> Vec<Subject> {
    let mut subjects: Vec<Subject> = trouble
        .off
        .iter()
        .filter_map(|offset| {
            let part = context.part_id(Part::Leaf {
                door: door_id,
                leaf: offset.leaf,
            });
            offset
                .drilled
                .map(|(number, _)| Subject::Bore(BoreId { part, number }))
        })
        .collect();
    subjects.push(context.door_subject(door_id));
    subjects
}

fn message(
    context: &BoxContext<'_>,
    door_id: DoorId,
    report: &DoorReport,
    trouble: &Trouble,
) -> String {
    let door = context.door_words(door_id);
    let all = report.offsets.len();
    let Some(worst) = trouble.off.first() else {
        return format!(
            "{door}: of {} that the fitting needs the door lacks {}",
            plural::count(all, "bore"),
            trouble.missing,
        );
    };
    let mut text = format!(
        "{door}: {} of {} off the fitting, the largest offset is {}",
        trouble.off.len(),
        plural::count(all, "bore"),
        direction(context, worst),
    );
    if trouble.missing > 0 {
        text.push_str(&format!(
            "; {} missing",
            plural::count(trouble.missing, "bore")
        ));
    }
    if trouble.uneven > context.job.settings.off_fitting_ignored {
        text.push_str(&format!(
            "; the bores of one fitting differ by {}, which no adjustment takes up",
            context.length(trouble.uneven)
        ));
    } else if trouble.used.is_infinite() {
        text.push_str("; the fitting has no adjustment that way");
    } else if trouble.used > 1.0 {
        text.push_str(&format!(
            "; that is {:.1} times what the fitting can be adjusted by",
            trouble.used
        ));
    } else {
        text.push_str(&format!(
            "; adjusting the fitting takes it up and uses {} of its travel",
            plural::percent(trouble.used)
        ));
    }
    text
}

fn direction(context: &BoxContext<'_>, offset: &BoreOffset) -> String {
    let mut words = Vec::new();
    if offset.across.abs() > 1e-6 {
        let way = if offset.across > 0.0 {
            "to the right"
        } else {
            "to the left"
        };
        words.push(format!("{} {way}", context.length(offset.across.abs())));
    }
    if offset.up.abs() > 1e-6 {
        let way = if offset.up > 0.0 { "up" } else { "down" };
        words.push(format!("{} {way}", context.length(offset.up.abs())));
    }
    if words.is_empty() {
        "none".to_owned()
    } else {
        words.join(" and ")
    }
}

fn details(context: &BoxContext<'_>, report: &DoorReport, adjustment: &Adjustment) -> Vec<String> {
    let mut lines: Vec<String> = report
        .offsets
        .iter()
        .map(|offset| {
            let leaf = match offset.leaf {
                LeafId::Only => "",
                LeafId::Upper => "upper leaf, ",
                LeafId::Lower => "lower leaf, ",
            };
            let side = offset.side.edge().word();
            match offset.drilled {
                Some((number, _)) => format!(
                    "{leaf}bore {number} ({}, {side} fitting): {}",
                    offset.purpose,
                    direction(context, offset)
                ),
                None => format!("{leaf}no bore for {} of the {side} fitting", offset.purpose),
            }
        })
        .collect();
    lines.push(format!(
        "the fitting adjusts the door by {} to {} sideways and {} to {} up",
        context.length(adjustment.sideways.min),
        context.length(adjustment.sideways.max),
        context.length(adjustment.upward.min),
        context.length(adjustment.upward.max),
    ));
    lines.push(
        "across is seen from the front of the box; the back of the door is drawn mirrored"
            .to_owned(),
    );
    lines
}

fn numbers(trouble: &Trouble, adjustment: &Adjustment) -> Vec<Number> {
    let mut numbers = Vec::new();
    if let Some(worst) = trouble.off.first() {
        numbers.push(Number::mm("largest offset", worst.distance()));
        numbers.push(Number::mm("largest offset, across", worst.across));
        numbers.push(Number::mm("largest offset, up", worst.up));
    }
    if trouble.used.is_finite() {
        numbers.push(Number::of(
            "share of the adjustment".to_owned(),
            trouble.used,
            "",
        ));
    }
    numbers.push(Number::mm(
        "adjustment sideways, least",
        adjustment.sideways.min,
    ));
    numbers.push(Number::mm(
        "adjustment sideways, greatest",
        adjustment.sideways.max,
    ));
    numbers.push(Number::mm("adjustment up, least", adjustment.upward.min));
    numbers.push(Number::mm("adjustment up, greatest", adjustment.upward.max));
    numbers
}

fn remedies(context: &BoxContext<'_>, door: &Door) -> Vec<Remedy> {
    let tweaked = Edge::ALL.iter().any(|&edge| door.tweaks.at(edge) != 0.0);
    let mut offered = Vec::new();
    let drilled_already = matches!(door.bores_follow, BoreReference::AsDrilled(_));
    if tweaked && !drilled_already {
        offered.push(Change {
            title: "Turn the tweak into a reveal",
            with: tweaks::into_reveals(context.wall_box, door),
            safe: true,
        });
    }
    if !matches!(door.bores_follow, BoreReference::Fitting) {
        let with = Door {
            bores_follow: BoreReference::Fitting,
            ..door.clone()
        };
        offered.push(Change {
            title: "Hang the bores on the fitting again",
            with: context.with_door(door.id, with),
            safe: false,
        });
    }
    if tweaked {
        let with = Door {
            tweaks: Edges::default(),
            ..door.clone()
        };
        offered.push(Change {
            title: "Undo the tweak",
            with: context.with_door(door.id, with),
            safe: false,
        });
    }
    offered
        .into_iter()
        .map(|offer| offer.remedy(context, door.id))
        .collect()
}

struct Change {
    title: &'static str,
    with: WallBox,
    safe: bool,
}

impl Change {
    /// The remedy, its effect read off the box as it would be.
    fn remedy(self, context: &BoxContext<'_>, door_id: DoorId) -> Remedy {
        let after = place_box(context.job, &self.with);
        let (was, will) = (context.report.door(door_id), after.door(door_id));
        let effect = match (was, will) {
            (Some(was), Some(will)) => effect(context, was, will),
            _ => String::new(),
        };
        Remedy {
            title: self.title.to_owned(),
            effect,
            safe: self.safe,
            edit: Edit::replace_box(self.with),
        }
    }
}

fn effect(context: &BoxContext<'_>, was: &DoorReport, will: &DoorReport) -> String {
    let largest = |door: &DoorReport| {
        door.offsets
            .iter()
            .map(BoreOffset::distance)
            .fold(0.0, f64::max)
    };
    let mut parts = vec![format!(
        "largest offset {} to {}",
        context.length(largest(was)),
        context.length(largest(will))
    )];
    let size = |door: &DoorReport| {
        (
            door.edges.right - door.edges.left,
            door.edges.top - door.edges.bottom,
        )
    };
    let (before, after) = (size(was), size(will));
    for (word, before, after) in [("width", before.0, after.0), ("height", before.1, after.1)] {
        if (before - after).abs() > 1e-6 {
            parts.push(format!(
                "door {word} {} to {}",
                context.length(before),
                context.length(after)
            ));
        }
    }
    if before == after {
        parts.push("the door keeps its size".to_owned());
    }
    for edge in Edge::ALL {
        let (before, after) = (was.overlays.at(edge), will.overlays.at(edge));
        if (before - after).abs() > 1e-6 {
            parts.push(format!(
                "{} overlay {} to {}",
                edge.word(),
                context.length(before),
                context.length(after)
            ));
        }
    }
    parts.extend(moves(context, was, will));
    parts.join("; ")
}

/// How far the bores move in the box, and what that does to the furthest one's place in the door.
fn moves(context: &BoxContext<'_>, was: &DoorReport, will: &DoorReport) -> Option<String> {
    let (a, b) = was
        .offsets
        .iter()
        .zip(&will.offsets)
        .filter_map(|(was, will)| Some((was.drilled?.1, will.drilled?.1)))
        .max_by(|(a, b), (c, d)| (*a - *b).length().total_cmp(&(*c - *d).length()))?;
    let by = (a - b).length();
    if by <= 1e-6 {
        return Some("no bore moves in the box".to_owned());
    }
    Some(format!(
        "bores move by up to {} in the box, one from {} to {} below the door's top edge",
        context.length(by),
        context.length(was.edges.top - a.y),
        context.length(will.edges.top - b.y),
    ))
}
