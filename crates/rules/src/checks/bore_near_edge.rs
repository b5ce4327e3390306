//! Whether a bore leaves wood between itself and the edges of its panel.

use flapwright_model::message::{Count, Mm, Word};
use flapwright_model::part::Subject;

use super::{BoxContext, Check, Run, bore_subject, bore_topic, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::{PanelReport, PlacedBore};
use crate::message::BoreNearEdge;

const NAME: &str = "bore-near-edge";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
For every bore: the wood between its rim and the nearest finished edge of its panel.

## Why it matters
A thin web breaks out when the bore is drilled or when the screw is driven; a bore that cuts the \
edge holds nothing.

## Severity
Stop when the bore cuts the edge or lies off the panel, caution when less wood is left than the \
setting “bore to edge” (default 3 mm; common practice, no source).

## What can be done
Change overlay or reveal, so that the edge of the door falls elsewhere around the fitting; choose \
a size or a card whose bores lie further in.",
    severities: &[Severity::Caution, Severity::Stop],
    settings: &["least_edge_web"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let least = context.job.settings.least_edge_web;
    for panel in &context.report.panels {
        for bore in &panel.bores {
            let (web, edge) = nearest_edge(panel, bore);
            if web >= least {
                continue;
            }
            let severity = if web <= 0.0 {
                Severity::Stop
            } else {
                Severity::Caution
            };
            let (bore_number, purpose) = (Count(bore.number), bore.drill.purpose.clone());
            let (wood_to_the_edge, wanted) = (Mm(web), Mm(least));
            let message = if web <= 0.0 {
                BoreNearEdge::Cuts {
                    bore: bore_number,
                    purpose,
                    edge,
                    by: Mm(-web),
                    wood_to_the_edge,
                    wanted,
                }
            } else {
                BoreNearEdge::Near {
                    bore: bore_number,
                    purpose,
                    edge,
                    wood_to_the_edge,
                    wanted,
                }
            };
            findings.push(
                finding(
                    NAME,
                    severity,
                    message,
                    vec![bore_subject(panel, bore), Subject::Part(panel.id)],
                )
                .about([bore_topic(panel, bore)]),
            );
        }
    }
}

/// Wood between a bore's rim and the nearest edge of its panel, mm, and that edge's name.
fn nearest_edge(panel: &PanelReport, bore: &PlacedBore) -> (f64, Word) {
    let (u, v) = bore.at.uv();
    let names = edge_names(panel);
    let radius = bore.drill.diameter / 2.0;
    let distances = [u, panel.size[0] - u, v, panel.size[1] - v];
    distances
        .into_iter()
        .zip(names)
        .map(|(distance, name)| (distance - radius, name))
        .fold((f64::INFINITY, Word("edge")), |best, it| {
            if it.0 < best.0 { it } else { best }
        })
}

/// Names of the edges at u = 0, the far end of u, v = 0 and the far end of v.
fn edge_names(panel: &PanelReport) -> [Word; 4] {
    use crate::inspection::Face;
    match panel.face {
        Face::SideInner(_) => [
            Word("front-edge"),
            Word("back-edge"),
            Word("top-end"),
            Word("bottom-end"),
        ],
        Face::Underside => [
            Word("left-end"),
            Word("right-end"),
            Word("front-edge"),
            Word("back-edge"),
        ],
        Face::DoorBack => [
            Word("right-edge"),
            Word("left-edge"),
            Word("top-edge"),
            Word("bottom-edge"),
        ],
        Face::Plain => [Word("edge"); 4],
    }
}
