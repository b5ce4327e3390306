//! Whether the two sides of a box are mirror images.

use flapwright_model::card::FittedSides;
use flapwright_model::door::FittingChoice;
use flapwright_model::job::UsedCard;
use flapwright_model::message::Count;
use flapwright_model::part::{Part, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspection::{BoreSource, PanelReport, PlacedBore};
use crate::message::{Effect, FittingName, RemedyKind, SideNotSymmetric};

const NAME: &str = "side-not-symmetric";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Boxes whose two sides have the same outline: whether their bores mirror each other.

## Why it matters
Mirrored sides are drilled with one set-up, the stop turned over. Sides that differ need two, and \
can be mixed up. A fitting at one side only makes them differ.

## Severity
Note.

## What can be done
A fitting of the same opening kind that sits at both sides.",
    severities: &[Severity::Note],
    settings: &[],
    run: Run::Box(look),
};

/// Bores nearer than this are in one place, mm: half of what sheets are printed to.
const SAME: f64 = 0.05;

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let side = |part| {
        context
            .report
            .panels
            .iter()
            .find(move |it| it.id.part == part)
    };
    let (Some(left), Some(right)) = (side(Part::LeftSide), side(Part::RightSide)) else {
        return;
    };
    let outline = (0..2).all(|i| (left.size[i] - right.size[i]).abs() < SAME);
    // What is drilled already differs from what is needed; another check says so.
    let drilled = |panel: &PanelReport| {
        panel
            .bores
            .iter()
            .any(|bore| bore.source == BoreSource::Recorded)
    };
    if !outline || drilled(left) || drilled(right) {
        return;
    }
    let (only_left, only_right) = (alone(left, right), alone(right, left));
    if only_left + only_right == 0 {
        return;
    }
    let mut it = finding(
        NAME,
        Severity::Note,
        SideNotSymmetric::Differ {
            bores_at_one_side_only: Count(only_left + only_right),
        },
        vec![Subject::Part(left.id), Subject::Part(right.id)],
    );
    it.because(SideNotSymmetric::Alone {
        left: Count(only_left),
        right: Count(only_right),
    });
    it.remedies = both_sided(context);
    findings.push(it);
}

/// How many bores of a side have no mirror image in the other. Both sides have the same (u, v).
fn alone(side: &PanelReport, other: &PanelReport) -> usize {
    let twin = |a: &PlacedBore, b: &PlacedBore| {
        let ((au, av), (bu, bv)) = (a.at.uv(), b.at.uv());
        (au - bu).abs() < SAME
            && (av - bv).abs() < SAME
            && a.drill.diameter == b.drill.diameter
            && a.drill.depth == b.drill.depth
    };
    side.bores
        .iter()
        .filter(|bore| !other.bores.iter().any(|it| twin(bore, it)))
        .count()
}

/// For each door on a one-sided fitting: the first both-sided card of its kind, in the size whose
/// door width and height suit.
fn both_sided(context: &BoxContext<'_>) -> Vec<Remedy> {
    let mut found = Vec::new();
    for (door_id, door, report) in context.doors() {
        let Some(choice) = &door.fitting else {
            continue;
        };
        let Some(own) = context.card(choice) else {
            continue;
        };
        if own.sides == FittedSides::Both {
            continue;
        }
        let (width, height) = (
            report.edges.right - report.edges.left,
            report.edges.top - report.edges.bottom,
        );
        let other = context
            .job
            .cards
            .iter()
            .filter(|used| used.card.sides == FittedSides::Both && used.card.kind == own.kind)
            .find_map(|used| {
                let size = used.card.sizes.iter().find(|size| {
                    (size.door_width.min..=size.door_width.max).contains(&width)
                        && (size.door_height.min..=size.door_height.max).contains(&height)
                })?;
                Some((used, size))
            });
        let Some((UsedCard { id, card }, size)) = other else {
            continue;
        };
        let mut with = door.clone();
        with.fitting = Some(FittingChoice {
            card: *id,
            size: size.name.clone(),
            packing: choice.packing,
        });
        found.push(Remedy {
            kind: RemedyKind::TakeSize {
                fitting: FittingName::new(&card.name, &size.name),
            },
            effects: vec![
                Effect::BothSides {
                    door: context.door_subject(door_id),
                    fitting: FittingName::new(&own.name, &choice.size),
                },
                Effect::SeeSizes,
            ],
            safety: Safety::ChangesWhatIsBought,
            edit: context.replace_door(door_id, with),
        });
    }
    found
}
