//! Whether a bore leaves wood between itself and the edges of its panel.

use flapwright_model::part::Subject;

use super::{BoxContext, Check, Run, bore_subject, bore_topic, finding};
use crate::finding::{Finding, Number, Severity};
use crate::inspection::{PanelReport, PlacedBore};

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
job's setting (default 3 mm; common practice, no source).

## What can be done
Change overlay or reveal, so that the edge of the door falls elsewhere around the fitting; choose a \
size or a card whose bores lie further in.",
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
            let what = if web <= 0.0 {
                format!("cuts the {edge} by {}", context.length(-web))
            } else {
                format!("leaves {} of wood to the {edge}", context.length(web))
            };
            let mut it = finding(
                NAME,
                severity,
                format!(
                    "{}: bore {} ({}, {} across) {what}; {} are wanted",
                    context.panel_words(panel),
                    bore.number,
                    bore.drill.purpose,
                    context.length(bore.drill.diameter),
                    context.length(least),
                ),
                vec![bore_subject(panel, bore), Subject::Part(panel.id)],
            );
            it = it.about([bore_topic(panel, bore)]);
            it.numbers = vec![
                Number::mm("wood to the edge", web),
                Number::mm("wanted", least),
            ];
            findings.push(it);
        }
    }
}

/// Wood between a bore's rim and the nearest edge of its panel, mm, and that edge's name.
fn nearest_edge(panel: &PanelReport, bore: &PlacedBore) -> (f64, &'static str) {
    let (u, v) = bore.at.uv();
    let names = edge_names(panel);
    let radius = bore.drill.diameter / 2.0;
    let distances = [u, panel.size[0] - u, v, panel.size[1] - v];
    distances
        .into_iter()
        .zip(names)
        .map(|(distance, name)| (distance - radius, name))
        .fold(
            (f64::INFINITY, ""),
            |best, it| if it.0 < best.0 { it } else { best },
        )
}

/// Names of the edges at u = 0, the far end of u, v = 0 and the far end of v.
fn edge_names(panel: &PanelReport) -> [&'static str; 4] {
    use crate::inspection::Face;
    match panel.face {
        Face::SideInner(_) => ["front edge", "back edge", "top end", "bottom end"],
        Face::Underside => ["left end", "right end", "front edge", "back edge"],
        Face::DoorBack => [
            "right edge (seen from the front)",
            "left edge (seen from the front)",
            "top edge",
            "bottom edge",
        ],
        Face::Plain => ["edge", "edge", "edge", "edge"],
    }
}
