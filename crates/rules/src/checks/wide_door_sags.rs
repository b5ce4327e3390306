//! Whether a wide door bends under its own weight when it is open.

use flapwright_model::card::Card;
use flapwright_model::door::{BuildUp, Door, FittingChoice, Grain, Leaf, Leaves};
use flapwright_model::material::{MaterialClass, Stiffness};
use flapwright_model::message::{Mm, Whole};
use flapwright_model::part::{LeafId, Part, Subject};
use flapwright_motion::gravity::GRAVITY;
use flapwright_motion::motion::Motion;

use super::{BoxContext, Check, Run, finding};
use crate::finding::{Finding, Remedy, Safety, Severity};
use crate::inspection::{DoorReport, PanelReport};
use crate::message::{Effect, RemedyKind, WideDoorSags};

const NAME: &str = "wide-door-sags";

/// Places of the way at which a leaf's slope is looked up.
const PLACES: u16 = 24;

/// No leaf thicker than this is offered, mm.
const THICKEST: f64 = 60.0;

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Each leaf as a beam across the door, where its travel holds it flattest, at its heaviest: 5 w L^4 \
/ (384 E I), the sag in the middle of an evenly loaded beam on two supports (any textbook on the \
strength of materials). Supports are the arms at both sides; where the card has only hinges along \
the door, L is their distance. E is the material's stiffness; of a framed leaf only the two rails \
bear. Creep over the years is not calculated. Nothing is said where the material's stiffness is \
not known, or where one arm alone carries the leaf.

## Why it matters
A sagging door closes with a gap in the middle, and a pane in it cracks.

## Severity
Caution.

## What can be done
A thicker or stiffer leaf, grain that runs across, or two doors in place of one.",
    severities: &[Severity::Caution],
    settings: &["sag_ratio"],
    run: Run::Box(look),
};

fn look(context: &BoxContext<'_>, findings: &mut Vec<Finding>) {
    for (_, door, report) in context.doors() {
        for (id, leaf) in door.leaves.iter() {
            let Some(sag) = sag(context, (door, report), (id, leaf)) else {
                continue;
            };
            let most = sag.span / context.job.settings.sag_ratio;
            if sag.depth > most {
                findings.push(tell(context, door, (id, leaf), (&sag, most)));
            }
        }
    }
}

/// How far a leaf sags.
struct Sag {
    /// Between the supports, mm.
    span: f64,
    /// In the middle, mm.
    depth: f64,
}

fn sag(
    context: &BoxContext<'_>,
    (door, report): (&Door, &DoorReport),
    (id, leaf): (LeafId, &Leaf),
) -> Option<Sag> {
    let choice = door.fitting.as_ref()?;
    let card = context.card(choice)?;
    let motion = report.working_motion()?;
    let clear = context.opening_of(door.id)?.clear;
    let faces = [clear.min.x + choice.packing, clear.max.x - choice.packing];
    let span = span(card, choice, id, faces)?;
    let panel = context.leaf(door.id, id)?;
    let material = context.job.material(leaf.build.material())?;
    let strip = Strip::of(leaf, panel, material.class, material.stiffness.as_ref()?)?;
    let masses = &report.weighed.as_ref()?.leaves;
    let mass = masses.iter().find(|(name, _)| *name == id)?.1.mass.high;
    // N per mm of width, at the flattest place of the way.
    let load = mass * GRAVITY * flattest(motion, id) / panel.size[0];
    let depth = 5.0 * load * span.powi(4) / (384.0 * strip.modulus * strip.inertia);
    depth.is_finite().then_some(Sag { span, depth })
}

/// The widest distance between two supports of a leaf, mm.
fn span(card: &Card, choice: &FittingChoice, id: LeafId, [left, right]: [f64; 2]) -> Option<f64> {
    let groups = || card.door_bores.iter().filter(|group| group.leaf == id);
    let arms = groups().filter(|group| group.spread.is_none());
    let insets = arms.flat_map(|group| &group.bores);
    let outermost = insets
        .filter_map(|bore| bore.across.by.of(&choice.size))
        .reduce(f64::min);
    let found = match outermost {
        Some(inset) if card.sides.ties().len() == 2 => right - left - 2.0 * inset,
        _ => groups()
            .filter_map(|group| group.spread.as_ref())
            .filter_map(|spread| {
                let gaps = spread.count_for(right - left).checked_sub(1)?;
                (gaps > 0).then(|| (right - left - 2.0 * spread.end_inset) / f64::from(gaps))
            })
            .reduce(f64::min)?,
    };
    (found > 0.0).then_some(found)
}

