//! Whether a blind bore leaves wood behind it.

use flapwright_model::card::Depth;
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::Subject;

use super::{BoxContext, Check, Run, bore_subject, bores_topic, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::PlacedBore;
use crate::message::BoreBreaksThrough;

const NAME: &str = "bore-breaks-through";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
For every blind bore: thickness of the panel, less the depth to the full diameter, less the lead \
of the drill's point.

## Why it matters
The point of a drill runs ahead of the full diameter. Where too little wood is left it shows or \
breaks out on the other face.

## Severity
Stop when nothing is left, caution when less is left than the setting “wood behind bore”. It and \
the lead of the point, “drill point”, are 2 mm each by default: common practice, no source.

## What can be done
Drill less deep if the fitting's instructions allow it, use a drill without a point, or a thicker \
panel.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["point_lead", "least_wood_behind"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let settings = &context.job.settings;
    for panel in &context.report.panels {
        // One finding for all bores alike in depth, so that a row of shelf bores is one line.
        let mut seen: Vec<(f64, Vec<&PlacedBore>)> = Vec::new();
        for bore in &panel.bores {
            let Depth::Blind(depth) = bore.drill.depth else {
                continue;
            };
            let left = panel.thickness - depth - settings.point_lead;
            if left >= settings.least_wood_behind {
                continue;
            }
            match seen.iter_mut().find(|(other, _)| *other == depth) {
                Some((_, alike)) => alike.push(bore),
                None => seen.push((depth, vec![bore])),
            }
        }
        for (depth, alike) in seen {
            let left = panel.thickness - depth - settings.point_lead;
            let severity = if left <= 0.0 {
                Severity::Stop
            } else {
                Severity::Caution
            };
            let bores = Count(alike.len());
            let message = if left <= 0.0 {
                BoreBreaksThrough::Through {
                    bores,
                    over: Mm(-left),
                    depth: Mm(depth),
                    thickness: Mm(panel.thickness),
                    wood_left_before_the_point: Mm(left),
                }
            } else {
                BoreBreaksThrough::Thin {
                    bores,
                    depth: Mm(depth),
                    thickness: Mm(panel.thickness),
                    wood_left_before_the_point: Mm(left),
                }
            };
            let mut subjects: Vec<Subject> =
                alike.iter().map(|bore| bore_subject(panel, bore)).collect();
            subjects.push(Subject::Part(panel.id));
            let mut it = finding(NAME, severity, message, subjects)
                .about(alike.iter().map(|bore| bores_topic(panel, bore)));

            it.because(BoreBreaksThrough::PointLead {
                lead: Mm(settings.point_lead),
            });
            findings.push(it);
        }
    }
}
