//! What can be done about a drilled panel that is not the one that is needed.

use flapwright_model::cabinet::WallBox;
use flapwright_model::change::forget_record;
use flapwright_model::door::{BoreReference, Door, DoorFit, FittingChoice, Side};
use flapwright_model::edges::{Edge, Edges};
use flapwright_model::edit::Edit;
use flapwright_model::job::UsedCard;
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::{LeafId, Part};
use flapwright_model::record::{PanelRecord, RecordState};

use super::BoxContext;
use super::bores_off_fitting::severity_of;
use crate::finding::{Remedy, Safety, Severity};
use crate::inspection::{BoreOffset, DoorReport, PanelReport};
use crate::message::{Effect, FittingName, RemedyKind, word};
use crate::panel_difference::PanelDifference;
use crate::records::as_needed;
use crate::tweaks;

/// At most so many other sizes are offered.
const MOST_SIZES: usize = 3;

pub(super) fn remedies(
    context: &BoxContext<'_>,
    record: &PanelRecord,
    difference: &PanelDifference,
) -> Vec<Remedy> {
    let mut found = other_sizes(context, record);
    found.extend(refit(context, record));
    found.push(plug_and_redrill(context, record, difference));
    found
}

/// Sizes of cards of the same opening kind with which the drilled panel is the one that is needed.
fn other_sizes(context: &BoxContext<'_>, record: &PanelRecord) -> Vec<Remedy> {
    let mut found = Vec::new();
    for (door_id, door, _) in context.doors() {
        let concerned = record.part.door().is_none_or(|of| of == door_id);
        let Some(choice) = door.fitting.as_ref().filter(|_| concerned) else {
            continue;
        };
        let Some(own) = context.card(choice) else {
            continue;
        };
        let of_kind = |used: &&UsedCard| used.card.kind == own.kind;
        for UsedCard { id, card } in context.job.cards.iter().filter(of_kind) {
            for size in &card.sizes {
                if (*id, &size.name) == (choice.card, &choice.size) {
                    continue;
                }
                let mut with = context.wall_box.clone();
                if let Some(door) = with.door_mut(door_id) {
                    door.fitting = Some(FittingChoice {
                        card: *id,
                        size: size.name.clone(),
                        packing: choice.packing,
                    });
                }
                if !differing(context, &with, Some(record)).is_empty() {
                    continue;
                }
                let left = differing(context, &with, None).len();
                let rest = match left {
                    0 => Effect::AllAgree,
                    _ => Effect::OthersDiffer {
                        panels: Count(left),
                    },
                };
                found.push(Remedy {
                    kind: RemedyKind::TakeSize {
                        fitting: FittingName::new(&card.name, &size.name),
                    },
                    effects: vec![
                        Effect::InPlaceOf {
                            fitting: FittingName::new(&own.name, &choice.size),
                        },
                        Effect::BoresAgree {
                            bores: Count(record.bores.len()),
                        },
                        rest,
                        Effect::SeeSizes,
                    ],
                    // It may not carry the door, and it may have to be bought.
                    safety: Safety::ChangesWhatIsBought,
                    edit: Edit::replace_box(with),
                });
            }
        }
    }
    found.truncate(MOST_SIZES);
    found
}

/// The drilled panels of a box (or the one that is asked for) that differ from what is needed.
fn differing(
    context: &BoxContext<'_>,
    wall_box: &WallBox,
    only: Option<&PanelRecord>,
) -> Vec<Part> {
    let needed = as_needed(context.job, wall_box);
    let slack = context.job.settings.off_fitting_ignored;
    wall_box
        .records
        .iter()
        .filter(|record| record.state == RecordState::Drilled)
        .filter(|record| only.is_none_or(|only| only.part == record.part))
        .filter(|record| {
            needed
                .panel(record.part)
                .is_none_or(|panel| !PanelDifference::of(record, panel, slack).is_empty())
        })
        .map(|record| record.part)
        .collect()
}

