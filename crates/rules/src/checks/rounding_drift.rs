//! Whether inches rounded to 1/64 still add up.

use flapwright_model::door::DoorFit;
use flapwright_model::edges::Edge;
use flapwright_model::length::Unit;
use flapwright_model::message::{Count, Mm, Sum};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::message::{self, RoundingDrift, word};
use crate::placement::body::Body;
use crate::placement::opening::{openings, whole_opening};

const NAME: &str = "rounding-drift";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Jobs in inches: lengths that belong together (overlay and reveal make a thickness; sides and \
clear width make the width of the box; door and reveals make it too), each rounded to the 1/64 in \
that forms and labels show. Reports where the rounded parts miss the rounded whole.

## Why it matters
Anyone who adds up the rounded figures is out by 1/64 in or more at each sum. Sheets in \
millimetres are not rounded that way.

## Severity
Note.

## What can be done
Type lengths that are whole 64ths, or work from the millimetres on the sheet.",
    severities: &[Severity::Note],
    settings: &[],
    run: Run::Box(look),
};

/// 1/64 in, mm, by the inch of 25.4 mm.
const SIXTY_FOURTH: f64 = 25.4 / 64.0;

/// Lengths that add up to another one.
struct Chain {
    what: message::Chain,
    parts: Vec<f64>,
    whole: f64,
}

impl Chain {
    /// By how many 64ths the rounded parts exceed the rounded whole.
    fn drift(&self) -> f64 {
        let rounded = |length: f64| (length / SIXTY_FOURTH).round();
        self.parts.iter().copied().map(rounded).sum::<f64>() - rounded(self.whole)
    }
}

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    if context.job.unit != Unit::Inch {
        return;
    }
    let chains = chains(context);
    let drifting: Vec<&Chain> = chains
        .iter()
        .filter(|chain| chain.drift().abs() >= 0.5)
        .collect();
    let Some(worst) = drifting
        .iter()
        .max_by(|a, b| a.drift().abs().total_cmp(&b.drift().abs()))
    else {
        return;
    };
    let mut it = finding(
        NAME,
        Severity::Note,
        RoundingDrift::Drifts {
            wrong: Count(drifting.len()),
            all: Count(chains.len()),
            largest_drift: Mm(worst.drift().abs() * SIXTY_FOURTH),
        },
        vec![context.box_subject()],
    );
    for chain in &drifting {
        it.because(RoundingDrift::Sum {
            what: chain.what.clone(),
            parts: Sum(chain.parts.iter().copied().map(Mm).collect()),
            whole: Mm(chain.whole),
        });
    }
    findings.push(it);
}

fn chains(context: &BoxContext<'_>) -> Vec<Chain> {
    let it = context.wall_box;
    let body = Body::of(it);
    let places = openings(it, &body);
    let place_of = |door| {
        let opening = context.opening_of(door)?.id;
        places.iter().find(|place| place.id == opening)
    };
    let mut chains = Vec::new();
    let inside = whole_opening(it, &body).clear;
    chains.push(Chain {
        what: message::Chain::Widths,
        parts: vec![
            it.left.thickness,
            inside.right - inside.left,
            it.right.thickness,
        ],
        whole: it.width,
    });
    for (door_id, door, report) in context.doors() {
        let (Some(place), DoorFit::Overlay { reveals }) = (place_of(door_id), &door.fit) else {
            continue;
        };
        let its = context.door_subject(door_id);
        for edge in Edge::ALL {
            if place.shared.at(edge).is_none() {
                chains.push(Chain {
                    what: message::Chain::OverlayAndReveal {
                        door: its,
                        edge: word::edge(edge),
                    },
                    parts: vec![report.overlays.at(edge), reveals.at(edge)],
                    whole: place.member.at(edge),
                });
            }
        }
        if it.frame.is_none() && door.tweaks.left == 0.0 && door.tweaks.right == 0.0 {
            chains.push(Chain {
                what: message::Chain::RevealsAndWidth { door: its },
                parts: vec![
                    reveals.left,
                    report.edges.right - report.edges.left,
                    reveals.right,
                ],
                whole: it.width,
            });
        }
    }
    chains
}
