//! Whether the bores of a framed leaf lie in its stiles and rails.

use flapwright_model::message::{Count, Mm};
use flapwright_model::part::Subject;

use super::{BoxContext, Check, Run, bore_subject, bore_topic, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::{InfillReport, PanelReport, PlacedBore};
use crate::message::BoreMissesMember;

const NAME: &str = "bore-misses-member";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Every bore in the back of a framed leaf: whether its whole rim lies in a stile or rail, clear of the \
pane or panel and of the groove or rebate that holds it.

## Why it matters
A bore through the groove has half the wood behind it; a bore in the pane breaks it.

## Severity
Stop.

## What can be done
Wider stiles or rails, another overlay, or a fitting whose bores lie nearer the edge. A solid panel \
in place of the pane takes the bores anywhere.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for panel in &context.report.panels {
        let Some(infill) = &panel.infill else {
            continue;
        };
        for bore in &panel.bores {
            let web = web_to_groove(panel, infill, bore);
            if web >= 0.0 {
                continue;
            }
            findings.push(
                finding(
                    NAME,
                    Severity::Stop,
                    BoreMissesMember::IntoInfill {
                        bore: Count(bore.number),
                        purpose: bore.drill.purpose.clone(),
                        by: Mm(-web),
                        infill: infill.material.clone(),
                        wood_to_the_groove: Mm(web),
                    },
                    vec![bore_subject(panel, bore), Subject::Part(panel.id)],
                )
                .about([bore_topic(panel, bore)]),
            );
        }
    }
}

/// Wood between a bore's rim and the groove or pane, mm: how far the rim lies outside of the
/// rectangle that the infill fills, tongues included.
fn web_to_groove(panel: &PanelReport, infill: &InfillReport, bore: &PlacedBore) -> f64 {
    let (u, v) = bore.at.uv();
    let members = infill.members;
    let inside = [
        u - (members.u_start - infill.tongue),
        (panel.size[0] - members.u_end + infill.tongue) - u,
        v - (members.v_start - infill.tongue),
        (panel.size[1] - members.v_end + infill.tongue) - v,
    ];
    // Positive values of `inside` lie within the infill's rectangle on that side.
    let (du, dv) = (inside[0].min(inside[1]), inside[2].min(inside[3]));
    let distance = if du < 0.0 && dv < 0.0 {
        du.hypot(dv)
    } else {
        -du.min(dv)
    };
    distance - bore.drill.diameter / 2.0
}