/// How far each edge of the drilled door has to move outward for the door to have its own size and
/// its bores to lie on the fitting, mm.
///
/// Each bore says where the door's top and box-right edges must be for it to lie on the fitting;
/// the middle between the extremes leaves the least for the adjustment to take up.
fn edges_by(
    record: &PanelRecord,
    leaf: LeafId,
    panel: &PanelReport,
    door: &Door,
    report: &DoorReport,
) -> Option<Edges<f64>> {
    let solid = panel.solid;
    let BoreReference::AsDrilled(drilled) = &door.bores_follow else {
        return None;
    };
    // Bores of an existing door hang on its edges: by as much as an edge moves they move.
    let offsets = report
        .offsets
        .iter()
        .filter(|offset| offset.leaf == leaf && offset.drilled.is_some());
    let width_more = record.size[0] - panel.size[0];
    let (mut right, mut up) = (Extremes::default(), Extremes::default());
    for offset in offsets {
        let (_, at) = offset.drilled?;
        // A bore tied to the left edge goes with that one.
        let with_left = drilled.iter().any(|bore| {
            bore.leaf == leaf
                && bore.from_side == Side::Left
                && (solid.min.x + bore.across - at.x).abs() < 1e-6
        });
        right.take(if with_left {
            width_more - offset.across
        } else {
            -offset.across
        });
        up.take(-offset.up);
    }
    let (right, up) = (right.middle()?, up.middle()?);
    let height_more = record.size[1] - panel.size[1];
    // The joint of a folding pair hangs on the box: the edge there does not move.
    let (top, bottom) = match leaf {
        LeafId::Only => (up, height_more - up),
        LeafId::Upper => (height_more, 0.0),
        LeafId::Lower => (0.0, height_more),
    };
    Some(Edges {
        left: width_more - right,
        right,
        top,
        bottom,
    })
}

/// Reveals with which the drilled door has its own size and its bores meet the fitting.
fn refit(context: &BoxContext<'_>, record: &PanelRecord) -> Option<Remedy> {
    let Part::Leaf {
        door: door_id,
        leaf,
    } = record.part
    else {
        return None;
    };
    let door = context.wall_box.door(door_id)?;
    let report = context.report.door(door_id)?;
    let panel = context.report.panel(record.part)?;
    let by = edges_by(record, leaf, panel, door, report)?;
    let mut moved = door.clone();
    for edge in Edge::ALL {
        *moved.tweaks.at_mut(edge) += by.at(edge);
    }
    let with = tweaks::into_reveals(context.wall_box, &moved);
    let after = context.placed(&with);
    let its_size = after.panels.iter().any(|panel| {
        panel.id.part == record.part
            && (panel.size[0] - record.size[0]).abs() < 1e-6
            && (panel.size[1] - record.size[1]).abs() < 1e-6
    });
    let adjustment = context.card(door.fitting.as_ref()?)?.adjustment;
    let refitted = after.door(door_id)?;
    let hopeless = severity_of(context, &refitted.offsets, &adjustment) == Some(Severity::Stop);
    let unmoved = Edge::ALL.iter().all(|&edge| by.at(edge).abs() < 1e-6);
    if !its_size || hopeless || unmoved {
        return None;
    }
    let changed = Edge::ALL
        .into_iter()
        .filter(|edge| by.at(*edge).abs() > 1e-6);
    let mut effects: Vec<Effect> = changed
        .map(|edge| {
            let before = report.overlays.at(edge) + door.tweaks.at(edge);
            let after = refitted.overlays.at(edge);
            let name = word::edge(edge);
            // The gap of an inset door is what it laps over the other way round.
            match door.fit {
                DoorFit::Overlay { .. } => Effect::Overlay {
                    edge: name,
                    was: Mm(before),
                    is: Mm(after),
                },
                DoorFit::Inset { .. } => Effect::Gap {
                    edge: name,
                    was: Mm(-before),
                    is: Mm(-after),
                },
            }
        })
        .collect();
    let left = refitted
        .offsets
        .iter()
        .map(BoreOffset::distance)
        .fold(0.0, f64::max);
    effects.push(Effect::DrilledSize { off: Mm(left) });
    Some(Remedy {
        kind: RemedyKind::Refit,
        effects,
        safety: Safety::Safe,
        edit: Edit::replace_box(with),
    })
}

/// Least and greatest of the values taken.
#[derive(Debug, Clone, Copy, Default)]
struct Extremes(Option<(f64, f64)>);

impl Extremes {
    fn take(&mut self, value: f64) {
        let (least, most) = self.0.unwrap_or((value, value));
        self.0 = Some((least.min(value), most.max(value)));
    }

    fn middle(self) -> Option<f64> {
        self.0.map(|(least, most)| f64::midpoint(least, most))
    }
}

fn plug_and_redrill(
    context: &BoxContext<'_>,
    record: &PanelRecord,
    difference: &PanelDifference,
) -> Remedy {
    let mut with = context.wall_box.clone();
    forget_record(&mut with, record.part);
    let plug = difference.moved.len() + difference.surplus.len();
    let drill = difference.moved.len() + difference.missing.len();
    let mut effects = Vec::new();
    if !difference.sizes.is_empty() {
        effects.push(Effect::CutAgain);
    }
    if plug > 0 {
        effects.push(Effect::Plug { bores: Count(plug) });
    }
    if drill > 0 {
        effects.push(Effect::Drill {
            bores: Count(drill),
        });
    }
    effects.push(Effect::NotDrilled);
    Remedy {
        kind: RemedyKind::PlugAndRedrill,
        effects,
        safety: Safety::NeedsALook,
        edit: Edit::replace_box(with),
    }
}
