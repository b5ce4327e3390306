//! Whether bores of one panel run into each other.

use flapwright_model::message::{Count, Mm};
use flapwright_model::part::Subject;

use super::{BoxContext, Check, Run, bore_subject, bore_topic, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::{BoreSource, PlacedBore};
use crate::message::BoresCollide;

const NAME: &str = "bores-collide";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Every two bores of one panel: the wood between their rims. Two passes on one centre are a stepped \
bore and no collision. Bores of fittings, of shelf rows and of handles are seen, and those of a \
door that is drilled already; dowels and screws that hold shelves, rails and backs are not in a \
job, so they are not.

## Why it matters
Bores that run into each other leave no hold for either screw; the drill wanders into the first \
bore.

## Severity
Stop when the rims meet, caution when less wood is left between them than the setting “bore to \
bore” (default 3 mm; common practice, no source). Bores of one and the same fitting are as its \
instructions say: they, and bores that are drilled already, are reported only when they meet.

## What can be done
Move or leave out the row of shelf bores, move the shelf, the handle or the packing, or choose \
another size.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["least_bore_web"],
    run: Run::Box(look),
};

/// Centres closer than this are one centre, mm.
const SAME_CENTRE: f64 = 0.01;

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let least = context.job.settings.least_bore_web;
    for panel in &context.report.panels {
        for (i, a) in panel.bores.iter().enumerate() {
            for b in &panel.bores[i + 1..] {
                let apart = (a.in_box - b.in_box).length();
                if apart < SAME_CENTRE && a.drill.pass != b.drill.pass {
                    continue;
                }
                let web = apart - (a.drill.diameter + b.drill.diameter) / 2.0;
                let meets = web <= 0.0;
                if !meets && (web >= least || of_one_fitting(a, b)) {
                    continue;
                }
                let severity = if meets {
                    Severity::Stop
                } else {
                    Severity::Caution
                };
                let (first, second) = (Count(a.number), Count(b.number));
                let first_purpose = a.drill.purpose.clone();
                let second_purpose = b.drill.purpose.clone();
                let (wood_between, wanted) = (Mm(web), Mm(least));
                let message = if meets {
                    BoresCollide::Touch {
                        first,
                        first_purpose,
                        second,
                        second_purpose,
                        wood_between,
                        wanted,
                    }
                } else {
                    BoresCollide::Near {
                        first,
                        first_purpose,
                        second,
                        second_purpose,
                        wood_between,
                        wanted,
                    }
                };
                findings.push(
                    finding(
                        NAME,
                        severity,
                        message,
                        vec![
                            bore_subject(panel, a),
                            bore_subject(panel, b),
                            Subject::Part(panel.id),
                        ],
                    )
                    .about([bore_topic(panel, a), bore_topic(panel, b)]),
                );
            }
        }
    }
}

fn of_one_fitting(a: &PlacedBore, b: &PlacedBore) -> bool {
    match (a.source, b.source) {
        (BoreSource::Fitting { door: a, .. }, BoreSource::Fitting { door: b, .. })
        | (BoreSource::AsDrilled { door: a }, BoreSource::AsDrilled { door: b }) => a == b,
        (BoreSource::Recorded, BoreSource::Recorded) => true,
        (
            BoreSource::Fitting { .. }
            | BoreSource::AsDrilled { .. }
            | BoreSource::Recorded
            | BoreSource::SystemRow
            | BoreSource::Handle { .. },
            _,
        ) => false,
    }
}
