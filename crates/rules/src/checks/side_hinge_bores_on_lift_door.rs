//! Whether a door that is lifted has bores left for hinges at its side.

use flapwright_model::part::{Part, Subject};

use super::{BoxContext, Check, Run, bore_subject, finding};
use crate::finding::{Finding, Number, Remedy, Severity};
use crate::inspection::{BoreSource, PanelReport, PlacedBore};
use flapwright_model::door::{BoreReference, Door};

const NAME: &str = "side-hinge-bores-on-lift-door";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Existing doors on a lift fitting: bores of 26 to 40 mm across within 40 mm of the left or right edge \
that the fitting does not ask for, as hinge cups at the side of a door are (common practice, no \
source).

## Why it matters
The door was made to turn on side hinges, or belongs to another box. The open cups show when the \
door is up, and a cup may lie where the fitting wants its screws.

## Severity
Caution.

## What can be done
See whether it is the right door; plug the cups and take them out of the list of drilled bores.",
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
        format!(
            "{}: {} up to {} across near its upright edges, for which the lift fitting has no use; \
             was it made to turn on side hinges?",
            context.panel_words(panel),
            crate::plural::count(cups.len(), "bore"),
            context.length(largest)
        ),
        subjects,
    );
    it.details = cups
        .iter()
        .map(|bore| {
            let (_, v) = bore.at.uv();
            format!(
                "bore {} ({}): {} across, {} from the edge, {} down",
                bore.number,
                bore.drill.purpose,
                context.length(bore.drill.diameter),
                context.length(from_edge(panel, bore)),
                context.length(v)
            )
        })
        .collect();
    let count = f64::from(u32::try_from(cups.len()).unwrap_or(u32::MAX));
    it.numbers = vec![Number::of("cups at the side", count, "").worse_when_greater()];
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
        title: "Plug the cups".to_owned(),
        effect: format!(
            "{} fewer in the list of drilled bores",
            crate::plural::count(cups.len(), "bore")
        ),
        safe: false,
        edit: context.replace_door(door.id, with),
    })
}
