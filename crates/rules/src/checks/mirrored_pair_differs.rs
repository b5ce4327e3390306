//! Whether doors that look alike are drilled alike.

use flapwright_model::card::OpeningKind;
use flapwright_model::id::DoorId;
use flapwright_model::job::Settings;
use flapwright_model::message::{Count, Mm};
use flapwright_model::part::{LeafId, Part, Subject};

use super::{Check, Run, finding};
use crate::finding::{Finding, Severity};
use crate::inspection::{BoreSource, BoxReport, PanelReport};
use crate::message::MirroredPairDiffers;

const NAME: &str = "mirrored-pair-differs";

pub(super) const CHECK: Check = Check {
    name: NAME,
    page: "\
## What it looks at
Doors of one leaf that open alike and are alike in width, height, thickness and material (to 0.1 \
mm), in boxes alike in width, height and depth: whether the fitting's bores in their backs are \
the same or mirror each other.

## Why it matters
Doors that look alike are mistaken for each other: stacked together, drilled with one set-up, \
hung on either box. The one with other bores is found when it does not fit.

## Severity
Caution.

## What can be done
Give both boxes the same panels, overlays, fitting and size; or mark the doors clearly and accept \
it.",
    severities: &[Severity::Caution],
    settings: &["off_fitting_ignored"],
    run: Run::Alike(look),
};

/// What makes two doors look alike: tenths of a millimetre, kind, material.
pub type Looks = ([i64; 6], OpeningKind, String);

/// A door: its box, itself, its leaf.
pub type OneDoor<'a> = (&'a BoxReport, DoorId, &'a PanelReport);

/// The doors of one leaf that a box has, with what they look like.
#[must_use]
pub fn looks_of(report: &BoxReport) -> Vec<(Looks, DoorId)> {
    let doors = report.panels.iter().filter_map(|panel| {
        let Part::Leaf {
            door,
            leaf: LeafId::Only,
        } = panel.id.part
        else {
            return None;
        };
        let kind = report.door(door)?.kind?;
        let [width, height, depth] = report.outer;
        let sizes = [
            panel.size[0],
            panel.size[1],
            panel.thickness,
            width,
            height,
            depth,
        ];
        Some(((sizes.map(tenths), kind, panel.material.clone()), door))
    });
    doors.collect()
}

/// A door of one leaf.
#[must_use]
pub fn one_door(report: &BoxReport, door: DoorId) -> Option<OneDoor<'_>> {
    let leaf = LeafId::Only;
    Some((report, door, report.panel(Part::Leaf { door, leaf })?))
}

fn look(settings: &Settings, [first, other]: [OneDoor<'_>; 2]) -> Option<Finding> {
    if first.0.id == other.0.id {
        return None;
    }
    let by = difference(first.2, other.2)?;
    (by > settings.off_fitting_ignored + 1e-9).then(|| differ((first, other), by))
}

fn differ((a, b): (OneDoor<'_>, OneDoor<'_>), by: f64) -> Finding {
    let subject = |(report, door, _): OneDoor<'_>| Subject::Door(report.id, door);
    let other = subject(b);
    let (bores, others) = (of_fitting(a.2).len(), of_fitting(b.2).len());
    let message = if by.is_finite() {
        MirroredPairDiffers::Apart {
            other,
            largest_difference: Mm(by),
        }
    } else if bores == others {
        MirroredPairDiffers::OtherDiameters { other }
    } else {
        MirroredPairDiffers::OtherCount {
            other,
            bores: Count(bores),
            others: Count(others),
        }
    };
    finding(
        NAME,
        Severity::Caution,
        message,
        vec![subject(a), subject(b)],
    )
}

/// The bores of a door that its fitting asked for: u, v, diameter.
fn of_fitting(panel: &PanelReport) -> Vec<[f64; 3]> {
    panel
        .bores
        .iter()
        .filter(|bore| !matches!(bore.source, BoreSource::Handle { .. }))
        .map(|bore| {
            let (u, v) = bore.at.uv();
            [u, v, bore.drill.diameter]
        })
        .collect()
}

/// How far two doors' bores are from being the same or mirrored, whichever is nearer, mm: infinite
/// when their drills differ, `None` when neither has bores.
fn difference(a: &PanelReport, b: &PanelReport) -> Option<f64> {
    let (a_bores, b_bores) = (of_fitting(a), of_fitting(b));
    if a_bores.is_empty() && b_bores.is_empty() {
        return None;
    }
    let mirrored: Vec<[f64; 3]> = b_bores
        .iter()
        .map(|[u, v, diameter]| [b.size[0] - u, *v, *diameter])
        .collect();
    Some(apart(&a_bores, &b_bores).min(apart(&a_bores, &mirrored)))
}

/// The largest distance from a bore of one to the nearest bore of that diameter in the other, mm.
fn apart(a: &[[f64; 3]], b: &[[f64; 3]]) -> f64 {
    if a.len() != b.len() {
        return f64::INFINITY;
    }
    let to_nearest = |one: &[f64; 3], others: &[[f64; 3]]| {
        others
            .iter()
            .filter(|it| (it[2] - one[2]).abs() < 1e-6)
            .map(|it| (it[0] - one[0]).hypot(it[1] - one[1]))
            .fold(f64::INFINITY, f64::min)
    };
    let one_way = |from: &[[f64; 3]], to: &[[f64; 3]]| {
        from.iter().map(|it| to_nearest(it, to)).fold(0.0, f64::max)
    };
    one_way(a, b).max(one_way(b, a))
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a size of a panel is far below the limit, and the cast saturates"
)]
fn tenths(value: f64) -> i64 {
    (value * 10.0).round() as i64
}
