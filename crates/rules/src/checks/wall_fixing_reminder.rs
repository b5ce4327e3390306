//! What the wall has to hold.

use flapwright_model::message::Kilogram;
use flapwright_model::part::Part;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::{PanelReport, Solid};
use crate::message::WallFixingReminder;

const NAME: &str = "wall-fixing-reminder";

/// Square millimetres in a square metre.
const SQUARE_METRE: f64 = 1e6;
/// Cubic millimetres in a cubic metre.
const CUBIC_METRE: f64 = 1e9;

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
What a box can weigh on the wall: its panels and face frame at their heaviest, its doors, and the \
setting “shelf load” on every shelf and on the bottom. Fittings, screws and what stands on top of \
the box are not in it.

## Why it matters
Wall boxes have come down on people. The fixing and the wall are outside of what this program \
knows.

## Severity
Note, for every box.

## What can be done
Have fixing and wall checked for that mass by whoever is licensed to, following the fixing's own \
instructions and local codes; then accept the finding with who looked at it. It comes back if the \
box gets heavier.",
    severities: &[Severity::Note],
    settings: &["shelf_load"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    let report = context.report;
    let of_panels: f64 = report
        .panels
        .iter()
        .filter(|panel| !matches!(panel.id.part, Part::Leaf { .. }))
        .map(|panel| {
            let [u, v] = panel.size;
            kilograms(context, &panel.material, u * v * panel.thickness)
        })
        .sum();
    let of_frame: f64 = context.wall_box.frame.as_ref().map_or(0.0, |frame| {
        let volume = report.frame.iter().map(Solid::volume).sum();
        kilograms(context, &frame.material, volume)
    });
    let doors: f64 = context.doors().map(|(_, _, door)| door.mass.high).sum();
    let bears = |panel: &&PanelReport| matches!(panel.id.part, Part::Shelf(_) | Part::Bottom);
    let area: f64 = report
        .panels
        .iter()
        .filter(bears)
        .map(|panel| panel.size[0] * panel.size[1])
        .sum();
    let load = context.job.settings.shelf_load * area / SQUARE_METRE;
    let body = of_panels + of_frame;
    let all = body + doors + load;
    if !all.is_finite() {
        return;
    }

    let mut it = finding(
        NAME,
        Severity::Note,
        WallFixingReminder::Loaded {
            loaded_mass: Kilogram(all),
        },
        vec![context.box_subject()],
    );
    it.because(WallFixingReminder::Parts {
        body: Kilogram(body),
        doors: Kilogram(doors),
        load: Kilogram(load),
    });
    findings.push(it);
}

/// The heaviest that a volume, mm3, of a material can be; 0 for a material without a density.
fn kilograms(context: &BoxContext<'_>, material: &str, volume: f64) -> f64 {
    context
        .job
        .material(material)
        .map_or(0.0, |it| it.density.high * volume.max(0.0) / CUBIC_METRE)
}
