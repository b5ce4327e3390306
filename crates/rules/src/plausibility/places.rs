//! Front and back exchanged, and bores outside the body.

use flapwright_model::card::DownFrom;
use flapwright_model::lift::Lift;
use flapwright_model::linkage::{Bodies, Pivot};
use flapwright_model::message::{Mm, Word};

use super::Suspicions;
use crate::message::{SlipMessage, SlipRemedy};

/// A bore may stand this far out of the body, mm: half a screw's head. Common practice, no source.
const OUTSIDE: f64 = 5.0;

pub(super) fn look_at(look: &mut Suspicions<'_>) {
    envelope(look);
    bores(look);
    pivots(look);
    struts(look);
}

fn envelope(look: &mut Suspicions<'_>) {
    let card = look.card;
    let it = &card.envelope;
    for size in &card.sizes {
        let (Some(down_to), Some(back_to)) = (it.down_to.of(&size.name), it.back_to.of(&size.name))
        else {
            continue;
        };
        for (axis, from, to, remedy) in [
            ("down", it.down_from, down_to, SlipRemedy::TopAndBottom),
            ("back", it.back_from, back_to, SlipRemedy::FrontAndBack),
        ] {
            if from >= to {
                let message = SlipMessage::Body {
                    from: Mm(from),
                    to: Mm(to),
                    size: size.name.clone(),
                };
                look.slip(format!("envelope.{axis}_to"), message, remedy);
                return;
            }
        }
    }
}

/// The first size for which a bore lies outside the body, for each bore.
fn bores(look: &mut Suspicions<'_>) {
    let card = look.card;
    let body = &card.envelope;
    for (i, bore) in card.side_bores.iter().enumerate() {
        let found = card.sizes.iter().find_map(|size| {
            let name = &size.name;
            // A joint is nowhere until there is a door.
            let down = (bore.down.from != DownFrom::LeafJoint)
                .then(|| bore.down.by.of(name))
                .flatten();
            let back = (bore.back.from == body.front)
                .then(|| bore.back.by.of(name))
                .flatten();
            let (down_to, back_to) = (body.down_to.of(name)?, body.back_to.of(name)?);
            [
                ("down", Word("way-down"), down, body.down_from, down_to),
                ("back", Word("way-back"), back, body.back_from, back_to),
            ]
            .into_iter()
            .find_map(|(axis, way, at, from, to)| {
                let at = at?;
                let outside = at < from - OUTSIDE || at > to + OUTSIDE;
                let message = SlipMessage::BoreOutside {
                    way,
                    at: Mm(at),
                    from: Mm(from),
                    to: Mm(to),
                    size: name.clone(),
                };
                (outside && from < to).then_some((axis, message))
            })
        });
        if let Some((axis, message)) = found {
            let field = format!("side_bores[{i}].{axis}");
            look.slip(field, message, SlipRemedy::BoreAndBody);
        }
    }
}

/// Arms whose pivot in the box stands before the one on the door.
fn pivots(look: &mut Suspicions<'_>) {
    let arms: Vec<(&str, &Pivot, &Pivot)> = match &look.card.linkage.bodies {
        Bodies::Parallel {
            box_pivot,
            door_pivot,
            ..
        } => vec![("box_pivot", box_pivot, door_pivot)],
        Bodies::TwoArms {
            box_first,
            door_first,
            box_second,
            door_second,
        } => vec![
            ("box_first", box_first, door_first),
            ("box_second", box_second, door_second),
        ],
        Bodies::FixedAxis { .. } | Bodies::PoseTable { .. } | Bodies::Folding { .. } => Vec::new(),
    };
    let card = look.card;
    for (name, in_box, on_door) in arms {
        let found = card.sizes.iter().find_map(|size| {
            let (a, b) = (in_box.back.of(&size.name)?, on_door.back.of(&size.name)?);
            (a < b).then_some((a, b, &size.name))
        });
        if let Some((a, b, size)) = found {
            let message = SlipMessage::ArmBackwards {
                in_box: Mm(a),
                on_door: Mm(b),
                size: size.clone(),
            };
            let field = format!("linkage.bodies.{name}.back");
            look.slip(field, message, SlipRemedy::FrontAndBackOrBoxAndDoor);
        }
    }
}

fn struts(look: &mut Suspicions<'_>) {
    let card = look.card;
    for (i, size) in card.sizes.iter().enumerate() {
        if let Lift::Strut(strut) = &size.lift
            && strut.box_back <= 0.0
        {
            let message = SlipMessage::StrutInFront {
                at: Mm(strut.box_back),
            };
            let field = format!("sizes[{i}].lift.box_back");
            look.slip(field, message, SlipRemedy::FrontAndBack);
        }
    }
}
