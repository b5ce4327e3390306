//! Whether the card allows its bores in a leaf of glass or metal.

use flapwright_model::id::DoorId;
use flapwright_model::material::MaterialClass;
use flapwright_model::message::Count;
use flapwright_model::part::{Part, Subject};

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::BoreSource;
use crate::message::BoreNotInThisMaterial;

const NAME: &str = "bore-not-in-this-material";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Bores of a fitting in a panel or leaf of glass or metal.

## Why it matters
Glass and metal take only the bores that the fitting's own instructions give for them; glass is \
bored before it is toughened, or not at all.

## Severity
Stop, unless the card says that the bore is for glass or metal.

## What can be done
A leaf with a wooden frame, or a card made for that material.",
    severities: &[Severity::Stop],
    settings: &[],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for panel in &context.report.panels {
        if !matches!(panel.class, MaterialClass::Glass | MaterialClass::Metal) {
            continue;
        }
        let forbidden = panel
            .bores
            .iter()
            .filter(|bore| match bore.source {
                BoreSource::Fitting { door, .. } => {
                    !card_allows(context, door, panel.id.part, bore.number)
                }
                BoreSource::AsDrilled { .. } | BoreSource::Recorded | BoreSource::Handle { .. } => {
                    false
                }
                BoreSource::SystemRow => true,
            })
            .count();
        if forbidden > 0 {
            findings.push(finding(
                NAME,
                Severity::Stop,
                BoreNotInThisMaterial::NotOnCard {
                    bores: Count(forbidden),
                    material: panel.material.clone(),
                },
                vec![Subject::Part(panel.id)],
            ));
        }
    }
}

fn card_allows(context: &BoxContext<'_>, door_id: DoorId, part: Part, number: usize) -> bool {
    let Part::Leaf { leaf, .. } = part else {
        return false;
    };
    context.report.door(door_id).is_some_and(|door| {
        door.offsets
            .iter()
            .filter(|offset| offset.leaf == leaf)
            .filter(|offset| offset.drilled.is_some_and(|(other, _)| other == number))
            .all(|offset| offset.in_glass_or_metal)
    })
}
