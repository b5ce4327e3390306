//! Whether a leaf holds glass that is not said to be safety glass.

use flapwright_model::door::{BuildUp, Leaf};
use flapwright_model::material::{Material, MaterialClass};
use flapwright_model::message::Mm;
use flapwright_model::part::{Part, PartId, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::PanelReport;
use crate::message::GlassNeedsSafetyGlass;

const NAME: &str = "glass-needs-safety-glass";

/// Words in the name of a material that say that it is safety glass.
const SAFE: [&str; 4] = ["safety", "toughened", "tempered", "laminated"];

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Leaves of glass, or with a pane in their frame, whose material's name has none of the words \
safety, toughened, tempered, laminated.

## Why it matters
A lift-up door stands open above heads and sometimes falls: a broken pane comes down in blades. \
Safety glass is recommended here: EN 14749 on storage furniture refers to EN 12150-1, EN 12600 \
and EN 14072; ANSI Z97.1 is voluntary in the USA (all named after second-hand texts). Your local \
codes and your glass supplier say whether it is required; nothing here claims that a door \
conforms.

## Severity
Note.

## What can be done
Order safety glass and name the material so; or accept the finding with the reason.",
    severities: &[Severity::Note],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (door_id, door, _) in context.doors() {
        for (leaf_id, leaf) in door.leaves.iter() {
            let part = Part::Leaf {
                door: door_id,
                leaf: leaf_id,
            };
            let panel = context.report.panel(part);
            let (Some(panel), Some((glass, thickness))) = (panel, glass(context, leaf)) else {
                continue;
            };
            findings.push(tell(panel, glass, thickness));
        }
    }
}

/// The glass in a leaf that is not safety glass, and its thickness, mm.
fn glass<'a>(context: &'a BoxContext<'_>, leaf: &Leaf) -> Option<(&'a Material, f64)> {
    let (name, thickness) = match &leaf.build {
        BuildUp::Plain {
            thickness,
            material,
        } => (material, *thickness),
        BuildUp::Framed { infill, .. } => (&infill.material, infill.thickness),
    };
    let material = context.job.material(name)?;
    let words = material.name.to_lowercase();
    let said = SAFE.iter().any(|word| words.contains(word));
    (material.class == MaterialClass::Glass && !said).then_some((material, thickness))
}

fn tell(panel: &PanelReport, glass: &Material, thickness: f64) -> Finding {
    let id: PartId = panel.id;
    let mut it = finding(
        NAME,
        Severity::Note,
        GlassNeedsSafetyGlass::Plain {
            thickness_of_the_glass: Mm(thickness),
            glass: glass.name.clone(),
        },
        vec![Subject::Part(id)],
    );
    it.because(GlassNeedsSafetyGlass::Ask);
    it
}
