//! Whether the bores in the back of a door are where its fitting needs them.

use flapwright_model::acceptance::Topic;
use flapwright_model::cabinet::WallBox;
use flapwright_model::card::{Adjustment, AdjustmentRange};
use flapwright_model::change::door_is_drilled;
use flapwright_model::door::{BoreReference, Door};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::Edit;
use flapwright_model::id::DoorId;
use flapwright_model::message::{Count, Mm, Share, Times};
use flapwright_model::part::{BoreId, Part, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspection::{BoreOffset, DoorReport};
use crate::message::{BoresOffFitting, Effect, RemedyKind, Step, word};
use crate::tweaks;

const NAME: &str = "bores-off-fitting";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Every bore in the back of a door against the place where the fitting in the box needs it: how far \
off across and up, bore by bore.

## Why it matters
The fitting sits at a place in the box; the door has to meet it there. When the bores of a door \
follow its own edges, or are in it already, a change of an edge carries them off the fitting. The \
door is then hung crooked, rubs, or cannot be hung.

## Severity
Caution while the fitting's adjustment can take up the offset of every bore, stop beyond it, stop \
also when a bore is missing or when the bores of one fitting are off by different amounts, which \
no adjustment takes up. Offsets up to the setting “off fitting” (default 0.2 mm; common practice, \
no source) are no finding.

## What can be done
Make it a reveal (bores stay on the fitting), move the bores back to the fitting, or undo the \
tweak. For a door that is drilled already only the last helps. A door that is recorded as drilled \
is looked at by drilled-panel-differs.",
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
            message(report, &trouble, &card.adjustment),
            subjects,
        )
        .about([Topic::Door(door_id)]);
        for reason in reasons(context, report, &trouble, &card.adjustment) {
            it.because(reason);
        }
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

fn message(report: &DoorReport, trouble: &Trouble, adjustment: &Adjustment) -> BoresOffFitting {
    let all = Count(report.offsets.len());
    let share_of_the_adjustment = trouble.used.is_finite().then_some(Share(trouble.used));
    let adjustment_sideways_least = Mm(adjustment.sideways.min);
    let adjustment_sideways_greatest = Mm(adjustment.sideways.max);
    let adjustment_up_least = Mm(adjustment.upward.min);
    let adjustment_up_greatest = Mm(adjustment.upward.max);
    match trouble.off.first() {
        None => BoresOffFitting::Missing {
            missing: Count(trouble.missing),
            all,
            share_of_the_adjustment,
            adjustment_sideways_least,
            adjustment_sideways_greatest,
            adjustment_up_least,
            adjustment_up_greatest,
        },
        Some(worst) => BoresOffFitting::Off {
            off: Count(trouble.off.len()),
            all,
            worst: Step::seen_from_front(worst.across, worst.up),
            largest_offset: Mm(worst.distance()),
            largest_offset_across: Mm(worst.across),
            largest_offset_up: Mm(worst.up),
            share_of_the_adjustment,
            adjustment_sideways_least,
            adjustment_sideways_greatest,
            adjustment_up_least,
            adjustment_up_greatest,
        },
    }
}

fn reasons(
    context: &BoxContext<'_>,
    report: &DoorReport,
    trouble: &Trouble,
    adjustment: &Adjustment,
) -> Vec<BoresOffFitting> {
    let mut reasons = Vec::new();
    if !trouble.off.is_empty() {
        if trouble.missing > 0 {
            reasons.push(BoresOffFitting::AlsoMissing {
                missing: Count(trouble.missing),
            });
        }
        reasons.push(can_be_adjusted(context, trouble));
    }
    reasons.extend(report.offsets.iter().map(bore_by_bore));
    reasons.push(BoresOffFitting::Adjusts {
        sideways_least: Mm(adjustment.sideways.min),
        sideways_greatest: Mm(adjustment.sideways.max),
        up_least: Mm(adjustment.upward.min),
        up_greatest: Mm(adjustment.upward.max),
    });
    reasons.push(BoresOffFitting::SeenFromFront);
    reasons
}

/// Whether the fitting's adjustment takes the offset up.
fn can_be_adjusted(context: &BoxContext<'_>, trouble: &Trouble) -> BoresOffFitting {
    if trouble.uneven > context.job.settings.off_fitting_ignored {
        BoresOffFitting::Uneven {
            by: Mm(trouble.uneven),
        }
    } else if trouble.used.is_infinite() {
        BoresOffFitting::NoAdjustment
    } else if trouble.used > 1.0 {
        BoresOffFitting::BeyondAdjustment {
            times: Times(trouble.used),
        }
    } else {
        BoresOffFitting::WithinAdjustment {
            share: Share(trouble.used),
        }
    }
}