/// Modulus, N/mm2, and second moment of area, mm4, of what bears across a leaf.
struct Strip {
    modulus: f64,
    inertia: f64,
}

impl Strip {
    fn of(
        leaf: &Leaf,
        panel: &PanelReport,
        class: MaterialClass,
        stiffness: &Stiffness,
    ) -> Option<Self> {
        let bearing = match &leaf.build {
            BuildUp::Plain { .. } => panel.size[1],
            BuildUp::Framed { members, .. } => members.top + members.bottom,
        };
        let across = stiffness.across;
        let modulus = match (&leaf.build, leaf.grain) {
            // Rails run across the door along their own grain.
            (BuildUp::Framed { .. }, _) | (_, Grain::Across) => stiffness.along,
            (_, Grain::Upright) if class == MaterialClass::SolidWood => across?,
            (_, Grain::Upright) => across.unwrap_or(stiffness.along),
            (_, Grain::None) => across.map_or(stiffness.along, |it| it.min(stiffness.along)),
        };
        Some(Self {
            modulus,
            inertia: bearing * panel.thickness.powi(3) / 12.0,
        })
    }
}

/// The largest share of a leaf's weight that bends it on its way: 0 upright, 1 lying flat.
fn flattest(motion: &Motion, id: LeafId) -> f64 {
    (0..=PLACES)
        .filter_map(|place| motion.pose(f64::from(place) / f64::from(PLACES)).leaf(id))
        .map(|pose| pose.angle.sin().abs())
        .fold(0.0, f64::max)
}

fn tell(
    context: &BoxContext<'_>,
    door: &Door,
    (id, leaf): (LeafId, &Leaf),
    (sag, most): (&Sag, f64),
) -> Finding {
    let part = Part::Leaf {
        door: door.id,
        leaf: id,
    };

    let ratio = context.job.settings.sag_ratio;
    let mut it = finding(
        NAME,
        Severity::Caution,
        WideDoorSags::Sags {
            sag: Mm(sag.depth),
            limit: Mm(most),
        },
        vec![Subject::Part(context.part_id(part))],
    );
    it.because(WideDoorSags::Span {
        span: Mm(sag.span),
        ratio: Whole(ratio),
    });
    it.remedies
        .extend(thicker(context, door, (id, leaf), (sag, most)));
    it
}

/// A plain leaf so thick that it stays within the limit: the sag falls with the square of the
/// thickness at least, for the mass rises with it.
fn thicker(
    context: &BoxContext<'_>,
    door: &Door,
    (id, leaf): (LeafId, &Leaf),
    (sag, most): (&Sag, f64),
) -> Option<Remedy> {
    let BuildUp::Plain { thickness, .. } = leaf.build else {
        return None;
    };
    let needed = (thickness * (sag.depth / most).sqrt()).ceil();
    if needed > THICKEST {
        return None;
    }
    let mut with = door.clone();
    let it = match (&mut with.leaves, id) {
        (Leaves::One(it), _)
        | (Leaves::Two { upper: it, .. }, LeafId::Only | LeafId::Upper)
        | (Leaves::Two { lower: it, .. }, LeafId::Lower) => it,
    };
    if let BuildUp::Plain { thickness, .. } = &mut it.build {
        *thickness = needed;
    }
    Some(Remedy {
        kind: RemedyKind::Thickness { to: Mm(needed) },
        effects: vec![
            Effect::Thickness {
                was: Mm(thickness),
                is: Mm(needed),
            },
            Effect::SagsAtMost {
                sag: Mm(sag.depth * (thickness / needed).powi(2)),
            },
        ],
        safety: Safety::ChangesWhatIsBought,
        edit: context.replace_door(door.id, with),
    })
}
