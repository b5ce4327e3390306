//! Whether a fitting or its arms meet a shelf, a rail or the back.

use flapwright_model::part::{Part, Subject};

use super::clear_way::{NOISE, body_word, degrees, is_arm, lap, opening_subject, section};
use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Number, Severity};
use crate::inspection::{PanelReport, Solid};

const NAME: &str = "fitting-meets-shelf";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
The body of the fitting against shelves, top, bottom, back and face frame, and all that arms and \
leaves sweep over against shelves, bottom and back. An arm is taken as a bar 12 mm wide, since \
cards do not say.

## Why it matters
A shelf in the way of an arm is found out when the door is first opened, with the box on the \
wall.

## Severity
Stop.

## What can be done
Set the shelf lower or further back, or choose another size or fitting.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (opening, _, door) in context.doors() {
        let clear = context.report.openings.get(opening).map(|it| it.clear);
        let passed = context.report.panels.iter().filter(|panel| {
            matches!(
                panel.id.part,
                Part::Top | Part::Bottom | Part::Back | Part::Shelf(_)
            )
        });
        for panel in passed {
            let hit = door
                .envelopes
                .iter()
                .map(|body| overlap(body, &panel.solid))
                .fold(0.0, f64::max);
            if hit > NOISE {
                let text = format!(
                    "the body of the fitting stands {} into the {}",
                    context.length(hit),
                    panel.name
                );
                push(
                    context,
                    opening,
                    panel,
                    &text,
                    Number::mm("overlap", hit),
                    findings,
                );
                continue;
            }
            if panel.id.part == Part::Top {
                // A swing into the panel above has a check of its own.
                continue;
            }
            // Panels that bound the opening are met by other checks.
            let inside = clear.is_some_and(|clear| {
                panel.solid.min.y > clear.min.y + NOISE && panel.solid.max.y < clear.max.y - NOISE
            });
            let near = door.sweep().and_then(|sweep| {
                sweep.approach(&section(&panel.solid), NOISE, |body| is_arm(body) || inside)
            });
            if let Some(near) = near {
                let at = degrees(door, near.s);
                let text = format!(
                    "{} meets the {} at {at:.0}° of the way",
                    body_word(near.body),
                    panel.name
                );
                let number = Number::of("met at", at, "degrees");
                push(context, opening, panel, &text, number, findings);
            }
        }
    }
}

/// The least of the laps of two solids across, up and deep, mm; 0 or less when they are apart.
fn overlap(a: &Solid, b: &Solid) -> f64 {
    let across = lap((a.min.x, a.max.x), (b.min.x, b.max.x));
    let up = lap((a.min.y, a.max.y), (b.min.y, b.max.y));
    let deep = lap((a.min.z, a.max.z), (b.min.z, b.max.z));
    across.min(up).min(deep)
}

fn push(
    context: &BoxContext<'_>,
    opening: usize,
    panel: &PanelReport,
    text: &str,
    number: Number,
    findings: &mut Vec<Finding>,
) {
    let mut it = finding(
        NAME,
        Severity::Stop,
        format!("{}: {text}", context.door_words(opening)),
        vec![opening_subject(context, opening), Subject::Part(panel.id)],
    );
    it.numbers = vec![number];
    findings.push(it);
}