/// One bore of the door, or that it is missing.
fn bore_by_bore(offset: &BoreOffset) -> BoresOffFitting {
    let side = word::side(offset.side);
    let purpose = offset.purpose.clone();
    let way = Step::seen_from_front(offset.across, offset.up);
    match (offset.drilled, word::leaf(offset.leaf)) {
        (Some((number, _)), None) => BoresOffFitting::Bore {
            bore: Count(number),
            purpose,
            side,
            way,
        },
        (Some((number, _)), Some(leaf)) => BoresOffFitting::LeafBore {
            leaf,
            bore: Count(number),
            purpose,
            side,
            way,
        },
        (None, None) => BoresOffFitting::NoBore { purpose, side },
        (None, Some(leaf)) => BoresOffFitting::NoLeafBore {
            leaf,
            purpose,
            side,
        },
    }
}

fn remedies(context: &BoxContext<'_>, door: &Door) -> Vec<Remedy> {
    let tweaked = Edge::ALL.iter().any(|&edge| door.tweaks.at(edge) != 0.0);
    let mut offered = Vec::new();
    let drilled_already = matches!(door.bores_follow, BoreReference::AsDrilled(_));
    if tweaked && !drilled_already {
        offered.push(Change {
            kind: RemedyKind::MakeReveal,
            with: tweaks::into_reveals(context.wall_box, door),
            safety: Safety::Safe,
        });
    }
    if !matches!(door.bores_follow, BoreReference::Fitting) {
        let with = Door {
            bores_follow: BoreReference::Fitting,
            ..door.clone()
        };
        offered.push(Change {
            kind: RemedyKind::BoresToFitting,
            with: context.with_door(door.id, with),
            safety: Safety::NeedsALook,
        });
    }
    if tweaked {
        let with = Door {
            tweaks: Edges::default(),
            ..door.clone()
        };
        offered.push(Change {
            kind: RemedyKind::UndoTweak,
            with: context.with_door(door.id, with),
            safety: Safety::NeedsALook,
        });
    }
    offered
        .into_iter()
        .map(|offer| offer.remedy(context, door.id))
        .collect()
}

struct Change {
    kind: RemedyKind,
    with: WallBox,
    safety: Safety,
}

impl Change {
    /// The remedy, its effect read off the box as it would be.
    fn remedy(self, context: &BoxContext<'_>, door_id: DoorId) -> Remedy {
        let after = context.placed(&self.with);
        let (was, will) = (context.report.door(door_id), after.door(door_id));
        let effects = match (was, will) {
            (Some(was), Some(will)) => effects(was, will),
            _ => Vec::new(),
        };
        Remedy {
            kind: self.kind,
            effects,
            safety: self.safety,
            edit: Edit::replace_box(self.with),
        }
    }
}

fn effects(was: &DoorReport, will: &DoorReport) -> Vec<Effect> {
    let largest = |door: &DoorReport| {
        let offsets = door.offsets.iter().map(BoreOffset::distance);
        Mm(offsets.fold(0.0, f64::max))
    };
    let mut effects = vec![Effect::LargestOffset {
        was: largest(was),
        is: largest(will),
    }];
    let size = |door: &DoorReport| {
        let edges = &door.edges;
        (edges.right - edges.left, edges.top - edges.bottom)
    };
    let (before, after) = (size(was), size(will));
    if (before.0 - after.0).abs() > 1e-6 {
        effects.push(Effect::DoorWidth {
            was: Mm(before.0),
            is: Mm(after.0),
        });
    }
    if (before.1 - after.1).abs() > 1e-6 {
        effects.push(Effect::DoorHeight {
            was: Mm(before.1),
            is: Mm(after.1),
        });
    }
    if before == after {
        effects.push(Effect::SameSize);
    }
    for edge in Edge::ALL {
        let (before, after) = (was.overlays.at(edge), will.overlays.at(edge));
        if (before - after).abs() > 1e-6 {
            effects.push(Effect::Overlay {
                edge: word::edge(edge),
                was: Mm(before),
                is: Mm(after),
            });
        }
    }
    effects.extend(moves(was, will));
    effects
}

/// How far the bores move in the box, and what that does to the furthest one's place in the door.
fn moves(was: &DoorReport, will: &DoorReport) -> Option<Effect> {
    let (a, b) = was
        .offsets
        .iter()
        .zip(&will.offsets)
        .filter_map(|(was, will)| Some((was.drilled?.1, will.drilled?.1)))
        .max_by(|(a, b), (c, d)| (*a - *b).length().total_cmp(&(*c - *d).length()))?;
    let by = (a - b).length();
    if by <= 1e-6 {
        return Some(Effect::NoBoreMoves);
    }
    Some(Effect::BoresMove {
        by: Mm(by),
        was: Mm(was.edges.top - a.y),
        is: Mm(will.edges.top - b.y),
    })
}
