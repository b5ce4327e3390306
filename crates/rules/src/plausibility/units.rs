//! Millimetres typed for inches, and inches for millimetres: figures 25.4 times off.

use flapwright_model::card::{Card, Depth, Drill, PerSize};
use flapwright_model::length::MM_PER_INCH;
use flapwright_model::message::{Mm, Word};

use super::Suspicions;
use crate::message::{SlipMessage, SlipRemedy};

/// Bores of fittings lie between these diameters, mm. Common practice, no source.
const DIAMETERS: (f64, f64) = (1.0, 60.0);
/// Blind bores lie between these depths, mm. Common practice, no source.
const DEPTHS: (f64, f64) = (2.0, 100.0);
/// The farthest bore of a body is at least so far from its datums, and no farther than that, mm.
/// Common practice, no source.
const FARTHEST_BORE: (f64, f64) = (16.0, 900.0);
/// The highest doors of a fitting lie between these heights, mm. Common practice, no source.
const DOOR_HEIGHTS: (f64, f64) = (80.0, 2500.0);

pub(super) fn look_at(look: &mut Suspicions<'_>) {
    for (field, drill) in drills(look.card) {
        judge(
            look,
            &format!("{field}.diameter"),
            Word("bore-diameter"),
            drill.diameter,
            DIAMETERS,
        );
        if let Depth::Blind(depth) = drill.depth {
            judge(
                look,
                &format!("{field}.depth"),
                Word("bore-depth"),
                depth,
                DEPTHS,
            );
        }
    }
    let mut farthest: Option<f64> = None;
    for bore in &look.card.side_bores {
        for by in [&bore.down.by, &bore.back.by] {
            farthest = Some(farthest.unwrap_or(0.0).max(largest(by)));
        }
    }
    if let Some(farthest) = farthest {
        judge(
            look,
            "side_bores",
            Word("farthest-distance"),
            farthest,
            FARTHEST_BORE,
        );
    }
    for (i, size) in look.card.sizes.iter().enumerate() {
        let field = format!("sizes[{i}].door_height.max");
        judge(
            look,
            &field,
            Word("greatest-door-height"),
            size.door_height.max,
            DOOR_HEIGHTS,
        );
    }
}

fn judge(
    look: &mut Suspicions<'_>,
    field: &str,
    what: Word,
    value: f64,
    (least, most): (f64, f64),
) {
    let is_small = value < least;
    let instead = if is_small {
        value * MM_PER_INCH
    } else if value > most {
        value / MM_PER_INCH
    } else {
        return;
    };
    let is_other_unit = instead >= least && instead <= most;
    let (value, least, most, instead) = (Mm(value), Mm(least), Mm(most), Mm(instead));
    let message = match (is_small, is_other_unit) {
        (true, false) => SlipMessage::Small {
            what,
            value,
            least,
            most,
        },
        (true, true) => SlipMessage::SmallInInches {
            what,
            value,
            least,
            most,
            instead,
        },
        (false, false) => SlipMessage::Large {
            what,
            value,
            least,
            most,
        },
        (false, true) => SlipMessage::LargeInMillimetres {
            what,
            value,
            least,
            most,
            instead,
        },
    };
    look.slip(field, message, SlipRemedy::Unit);
}

fn largest(by: &PerSize) -> f64 {
    match by {
        PerSize::All(value) => value.abs(),
        PerSize::BySize(table) => table.values().fold(0.0, |most, it| it.abs().max(most)),
    }
}

/// Every drill of a card with the path of its field.
fn drills(card: &Card) -> Vec<(String, &Drill)> {
    let side = card.side_bores.iter().enumerate();
    let mut found: Vec<_> = side
        .map(|(i, bore)| (format!("side_bores[{i}].drill"), &bore.drill))
        .collect();
    for (i, group) in card.top_bores.iter().enumerate() {
        for (j, bore) in group.bores.iter().enumerate() {
            found.push((format!("top_bores[{i}].bores[{j}].drill"), &bore.drill));
        }
    }
    for (i, group) in card.door_bores.iter().enumerate() {
        for (j, bore) in group.bores.iter().enumerate() {
            found.push((format!("door_bores[{i}].bores[{j}].drill"), &bore.drill));
        }
    }
    found
}
