//! Whether the top edge of a door swings into the panel or rail above it.

use flapwright_model::door::DoorFit;
use flapwright_model::edges::Edges;
use flapwright_model::message::{Degrees, Mm};

use super::clear_way::{NOISE, bounding_above, degrees, is_arm, section};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::message::{Effect, RemedyKind, TopEdgeHitsPanel};

const NAME: &str = "top-edge-hits-panel";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The leaves over the whole travel, path tolerance added, against the panel above the opening and \
the face frame before it. About an axis h below the door's top edge and e behind its front face \
the top edge rises by sqrt(h² + e²) - h.

## Why it matters
A flap whose top edge swings into the panel does not open.

## Severity
Stop.

## What can be done
A larger gap at the top of an inset door: the rise, the path tolerance and the setting \
“clearance”. For a door before its panels: another fitting, or a larger “bumper gap”.",
    severities: &[Severity::Stop],
    settings: &["least_clearance"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, described, door) in context.doors() {
        let Some(sweep) = door.sweep() else { continue };
        let met = bounding_above(context, door_id)
            .iter()
            .filter_map(|solid| sweep.approach(&section(solid), NOISE, |body| !is_arm(body)))
            .min_by(|a, b| a.s.total_cmp(&b.s));
        let Some(met) = met else { continue };
        let rise = sweep.top_edge_rise();
        let mut it = finding(
            NAME,
            Severity::Stop,
            TopEdgeHitsPanel::Swings {
                at: Degrees(degrees(door, met.s)),
                rise: Mm(rise),
            },
            vec![context.door_subject(door_id)],
        );

        if let DoorFit::Inset { gaps, set_back } = &described.fit {
            let needed = rise + sweep.tolerance + context.job.settings.least_clearance;
            // Whole tenths, as sheets print them.
            let top = (needed * 10.0 - NOISE).ceil() / 10.0;
            if top > gaps.top {
                let mut with = described.clone();
                with.fit = DoorFit::Inset {
                    gaps: Edges { top, ..*gaps },
                    set_back: *set_back,
                };
                it.remedies.push(Remedy {
                    kind: RemedyKind::TopGap { to: Mm(top) },
                    effects: vec![Effect::TopGapGrows {
                        by: Mm(top - gaps.top),
                    }],
                    safety: Safety::Safe,
                    edit: context.replace_door(door_id, with),
                });
            }
        }
        findings.push(it);
    }
}
