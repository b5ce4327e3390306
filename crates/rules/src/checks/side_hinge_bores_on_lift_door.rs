//! Whether a door that is lifted has bores left for hinges at its side.

use flapwright_model::door::{BoreReference, Door};
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::{Part, Subject};

use super::{BoxContext, Check, Run, bore_subject, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspection::{BoreSource, PanelReport, PlacedBore};
use crate::message::{Effect, RemedyKind, SideHingeBores};

const NAME: &str = "side-hinge-bores-on-lift-door";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Existing doors on a lift fitting: bores of 26 to 40 mm across within 40 mm of the left or right \
edge that the fitting does not ask for, as hinge cups at the side of a door are (common practice, \
no source).

## Why it matters
The door was made to turn on side hinges, or belongs to another box. The open cups show when the \
door is up, and a cup may lie where the fitting wants its screws.

## Severity
Caution.

## What can be done
Check that it is the right door; plug the cups and take them out of the list of drilled bores.",
    severities: &[Severity::Caution],
    settings: &[],
    run: Run::Box(look),
};

/// Diameters of hinge cups, mm: common practice, no source.
const CUP: std::ops::RangeInclusive<f64> = 26.0..=40.0;
/// The middle of a side hinge's cup is no further from the edge than this, mm: common practice, no
/// source.
const FROM_EDGE: f64 = 40.0;

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, report) in context.doors() {
        if report.kind.is_none() {
            continue;
        }
        for panel in &context.report.panels {
            let Part::Leaf { door: of, leaf } = panel.id.part else {
                continue;
            };
            if of != door_id {
                continue;
            }
            let asked_for = |bore: &PlacedBore| {
                report.offsets.iter().any(|offset| {
                    offset.leaf == leaf
                        && offset
                            .drilled
                            .is_some_and(|(number, _)| number == bore.number)
                })
            };
            let cups: Vec<&PlacedBore> = panel
                .bores
                .iter()
                .filter(|bore| is_side_cup(panel, bore) && !asked_for(bore))
                .collect();
            if !cups.is_empty() {
                findings.push(report_cups(context, door, panel, &cups));
            }
        }
    }
}

fn is_side_cup(panel: &PanelReport, bore: &PlacedBore) -> bool {
    matches!(bore.source, BoreSource::AsDrilled { .. })
        && CUP.contains(&bore.drill.diameter)
        && from_edge(panel, bore) <= FROM_EDGE
}

/// From the middle of a bore to the nearer upright edge, mm.
fn from_edge(panel: &PanelReport, bore: &PlacedBore) -> f64 {
    let (u, _) = bore.at.uv();
    u.min(panel.size[0] - u)
}

fn report_cups(
    context: &BoxContext<'_>,
    door: &Door,
    panel: &PanelReport,
    cups: &[&PlacedBore],
) -> Finding {
    let largest = cups
        .iter()
        .map(|bore| bore.drill.diameter)
        .fold(0.0, f64::max);
    let mut subjects = vec![Subject::Part(panel.id)];
    subjects.extend(cups.iter().map(|bore| bore_subject(panel, bore)));
    let mut it = finding(
        NAME,
        Severity::Caution,
        SideHingeBores::Cups {
            cups_at_the_side: Count(cups.len()),
        },
        subjects,
    );
    it.because(SideHingeBores::WasSideHung {
        largest: Mm(largest),
    });
    for bore in cups {
        let (_, v) = bore.at.uv();
        it.because(SideHingeBores::Cup {
            bore: Count(bore.number),
            purpose: bore.drill.purpose.clone(),
            diameter: Mm(bore.drill.diameter),
            from_edge: Mm(from_edge(panel, bore)),
            down: Mm(v),
        });
    }
    it.remedies.extend(plugged(context, door, panel, cups));
    it
}

/// The door without the cups.
fn plugged(
    context: &BoxContext<'_>,
    door: &Door,
    panel: &PanelReport,
    cups: &[&PlacedBore],
) -> Option<Remedy> {
    let BoreReference::AsDrilled(bores) = &door.bores_follow else {
        return None;
    };
    let is_cup = |bore: &flapwright_model::door::DrilledBore| {
        use flapwright_model::door::{End, Side};
        let u = match bore.from_side {
            Side::Right => bore.across,
            Side::Left => panel.size[0] - bore.across,
        };
        let v = match bore.from_end {
            End::Top => bore.along,
            End::Bottom => panel.size[1] - bore.along,
        };
        cups.iter().any(|cup| {
            let (cup_u, cup_v) = cup.at.uv();
            (cup_u - u).abs() < 1e-6 && (cup_v - v).abs() < 1e-6
        })
    };
    let kept: Vec<_> = bores
        .iter()
        .filter(|bore| {
            let here = matches!(panel.id.part, Part::Leaf { leaf, .. } if leaf == bore.leaf);
            !(here && CUP.contains(&bore.diameter) && is_cup(bore))
        })
        .cloned()
        .collect();
    let with = Door {
        bores_follow: BoreReference::AsDrilled(kept),
        ..door.clone()
    };
    Some(Remedy {
        kind: RemedyKind::PlugCups,
        effects: vec![Effect::FewerBores {
            bores: Count(cups.len()),
        }],
        safety: Safety::NeedsALook,
        edit: context.replace_door(door.id, with),
    })
}
